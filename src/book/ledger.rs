//! A book open in a tab: the journal, and what of it is not stored yet.

use super::bundle::Read;
use super::{Act, Damage, Entry, Id, Journal, Saving, State, StoreError, Writer};
use crate::sort;
use std::fmt;

/// The journal with its writer. What is done counts at once and waits to be stored.
#[derive(Clone, Debug, Default)]
pub struct Book {
    journal: Journal,
    writer: Writer,
    /// True where something was taken out of entries, and other copies of them are not asked for yet.
    taken_out: bool,
}

/// Why something cannot be done in this book. `Display` is the sentence.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum ActError {
    /// A newer version of the app has written in this book.
    ReadOnly,
    /// Its line would not be read back as it is.
    Unwritable(Damage),
}

impl fmt::Display for ActError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::ReadOnly => f.write_str(
                "A newer Potside has written in this book. It can be read here; update the app to write in it.",
            ),
            Self::Unwritable(Damage::TooLong { .. }) => {
                f.write_str("That is too long to be kept. Make it shorter, then save again.")
            }
            Self::Unwritable(_) => f.write_str(
                "That cannot be written down without loss, so it was not done. Check for numbers with very many \
                 digits, then save again.",
            ),
        }
    }
}

impl std::error::Error for ActError {}

/// A book whose stored lines are being read: each piece of them becomes entries before the next one comes.
#[derive(Debug)]
pub struct Reading(Journal);

impl Reading {
    pub fn of(device: &str) -> Self {
        Self(Journal::of(device))
    }

    pub fn add(&mut self, lines: Vec<String>) {
        self.0.read(lines);
    }

    /// How many lines there were.
    pub fn lines(&self) -> usize {
        self.0.len() + self.0.damaged().len()
    }

    /// The book of them.
    pub fn book(self) -> Book {
        let mut book = Book { journal: self.0, ..Book::default() };
        book.journal.fold();
        book.rewrite();
        book
    }
}

impl Book {
    /// Opens stored lines.
    pub fn open(lines: Vec<String>, device: &str) -> Self {
        let mut reading = Reading::of(device);
        reading.add(lines);
        reading.book()
    }

    /// Takes in what was read of the storage, beside what was done here meanwhile.
    pub fn join(&mut self, read: Reading) {
        let Reading(journal) = read;
        journal.entries.into_iter().for_each(|entry| self.journal.take(entry));
        for (line, damage) in journal.damaged {
            self.journal.set_aside(line, damage);
        }
        self.rewrite();
    }

    /// Opens what was read of a bundle; the lines that were stored since are to be heard.
    pub fn open_tied(read: Read, device: &str) -> Self {
        let journal = Journal::open_tied(read.bundle, read.entries, device);
        Self { journal, ..Self::default() }
    }

    /// See [`Journal::untie`].
    pub fn untie(&mut self, batch: &Id) {
        self.journal.untie(batch);
    }

    /// See [`Journal::untie_latest`].
    pub fn untie_latest(&mut self, most: usize) {
        self.journal.untie_latest(most);
    }

    /// Lines that still tell what was taken out of their entries are stored anew without it.
    fn rewrite(&mut self) {
        let entries = self.journal.rewritten();
        if self.journal.read_only() {
            return;
        }
        for entry in entries {
            self.taken_out = true;
            self.writer.add(entry.id.0.clone(), entry.to_line());
        }
    }

    /// True once after something was taken out of entries: then whatever else was made of them is to go.
    pub fn has_taken_out(&mut self) -> bool {
        std::mem::take(&mut self.taken_out)
    }

    pub fn state(&self) -> &State {
        self.journal.state()
    }

    pub fn journal(&self) -> &Journal {
        &self.journal
    }

