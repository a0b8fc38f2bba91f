//! One line of the journal.
//!
//! A line is one JSON object: `{"v":2,"id":…,"clock":…,"at":…,"device":…,"act":{…},"sum":"e3069283"}`. `sum` is the
//! CRC-32C, in eight lower-case hexadecimal digits, of the bytes of the line before `,"sum":`. Its first bytes, `{"v":`
//! and the number of the format, and its last eighteen, `,"sum":"…"}`, stay as they are in every later format, so that
//! any version can tell a newer line from a damaged one.

use super::crc::crc32c;
use super::format::{FORMAT, LINKS, today};
use super::id::is_name;
use super::{Act, Id};
use crate::wire::{self, Flaw, Json, wire_struct};
use std::fmt;

/// The longest line that is read or written, in bytes.
pub const LONGEST: usize = 1_000_000;
/// Clocks and times stay where every reader of JSON has whole numbers exactly.
pub(crate) const LATEST: u64 = 1 << 53;

const HEAD: &str = "{\"v\":";
const TAIL: &str = ",\"sum\":\"";

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

wire_struct!(Entry { id, clock, at, device, act });

/// Why a stored line is not an entry. `Display` is the sentence.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Damage {
    NotAnEntry,
    TooLong {
        bytes: usize,
    },
    Checksum,
    /// Whole, but what it says is not understood; with the reason.
    Unknown {
        reason: String,
    },
    /// Another entry has the same id.
    SameId,
    Newer {
        format: u32,
    },
}

impl fmt::Display for Damage {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotAnEntry => f.write_str("This is not an entry of the book."),
            Self::TooLong { bytes } => {
                write!(f, "This is {bytes} bytes long; no entry is longer than {LONGEST}.")
            }
            Self::Checksum => f.write_str("This entry was changed or cut off after it was written."),
            Self::Unknown { reason } => {
                write!(f, "This entry is whole, but Potside does not understand what it says ({reason}).")
            }
            Self::SameId => {
                f.write_str("Another entry has the same name as this one, and that one was kept.")
            }
            Self::Newer { format } => {
                write!(f, "This entry is of format {format}, newer than this Potside reads. Update the app.")
            }
        }
    }
}

impl Entry {
    /// Its place in the journal: by clock, then by id, the same on every device.
    pub fn place(&self) -> (u64, &Id) {
        (self.clock, &self.id)
    }

    /// True where both say the same: their lines are what is kept of them.
    pub(super) fn is_same(&self, other: &Self) -> bool {
        self.to_line() == other.to_line()
    }

    /// One line of JSON with its format and checksum.
    pub fn to_line(&self) -> String {
        let mut line = format!("{HEAD}{FORMAT}");
        let fields = wire::write(self);
        // In place of the brace that opens them stands a comma; the one that closes them comes after the checksum.
        line.extend([",", fields.trim_start_matches('{')]);
        line.pop();
        let sum = crc32c(line.as_bytes());
        format!("{line}{TAIL}{sum:08x}\"}}")
    }

    /// True where the line is as it was written, whatever it says.
    pub fn is_whole(line: &str) -> bool {
        split_sum(line).is_some_and(|(body, sum)| crc32c(body.as_bytes()) == sum)
    }

    /// # Errors
    /// Where the line is not an entry, its checksum is off, or it is of a newer format.
    pub fn from_line(line: &str) -> Result<Self, Damage> {
        if line.len() > LONGEST {
            return Err(Damage::TooLong { bytes: line.len() });
        }
        let format = format_of(line).ok_or(Damage::NotAnEntry)?;
        let (body, sum) = split_sum(line).ok_or(Damage::Checksum)?;
        if crc32c(body.as_bytes()) != sum {
            return Err(Damage::Checksum);
        }
        if format > FORMAT {
            return Err(Damage::Newer { format });
        }
        let unknown = |reason: &str| Damage::Unknown { reason: reason.to_owned() };
        let json = Json::parse(line).ok_or(Flaw::NotJson).map(|json| today(format, json, &LINKS));
        let read: Self = json.and_then(|json| wire::get(&json)).map_err(|flaw| unknown(&flaw.to_string()))?;
        if read.clock > LATEST || read.at > LATEST || !is_name(&read.device) {
            return Err(unknown("its clock, time or device cannot be"));
        }
        Ok(read)
    }
}

/// The number after `{"v":`, from 1.
fn format_of(line: &str) -> Option<u32> {
    let (number, _) = line.strip_prefix(HEAD)?.split_once(',')?;
    number.parse().ok().filter(|n| *n > 0 && !number.starts_with(['+', '0']))
}

/// What the checksum is over, and the checksum.
pub(super) fn split_sum(line: &str) -> Option<(&str, u32)> {
    let rest = line.strip_suffix("\"}")?;
    let (rest, sum) = rest.split_at_checked(rest.len().checked_sub(8)?)?;
    let body = rest.strip_suffix(TAIL)?;
    let digits = sum.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'));
    Some((body, u32::from_str_radix(sum, 16).ok().filter(|_| digits)?))
}
