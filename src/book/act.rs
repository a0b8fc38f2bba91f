//! What the person does.

use super::Id;
use super::Settings;
use crate::bench::{Ingredient, MeltingPot, Scale};
use crate::formula::Formula;
use crate::pot::{Event, Plan};
use crate::vessel::Vessel;
use serde::{Deserialize, Serialize};

/// One thing done. Naming the same id again is a new version of that thing.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub enum Act {
    Formula {
        id: Id,
        body: Formula,
    },
    Vessel {
        id: Id,
        body: Vessel,
    },
    Scale {
        id: Id,
        body: Scale,
    },
    Pot {
        id: Id,
        body: MeltingPot,
    },
    Ingredient {
        id: Id,
        body: Ingredient,
    },
    /// Put away, or taken out again.
    Retire {
        id: Id,
        retired: bool,
    },
    Settings(Settings),
    /// A pour began. `version` counts the formula's versions from 1.
    Began {
        batch: Id,
        formula: Id,
        version: u32,
        vessel: Id,
        plan: Box<Plan>,
    },
    At {
        batch: Id,
        event: Event,
    },
    Ended {
        batch: Id,
        how: Ending,
        note: String,
    },
    /// The entry of this id counts as not done; undoing the undo brings it back.
    Undo {
        entry: Id,
    },
}

#[derive(Clone, Copy, PartialEq, Eq, Debug, Serialize, Deserialize)]
pub enum Ending {
    Poured,
    GivenUp,
}
