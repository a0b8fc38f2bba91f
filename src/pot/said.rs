//! A dose as the person reads it: the number that is to be large, its unit, and what stands beside.

use super::{Dose, eighth};
use crate::quantity::{Exact, Mass, Voice, VolumeUnit, show, show_both};

/// How a dose is said.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Said {
    pub number: String,
    pub unit: String,
    /// The same in the other unit, or what drops and spoons weigh; empty where that is not known.
    pub beside: String,
    /// What it is measured with.
    pub with: String,
}

impl Dose {
    pub fn said(&self, voice: Voice) -> Said {
        let said = |number: String, unit: &str, beside: String, with: &str| Said {
            number,
            unit: unit.to_owned(),
            beside,
            with: with.to_owned(),
        };
        match self {
            Self::Weigh { mass, scale, division, loads, .. } => {
                let with = if *loads > 1 { format!("{scale}, in {loads} loads") } else { scale.clone() };
                said_mass(*mass, Some(*division), voice, with)
            }
            Self::Unweighable { mass } => said_mass(*mass, None, voice, "No scale fits".to_owned()),
            Self::Drops { drops, mass } => {
                let unit = if *drops == 1 { "drop" } else { "drops" };
                said(drops.to_string(), unit, weighing(*mass, voice), "Dropper")
            }
            Self::Spoon { eighths, mass } => {
                let (number, unit) = spoons(*eighths, voice);
                said(number, unit, weighing(*mass, voice), "Level spoon")
            }
            Self::Count { pieces } => {
                let unit = if *pieces == 1 { "piece" } else { "pieces" };
                said(pieces.to_string(), unit, String::new(), "By count")
            }
        }
    }
}

/// A mass as a dose is said; `division` is that of the scale it is read on.
fn said_mass(mass: Mass, division: Option<Mass>, voice: Voice, with: String) -> Said {
    let (first, other) = show_both(mass, voice.mass, division, voice.locale);
    Said { number: first.number, unit: first.unit.to_owned(), beside: other.to_string(), with }
}

fn weighing(mass: Mass, voice: Voice) -> String {
    if mass.is_zero() { String::new() } else { voice.amount(mass, voice.mass) }
}

/// Eighths of a teaspoon in the spoons one takes: tablespoons from half a one on, where its eighths meet it; else whole
/// tablespoons and the rest in teaspoons. A US tablespoon is three teaspoons.
pub(super) fn spoons(eighths: u32, voice: Voice) -> (String, &'static str) {
    const TABLESPOON: u32 = 24;
    let number = |eighths: u32, unit| {
        show(eighth().times(Exact::whole(eighths.into())), unit, None, voice.locale).number
    };
    if eighths >= TABLESPOON / 2 && eighths.is_multiple_of(3) {
        (number(eighths, VolumeUnit::Tablespoon), "tbsp")
    } else if eighths > TABLESPOON {
        let (whole, rest) = (eighths / TABLESPOON, eighths % TABLESPOON);
        (format!("{whole} tbsp + {}", number(rest, VolumeUnit::Teaspoon)), "tsp")
    } else {
        (number(eighths, VolumeUnit::Teaspoon), "tsp")
    }
}
