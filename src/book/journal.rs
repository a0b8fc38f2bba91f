//! The journal in memory: entries in order, what was set aside, and the state they fold to.

use super::entry::LATEST;
use super::id::is_name;
use super::{Act, Damage, Entry, Id, State, Subject};
use std::collections::{BTreeMap, BTreeSet};

/// A book's entries and what they come to. The state is a function of the set of entries alone: neither the order nor
/// the number of times they arrive changes it.
#[derive(Clone, Debug, Default)]
pub struct Journal {
    /// In the order of [`Entry::place`].
    entries: Vec<Entry>,
    /// The clock of every entry, to find it by its id.
    clocks: BTreeMap<Id, u64>,
    /// Entries that count as not done.
    undone: BTreeSet<Id>,
    state: State,
    damaged: Vec<(String, Damage)>,
    device: String,
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
        self.entries.extend(entries);
        self.fold();
    }

    fn fold(&mut self) {
        self.sort();
        self.clocks = self.entries.iter().map(|e| (e.id.clone(), e.clock)).collect();
        self.mark_undone();
        self.state = State::default();
        for entry in self.entries.iter().filter(|e| !self.undone.contains(&e.id)) {
            self.state.take(entry);
        }
    }

    /// Brings the entries into order, one of each id.
    fn sort(&mut self) {
        self.entries.sort_by(|a, b| a.id.cmp(&b.id).then_with(|| first(a, b)));
        let mut aside = Vec::new();
        self.entries.dedup_by(|later, kept| {
            let same = later.id == kept.id;
            if same && later != kept {
                aside.push(later.to_line());
            }
            same
        });
        for line in aside {
            self.set_aside(line, Damage::SameId);
        }
        self.entries.sort_by(|a, b| a.place().cmp(&b.place()));
    }

    pub fn state(&self) -> &State {
        &self.state
    }

    /// Every entry in order, also those undone.
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
        self.entries.last().map_or(1, |e| (e.clock + 1).min(LATEST))
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
        let clock = *self.clocks.get(id)?;
        let at = self.entries.binary_search_by(|e| e.place().cmp(&(clock, id))).ok()?;
        self.entries.get(at)
    }

    /// Takes a line in that another tab stored. What cannot be read is set aside.
    pub fn hear(&mut self, line: String) {
        match Entry::from_line(&line) {
            Ok(entry) => self.take(entry),
            Err(damage) => self.set_aside(line, damage),
        }
    }

    /// Takes an entry in: from this tab, another tab, or another device. Taking one twice changes nothing.
    pub fn take(&mut self, entry: Entry) {
        if let Some(mine) = self.find(&entry.id) {
            if *mine != entry {
                self.settle(entry);
            }
            return;
        }
        self.clocks.insert(entry.id.clone(), entry.clock);
        let at = self.entries.partition_point(|e| e.place() < entry.place());
        let last = at == self.entries.len();
        let undo = matches!(entry.act, Act::Undo { .. });
        if last && !undo {
            self.state.take(&entry);
            self.entries.push(entry);
            return;
        }
        self.entries.insert(at, entry.clone());
        self.mark_undone();
        self.refold(&entry);
    }

    /// Two entries of one id: the first by [`first`] stays, the other is set aside.
    fn settle(&mut self, entry: Entry) {
        let Some(mine) = self.find(&entry.id).cloned() else { return };
        if first(&mine, &entry).is_le() {
            return self.set_aside(entry.to_line(), Damage::SameId);
        }
        self.set_aside(mine.to_line(), Damage::SameId);
        self.clocks.remove(&mine.id);
        self.entries.retain(|e| e.id != mine.id);
        self.mark_undone();
        self.refold(&mine);
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
        self.undone.clear();
        for entry in self.entries.iter().rev() {
            if let Act::Undo { entry: target } = &entry.act
                && !self.undone.contains(&entry.id)
                && self.clocks.get(target).is_some_and(|clock| (*clock, target) < entry.place())
            {
                self.undone.insert(target.clone());
            }
        }
    }

    /// What an entry is about in the end: an undo is about what the entry it undoes is about.
    fn about<'a>(&'a self, mut entry: &'a Entry) -> Option<Subject<'a>> {
        loop {
            match entry.act.subject() {
                Subject::Entry(target) => entry = self.find(target).filter(|t| t.place() < entry.place())?,
                subject => return Some(subject),
            }
        }
    }

    /// Folds anew what `entry` is about, and only that: no act changes anything else.
    fn refold(&mut self, entry: &Entry) {
        let mut state = std::mem::take(&mut self.state);
        if let Some(subject) = self.about(entry) {
            state.forget(subject);
            for e in
                self.entries.iter().filter(|e| e.act.subject() == subject && !self.undone.contains(&e.id))
            {
                state.take(e);
            }
        }
        self.state = state;
    }

    /// True where the entry counts: it is here and not undone.
    pub fn counts(&self, id: &Id) -> bool {
        self.clocks.contains_key(id) && !self.undone.contains(id)
    }

    /// The last thing done on this device that still counts: what "undo" takes back.
    pub fn last_undoable(&self) -> Option<&Entry> {
        self.own().find(|e| !matches!(e.act, Act::Undo { .. }))
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
        self.entries.iter().rev().filter(|e| e.device == self.device && !self.undone.contains(&e.id))
    }

    /// Everything ever done to a thing, oldest first; false where it was undone.
    pub fn history(&self, thing: &Id) -> Vec<(&Entry, bool)> {
        let about = |e: &&Entry| e.act.subject() == Subject::Thing(thing);
        self.entries.iter().filter(about).map(|e| (e, !self.undone.contains(&e.id))).collect()
    }
}

/// Which of two entries of one id stays: the same one on every device.
fn first(a: &Entry, b: &Entry) -> std::cmp::Ordering {
    if a == b {
        return std::cmp::Ordering::Equal;
    }
    a.clock.cmp(&b.clock).then_with(|| a.to_line().cmp(&b.to_line()))
}
