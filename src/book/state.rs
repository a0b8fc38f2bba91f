//! Today's state: the fold of the journal.

use super::{Ending, Entry, Id};
use crate::bench::{Ingredient, MeltingPot, Scale};
use crate::formula::{Formula, Recipe};
use crate::pot::{Residue, Run};
use crate::quantity::{Amount, Density, Exact, Mass, Share, ShareUnit};
use crate::vessel::Vessel;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// One version of a thing.
#[derive(Clone, PartialEq, Debug)]
pub struct Version<T> {
    pub entry: Id,
    pub at: u64,
    pub device: String,
    pub body: T,
}

/// A thing with all its versions, oldest first; there is at least one.
#[derive(Clone, PartialEq, Debug)]
pub struct Kept<T> {
    pub id: Id,
    pub versions: Vec<Version<T>>,
    pub retired: bool,
}

impl<T> Kept<T> {
    /// Today's version, none only while a book is being folded.
    pub fn body(&self) -> Option<&T> {
        self.versions.last().map(|v| &v.body)
    }
}

/// A pour, running or ended.
#[derive(Clone, PartialEq, Debug)]
pub struct Batch {
    pub id: Id,
    pub formula: Id,
    pub version: u32,
    pub vessel: Id,
    pub began: u64,
    pub run: Run,
    pub ended: Option<(Ending, u64, String)>,
    /// Entries that made it, in order: the last one is what "undo" takes back.
    pub entries: Vec<Id>,
}

/// Choices of the workshop.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct Settings {
    pub residue: Residue,
    pub tolerance: Amount<Share>,
}

impl Default for Settings {
    fn default() -> Self {
        Self { residue: Residue::None, tolerance: Amount::new(Exact::whole(2), ShareUnit::Percent) }
    }
}

#[derive(Clone, PartialEq, Debug, Default)]
pub struct State {
    pub formulas: BTreeMap<Id, Kept<Formula>>,
    pub vessels: BTreeMap<Id, Kept<Vessel>>,
    pub scales: BTreeMap<Id, Kept<Scale>>,
    pub pots: BTreeMap<Id, Kept<MeltingPot>>,
    pub ingredients: BTreeMap<Id, Kept<Ingredient>>,
    pub batches: BTreeMap<Id, Batch>,
    pub settings: Settings,
}

impl State {
    /// Takes one entry in, the next in order.
    pub fn take(&mut self, entry: &Entry) {
        let _ = entry;
    }

    /// The batch that is on, if any: the latest begun and not ended.
    pub fn running(&self) -> Option<&Batch> {
        self.batches.values().filter(|b| b.ended.is_none()).max_by_key(|b| b.began)
    }
}

impl Recipe for State {
    fn drop_mass(&self, ingredient: &str) -> Option<Mass> {
        let _ = ingredient;
        None
    }
    fn bulk_density(&self, ingredient: &str) -> Option<Density> {
        let _ = ingredient;
        None
    }
}
