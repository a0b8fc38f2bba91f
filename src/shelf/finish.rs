//! What is done to a candle once it is solid, and that it is.

use crate::wire::wire_enum;

/// A step of finishing, in the order of the work: labels go on last, on clean glass.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Finish {
    /// The wax is solid through. Every other step comes after it.
    Solid,
    Trimmed,
    Cleaned,
    CautionLabel,
    ProductLabel,
    Closed,
}

wire_enum!(Finish { Solid, Trimmed, Cleaned, CautionLabel, ProductLabel, Closed });

/// All of them, in order, with what was done.
pub const FINISHES: [(Finish, &str); 6] = [
    (Finish::Solid, "The wax is solid through"),
    (Finish::Trimmed, "Wicks trimmed to ¼ in (6 mm)"),
    (Finish::Cleaned, "Vessels wiped clean"),
    (Finish::CautionLabel, "Caution label on"),
    (Finish::ProductLabel, "Product label on"),
    (Finish::Closed, "Lid or cover on"),
];

/// The steps of a batch that are done.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Ticked(Vec<Finish>);

impl Ticked {
    pub(crate) const fn of(steps: Vec<Finish>) -> Self {
        Self(steps)
    }

    /// In the order in which they were done.
    pub(crate) fn steps(&self) -> &[Finish] {
        &self.0
    }

    pub fn has(&self, step: Finish) -> bool {
        self.0.contains(&step)
    }

    pub fn is_whole(&self) -> bool {
        self.missing().is_empty()
    }

    /// What is not done yet, as it will be said once it is.
    pub fn missing(&self) -> Vec<&'static str> {
        FINISHES.iter().filter(|(step, _)| !self.has(*step)).map(|(_, words)| *words).collect()
    }

    /// False where it cannot be: nothing is done to wax that is not solid, and it does not melt again.
    pub fn set(&mut self, step: Finish, done: bool) -> bool {
        let solid = if done {
            step == Finish::Solid || self.has(Finish::Solid)
        } else {
            step != Finish::Solid || self.0.len() < 2
        };
        if solid {
            self.0.retain(|s| *s != step);
            if done {
                self.0.push(step);
            }
        }
        solid
    }
}
