//! The steps of a run and what happens at them.

use super::Dose;
use crate::quantity::{Mass, Temperature};
use crate::wire::wire_enum;

/// Names a step for good, whatever is undone or added around it. Indices into the plan's pours and lines.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum StepKey {
    /// Weigh a wax into the pot.
    Wax {
        pour: u32,
        line: u32,
    },
    Melt {
        pour: u32,
    },
    /// Measure out a part and add it; of what is counted, set the pieces in the vessels.
    Add {
        pour: u32,
        line: u32,
    },
    Stir {
        pour: u32,
        line: u32,
    },
    /// More of a line, after a restore (the `round`th of this pour, from 1).
    TopUp {
        pour: u32,
        line: u32,
        round: u32,
    },
    /// Down to the pour range.
    Gate {
        pour: u32,
    },
    /// Vessels are counted from 0 in each pour.
    Fill {
        pour: u32,
        vessel: u32,
    },
    /// Everything poured: close the record.
    Close,
}

wire_enum!(StepKey {
    Wax { pour, line },
    Melt { pour },
    Add { pour, line },
    Stir { pour, line },
    TopUp { pour, line, round },
    Gate { pour },
    Fill { pour, vessel },
    Close,
});

impl StepKey {
    /// The pour it belongs to; none for the close.
    pub const fn pour(self) -> Option<u32> {
        match self {
            Self::Wax { pour, .. }
            | Self::Melt { pour }
            | Self::Add { pour, .. }
            | Self::Stir { pour, .. }
            | Self::TopUp { pour, .. }
            | Self::Gate { pour }
            | Self::Fill { pour, .. } => Some(pour),
            Self::Close => None,
        }
    }

    /// The line it is about, where it is about one.
    pub const fn line(self) -> Option<u32> {
        match self {
            Self::Wax { line, .. }
            | Self::Add { line, .. }
            | Self::Stir { line, .. }
            | Self::TopUp { line, .. } => Some(line),
            Self::Melt { .. } | Self::Gate { .. } | Self::Fill { .. } | Self::Close => None,
        }
    }

    /// True where something is measured into the pot.
    pub const fn goes_in(self) -> bool {
        matches!(self, Self::Wax { .. } | Self::Add { .. } | Self::TopUp { .. })
    }
}

/// The two honest ways after too much of one part.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Way {
    Keep,
    Restore,
}

wire_enum!(Way { Keep, Restore });

/// What happened at the pot. Times are milliseconds since 1970.
#[derive(Clone, PartialEq, Debug)]
pub enum Event {
    Did {
        step: StepKey,
        /// Of a vessel, nothing at all: it was left empty.
        weighed: Option<Mass>,
        temperature: Option<Temperature>,
        at: u64,
    },
    Read {
        temperature: Temperature,
        at: u64,
        /// Which pour it is of; none where there is only one, and in books from before it was asked.
        pour: Option<u32>,
    },
    /// After the amount weighed at `step` was over: which way was taken.
    Mended { step: StepKey, way: Way, at: u64 },
    /// Added to by the person; kept in the record.
    Said { text: String, at: u64 },
}

wire_enum!(Event {
    Did { step, weighed, temperature, at },
    Read { temperature, at, pour [skip] },
    Mended { step, way, at },
    Said { text, at },
});

impl Event {
    /// When it filled a vessel. None of one that was left empty.
    pub fn filled(&self) -> Option<u64> {
        match self {
            Self::Did { step: StepKey::Fill { .. }, weighed, at, .. } if *weighed != Some(Mass::ZERO) => {
                Some(*at)
            }
            _ => None,
        }
    }
}

/// One step as it stands now.
#[derive(Clone, PartialEq, Debug)]
pub struct Step {
    pub key: StepKey,
    /// What it is to be now: after a restore it may differ from the plan's. Of a vessel, its fill.
    pub amount: Option<Mass>,
    /// How it is measured out.
    pub dose: Option<Dose>,
    pub done: Option<Event>,
}
