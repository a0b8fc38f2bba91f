//! A copy of the book as a file: one entry a line, as stored; and what such a file would bring to a book.

use super::backup::{self, BACKUP};
use super::clash::{Clash, clashes};
use super::photos::brought;
use super::{Act, Damage, Entry, Journal, Replace};
use crate::photo::{Photo, PhotoError};
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

/// What a copy holds, against a book; proved by folding before anything is changed.
#[derive(Clone, PartialEq, Debug)]
pub struct Copy {
    /// Entries that the book has not yet, each with its line as it stands in the copy.
    pub fresh: Vec<(Entry, String)>,
    /// How many the book has already.
    pub known: usize,
    /// Lines that are left out, by their number from 1, each with the reason.
    pub damaged: Vec<(usize, Damage)>,
    /// The photos that entries of the copy or of the book name.
    pub photos: Vec<Photo>,
    /// Lines of photos that are left out, by their number from 1, each with the reason.
    pub no_photos: Vec<(usize, PhotoError)>,
    pub seal: Seal,
    /// When it was made, milliseconds since 1970, where it says.
    pub made: Option<u64>,
    /// The act that replaces the book by this copy; none where it cannot: it is damaged.
    pub replace: Option<Act>,
    /// What the book would hold.
    pub prospects: Vec<Prospect>,
    /// What was set here and in the copy, each without knowing of the other.
    pub clashes: Vec<Clash>,
}

/// Whether the file is as it was written.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Seal {
    /// A copy of earlier days: entries alone, without a checksum over all of them.
    Without,
    Whole,
    /// Changed or cut off since.
    Broken,
}

/// So many of one kind: now, with the copy taken in, and with the book replaced by it.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Prospect {
    pub of: &'static str,
    pub now: usize,
    pub merged: usize,
    pub replaced: Option<usize>,
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

/// Looks through a backup, or through a copy of earlier days with nothing but entries. Nothing is taken in yet.
///
/// # Errors
/// Where it brings nothing that may be taken in; see [`CopyError`].
pub fn read_copy(text: &str, journal: &Journal) -> Result<Copy, CopyError> {
    if journal.is_tied() {
        let mut whole = journal.clone();
        whole.untie_all();
        return read_copy(text, &whole);
    }
    let sealed = backup::open(text);
    let head = sealed.as_ref().and_then(|s| s.head.as_ref());
    if let Some(format) = head.map(|h| h.format).filter(|format| *format > BACKUP) {
        return Err(CopyError::Newer { format });
    }
    let made = head.map(|h| h.made);
    let (seal, lines, pictures) = match sealed {
        Some(sealed) => (if sealed.whole { Seal::Whole } else { Seal::Broken }, sealed.lines, sealed.photos),
        None => (
            Seal::Without,
            text.lines().enumerate().map(|(at, line)| (at + 1, line.trim_end_matches(','))).collect(),
            Vec::new(),
        ),
    };
    let (mut here, mut fresh, mut damaged) = (Vec::new(), Vec::new(), Vec::new());
    let (mut twice, mut any) = (0, false);
    for (place, line) in lines {
        if line.trim().is_empty() {
            continue;
        }
        any = true;
        match Entry::from_line(line) {
            Err(Damage::Newer { format }) => return Err(CopyError::Newer { format }),
            Err(damage) => damaged.push((place, damage)),
            Ok(mut entry) => {
                let bare = entry.take_out(journal.removed());
                let line = if bare { entry.to_line() } else { line.to_owned() };
                match journal.find(&entry.id) {
                    Some(mine) if mine.is_same(&entry) => here.push(mine),
                    // Where the copy was made, this person was removed.
                    Some(mine) if entry.removes().is_some() && mine.bare_line() == entry.to_line() => {
                        fresh.push((place, entry, line));
                    }
                    Some(_) => damaged.push((place, Damage::SameId)),
                    None => fresh.push((place, entry, line)),
                }
            }
        }
    }
    // Of one id the first in the file is taken.
    sort::by(&mut fresh, |(_, a, _), (_, b, _)| a.id.cmp(&b.id));
    fresh.dedup_by(|(place, later, _), (_, mine, _)| {
        let again = later.id == mine.id;
        if again && later.is_same(mine) {
            twice += 1;
        } else if again {
            damaged.push((*place, Damage::SameId));
        }
        again
    });
    sort::by(&mut damaged, |(a, _), (b, _)| a.cmp(b));
    let known = here.len() + twice;
    if fresh.is_empty() && known == 0 {
        return Err(if any || seal != Seal::Without { CopyError::NotACopy } else { CopyError::Empty });
    }
    let replace = (seal != Seal::Broken && damaged.is_empty()).then(|| {
        let all: Vec<&Entry> = here.iter().copied().chain(fresh.iter().map(|(_, entry, _)| entry)).collect();
        Replace::of(journal, &all, made)
    });
    let replace = replace.flatten();
    let fresh: Vec<(Entry, String)> = fresh.into_iter().map(|(_, entry, line)| (entry, line)).collect();
    let mut after = journal.clone();
    after.take_all(fresh.iter().map(|(entry, _)| entry.clone()).collect());
    sort::by(&mut here, |a, b| a.id.cmp(&b.id));
    let mine = |e: &&Entry| here.binary_search_by(|known| known.id.cmp(&e.id)).is_err();
    let clashes = clashes(&after, journal.entries().iter().filter(mine), fresh.iter().map(|(e, _)| e));
    let prospects = prospects(journal, after, replace.as_ref());
    let photos = journal.photos();
    let mut named: Vec<&str> = photos.iter().map(String::as_str).collect();
    named.extend(fresh.iter().filter_map(|(entry, _)| entry.photo()));
    sort::by(&mut named, |a, b| a.cmp(b));
    let (photos, no_photos) = brought(&pictures, &named);
    Ok(Copy { fresh, known, damaged, photos, no_photos, seal, made, replace, prospects, clashes })
}