    /// Does something: the state has it at once, and it waits to be stored. The id is that of its entry. `at` is in
    /// milliseconds since 1970.
    ///
    /// # Errors
    /// Where the book is read-only, or the line would not be read back as it is; then nothing is done.
    pub fn act(&mut self, act: Act, at: u64, random: u32) -> Result<Id, ActError> {
        if self.journal.read_only() {
            return Err(ActError::ReadOnly);
        }
        let mut entry = self.journal.entry(act, at, random);
        entry.take_out(self.journal.removed());
        let line = entry.to_line();
        // What is acknowledged must be readable for ever: read it back before it is.
        match Entry::from_line(&line) {
            Ok(read) if read.to_line() == line => {}
            Ok(_) => return Err(ActError::Unwritable(Damage::NotAnEntry)),
            Err(damage) => return Err(ActError::Unwritable(damage)),
        }
        let id = entry.id.clone();
        self.writer.add(id.0.clone(), line);
        self.journal.take(entry);
        self.rewrite();
        Ok(id)
    }

    /// Takes in entries that were made elsewhere, as from a copy; their lines wait to be stored all together, as they are.
    ///
    /// # Errors
    /// Where the book is read-only; then nothing is taken in.
    pub fn take_in(&mut self, entries: Vec<(Entry, String)>) -> Result<(), ActError> {
        if self.journal.read_only() {
            return Err(ActError::ReadOnly);
        }
        let (mut all, mut lines) = (Vec::new(), Vec::new());
        for (entry, line) in entries {
            lines.push((entry.id.clone(), line));
            all.push(entry);
        }
        self.journal.take_all(all);
        let mut rewritten = self.journal.rewritten();
        sort::by(&mut rewritten, |a, b| a.id.cmp(&b.id));
        for (id, line) in lines {
            if rewritten.binary_search_by(|e| e.id.cmp(&id)).is_err() {
                self.writer.add(id.0, line);
            }
        }
        for entry in rewritten {
            self.taken_out = true;
            self.writer.add(entry.id.0.clone(), entry.to_line());
        }
        Ok(())
    }

    /// Takes in what a copy brings, writes down how to take it back, and may replace the book by it: all in one go, so
    /// that it is stored together. `made` is when the copy was made.
    ///
    /// # Errors
    /// As in [`Book::act`].
    pub fn take_copy(
        &mut self,
        fresh: Vec<(Entry, String)>,
        made: Option<u64>,
        replace: Option<Act>,
        at: u64,
        random: u32,
    ) -> Result<(), ActError> {
        let took = if fresh.is_empty() {
            None
        } else {
            self.journal.untie_all();
            self.journal.took(fresh.iter().map(|(entry, _)| entry), made)
        };
        self.take_in(fresh)?;
        for act in [took, replace].into_iter().flatten() {
            self.act(act, at, random)?;
        }
        Ok(())
    }

    /// Takes a line in that another tab has stored.
    pub fn hear(&mut self, line: String) {
        self.journal.hear(line);
        self.rewrite();
    }

    /// What to store now, in one piece; see [`Writer::to_store`].
    pub fn to_store(&mut self) -> Option<Vec<(String, String)>> {
        self.writer.to_store()
    }

    /// How storing it went; see [`Writer::stored`].
    pub fn stored(&mut self, outcome: Result<(), StoreError>) {
        self.writer.stored(outcome);
    }

    /// The append on its way; see [`Writer::flight`].
    pub const fn flight(&self) -> u64 {
        self.writer.flight()
    }

    /// See [`Writer::late`].
    pub fn late(&mut self, flight: u64) -> bool {
        self.writer.late(flight)
    }

    /// See [`Writer::answered`].
    pub fn answered(&mut self, flight: u64, outcome: Result<(), StoreError>) {
        self.writer.answered(flight, outcome);
    }

    pub fn saving(&self) -> Saving {
        self.writer.saving()
    }

    /// See [`Writer::waits`].
    pub fn waits(&self, id: &str) -> bool {
        self.writer.waits(id)
    }

    /// See [`Writer::waiting`].
    pub(super) fn waiting(&self) -> &[(String, String)] {
        self.writer.waiting()
    }

    /// How many entries are not stored yet.
    pub fn unsaved(&self) -> usize {
        self.writer.unsaved()
    }

    /// Milliseconds to wait before trying again.
    pub fn pause(&self) -> u32 {
        self.writer.pause()
    }
}
