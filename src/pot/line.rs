//! What is weighed, dropped or spooned for one pot.

use crate::formula::{PartKind, TemperatureRange};
use crate::quantity::{Mass, Share, Why};
use serde::{Deserialize, Serialize};

/// One pot's worth. A batch too large for the pot is split into pours as equal as whole vessels allow.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct Pour {
    pub vessels: u32,
    /// What the doses add up to.
    pub total: Mass,
    /// What they should add up to; differs where the divisions of the scales cannot reach it.
    pub wanted: Mass,
    /// Waxes first, then parts in the order they go in.
    pub lines: Vec<Line>,
    pub why: Why,
}

/// One wax or part for one pot.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct Line {
    pub name: String,
    /// None for a wax.
    pub kind: Option<PartKind>,
    pub exact: Mass,
    pub dose: Dose,
    pub of_wax: Share,
    pub of_whole: Share,
    /// None for a wax: it is in the pot from the start.
    #[serde(default)]
    pub add: Option<TemperatureRange>,
    #[serde(default)]
    pub stir_minutes: u32,
    #[serde(default)]
    pub note: String,
    #[serde(default)]
    pub notes: Vec<Note>,
    pub why: Why,
}

/// How it is measured out. `mass` is what it comes to after rounding.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub enum Dose {
    Weigh {
        mass: Mass,
        scale: String,
        division: Mass,
        loads: u32,
    },
    /// No scale of the workshop weighs this within tolerance: the exact mass stands, the notes say the ways out.
    Unweighable {
        mass: Mass,
    },
    /// `of_dye` is the mass of the drops.
    Drops {
        drops: u32,
        mass: Mass,
    },
    /// Eighths of a US teaspoon, with the mass they come to.
    Spoon {
        eighths: u32,
        mass: Mass,
    },
    /// Pieces; nothing of the pour's mass.
    Count {
        pieces: u32,
    },
}

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
}

/// Something to be told at a line or a plan; a sentence made when the plan was made, kept with the record.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct Note {
    /// True where it must be read before going on.
    pub caution: bool,
    pub text: String,
}