/// Counts what would come of it; `after` is the book with the copy taken in.
fn prospects(journal: &Journal, mut after: Journal, replace: Option<&Act>) -> Vec<Prospect> {
    let (now, merged) = (tally(journal), tally(&after));
    let replaced = replace.map(|act| {
        let entry = after.entry(act.clone(), 0, 0);
        after.take(entry);
        tally(&after)
    });
    let mut all = Vec::new();
    for (at, (of, now)) in now.into_iter().enumerate() {
        let of_it = |t: &[(&'static str, usize)]| t.get(at).map_or(0, |(_, n)| *n);
        let replaced = replaced.as_ref().map(|r| of_it(r));
        all.push(Prospect { of, now, merged: of_it(&merged), replaced });
    }
    all.retain(|p| p.now + p.merged + p.replaced.unwrap_or(0) > 0);
    all
}

/// How many there are of each kind.
fn tally(journal: &Journal) -> [(&'static str, usize); 12] {
    let s = journal.state();
    [
        ("Formulas", s.formulas.len()),
        ("Vessels", s.vessels.len()),
        ("Ingredients", s.ingredients.len()),
        ("Scales", s.scales.len()),
        ("Pots", s.pots.len()),
        ("Pours", s.batches.len()),
        ("Lots", s.lots.len()),
        ("Trials", s.trials.len()),
        ("Customers", s.customers.len()),
        ("Orders", s.orders.len()),
        ("Changed in two places, to choose", journal.forks().len()),
        ("Entries that change nothing", s.ignored.len()),
    ]
}

impl Copy {
    /// How many photos of it are not here yet, in a sentence.
    pub fn say_photos(lacking: usize) -> String {
        match lacking {
            0 => String::new(),
            1 => "1 photo is not here yet.".to_owned(),
            n => format!("{n} photos are not here yet."),
        }
    }

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
