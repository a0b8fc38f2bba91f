//! What adding a part does to the temperature of the pot, told before it goes in.

use super::misses::span;
use super::{Air, Line, Run, StepKey};
use crate::formula::PartKind;
use crate::heat::{Mixed, PARAFFIN_LIKE, Portion, Pot, VEGETABLE_LIKE, mix};
use crate::quantity::{Exact, Quantity, Temperature, TemperatureUnit, Voice, Why, decimal, show};

/// Where the pot will be.
#[derive(Clone, PartialEq, Debug)]
pub struct Chill {
    pub said: String,
    /// Where that is too cold: for the pour, for the wax or for the part itself, and how warm the pot must be before.
    pub caution: Option<String>,
    pub why: Why,
}

/// J/(g·K). Of wax the mean of the two kinds in [`crate::heat`]. Fragrance oils: fifteen of the esters, alcohols and
/// terpenes that they are made of have 1.63 to 2.10 at 50 °C, 1.89 in the mean (library thermo 0.6.1: Zábranský's data,
/// Dadgostar and Shaw's correlation). Dye in oil, as vegetable oils: triolein 2.01 to 2.06. Additives, as hard fats:
/// melted tristearin 2.07 to 2.14; powders hold less.
fn specific_heat(kind: Option<PartKind>) -> f64 {
    match kind {
        None => (PARAFFIN_LIKE.heat_liquid + VEGETABLE_LIKE.heat_liquid) / 2000.0,
        Some(PartKind::Fragrance) => 1.9,
        Some(PartKind::Dye | PartKind::Additive | PartKind::Other) => 2.0,
    }
}

/// J/g that a line takes up in melting: wax the mean of the two kinds; of parts it is not known, and little.
fn melting(kind: Option<PartKind>) -> f64 {
    if kind.is_none() { (PARAFFIN_LIKE.latent + VEGETABLE_LIKE.latent) / 2000.0 } else { 0.0 }
}

impl Run {
    /// Everything in the pot: grams, and J/K that one kelvin of it takes.
    pub(super) fn in_pot(&self, pour: u32) -> (f64, f64) {
        let lines = self.plan.pours.get(pour as usize).map(|p| p.lines.as_slice()).unwrap_or_default();
        (0..).zip(lines).fold((0.0, 0.0), |(grams, heat), (index, line)| {
            let mass = self.fold.is_in(pour, index, line.kind.is_none(), self.events());
            let more = mass.map_or(0.0, |m| m.in_base().to_f64());
            (grams + more, heat + more * specific_heat(line.kind))
        })
    }

    /// The pot itself, where it was weighed empty.
    fn body(&self) -> Option<Pot> {
        let body = self.plan.pot_body.as_ref()?;
        let specific_heat = body.stuff.material().heat / 1000.0;
        Some(Pot { grams: body.weight.value.in_base().to_f64(), specific_heat })
    }

