//! Entries that change nothing, and why.

use super::Id;
use crate::pot::RunError;
use std::fmt;

/// An entry that changes nothing, and why.
#[derive(Clone, PartialEq, Debug)]
pub struct Ignored {
    /// What the entry is about.
    pub thing: Id,
    pub why: Refusal,
}

/// Why an entry changes nothing. `Display` is the sentence.
#[derive(Clone, PartialEq, Debug)]
pub enum Refusal {
    NoSuchThing,
    NoSuchBatch,
    /// It is finished before the wax is solid, or the wax said to be liquid after it was finished.
    NotSolid,
    BegunAlready,
    TooManyVessels {
        vessels: u64,
    },
    Run(RunError),
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoSuchThing => f.write_str("It is about something that is not in this book."),
            Self::NoSuchBatch => f.write_str("It is about a batch that is not in this book."),
            Self::NotSolid => {
                f.write_str("It finishes candles whose wax is not solid. Say that the wax is solid first.")
            }
            Self::BegunAlready => f.write_str("It begins a batch that had begun already."),
            Self::TooManyVessels { vessels } => {
                write!(f, "It pours {vessels} vessels; no batch has more than {MOST_VESSELS}.")
            }
            Self::Run(e) => e.fmt(f),
        }
    }
}

impl std::error::Error for Refusal {}

/// Every vessel is a step: more than this is no small batch, and would stop the app.
pub(super) const MOST_VESSELS: u64 = crate::pot::MOST_VESSELS as u64;
