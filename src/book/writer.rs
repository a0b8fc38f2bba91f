//! What is on its way to the storage: nothing counts as saved before the storage has said so.

use super::StoreError;

/// How the last things done stand with the storage.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Saving {
    /// Everything is stored.
    Saved,
    Saving,
    /// Not stored; it is tried again.
    NotSaved(StoreError),
}

/// Lines waiting to be stored, in order. A view asks [`Writer::to_store`], appends what it gets, and tells
/// [`Writer::stored`] how it went.
#[derive(Clone, Debug, Default)]
pub struct Writer {
    /// Pairs of entry id and line, oldest first.
    waiting: Vec<(String, String)>,
    /// How many were stored before them.
    before: u64,
    /// How many of them are being stored now.
    flying: usize,
    failed: Option<StoreError>,
    failures: u32,
}

/// The longest pause before trying again, in milliseconds.
const LONGEST_PAUSE: u32 = 30_000;

impl Writer {
    pub fn add(&mut self, id: String, line: String) {
        self.waiting.push((id, line));
    }

    /// What to store now, in one piece; none where nothing waits or an append is on its way.
    pub fn to_store(&mut self) -> Option<Vec<(String, String)>> {
        if self.flying > 0 || self.waiting.is_empty() {
            return None;
        }
        self.flying = self.waiting.len();
        Some(self.waiting.clone())
    }

    /// The append on its way, for [`Writer::late`] and [`Writer::answered`].
    pub const fn flight(&self) -> u64 {
        self.before + self.flying as u64
    }

    /// How the append on its way went. What failed waits on, ahead of what came since.
    pub fn stored(&mut self, outcome: Result<(), StoreError>) {
        match outcome {
            Ok(()) => self.answered(self.flight(), Ok(())),
            Err(e) => self.fail(e),
        }
    }

    /// The append of this flight has not answered for long: it is given up, and what it carries is to be stored again,
    /// which does no harm where it was stored. True where it was still on its way.
    pub fn late(&mut self, flight: u64) -> bool {
        let late = self.flying > 0 && self.flight() == flight;
        if late {
            self.fail(StoreError::Silent);
        }
        late
    }

    /// How the append of this flight went, also of one that was given up: stored late is stored.
    pub fn answered(&mut self, flight: u64, outcome: Result<(), StoreError>) {
        let current = self.flying > 0 && self.flight() == flight;
        match outcome {
            Ok(()) => {
                let done = (flight.saturating_sub(self.before) as usize).min(self.waiting.len());
                self.waiting.drain(..done);
                self.before += done as u64;
                self.flying = if current { 0 } else { self.flying.saturating_sub(done) };
                if current || self.waiting.is_empty() {
                    self.failed = None;
                    self.failures = 0;
                }
            }
            Err(e) if current => self.fail(e),
            Err(_) => {}
        }
    }

    fn fail(&mut self, e: StoreError) {
        self.flying = 0;
        self.failed = Some(e);
        self.failures = self.failures.saturating_add(1);
    }

    pub fn saving(&self) -> Saving {
        match &self.failed {
            _ if self.waiting.is_empty() => Saving::Saved,
            Some(e) => Saving::NotSaved(e.clone()),
            None => Saving::Saving,
        }
    }

    /// True where the line of this entry waits.
    pub fn waits(&self, id: &str) -> bool {
        self.waiting.iter().any(|(waiting, _)| waiting == id)
    }

    /// What is not stored yet, pairs of entry id and line, oldest first.
    pub(super) fn waiting(&self) -> &[(String, String)] {
        &self.waiting
    }

    /// How many entries are not stored yet: leaving the page would lose them.
    pub fn unsaved(&self) -> usize {
        self.waiting.len()
    }

    /// How long to wait before asking [`Writer::to_store`] again, in milliseconds: nothing, or after failures one second,
    /// two, four, up to half a minute.
    pub fn pause(&self) -> u32 {
        match self.failures {
            0 => 0,
            n => 1000_u32.saturating_mul(1 << (n - 1).min(5)).min(LONGEST_PAUSE),
        }
    }
}
