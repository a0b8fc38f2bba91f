//! A bundle that another build of the app has made is renewed: its entries are taken out, one batch or trial at a time, and
//! folded as this build folds them. What the other build found in them is not looked at, nor is any stored line.

use super::Tied;
use super::binding::Binding;
use super::tie::{About, of_batch, of_trial, one_after_another};
use crate::book::{Act, Bundle, Entry, Id, Journal, State, Subject};
use crate::sort;
use std::collections::HashSet;

/// A bundle on the way from one build to another.
pub struct Renewing {
    old: Tied,
    next: usize,
    /// The batch or trial before.
    last: Option<Id>,
    seen: HashSet<Id>,
    /// What was not tied up.
    rest: Journal,
    about: About,
    /// Where the book was replaced by a copy, which sets entries aside.
    replaced: Vec<Entry>,
    /// What was tied up and is not any more.
    loose: Vec<Entry>,
    lines: usize,
    binding: Binding,
}

impl Renewing {
    pub(super) fn begin(old: Tied, rest: Vec<Entry>, lines: usize) -> Self {
        let rest = Journal::unfolded(rest);
        let about = About::of(&rest);
        let counted = rest.all().filter(|(_, counts)| *counts).map(|(e, _)| e);
        let replaced = counted.filter(|e| matches!(e.act, Act::Replace(_))).cloned().collect();
        Self {
            old,
            next: 0,
            last: None,
            seen: HashSet::new(),
            rest,
            about,
            replaced,
            loose: Vec::new(),
            lines,
            binding: Binding::default(),
        }
    }

    /// Ties up anew the next batch, and then the next trial. False where there is none; none where something in it is not as
    /// a bundle has it.
    pub fn go_on(&mut self) -> Option<bool> {
        let place = self.next;
        self.next += 1;
        if place >= self.old.places() {
            return Some(false);
        }
        let entries = self.entries(place)?;
        let Subject::Thing(thing) = entries.first()?.act.subject() else { return None };
        // They are found by halving their lists, which are in the order of their ids.
        if place != self.old.batches && self.last.as_ref().is_some_and(|last| last >= thing) {
            return None;
        }
        // What is not tied up any more must not be about something that is.
        if entries.iter().any(|e| e.act.subject() != Subject::Thing(thing)) || self.seen.contains(thing) {
            return None;
        }
        self.last = Some(thing.clone());
        self.seen.insert(thing.clone());
        if !self.tie(place, thing, &entries) {
            self.loose.extend(entries);
        }
        Some(true)
    }

    /// All entries of a batch or trial, in order.
    fn entries(&self, place: usize) -> Option<Vec<Entry>> {
        let mut reader = self.old.at_entries(place);
        let mut entries = self.old.all_of(&mut reader)?;
        entries.extend(self.old.all_of(&mut reader)?);
        sort::by(&mut entries, |a, b| a.place().cmp(&b.place()));
        (entries.len() == self.old.last(place).1).then_some(entries)
    }

    /// False where it is not to be tied up any more.
    fn tie(&mut self, place: usize, thing: &Id, entries: &[Entry]) -> bool {
        let is_batch = place < self.old.batches;
        let kind: fn(&Act) -> bool = if is_batch { of_batch } else { of_trial };
        let good = |e: &Entry| {
            kind(&e.act)
                && !self.about.apart.contains(&e.id)
                && !self.replaced.iter().any(|r| r.act.sets_aside(e) && e.place() < r.place())
        };
        let all: Vec<&Entry> = entries.iter().collect();
        let mut state = State::default();
        entries.iter().for_each(|entry| state.take(entry));
        if self.about.things.contains_key(thing)
            || !entries.iter().all(good)
            || !one_after_another(&all)
            || !state.ignored.is_empty()
        {
            return false;
        }
        if is_batch {
            let Some(batch) = state.batches.get(thing).filter(|b| b.ended.is_some()) else { return false };
            self.binding.record(thing, &all, |pack, out| pack.batch(out, batch));
            self.binding.batches = self.binding.tied.len();
            return true;
        }
        let judged = state.burns.get(thing).filter(|b| b.verdict().is_some() && !b.burning());
        let Some(burns) = judged else { return false };
        self.binding.record(thing, &all, |pack, out| pack.trial(out, thing, burns));
        true
    }

    /// The bundle for this build of the app. None as in [`Renewing::go_on`].
    pub fn finish(mut self, build: &str) -> Option<Vec<u8>> {
        while self.go_on()? {}
        let Self { old, rest, loose, lines, binding, .. } = self;
        drop(old);
        let mut all: Vec<&Entry> = rest.entries().iter().chain(&loose).collect();
        sort::by(&mut all, |a, b| a.place().cmp(&b.place()));
        binding.finish(&all, build, lines)
    }
}
