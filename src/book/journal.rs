//! The journal in memory: entries in order, what was set aside, and the state they fold to.

use super::entry::LATEST;
use super::id::is_name;
use super::ties::Ties;
use super::twins::first;
use super::{Act, Damage, Entry, Id, State, Subject};
use crate::sort;
use std::cmp::Ordering;

/// A book's entries and what they come to. The state is a function of the set of entries alone: neither the order nor
/// the number of times they arrive changes it.
#[derive(Clone, Debug, Default)]
pub struct Journal {
    /// In the order of [`Entry::place`].
    pub(super) entries: Vec<Entry>,
    /// True for each entry that counts as not done.
    pub(super) undone: Vec<bool>,
    /// Places among the entries, in the order of their ids.
    pub(super) by_id: Vec<usize>,
    pub(super) state: State,
    pub(super) damaged: Vec<(String, Damage)>,
    device: String,
    /// Batches whose entries are not among the others.
    pub(super) ties: Ties,
    /// Customers of whom nothing is told any more; see [`super::removed`].
    pub(super) removed: Vec<Id>,
    /// Entries that something was taken out of and whose stored lines may still tell it.
    pub(super) rewritten: Vec<Id>,
}

impl Journal {
    /// Opens stored lines. What cannot be read is set aside, never dropped.
    pub fn open(lines: Vec<String>, device: &str) -> Self {
        let mut journal = Self::of(device);
        journal.read(lines);
        journal.fold();
        journal
    }

    /// An empty one.
    pub(super) fn of(device: &str) -> Self {
        let device = if is_name(device) { device.to_owned() } else { "device".to_owned() };
        Self { device, ..Self::default() }
    }

    /// Makes entries of lines; they are folded later, and then each line set aside is there once.
    pub(super) fn read(&mut self, lines: Vec<String>) {
        for line in lines {
            match Entry::from_line(&line) {
                Ok(entry) => self.entries.push(entry),
                // A whole book may be of a newer format: looking for each line among the others would take too long.
                Err(damage) => self.damaged.push((line, damage)),
            }
        }
    }

    /// Entries in their order, with what does not count; nothing is folded.
    pub(super) fn unfolded(entries: Vec<Entry>) -> Self {
        let mut journal = Self { entries, ..Self::default() };
        journal.arrange();
        journal
    }

    /// Takes many entries in at once, as from a copy: the whole is folded once, not once for each.
    pub fn take_all(&mut self, entries: Vec<Entry>) {
        self.untie_all();
        let removed = self.removed.clone();
        for mut entry in entries {
            if entry.take_out(&removed) {
                self.rewritten.push(entry.id.clone());
            }
            self.entries.push(entry);
        }
        self.fold();
    }

    /// Puts the entries in their order, one of each id, and marks what does not count.
    pub(super) fn arrange(&mut self) {
        sort::by(&mut self.entries, |a, b| a.place().cmp(&b.place()));
        self.index();
        self.leave_one_of_each();
        self.mark_undone();
    }

    pub(super) fn index(&mut self) {
        let entries = &self.entries;
        self.by_id = sort::order(entries.len(), &|a, b| match (entries.get(a), entries.get(b)) {
            (Some(a), Some(b)) => a.id.cmp(&b.id).then_with(|| first(a, b)),
            _ => Ordering::Equal,
        });
    }

    pub fn state(&self) -> &State {
        &self.state
    }

    /// Every entry in order, also those undone; without those that are tied up.
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// Lines that could not be read, each with the reason.
    pub fn damaged(&self) -> &[(String, Damage)] {
        &self.damaged
    }

    /// This device's name.
    pub fn device(&self) -> &str {
        &self.device
    }

    /// True where the book holds entries of a newer format: nothing may be written.
    pub fn read_only(&self) -> bool {
        self.damaged.iter().any(|(_, d)| matches!(d, Damage::Newer { .. }))
    }

