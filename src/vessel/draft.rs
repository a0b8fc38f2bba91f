//! A vessel while it is typed: texts, and reading all of them at once.

use super::{FillRule, Inside, Vessel, Water};
use crate::quantity::{
    Amount, AmountError, Exact, LengthUnit, Mass, MassUnit, Quantity, ShareUnit, Voice, read, show_exact,
};
use crate::wire::{wire_enum, wire_struct};

/// A vessel as it stands in a form. Nothing typed is lost, whether it can be read or not.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Draft {
    pub name: String,
    pub top: String,
    /// Left empty, it is the same as `top`: straight sides.
    pub bottom: String,
    pub height: String,
    /// Several weighings stand with a semicolon between them.
    pub water: String,
    pub water_at: String,
    pub rule: FillKind,
    pub fill: String,
    pub wall: String,
    pub note: String,
}

/// [`FillRule`] without its amount.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum FillKind {
    #[default]
    Weight,
    Share,
    Headspace,
}

wire_struct!(Draft { name, top, bottom, height, water, water_at, rule, fill, wall, note });
wire_enum!(FillKind { Weight, Share, Headspace });

/// The weighings as they would be typed.
fn said(water: &Water, voice: Voice) -> String {
    water.masses().map(|mass| show_exact(mass, voice.locale)).collect::<Vec<_>>().join("; ")
}

/// The unit that is meant where one of several weighings, a semicolon between them, is typed without.
pub fn unit_of(weighings: &str, voice: Voice) -> MassUnit {
    let typed = |text: &str| {
        let [in_grams, in_ounces] = [MassUnit::Gram, MassUnit::Ounce]
            .map(|unit| read::<Mass>(text, unit, voice.locale).map(|amount| amount.unit));
        in_grams.ok().filter(|unit| in_ounces == Ok(*unit))
    };
    weighings.split(';').find_map(typed).unwrap_or(voice.mass)
}

/// Weighings of one thing, a semicolon between them: at least one. Those without a unit are in that of the first that
/// has one, as they were read off the same scale.
///
/// # Errors
/// A sentence saying what is wrong with the first that cannot be read.
pub fn read_weighings(text: &str, voice: Voice) -> Result<Vec<Amount<Mass>>, String> {
    let several = text.contains(';');
    let unit = unit_of(text, voice);
    let one = |(place, text): (usize, &str)| {
        read(text, unit, voice.locale).map_err(|e: AmountError| {
            if several {
                ["weighing ", &place.to_string(), ": ", &e.to_string()].concat()
            } else {
                e.to_string()
            }
        })
    };
    (1..).zip(text.split(';')).map(one).collect()
}

impl Draft {
    /// The vessel as it would be typed.
    pub fn of(vessel: &Vessel, voice: Voice) -> Self {
        let length = |amount| show_exact(amount, voice.locale);
        let inside = vessel.inside.as_ref();
        let (rule, fill) = match &vessel.fill {
            FillRule::Weight(mass) => (FillKind::Weight, show_exact(*mass, voice.locale)),
            FillRule::Share(share) => (FillKind::Share, show_exact(*share, voice.locale)),
            FillRule::Headspace(space) => (FillKind::Headspace, length(*space)),
        };
        Self {
            name: vessel.name.clone(),
            top: inside.map(|i| length(i.top)).unwrap_or_default(),
            bottom: inside.filter(|i| i.bottom != i.top).map(|i| length(i.bottom)).unwrap_or_default(),
            height: inside.map(|i| length(i.height)).unwrap_or_default(),
            water: vessel.water.as_ref().map(|w| said(w, voice)).unwrap_or_default(),
            water_at: vessel.water.as_ref().map(|w| show_exact(w.at, voice.locale)).unwrap_or_default(),
            rule,
            fill,
            wall: vessel.wall.map(length).unwrap_or_default(),
            note: vessel.note.clone(),
        }
    }

    /// The vessel, with zero or nothing for what cannot be read, and a sentence for every text that cannot. It can be
    /// kept only where there is none and [`super::check`] refuses nothing.
    pub fn read(&self, voice: Voice) -> (Vessel, Vec<String>) {
        let mut reading = Reading { voice, problems: Vec::new() };
        let vessel = reading.vessel(self);
        (vessel, reading.problems)
    }
}

struct Reading {
    voice: Voice,
    problems: Vec<String>,
}

impl Reading {
    fn amount<Q: Quantity>(&mut self, what: &str, text: &str, unit: Q::Unit) -> Amount<Q> {
        read(text, unit, self.voice.locale).unwrap_or_else(|e: AmountError| {
            self.problems.push(format!("{what}: {e}"));
            Amount { value: Q::from_base(Exact::ZERO), unit }
        })
    }

    fn vessel(&mut self, draft: &Draft) -> Vessel {
        let typed = |text: &str| !text.trim().is_empty();
        let (length, weight) = (self.voice.length, self.voice.mass);
        let inside = (typed(&draft.top) || typed(&draft.bottom) || typed(&draft.height)).then(|| {
            let top = self.amount("Inside, across the top", &draft.top, length);
            let bottom = if typed(&draft.bottom) {
                self.amount("Inside, across the bottom", &draft.bottom, length)
            } else {
                top
            };
            Inside { top, bottom, height: self.amount("Inside, height", &draft.height, length) }
        });
        let water = (typed(&draft.water) || typed(&draft.water_at)).then(|| self.water(draft));
        Vessel {
            name: draft.name.trim().to_owned(),
            inside,
            water,
            fill: self.fill(draft, length, weight),
            wall: typed(&draft.wall).then(|| self.amount("Wall", &draft.wall, length)),
            note: draft.note.trim().to_owned(),
        }
    }

    fn water(&mut self, draft: &Draft) -> Water {
        let nothing = Amount { value: Mass::ZERO, unit: self.voice.mass };
        let mut masses = read_weighings(&draft.water, self.voice)
            .unwrap_or_else(|why| {
                self.problems.push(["Water to the brim: ", &why].concat());
                Vec::new()
            })
            .into_iter();
        Water {
            mass: masses.next().unwrap_or(nothing),
            at: self.amount("Temperature of the water", &draft.water_at, self.voice.temperature),
            again: masses.collect(),
        }
    }

    fn fill(&mut self, draft: &Draft, length: LengthUnit, weight: MassUnit) -> FillRule {
        match draft.rule {
            FillKind::Weight => FillRule::Weight(self.amount("Fill", &draft.fill, weight)),
            FillKind::Share => FillRule::Share(self.amount("Fill", &draft.fill, ShareUnit::Percent)),
            FillKind::Headspace => FillRule::Headspace(self.amount("Fill", &draft.fill, length)),
        }
    }
}
