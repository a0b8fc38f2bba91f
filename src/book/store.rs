//! Where the journal's lines are kept: the trait, one in memory, one that fails on demand.

use std::fmt;
use std::future::Future;

/// Append-only lines, keyed by entry id.
pub trait Store {
    /// Every stored line.
    fn load(&self) -> impl Future<Output = Result<Vec<String>, StoreError>>;
    /// Durable once it resolves: all of the lines or none. Pairs of entry id and line.
    fn append(&self, lines: &[(String, String)]) -> impl Future<Output = Result<(), StoreError>>;
}

/// Why storing failed. `Display` is the sentence.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum StoreError {
    /// Storage is switched off or not given to this page.
    Denied,
    Full,
    /// Any other failure, with what the browser said.
    Failed(String),
}

impl fmt::Display for StoreError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Denied => f.write_str(
                "This browser gives Potside no storage (a private window, or it is switched off). Nothing can be kept: \
                 open it in an ordinary window.",
            ),
            Self::Full => f.write_str(
                "The storage of this device is full. Free some space, then save again: what you typed is still here.",
            ),
            Self::Failed(said) => write!(f, "Not saved ({said}). It will be tried again; what you typed is still here."),
        }
    }
}

impl std::error::Error for StoreError {}

/// Keeps lines in memory: for tests and for a window without storage.
#[derive(Default)]
pub struct MemoryStore {}

/// Fails on demand: for tests.
#[derive(Default)]
pub struct FailingStore {}
