//! One line of the journal.

use super::{Act, Id};
use std::fmt;

/// The version of the entry format written today.
pub const FORMAT: u32 = 1;

/// An act with who, when and in what order.
#[derive(Clone, PartialEq, Debug)]
pub struct Entry {
    pub id: Id,
    /// Lamport clock: one more than the highest the device has seen. Orders entries; the wall clock does not.
    pub clock: u64,
    /// The device's wall clock, milliseconds since 1970.
    pub at: u64,
    pub device: String,
    pub act: Act,
}

/// Why a stored line is not an entry. `Display` is the sentence.
#[derive(Clone, PartialEq, Debug)]
pub enum Damage {
    NotAnEntry,
    Checksum,
    Newer { format: u32 },
}

impl fmt::Display for Damage {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotAnEntry => f.write_str("This is not an entry of the book."),
            Self::Checksum => f.write_str("This entry was changed or cut off after it was written."),
            Self::Newer { format } => {
                write!(f, "This entry is of format {format}, newer than this Potside reads. Update the app.")
            }
        }
    }
}

impl Entry {
    /// One line of JSON with its format and checksum.
    pub fn to_line(&self) -> String {
        String::new()
    }

    /// # Errors
    /// Where the line is not an entry, its checksum is off, or it is of a newer format.
    pub fn from_line(line: &str) -> Result<Self, Damage> {
        let _ = line;
        Err(Damage::NotAnEntry)
    }
}
