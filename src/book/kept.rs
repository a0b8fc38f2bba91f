//! What the state holds of a thing and of a pour.

use super::{Ending, Id, Past};
use crate::day::Day;
use crate::shelf::Ticked;
use crate::stores::Source;

/// One version of a thing.
#[derive(Clone, PartialEq, Debug)]
pub struct Version<T> {
    pub entry: Id,
    /// The clock of its entry: which of two versions is later.
    pub clock: u64,
    /// The device's wall clock, milliseconds since 1970.
    pub at: u64,
    pub device: String,
    /// The version that was on the screen when this one was made.
    pub over: Option<Id>,
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
    /// Today's version.
    pub fn latest(&self) -> Option<&Version<T>> {
        self.versions.last()
    }

    /// What today's version says.
    pub fn body(&self) -> Option<&T> {
        self.latest().map(|v| &v.body)
    }

    /// The version that this entry wrote, with its number from 1.
    pub fn version(&self, entry: &Id) -> Option<(usize, &Version<T>)> {
        self.versions.iter().enumerate().find(|(_, v)| v.entry == *entry).map(|(i, v)| (i + 1, v))
    }
}

/// A pour, running or ended.
#[derive(Clone, PartialEq, Debug)]
pub struct Batch {
    pub id: Id,
    pub formula: Id,
    /// The entry that wrote the formula's version.
    pub version: Id,
    pub vessel: Id,
    /// Milliseconds since 1970.
    pub began: u64,
    /// The day on which it began where it was poured, if that was written down.
    pub day: Option<Day>,
    pub run: Past,
    /// How, when (milliseconds since 1970), and what was said of it.
    pub ended: Option<(Ending, u64, String)>,
    /// Everything it can be found by, in small letters: made once, since years of batches are looked through at each key.
    pub(super) words: String,
    /// How many bytes of that, at its head, are from its plan.
    pub(super) planned: usize,
    /// Which lots its parts are taken from, in the order in which they were named, each with the time until which that held,
    /// milliseconds since 1970: what went in before another lot was named is of the one that was named then.
    pub sources: Vec<(u64, Source)>,
    /// How long it took the hands, where it was said.
    pub minutes: Option<u32>,
    /// What of finishing it is done.
    pub ticked: Ticked,
    /// When the last step of it was said to be done, milliseconds since 1970: then its lids, labels and boxes are used.
    pub closed: Option<u64>,
}
