//! A copy of the book as a file: one entry a line, as stored; and what such a file would bring to a book.

use super::{Damage, Entry, Journal};
use crate::quantity::{Exact, Locale, decimal};
use crate::sort;
use std::fmt;

/// The largest file that is opened, in bytes: many years of pours.
pub const LARGEST_COPY: u64 = 200_000_000;

/// A number of bytes as people read it: `4.2 MB`, `380 kB`.
pub fn say_bytes(bytes: u64, locale: Locale) -> String {
    let (size, step, unit) = match bytes {
        0..100_000 => (1_000, Exact::ratio(1, 10), "kB"),
        100_000..1_000_000 => (1_000, Exact::ONE, "kB"),
        1_000_000..10_000_000_000 => (1_000_000, Exact::ratio(1, 10), "MB"),
        _ => (1_000_000_000, Exact::ratio(1, 10), "GB"),
    };
    format!("{} {unit}", decimal(Exact::ratio(bytes.into(), size), step, locale))
}

/// What a copy holds, against a book.
#[derive(Clone, PartialEq, Debug)]
pub struct Copy {
    /// Entries that the book has not yet.
    pub fresh: Vec<Entry>,
    /// How many the book has already.
    pub known: usize,
    /// Lines that are left out, by their number from 1, each with the reason.
    pub damaged: Vec<(usize, Damage)>,
}

/// Why a file brings nothing. `Display` is the sentence.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum CopyError {
    Empty,
    TooLarge {
        bytes: u64,
    },
    /// No line of it is an entry.
    NotACopy,
    /// A newer version of the app has written it.
    Newer {
        format: u32,
    },
    /// The browser could not read the file; with what it said.
    Unread(String),
}

impl fmt::Display for CopyError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => f.write_str("This file is empty. Choose the copy that you downloaded here."),
            Self::TooLarge { bytes } => write!(
                f,
                "This file has {}, more than a book ever has. Choose the copy that you downloaded here.",
                say_bytes(*bytes, Locale::default())
            ),
            Self::NotACopy => f.write_str(
                "This file is not a copy of a book. Choose the one that you downloaded here; its name begins with \
                 “potside-book”.",
            ),
            Self::Newer { format } => write!(
                f,
                "A newer Potside has written this copy (format {format}). Update the app first, then open it again."
            ),
            Self::Unread(said) => {
                write!(f, "This file could not be read ({said}). Check that it is still there, then choose it again.")
            }
        }
    }
}

impl std::error::Error for CopyError {}

/// Looks through the lines of a copy. Nothing is taken in yet.
///
/// # Errors
/// Where it brings nothing that may be taken in; see [`CopyError`].
pub fn read_copy(text: &str, journal: &Journal) -> Result<Copy, CopyError> {
    let (mut known, mut fresh, mut damaged) = (0, Vec::new(), Vec::new());
    for (at, line) in text.lines().enumerate().filter(|(_, line)| !line.trim().is_empty()) {
        let place = at + 1;
        match Entry::from_line(line) {
            Err(Damage::Newer { format }) => return Err(CopyError::Newer { format }),
            Err(damage) => damaged.push((place, damage)),
            Ok(entry) => match journal.find(&entry.id) {
                Some(mine) if mine.is_same(&entry) => known += 1,
                Some(_) => damaged.push((place, Damage::SameId)),
                None => fresh.push((place, entry)),
            },
        }
    }
    // Of one id the first in the file is taken.
    sort::by(&mut fresh, |(_, a), (_, b)| a.id.cmp(&b.id));
    fresh.dedup_by(|(place, later), (_, mine)| {
        let again = later.id == mine.id;
        if again && later.is_same(mine) {
            known += 1;
        } else if again {
            damaged.push((*place, Damage::SameId));
        }
        again
    });
    sort::by(&mut damaged, |(a, _), (b, _)| a.cmp(b));
    if fresh.is_empty() && known == 0 {
        return Err(if damaged.is_empty() { CopyError::Empty } else { CopyError::NotACopy });
    }
    Ok(Copy { fresh: fresh.into_iter().map(|(_, entry)| entry).collect(), known, damaged })
}

impl Copy {
    /// What it holds, in a sentence.
    pub fn say(&self) -> String {
        let entries = |n: usize| if n == 1 { "1 entry".to_owned() } else { format!("{n} entries") };
        let here = match self.known {
            0 => String::new(),
            n => format!(" {} here already.", if n == 1 { "1 is".to_owned() } else { format!("{n} are") }),
        };
        match self.fresh.len() {
            0 => format!("This copy holds {}. All of them are here already.", entries(self.known)),
            n => format!(
                "This copy holds {}. {} not here yet.{here}",
                entries(n + self.known),
                if n == 1 { "1 is".to_owned() } else { format!("{n} are") }
            ),
        }
    }
}
