//! Where the journal's lines are kept: the trait, one in memory, one that fails on demand.

use super::{Id, Map};
use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;
use std::fmt;
use std::future::Future;
use std::task::Poll;

/// Lines, keyed by entry id. Nothing is deleted; a line of an id that is stored takes the place of the earlier one, which
/// is done only to take out what was said of a person who asked to be removed.
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
    /// Another tab holds the storage and does not let go.
    Blocked,
    /// A newer version of the app has changed the storage.
    Newer,
    /// It has not answered for long.
    Silent,
    /// What was stored may be gone: it is to be stored again first.
    Cleared,
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
            Self::Blocked => f.write_str(
                "Potside is open in another tab that holds its storage. Close the other tabs, then try again.",
            ),
            Self::Newer => f.write_str("A newer Potside keeps this book. Reload this page to get it, then go on."),
            Self::Silent => f.write_str(
                "Not saved yet: the storage of this device does not answer. It is tried again and again; what you did is \
                 still here. If it stays like this, do not close this page: free the device of other work, or restart \
                 it once a copy is made on the Desk.",
            ),
            Self::Cleared => f.write_str(
                "Not saved yet: the browser has cleared the storage of this page. The book is still here and is being \
                 stored again: do not close this page.",
            ),
            Self::Failed(said) => write!(f, "Not saved ({said}). It will be tried again; what you typed is still here."),
        }
    }
}

impl std::error::Error for StoreError {}

/// Keeps lines in memory: for tests and for a window without storage.
#[derive(Debug, Default)]
pub struct MemoryStore {
    lines: RefCell<Map<String>>,
}

impl Store for MemoryStore {
    async fn load(&self) -> Result<Vec<String>, StoreError> {
        Ok(self.lines.borrow().values().cloned().collect())
    }

    async fn append(&self, lines: &[(String, String)]) -> Result<(), StoreError> {
        for (id, line) in lines {
            let (mut lines, id) = (self.lines.borrow_mut(), Id(id.clone()));
            lines.remove(&id);
            lines.add(&id, line.clone());
        }
        Ok(())
    }
}

/// What goes wrong at an append.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Fault {
    /// Nothing is kept, and so it says.
    Refused(StoreError),
    /// Everything is kept, but a failure is reported: the answer was lost.
    KeptUnsaid,
    /// The first so many are kept and a failure is reported: a transaction that was not taken back whole.
    Torn { kept: usize },
    /// It never answers, whether everything is kept or nothing.
    Silent { kept: bool },
    /// It answers once it was asked so many times more, and keeps everything at its beginning or only then.
    Slow { polls: u32, early: bool },
}

/// Fails on demand: for tests.
#[derive(Debug, Default)]
pub struct FailingStore {
    kept: MemoryStore,
    /// By the number of the append, from 1.
    faults: BTreeMap<u32, Fault>,
    appends: Cell<u32>,
    /// Every load fails with this.
    deaf: Option<StoreError>,
}

impl FailingStore {
    /// Fails at the appends named, counted from 1.
    pub fn at(faults: impl IntoIterator<Item = (u32, Fault)>) -> Self {
        Self { faults: faults.into_iter().collect(), ..Self::default() }
    }

    /// Fails at every load.
    pub fn deaf(why: StoreError) -> Self {
        Self { deaf: Some(why), ..Self::default() }
    }
}

impl Store for FailingStore {
    async fn load(&self) -> Result<Vec<String>, StoreError> {
        match &self.deaf {
            Some(why) => Err(why.clone()),
            None => self.kept.load().await,
        }
    }

    async fn append(&self, lines: &[(String, String)]) -> Result<(), StoreError> {
        self.appends.set(self.appends.get() + 1);
        match self.faults.get(&self.appends.get()) {
            Some(Fault::Refused(why)) => Err(why.clone()),
            Some(Fault::KeptUnsaid) => {
                self.kept.append(lines).await?;
                Err(StoreError::Failed("no answer".to_owned()))
            }
            Some(Fault::Torn { kept }) => {
                self.kept.append(lines.get(..*kept).unwrap_or(lines)).await?;
                Err(StoreError::Failed("taken back in part".to_owned()))
            }
            Some(Fault::Silent { kept }) => {
                if *kept {
                    self.kept.append(lines).await?;
                }
                std::future::pending().await
            }
            Some(Fault::Slow { polls, early }) => {
                if *early {
                    self.kept.append(lines).await?;
                }
                let mut left = *polls;
                std::future::poll_fn(|_| match left.checked_sub(1) {
                    Some(fewer) => {
                        left = fewer;
                        Poll::Pending
                    }
                    None => Poll::Ready(()),
                })
                .await;
                self.kept.append(lines).await
            }
            None => self.kept.append(lines).await,
        }
    }
}