    /// What a step that adds something will do to the pot; the part is as cold as the room, or `warm` where that was
    /// typed. None where nothing of weight goes in, where the pot is not melted, where no reading tells how warm it is,
    /// and where it falls by less than what is shown.
    pub fn chill(
        &self,
        key: StepKey,
        now: u64,
        air: Air,
        warm: Option<Temperature>,
        voice: Voice,
    ) -> Option<Chill> {
        let pour = key.pour()?;
        if !key.goes_in() || self.done(StepKey::Melt { pour }).is_none() {
            return None;
        }
        let line = self.line(pour, key.line()?)?;
        let mass = self.step(key).dose?.mass();
        let pot = self.pot_at(pour, now)?;
        let (grams, heat) = self.in_pot(pour);
        let held =
            Portion { grams, celsius: pot.in_celsius().to_f64(), specific_heat: heat / grams, melting: 0.0 };
        let shelf = warm.map_or(air, |at| Air { at, typed: true });
        let part = Portion {
            grams: mass.in_base().to_f64(),
            celsius: shelf.at.in_celsius().to_f64(),
            specific_heat: specific_heat(line.kind),
            melting: melting(line.kind),
        };
        let body = self.body();
        let mixed = mix(held, body, part).ok()?;
        let after = celsius(mixed.after)?;
        let (step, unit) = (step(voice), voice.temperature);
        let fall = pot.to(unit).round_to(step) - after.to(unit).round_to(step);
        if fall <= Exact::ZERO {
            return None;
        }
        let degrees = |t: Temperature| show(t, unit, Some(step), voice.locale).to_string();
        let symbol = crate::quantity::Unit::symbol(unit);
        let relation = if part.melting > 0.0 {
            "pot − ((pot − part) × what the part takes + what melting takes) ÷ what both take"
        } else {
            "pot − (pot − part) × what the part takes ÷ what both take"
        };
        let from = match warm {
            Some(at) => ["At ", &voice.amount(at, unit)].concat(),
            None => "Cold from the shelf".to_owned(),
        };
        let why = Why::new("The pot once it is stirred in", relation, degrees(after))
            .with("pot", voice.amount(pot, unit))
            .with("part", shelf.say(voice))
            .with("what the part takes, for one °C", joules(part.grams * part.specific_heat, voice))
            .with("what both take, for one °C", joules(mixed.heat_capacity, voice));
        let why = if part.melting > 0.0 {
            why.with("what melting takes", joules(part.grams * part.melting, voice))
        } else {
            why
        };
        let why = match body {
            Some(body) => why.with(
                "of that the pot itself, for one °C",
                joules(body.grams * body.specific_heat, voice),
            ),
            None => why.rounded(
                "The pot itself is warm too and softens the fall; its weight is not known, so it is left out. Weigh it \
                 empty at the Bench.",
            ),
        };
        Some(Chill {
            said: format!(
                "{from} this takes the pot from {} to about {}, {} {symbol} lower.",
                degrees(pot),
                degrees(after),
                decimal(fall, step, voice.locale),
            ),
            caution: self.too_cold(key, line, &mixed, after, voice),
            why: why
                .from("Heat balance, with usual specific heats of wax, oils and additives, not those of this supplier."),
        })
    }

    fn too_cold(
        &self,
        key: StepKey,
        line: &Line,
        mixed: &Mixed,
        after: Temperature,
        voice: Voice,
    ) -> Option<String> {
        let pour = &self.plan.pour;
        let sets = celsius(PARAFFIN_LIKE.liquidus)?;
        let own = line.add.as_ref().filter(|range| after < range.low.value);
        let what = match own {
            _ if after < pour.low.value && after < sets => {
                "At that some wax begins to set in the pot.".to_owned()
            }
            _ if after < pour.low.value => format!("That is below the pour range, {}.", span(pour, voice)),
            Some(range) => format!("That is below its own range, {}.", span(range, voice)),
            None => return None,
        };
        // Warm enough for all that it is too cold for.
        let wants = [Some(pour.low.value), own.map(|range| range.low.value)];
        let goal = wants.into_iter().flatten().filter(|low| after < *low).max()?;
        // Up to the next degree that is shown: rounded down it would not be warm enough.
        let (step, unit) = (step(voice), voice.temperature);
        let before = celsius(mixed.before(goal.in_celsius().to_f64())?)?;
        let least = Temperature::of(Exact::whole((before.to(unit) / step).ceil()) * step, unit);
        let bar = match self.flashing(key, least) {
            Some(other) if other.name != line.name => {
                Some(["at or above the flash point of “", &other.name, "”"].concat())
            }
            None if line.add.as_ref().is_none_or(|range| least <= range.high.value) => None,
            _ => Some("hotter than this part may go in at".to_owned()),
        };
        let least = show(least, unit, Some(step), voice.locale);
        Some(match bar {
            None => format!("{what} Have the pot at {least} or a little more before it goes in."),
            Some(bar) => format!(
                "{what} The pot would have to be at {least} before, {bar}: let the part come to a warm room first, or add \
                 it in small goes and warm the pot gently between."
            ),
        })
    }
}

/// To what a temperature foretold is shown: a whole °F, half a °C.
pub(super) fn step(voice: Voice) -> Exact {
    match voice.temperature {
        TemperatureUnit::Fahrenheit => Exact::ONE,
        TemperatureUnit::Celsius => Exact::ratio(1, 2),
    }
}

pub(super) fn celsius(reckoned: f64) -> Option<Temperature> {
    Exact::near(reckoned).map(Temperature::celsius)
}

fn joules(heat: f64, voice: Voice) -> String {
    let number = Exact::near(heat).map(|n| decimal(n, Exact::ONE, voice.locale)).unwrap_or_default();
    [&number, " J"].concat()
}
