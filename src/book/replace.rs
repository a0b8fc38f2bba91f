//! A book replaced by a copy. Nothing is deleted: an act names, by device and clock, what was here and is not in the
//! copy, and that counts as not done. Taken back, the earlier book is here again.

use super::{Act, Entry, Id, Journal, Map};
use crate::sort;
use crate::wire::wire_struct;

/// All that a device wrote up to this clock.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct UpTo {
    pub device: String,
    pub clock: u64,
}

wire_struct!(UpTo { device, clock });

/// What stays and what goes. What nobody knew of when it was made goes on counting when it comes from another device.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Replace {
    /// What was here.
    pub had: Vec<UpTo>,
    /// What the copy has.
    pub kept: Vec<UpTo>,
    /// What it does not have all the same.
    pub without: Vec<Id>,
    /// When the copy was made, milliseconds since 1970, where it says.
    pub made: Option<u64>,
}

wire_struct!(Replace { had, kept, without, made [skip] });

/// More than that many entries or devices are not named one by one (our own choice: the line stays short).
const MOST: usize = 2_000;

/// A book that was replaced and can be brought back.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Earlier {
    /// The act that replaced it: undone, the book is back.
    pub entry: Id,
    /// When that was, milliseconds since 1970.
    pub at: u64,
    pub device: String,
    /// When the copy was made that took its place, where it says.
    pub made: Option<u64>,
    /// How many entries of it do not count now.
    pub entries: usize,
}

/// Up to which clock each device has written among these.
fn up_to<'a>(entries: impl Iterator<Item = &'a Entry>) -> Vec<UpTo> {
    let mut all: Map<UpTo> = Map::default();
    for entry in entries {
        let device = Id(entry.device.clone());
        all.add(&device, UpTo { device: entry.device.clone(), clock: entry.clock });
        if let Some(known) = all.get_mut(&device) {
            known.clock = known.clock.max(entry.clock);
        }
    }
    all.into_values().collect()
}

fn covers(all: &[UpTo], entry: &Entry) -> bool {
    all.iter().any(|upto| upto.device == entry.device && entry.clock <= upto.clock)
}

impl Replace {
    /// False for what no screen makes: so many that looking through them would take its time.
    pub(super) fn can_be(&self) -> bool {
        [self.had.len(), self.kept.len(), self.without.len()].iter().all(|n| *n <= MOST)
    }

    /// True for an entry that was here and is not in the copy.
    pub(super) fn sets_aside(&self, entry: &Entry) -> bool {
        !entry.act.is_final()
            && covers(&self.had, entry)
            && (!covers(&self.kept, entry) || self.without.contains(&entry.id))
    }

    /// What replaces the book by a copy that has these entries; none where that cannot be said in one line.
    pub(super) fn of(journal: &Journal, copy: &[&Entry], made: Option<u64>) -> Option<Act> {
        let had = up_to(journal.entries().iter());
        let kept = up_to(copy.iter().copied());
        let mut ids: Vec<&Id> = copy.iter().map(|e| &e.id).collect();
        sort::by(&mut ids, |a, b| a.cmp(b));
        let lacking = |e: &&Entry| covers(&kept, e) && ids.binary_search(&&e.id).is_err();
        let without: Vec<Id> =
            journal.entries().iter().filter(lacking).take(MOST + 1).map(|e| e.id.clone()).collect();
        let replace = Replace { had, kept, without, made };
        replace.can_be().then(|| Act::Replace(Box::new(replace)))
    }
}

impl Act {
    /// True where it replaces the book by a copy that does not have this entry.
    pub(super) fn sets_aside(&self, entry: &Entry) -> bool {
        matches!(self, Self::Replace(replace) if replace.can_be() && replace.sets_aside(entry))
    }
}

impl Journal {
    /// Books that were replaced and not brought back, the last first.
    pub fn earlier(&self) -> Vec<Earlier> {
        let one = |entry: &Entry| {
            let Act::Replace(replace) = &entry.act else { return None };
            let aside = |e: &&Entry| e.place() < entry.place() && replace.sets_aside(e);
            Some(Earlier {
                entry: entry.id.clone(),
                at: entry.at,
                device: entry.device.clone(),
                made: replace.made,
                entries: self.entries().iter().filter(aside).count(),
            })
        };
        self.all().rev().filter(|(_, counts)| *counts).filter_map(|(e, _)| one(e)).collect()
    }

    /// The act that set this entry aside with all of its book.
    pub(super) fn replaced_by(&self, entry: &Entry) -> Option<&Entry> {
        self.all()
            .rev()
            .filter(|(_, counts)| *counts)
            .map(|(e, _)| e)
            .find(|e| entry.place() < e.place() && e.act.sets_aside(entry))
    }
}
