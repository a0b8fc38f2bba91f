//! The curve that the pot cools along: which readings tell of it, and what they tell.

use super::chill::{celsius, step};
use super::{Air, Gate, Run};
use crate::heat::{Cooling, HeatError, Reading, Room, cooling};
use crate::quantity::{Exact, Temperature, TemperatureUnit, Voice, Why, decimal, show};

/// Two readings this close are one that was put right, in milliseconds.
const PUT_RIGHT: u64 = 10_000;
/// A reading that is this much warmer than the one before says that heat goes in, K: twice what two readings differ by
/// chance (see [`crate::heat::READING_ERROR`]).
const RISE: f64 = 1.4;
/// A room found from the readings is taken where it is known to so many K, and is one a person works in.
const FOUND: f64 = 5.0;
const ROOMS: std::ops::RangeInclusive<f64> = 5.0..=40.0;

/// Readings with the curve through them. Seconds are counted from the first of them.
pub(super) struct Curve {
    pub(super) readings: Vec<(u64, Temperature)>,
    pub(super) cooling: Cooling,
    /// The reading that does not fit the others; the curve is without it.
    pub(super) odd: Option<usize>,
    pub(super) fits: bool,
    /// The room was found from the readings.
    pub(super) found: bool,
}

impl Curve {
    pub(super) fn seconds(&self, at: u64) -> f64 {
        seconds(&self.readings, at)
    }

    /// Through what the readings of a pour tell of its pot as it is now. None before the first of them.
    ///
    /// # Errors
    /// A sentence where no curve can be drawn yet.
    pub(super) fn of(run: &Run, pour: u32, air: Air, voice: Voice) -> Option<Result<Self, String>> {
        let (readings, rose) = run.readings(pour);
        match readings.as_slice() {
            [] => None,
            [_] if rose => Some(Err(
                "It has got warmer. The times are told from the second reading after the heat is off."
                    .to_owned(),
            )),
            [_] => Some(Err("Read it once more in a few minutes: then the times are told.".to_owned())),
            _ => Some(Self::through(readings, air).map_err(|why| say(&why, air, voice))),
        }
    }

    fn through(readings: Vec<(u64, Temperature)>, air: Air) -> Result<Self, HeatError> {
        let mut seen: Vec<Reading> = readings
            .iter()
            .map(|(at, t)| Reading { seconds: seconds(&readings, *at), celsius: t.in_celsius().to_f64() })
            .collect();
        let known = Room::Known(air.at.in_celsius().to_f64());
        let (found, mut curve) = match found(&seen, air) {
            Some(curve) => (true, curve),
            None => (false, cooling(&seen, known)?),
        };
        let odd = curve.odd.map(|odd| odd.index);
        if let Some(odd) = odd.filter(|odd| *odd < seen.len()) {
            seen.remove(odd);
            if let Ok(without) = cooling(&seen, if found { Room::Known(curve.room) } else { known }) {
                curve = without;
            }
        }
        Ok(Self { fits: curve.fits, readings, cooling: curve, odd, found })
    }

    /// The room that the curve comes down to.
    pub(super) fn room(&self) -> Option<Temperature> {
        celsius(self.cooling.room)
    }

    /// How the times came about, at so many seconds.
    pub(super) fn why(&self, gates: &[Gate], now: f64, voice: Voice) -> Why {
        let degrees = |c: f64| {
            let step = Some(step(voice));
            celsius(c).map(|t| show(t, voice.temperature, step, voice.locale).to_string()).unwrap_or_default()
        };
        let rounded =
            |x: f64, step: Exact| Exact::near(x).map(|x| decimal(x, step, voice.locale)).unwrap_or_default();
        let fahrenheit = voice.temperature == TemperatureUnit::Fahrenheit;
        let missed = self.cooling.residual * if fahrenheit { 1.8 } else { 1.0 };
        let symbol = crate::quantity::Unit::symbol(voice.temperature);
        let first = gates.first().map(|gate| gate.when.as_str()).unwrap_or_default();
        let why =
            Why::new("The times as it cools", "half time × log₂((pot now − room) ÷ (gate − room))", first)
                .with("pot now, by the curve", degrees(self.cooling.at(now).likely))
                .with("room", degrees(self.cooling.room))
                .with(
                    "half time: so long it takes to come half way to the room",
                    [&rounded(self.cooling.half() / 60.0, Exact::ONE), " min"].concat(),
                )
                .with("readings", self.readings.len().to_string())
                .with(
                    "what the curve misses them by, on average",
                    [&rounded(missed, Exact::ratio(1, 10)), " ", symbol].concat(),
                );
        gates
            .iter()
            .fold(why, |why, gate| why.with([&gate.name, ", ", &gate.range].concat(), &gate.when))
            .rounded("to whole minutes that hold the time 19 times out of 20")
            .from(
                "Newton's law of cooling, fitted by least squares; a reading is taken to be good to half a °C (common \
                 practice).",
            )
    }
}

fn found(seen: &[Reading], air: Air) -> Option<Cooling> {
    let curve = (!air.typed).then(|| cooling(seen, Room::Fitted).ok()).flatten()?;
    (curve.fits && curve.room_spread() <= FOUND && ROOMS.contains(&curve.room)).then_some(curve)
}

fn seconds(readings: &[(u64, Temperature)], at: u64) -> f64 {
    let first = readings.first().map_or(at, |(first, _)| *first);
    (at as f64 - first as f64) / 1000.0
}

fn say(why: &HeatError, air: Air, voice: Voice) -> String {
    match why {
        HeatError::BelowRoom { .. } => format!(
            "A reading is not above the room ({}). Read it again, or say how warm the room is.",
            air.say(voice)
        ),
        _ => "The readings do not fall. The times are told once the heat is off and they do.".to_owned(),
    }
}

impl Run {
    /// The readings that tell of a pot as it cools now, in their order, and whether a rise came before the first: those
    /// since something went in and since it last got warmer. One reading that stands out from its neighbours is no rise.
    pub(super) fn readings(&self, pour: u32) -> (Vec<(u64, Temperature)>, bool) {
        let mut all: Vec<(u64, Temperature)> = Vec::new();
        for (at, temperature) in self.read_since(pour) {
            while all.last().is_some_and(|(before, _)| at < before.saturating_add(PUT_RIGHT)) {
                all.pop();
            }
            all.push((at, temperature));
        }
        let warmth = |index: usize| all.get(index).map(|(_, t)| t.in_celsius().to_f64());
        let rises = |index: usize| {
            let before = warmth(index.checked_sub(1)?)?;
            let here = warmth(index)?;
            let lone = warmth(index + 1).is_some_and(|next| next < before);
            let back = index.checked_sub(2).and_then(warmth).is_some_and(|earlier| here < earlier);
            (here > before + RISE && !lone && !back).then_some(())
        };
        let rise = (0..all.len()).rev().find(|index| rises(*index).is_some());
        (all.split_off(rise.unwrap_or(0)), rise.is_some())
    }
}
