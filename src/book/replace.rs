//! A book replaced by a copy. Nothing is deleted: an act names, by device and clock, what was here and is not in the
//! copy, and that counts as not done. Taken back, the earlier book is here again. What takes back a copy that was taken in
//! is the same act, the other way round: it keeps what was here, and sets aside what came.

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
    /// What was here; of a copy that is taken back, what it brought.
    pub had: Vec<UpTo>,
    /// What the copy has; of a copy that is taken back, what was here before.
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
    /// When what is set aside was taken in, milliseconds since 1970, where it is a copy that was taken back.
    pub taken: Option<u64>,
}

/// A copy that was taken in and can be taken back.
#[derive(Clone, PartialEq, Debug)]
pub struct Taken {
    /// When that was, milliseconds since 1970.
    pub at: u64,
    pub device: String,
    /// When the copy was made, where it says.
    pub made: Option<u64>,
    /// How many entries it brought.
    pub entries: u64,
    /// What takes it back; undone, they are here again.
    pub back: Act,
}

/// Up to which clock each device has written among these; none of more devices than are named.
fn up_to<'a>(entries: impl Iterator<Item = &'a Entry>) -> Option<Vec<UpTo>> {
    let mut all: Map<UpTo> = Map::default();
    for entry in entries {
        let device = Id(entry.device.clone());
        all.add(&device, UpTo { device: entry.device.clone(), clock: entry.clock });
        if let Some(known) = all.get_mut(&device) {
            known.clock = known.clock.max(entry.clock);
        }
        if all.len() > MOST {
            return None;
        }
    }
    Some(all.into_values().collect())
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
        let had = up_to(journal.entries().iter())?;
        let kept = up_to(copy.iter().copied())?;
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
    /// How much is named where it replaces a book: that is looked for at every entry. What a copy was taken in for is only
    /// looked at itself.
    pub(super) fn names_aside(&self) -> usize {
        match self {
            Self::Replace(replace) => 1 + replace.had.len() + replace.kept.len() + replace.without.len(),
            Self::Took { .. } => 1,
            _ => 0,
        }
    }

    /// True where it replaces the book by a copy that does not have this entry.
    pub(super) fn sets_aside(&self, entry: &Entry) -> bool {
        matches!(self, Self::Replace(replace) if replace.can_be() && replace.sets_aside(entry))
    }
}

impl Journal {
    /// What is written down when these are taken in, so that they can be taken back. None where they bring nothing that
    /// could be, or it cannot be said in one line. Nothing may be tied up.
    pub(super) fn took<'a>(&self, fresh: impl Iterator<Item = &'a Entry>, made: Option<u64>) -> Option<Act> {
        // Of one that is here already a person was removed, for good.
        let came: Vec<&Entry> = fresh.filter(|e| !e.act.is_final() && self.find(&e.id).is_none()).collect();
        let had = up_to(came.iter().copied())?;
        let kept = up_to(self.entries().iter())?;
        let within = came.iter().filter(|e| covers(&kept, e));
        let without = within.take(MOST + 1).map(|e| e.id.clone()).collect();
        let back = Replace { had, kept, without, made };
        // Word of another taking in is nothing: two who give each other copies would else never have the same.
        let entries = came.iter().filter(|e| e.act.is_undoable()).count() as u64;
        (entries > 0 && back.can_be()).then(|| Act::Took { entries, back: Box::new(back) })
    }

    /// Copies that were taken in, of which each can be taken back now; the last first.
    pub fn taken(&self) -> Vec<Taken> {
        let replaced = self.replacings();
        let one = |(entry, counts): (&Entry, bool)| {
            let Act::Took { entries, back } = &entry.act else { return None };
            // It was taken back; or the book was replaced by it in one go, and that is to be taken back first.
            let over = |e: &&Entry| match &e.act {
                Act::Replace(replace) if e.place() > entry.place() => {
                    replace == back || (e.device == entry.device && e.clock == entry.clock + 1)
                }
                _ => false,
            };
            (counts && back.can_be() && !replaced.iter().any(over)).then(|| Taken {
                at: entry.at,
                device: entry.device.clone(),
                made: back.made,
                entries: *entries,
                back: Act::Replace(back.clone()),
            })
        };
        self.all().rev().filter_map(one).collect()
    }

    /// The taking in that this entry took back.
    pub(super) fn took_before(&self, entry: &Entry) -> Option<&Entry> {
        let Act::Replace(replace) = &entry.act else { return None };
        let mut earlier = self.entries().iter().rev().filter(|e| e.place() < entry.place());
        earlier.find(|e| matches!(&e.act, Act::Took { back, .. } if back == replace))
    }

    /// The acts that set a book aside, and count.
    fn replacings(&self) -> Vec<&Entry> {
        self.all().filter(|(e, counts)| *counts && matches!(e.act, Act::Replace(_))).map(|(e, _)| e).collect()
    }

    /// How many of these are set aside with a book that was replaced.
    pub(super) fn number_aside(&self, entries: &[&Entry]) -> usize {
        let replaced = self.replacings();
        let aside = |e: &&&Entry| replaced.iter().any(|r| e.place() < r.place() && r.act.sets_aside(e));
        entries.iter().filter(aside).count()
    }

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
                taken: self.took_before(entry).map(|e| e.at),
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
