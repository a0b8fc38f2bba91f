//! What a plan is judged by.

use crate::wire::{wire_enum, wire_struct};

/// What the user puts in order.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Goal {
    /// Fewest candles late or unmet; where two plans are even, fewest unmet.
    Late,
    /// Fewest short of the wished spare.
    Short,
    Pours,
    /// Fewest candles beyond what is ordered and wished.
    Surplus,
    /// Fewest changes of colour and fragrance.
    Changes,
}

wire_enum!(Goal { Late, Short, Pours, Surplus, Changes });

impl Goal {
    /// In the usual order.
    pub const ALL: [Self; 5] = [Self::Late, Self::Short, Self::Pours, Self::Surplus, Self::Changes];

    const fn measures(self) -> &'static [Measure] {
        match self {
            Self::Late => &[Measure::Late, Measure::Unmet],
            Self::Short => &[Measure::Short],
            Self::Pours => &[Measure::Pours],
            Self::Surplus => &[Measure::Surplus],
            Self::Changes => &[Measure::Changes],
        }
    }
}

/// One number of a score.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Measure {
    Late,
    Unmet,
    Short,
    Pours,
    Surplus,
    Changes,
}

wire_enum!(Measure { Late, Unmet, Short, Pours, Surplus, Changes });

/// The measures of a plan.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct Score {
    /// Candles not there by the day they are wanted, those never there among them. Of a line that goes whole all count
    /// when one is late.
    pub late: u32,
    pub unmet: u32,
    /// Short of the wished spare.
    pub short: u32,
    pub pours: u32,
    /// Beyond what is ordered and wished.
    pub surplus: u32,
    /// Of colour or fragrance, from one pour to the next.
    pub changes: u32,
}

wire_struct!(Score { late, unmet, short, pours, surplus, changes });

impl Score {
    pub const fn of(&self, measure: Measure) -> u32 {
        match measure {
            Measure::Late => self.late,
            Measure::Unmet => self.unmet,
            Measure::Short => self.short,
            Measure::Pours => self.pours,
            Measure::Surplus => self.surplus,
            Measure::Changes => self.changes,
        }
    }

    /// The measures as the goals have them: of two plans the one whose rank is less is better.
    pub fn rank(&self, order: &[Measure; 6]) -> [u32; 6] {
        order.map(|measure| self.of(measure))
    }
}

/// The measures in the order of the goals; goals left out follow as usual.
pub fn order(goals: &[Goal]) -> [Measure; 6] {
    let mut order = [Measure::Changes; 6];
    let mut named: Vec<Measure> = Vec::new();
    for goal in goals.iter().chain(&Goal::ALL) {
        for measure in goal.measures() {
            if !named.contains(measure) {
                named.push(*measure);
            }
        }
    }
    for (place, measure) in order.iter_mut().zip(named) {
        *place = measure;
    }
    order
}