    fn next_clock(&self) -> u64 {
        (self.last_clock() + 1).min(LATEST)
    }

    /// The entry that would record `act`; it counts once [`Journal::take`] has it. `at` is in milliseconds since 1970;
    /// `random` keeps ids apart between two tabs of one device.
    pub fn entry(&self, act: Act, at: u64, random: u32) -> Entry {
        Entry { id: self.new_id(random), clock: self.next_clock(), at, device: self.device.clone(), act }
    }

    /// A fresh id for a thing or an entry.
    pub fn new_id(&self, random: u32) -> Id {
        Id(format!("{}-{:x}-{random:x}", self.device, self.next_clock()))
    }

    /// The entry of this id.
    pub fn find(&self, id: &Id) -> Option<&Entry> {
        self.entries.get(self.place(id)?)
    }

    pub(super) fn place(&self, id: &Id) -> Option<usize> {
        let at = self.rank(id);
        self.by_id.get(at).copied().filter(|place| self.entries.get(*place).is_some_and(|e| e.id == *id))
    }

    /// How many entries have ids before this one.
    fn rank(&self, id: &Id) -> usize {
        self.by_id.partition_point(|place| self.entries.get(*place).is_some_and(|e| e.id < *id))
    }

    /// Takes a line in that another tab stored. What cannot be read is set aside.
    pub fn hear(&mut self, line: String) {
        match Entry::from_line(&line) {
            Ok(entry) => self.take(entry),
            Err(damage) => self.set_aside(line, damage),
        }
    }

    /// Takes an entry in: from this tab, another tab, or another device. Taking one twice changes nothing.
    pub fn take(&mut self, mut entry: Entry) {
        let people = self.newly_removed(std::slice::from_ref(&entry));
        self.remove_people(people.clone());
        for customer in &people {
            let state = std::mem::take(&mut self.state);
            self.state = self.refold_of(state, Subject::Thing(customer));
        }
        if entry.take_out(&self.removed) {
            self.rewritten.push(entry.id.clone());
        }
        self.untie_for(&entry);
        if let Some(mine) = self.find(&entry.id) {
            if !mine.is_same(&entry) {
                self.settle(entry);
            }
            return;
        }
        let at = self.insert(entry);
        let Some(entry) = self.entries.get(at) else { return };
        if at + 1 == self.entries.len()
            && !matches!(entry.act, Act::Undo { .. } | Act::Choose { .. } | Act::Replace(_))
        {
            return self.state.take(entry);
        }
        self.mark_undone();
        let state = std::mem::take(&mut self.state);
        self.state = self.entries.get(at).map(|entry| self.refold(state, entry)).unwrap_or_default();
    }

    /// Puts an entry in its place, which counts as done so far.
    pub(super) fn insert(&mut self, entry: Entry) -> usize {
        let at = self.entries.partition_point(|e| e.place() < entry.place());
        let rank = self.rank(&entry.id);
        if at < self.entries.len() {
            for place in self.by_id.iter_mut().filter(|place| **place >= at) {
                *place += 1;
            }
        }
        self.by_id.insert(rank, at);
        self.undone.insert(at, false);
        self.entries.insert(at, entry);
        at
    }

    pub(super) fn set_aside(&mut self, line: String, damage: Damage) {
        if !self.damaged.iter().any(|(known, _)| *known == line) {
            self.damaged.push((line, damage));
        }
    }

    /// Every entry in order; false where it counts as not done.
    pub(super) fn all(&self) -> impl DoubleEndedIterator<Item = (&Entry, bool)> + ExactSizeIterator {
        self.entries.iter().zip(self.undone.iter().map(|undone| !undone))
    }

    /// Everything ever done to a thing, oldest first; false where it was undone.
    pub fn history(&self, thing: &Id) -> Vec<(&Entry, bool)> {
        self.all().filter(|(e, _)| e.act.subject() == Subject::Thing(thing)).collect()
    }
}
