//! What is weighed, dropped or spooned for one pot.

use crate::formula::{PartKind, TemperatureRange};
use crate::quantity::{Amount, Exact, Mass, Share, Temperature, Why};
use crate::wire::{wire_enum, wire_struct};

/// One pot's worth. A batch too large for the pot is split into pours as equal as whole vessels allow.
#[derive(Clone, PartialEq, Debug)]
pub struct Pour {
    pub vessels: u32,
    /// What the doses add up to.
    pub total: Mass,
    /// What they should add up to; differs where the divisions of the scales cannot reach it.
    pub wanted: Mass,
    /// Waxes first, then parts in the order they go in.
    pub lines: Vec<Line>,
    /// What is to be told about this pour as a whole.
    pub notes: Vec<Note>,
    pub why: Why,
}

wire_struct!(Pour { vessels, total, wanted, lines, notes [default], why });

/// One wax or part for one pot.
#[derive(Clone, PartialEq, Debug)]
pub struct Line {
    pub name: String,
    /// None for a wax.
    pub kind: Option<PartKind>,
    pub exact: Mass,
    pub dose: Dose,
    pub of_wax: Share,
    pub of_whole: Share,
    /// None for a wax: it is in the pot from the start.
    pub add: Option<TemperatureRange>,
    pub stir_minutes: u32,
    /// The supplier's highest load, as a share of the wax, where known.
    pub highest: Option<Amount<Share>>,
    /// The supplier's flash point, where known.
    pub flash: Option<Amount<Temperature>>,
    pub note: String,
    pub notes: Vec<Note>,
    pub why: Why,
}

wire_struct!(Line {
    name, kind, exact, dose, of_wax, of_whole, add, stir_minutes [default], highest, flash, note [default],
    notes [default], why,
});

/// How it is measured out. `mass` is what it comes to after rounding.
#[derive(Clone, PartialEq, Debug)]
pub enum Dose {
    /// In `loads` goes, as many as the scale's capacity asks for.
    Weigh { mass: Mass, scale: String, division: Mass, capacity: Mass, loads: u32 },
    /// No scale of the workshop weighs this within tolerance: the exact mass stands, the notes say the ways out.
    Unweighable { mass: Mass },
    /// The mass of the drops; zero where that of one is not known.
    Drops { drops: u32, mass: Mass },
    /// Eighths of a US teaspoon, with the mass they come to; zero where the bulk density is not known.
    Spoon { eighths: u32, mass: Mass },
    /// Pieces; nothing of the pour's mass.
    Count { pieces: u32 },
}

wire_enum!(Dose {
    Weigh { mass, scale, division, capacity, loads },
    Unweighable { mass },
    Drops { drops, mass },
    Spoon { eighths, mass },
    Count { pieces },
});

impl Dose {
    pub fn mass(&self) -> Mass {
        match self {
            Self::Weigh { mass, .. }
            | Self::Unweighable { mass }
            | Self::Drops { mass, .. }
            | Self::Spoon { mass, .. } => *mass,
            Self::Count { .. } => Mass::ZERO,
        }
    }

    /// The least it can be more or less by: a division of the scale, a drop, an eighth of a teaspoon. Zero where it
    /// has none or its mass is not known.
    pub fn division(&self) -> Mass {
        let part = |mass: &Mass, of: u32| mass.times(Exact::ratio(1, of.into()));
        match self {
            Self::Weigh { division, .. } => *division,
            Self::Drops { drops, mass } => part(mass, *drops),
            Self::Spoon { eighths, mass } => part(mass, *eighths),
            Self::Unweighable { .. } | Self::Count { .. } => Mass::ZERO,
        }
    }

    /// The same way of measuring another mass, a multiple of [`Dose::division`].
    #[must_use]
    pub fn of(&self, mass: Mass) -> Self {
        let times = || mass.over(self.division()).and_then(|n| u32::try_from(n.round()).ok());
        match self.clone() {
            Self::Weigh { scale, division, capacity, .. } => {
                let loads =
                    mass.over(capacity).and_then(|n| u32::try_from(n.ceil()).ok()).unwrap_or(1).max(1);
                Self::Weigh { mass, scale, division, capacity, loads }
            }
            Self::Unweighable { .. } => Self::Unweighable { mass },
            Self::Drops { drops, .. } => Self::Drops { drops: times().unwrap_or(drops), mass },
            Self::Spoon { eighths, .. } => Self::Spoon { eighths: times().unwrap_or(eighths), mass },
            Self::Count { pieces } => Self::Count { pieces },
        }
    }
}

/// Something to be told at a line or a plan; a sentence made when the plan was made, kept with the record.
#[derive(Clone, PartialEq, Debug)]
pub struct Note {
    /// True where it must be read before going on.
    pub caution: bool,
    pub text: String,
}

wire_struct!(Note { caution, text });

impl Note {
    pub(super) fn remark(text: impl Into<String>) -> Self {
        Self { caution: false, text: text.into() }
    }

    pub(super) fn caution(text: impl Into<String>) -> Self {
        Self { caution: true, text: text.into() }
    }
}
