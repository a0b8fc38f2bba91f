//! The journal in memory: entries in order, what was set aside, and the state they fold to.

use super::entry::LATEST;
use super::id::is_name;
use super::ties::Ties;
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
    undone: Vec<bool>,
    /// Places among the entries, in the order of their ids.
    by_id: Vec<usize>,
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
        let device = if is_name(device) { device.to_owned() } else { "device".to_owned() };
        let mut journal = Self { device, ..Self::default() };
        for line in lines {
            match Entry::from_line(&line) {
                Ok(entry) => journal.entries.push(entry),
                Err(damage) => journal.set_aside(line, damage),
            }
        }
        journal.fold();
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

    pub(super) fn fold(&mut self) {
        let people = self.newly_removed(self.entries.iter());
        self.remove_people(people);
        self.arrange();
        let mut state = State::default();
        for (entry, counts) in self.all() {
            if counts {
                self.apply(&mut state, entry);
            }
        }
        self.state = state;
    }

    /// Puts the entries in their order, one of each id, and marks what does not count.
    pub(super) fn arrange(&mut self) {
        sort::by(&mut self.entries, |a, b| a.place().cmp(&b.place()));
        self.index();
        self.leave_one_of_each();
        self.mark_undone();
    }

    fn index(&mut self) {
        let entries = &self.entries;
        self.by_id = sort::order(entries.len(), &|a, b| match (entries.get(a), entries.get(b)) {
            (Some(a), Some(b)) => a.id.cmp(&b.id).then_with(|| first(a, b)),
            _ => Ordering::Equal,
        });
    }

    /// Of several entries of one id the first by [`first`] stays; the others are set aside.
    fn leave_one_of_each(&mut self) {
        let mut kept: Option<&Entry> = None;
        let mut more = vec![false; self.entries.len()];
        let mut aside = Vec::new();
        for at in &self.by_id {
            let (Some(entry), Some(more)) = (self.entries.get(*at), more.get_mut(*at)) else { continue };
            match kept.filter(|k| k.id == entry.id) {
                Some(kept) => {
                    *more = true;
                    if !entry.is_same(kept) {
                        aside.push(entry.to_line());
                    }
                }
                None => kept = Some(entry),
            }
        }
        if more.contains(&true) {
            let mut more = more.into_iter();
            self.entries.retain(|_| more.next() != Some(true));
            self.index();
        }
        for line in aside {
            self.set_aside(line, Damage::SameId);
        }
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

    fn place(&self, id: &Id) -> Option<usize> {
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
        let people = self.newly_removed(std::iter::once(&entry));
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

    /// Two entries of one id: the first by [`first`] stays, the other is set aside.
    fn settle(&mut self, entry: Entry) {
        let Some(at) = self.place(&entry.id) else { return };
        if self.entries.get(at).is_some_and(|mine| first(mine, &entry).is_le()) {
            return self.set_aside(entry.to_line(), Damage::SameId);
        }
        let mine = self.entries.remove(at);
        self.set_aside(mine.to_line(), Damage::SameId);
        self.index();
        self.mark_undone();
        let state = std::mem::take(&mut self.state);
        self.state = self.refold(state, &mine);
        self.take(entry);
    }

    fn set_aside(&mut self, line: String, damage: Damage) {
        if !self.damaged.iter().any(|(known, _)| *known == line) {
            self.damaged.push((line, damage));
        }
    }

    /// An undo has an effect on an entry that stands before it, unless a later undo took it back; so one pass from the
    /// last entry to the first settles all of them, and no ring of undos can form.
    fn mark_undone(&mut self) {
        let mut undone = vec![false; self.entries.len()];
        for (at, entry) in self.entries.iter().enumerate().rev() {
            if undone.get(at) != Some(&false) {
                continue;
            }
            match &entry.act {
                Act::Undo { entry: target } => {
                    if let Some(place) =
                        self.place(target).filter(|place| *place < at && !self.is_final(*place))
                        && let Some(mark) = undone.get_mut(place)
                    {
                        *mark = true;
                    }
                }
                Act::Replace(replace) if replace.can_be() => {
                    for (mark, earlier) in undone.iter_mut().zip(self.entries.iter().take(at)) {
                        *mark |= replace.sets_aside(earlier);
                    }
                }
                _ => {}
            }
        }
        self.undone = undone;
    }

    /// True for a person's removal, which nothing takes back.
    fn is_final(&self, place: usize) -> bool {
        self.entries.get(place).is_some_and(|e| e.act.is_final())
    }

    /// Every entry in order; false where it counts as not done.
    pub(super) fn all(&self) -> impl DoubleEndedIterator<Item = (&Entry, bool)> + ExactSizeIterator {
        self.entries.iter().zip(self.undone.iter().map(|undone| !undone))
    }

    /// What an entry is about in the end: an undo is about what the entry it undoes is about.
    pub(super) fn about<'a>(&'a self, mut entry: &'a Entry) -> Option<Subject<'a>> {
        loop {
            match entry.act.subject() {
                Subject::Entry(target) => entry = self.find(target).filter(|t| t.place() < entry.place())?,
                subject => return Some(subject),
            }
        }
    }

    /// Folds anew what `entry` is about, and only that: no act changes anything else.
    fn refold(&self, state: State, entry: &Entry) -> State {
        match self.about(entry) {
            Some(subject) => self.refold_of(state, subject),
            None => state,
        }
    }

    fn refold_of(&self, mut state: State, subject: Subject) -> State {
        state.forget(subject);
        for (e, counts) in self.all() {
            if counts && (subject == Subject::Book || e.act.subject() == subject) {
                self.apply(&mut state, e);
            }
        }
        state
    }

    /// Takes an entry into the state. A choice is a version that says again what the chosen one says.
    fn apply(&self, state: &mut State, entry: &Entry) {
        match self.counted(entry) {
            Some(act) if matches!(entry.act, Act::Choose { .. }) => state.take(&Entry {
                id: entry.id.clone(),
                clock: entry.clock,
                at: entry.at,
                device: entry.device.clone(),
                act: act.clone(),
            }),
            _ => state.take(entry),
        }
    }

    /// The act that an entry counts as: its own, or of a choice that of the version chosen. None for a choice of what
    /// is not here before it, or does not count.
    pub(super) fn counted<'a>(&'a self, entry: &'a Entry) -> Option<&'a Act> {
        let mut last = entry;
        while let Act::Choose { chosen, .. } = &last.act {
            last = self.find(chosen).filter(|e| {
                e.place() < last.place()
                    && self.counts(chosen)
                    && e.act.made_over().is_some()
                    && e.act.subject() == last.act.subject()
            })?;
        }
        Some(&last.act)
    }

    /// True where the entry counts: it is here and not undone.
    pub fn counts(&self, id: &Id) -> bool {
        self.place(id).is_some_and(|place| self.undone.get(place) == Some(&false))
    }

    /// The last thing done on this device that still counts: what "undo" takes back.
    pub fn last_undoable(&self) -> Option<&Entry> {
        self.own().find(|e| !matches!(e.act, Act::Undo { .. }) && !e.act.is_final())
    }

    /// The undo that "redo" takes back: the last one on this device, if nothing else was done since.
    pub fn last_redoable(&self) -> Option<&Entry> {
        self.own()
            .map_while(|e| match &e.act {
                Act::Undo { entry } => Some((e, self.find(entry))),
                _ => None,
            })
            .find(|(_, target)| target.is_some_and(|t| !matches!(t.act, Act::Undo { .. })))
            .map(|(e, _)| e)
    }

    /// This device's entries that count, the last first.
    fn own(&self) -> impl Iterator<Item = &Entry> {
        let own = |(e, counts): (_, bool)| Some(e).filter(|e: &&Entry| counts && e.device == self.device);
        self.all().rev().filter_map(own)
    }

    /// Everything ever done to a thing, oldest first; false where it was undone.
    pub fn history(&self, thing: &Id) -> Vec<(&Entry, bool)> {
        self.all().filter(|(e, _)| e.act.subject() == Subject::Thing(thing)).collect()
    }
}

/// Which of two entries of one id stays: the same one on every device.
fn first(a: &Entry, b: &Entry) -> Ordering {
    a.clock.cmp(&b.clock).then_with(|| a.to_line().cmp(&b.to_line()))
}
