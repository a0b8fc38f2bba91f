//! Tying up: a bundle is made of a book, a piece at a time.

use super::binding::Binding;
use super::pack::Pack;
use crate::book::{Act, Entry, Id, Journal, Subject};
use std::collections::{HashMap, HashSet};

/// A bundle in the making. What is done in the book meanwhile is not tied up.
pub struct Tying {
    about: About,
    /// The batches, and then the trials, that there were when it was begun, each in the order of their ids. What is begun
    /// meanwhile comes in between those of the book.
    things: Vec<Id>,
    batches: usize,
    next: usize,
    binding: Binding,
}

/// What the entries in memory are about.
pub(super) struct About {
    pub(super) things: HashMap<Id, Vec<Id>>,
    /// Entries that are not to be tied up: undone once, or without effect.
    pub(super) apart: HashSet<Id>,
    replaced: usize,
}

impl About {
    pub(super) fn of(journal: &Journal) -> Self {
        let mut things: HashMap<Id, Vec<Id>> = HashMap::new();
        let mut apart: HashSet<Id> = journal.state().ignored.iter().map(|(id, _)| id.clone()).collect();
        let mut replaced = 0;
        for entry in journal.entries() {
            match entry.act.subject() {
                Subject::Thing(id) => things.entry(id.clone()).or_default().push(entry.id.clone()),
                Subject::Entry(target) => {
                    apart.insert(target.clone());
                }
                Subject::Book => replaced += 1,
                Subject::Settings | Subject::Nothing => {}
            }
        }
        Self { things, apart, replaced }
    }
}

impl Tying {
    /// None where a book cannot be tied up: a part of it is damaged or of a newer format.
    pub fn begin(journal: &Journal) -> Option<Self> {
        let state = journal.state();
        let things = state.batches.iter().map(|(id, _)| id).chain(state.trials.iter().map(|(id, _)| id));
        journal.damaged().is_empty().then(|| Self {
            about: About::of(journal),
            things: things.cloned().collect(),
            batches: state.batches.len(),
            next: 0,
            binding: Binding::default(),
        })
    }

    /// Ties up the next batch that is ended, and then the next trial that is judged. False where there is none.
    pub fn go_on(&mut self, journal: &Journal) -> bool {
        let state = journal.state();
        let Some(thing) = self.things.get(self.next).cloned() else { return false };
        let is_batch = self.next < self.batches;
        self.next += 1;
        if is_batch {
            if let Some(batch) = state.batches.get(&thing).filter(|b| b.ended.is_some()) {
                self.thing(journal, &thing, of_batch, |pack, out| pack.batch(out, batch));
                self.binding.batches = self.binding.tied.len();
            }
        } else if let Some(burns) = state.burns.get(&thing)
            && burns.verdict().is_some()
            && !burns.burning()
        {
            self.thing(journal, &thing, of_trial, |pack, out| pack.trial(out, &thing, burns));
        }
        true
    }

    /// Ties a thing up where all its entries are of one kind, and all of them count.
    fn thing(
        &mut self,
        journal: &Journal,
        thing: &Id,
        kind: fn(&Act) -> bool,
        record: impl FnOnce(&mut Pack, &mut Vec<u8>),
    ) {
        if let Some(entries) = journal.tied_entries(thing) {
            return self.binding.record(thing, &entries.iter().collect::<Vec<_>>(), record);
        }
        let ids = self.about.things.get(thing).map(Vec::as_slice).unwrap_or_default();
        let entries: Vec<&Entry> = ids.iter().filter_map(|id| journal.find(id)).collect();
        let good = |e: &&Entry| kind(&e.act) && journal.counts(&e.id) && !self.about.apart.contains(&e.id);
        if !entries.is_empty()
            && entries.len() == ids.len()
            && entries.iter().all(good)
            && one_after_another(&entries)
        {
            self.binding.record(thing, &entries, record);
        }
    }

    /// True where what was tied up is still as it was: nothing was done to it, and nothing of it undone.
    fn still(&self, journal: &Journal) -> bool {
        let now = About::of(journal);
        let same =
            |(batch, entries): (&Id, &usize)| match (journal.tied_entries(batch), now.things.get(batch)) {
                (Some(tied), _) => tied.len() == *entries,
                (None, Some(ids)) => ids.len() == *entries && !ids.iter().any(|id| now.apart.contains(id)),
                (None, None) => false,
            };
        journal.damaged().is_empty()
            && now.replaced == self.about.replaced
            && self.binding.tied.iter().all(same)
    }

    /// The bundle, for this build of the app and a storage of so many lines. None where what is tied up has changed
    /// meanwhile, or would not come out as it was.
    pub fn finish(mut self, journal: &Journal, build: &str, lines: usize) -> Option<Vec<u8>> {
        while self.go_on(journal) {}
        if !self.still(journal) {
            return None;
        }
        let other =
            |e: &&Entry| !matches!(e.act.subject(), Subject::Thing(id) if self.binding.tied.contains_key(id));
        let rest: Vec<&Entry> = journal.entries().iter().filter(other).collect();
        self.binding.finish(&rest, build, lines)
    }
}

/// True for what is done to a batch and to nothing else.
pub(super) fn of_batch(act: &Act) -> bool {
    matches!(
        act,
        Act::Began { .. }
            | Act::At { .. }
            | Act::Ended { .. }
            | Act::TakenFrom { .. }
            | Act::Worked { .. }
            | Act::Ticked { .. }
    )
}

/// True for what is done to a trial and to nothing else.
pub(super) fn of_trial(act: &Act) -> bool {
    matches!(act, Act::Trial { .. } | Act::AtTrial { .. } | Act::Retire { .. })
}

/// True where each version was made over the one before it: none was made beside another.
pub(super) fn one_after_another(entries: &[&Entry]) -> bool {
    let mut last = None;
    entries.iter().filter(|e| e.act.made_over().is_some()).all(|entry| {
        let over = entry.act.made_over().unwrap_or_default();
        let good = over.iter().eq(last);
        last = Some(&entry.id);
        good
    })
}
