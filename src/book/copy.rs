//! A copy of the book as a file: one entry a line, as stored; and what such a file would bring to a book.

use super::backup::{self, BACKUP};
use super::clash::{Clash, clashes};
use super::left::LeftOut;
use super::photos::brought;
use super::prospect::{Prospect, prospects, removes};
use super::resent::resent;
use super::{Act, CopyError, Damage, Entry, Journal, Replace};
use crate::photo::{Photo, PhotoError};
use crate::sort;
use std::borrow::Cow;

/// The largest file that is opened, in bytes: many years of pours.
pub const LARGEST_COPY: u64 = 200_000_000;

/// No book comes to a clock beyond this: one entry a second gets there in a hundred million years. An entry of a copy
/// with a later one is left out, so that what is done after taking a copy in always comes after it.
const HIGHEST: u64 = 1 << 52;
/// What was written after such an entry all the same is no further from the one before it.
const STEP: u64 = 1 << 20;

/// So much may be named in a copy by what replaces a book or takes a copy in (our own choice: that is two a day for twenty
/// years). Each is looked for at every entry, so that with far more the app would seem to hang.
const MOST_ASIDE: usize = 20_000;

/// What a copy holds, against a book; proved by folding before anything is changed.
#[derive(Clone, PartialEq, Debug)]
pub struct Copy {
    /// Entries that the book has not yet, each with its line as it stands in the copy.
    pub fresh: Vec<(Entry, String)>,
    /// How many the book has already.
    pub known: usize,
    /// How many of all are set aside with an earlier book, or will be: what is new of a device that others have set aside.
    pub aside: usize,
    /// False where what it brings can only be taken back entry by entry.
    pub undoable: bool,
    /// Lines that are left out, by their number from 1, each with the reason: the first ones.
    pub damaged: Vec<(usize, Damage)>,
    /// The photos that entries of the copy or of the book name.
    pub photos: Vec<Photo>,
    /// Lines of photos that are left out, by their number from 1, each with the reason: the first ones.
    pub no_photos: Vec<(usize, PhotoError)>,
    /// How many more lines are left out.
    pub more_left_out: usize,
    pub seal: Seal,
    /// When it was made, milliseconds since 1970, where it says.
    pub made: Option<u64>,
    /// The act that replaces the book by this copy; none where it cannot: it is damaged.
    pub replace: Option<Act>,
    /// What the book would hold.
    pub prospects: Vec<Prospect>,
    /// What was set here and in the copy, each without knowing of the other.
    pub clashes: Vec<Clash>,
    /// How many entries of this book would be set aside: where the copy was made, a book that had them was replaced.
    pub puts_aside: usize,
    /// The names of customers of this book who would be removed from it for good.
    pub removes: Vec<String>,
    /// The orders of which more would stand as sent than is ordered, each in words.
    pub resent: Vec<String>,
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
    let seal = match &sealed {
        Some(sealed) if sealed.whole => Seal::Whole,
        Some(_) => Seal::Broken,
        None => Seal::Without,
    };
    let (mut here, mut fresh, mut damaged) = (Vec::new(), Vec::new(), LeftOut::default());
    let (mut twice, mut any) = (0, false);
    let listed = backup::entries(text, sealed.is_some()).map(|(place, line)| (place, Cow::Borrowed(line)));
    let aside = backup::aside(text, sealed.is_some()).map(|(place, line)| (place, Cow::Owned(line)));
    for (place, line) in listed.chain(aside) {
        if line.trim().is_empty() {
            continue;
        }
        any = true;
        match Entry::from_line(&line) {
            Err(Damage::Newer { format }) => return Err(CopyError::Newer { format }),
            Err(damage) => damaged.add(place, damage),
            Ok(mut entry) => {
                let bare = entry.take_out(journal.removed());
                let line = if bare { entry.to_line() } else { line.into_owned() };
                match journal.find(&entry.id) {
                    Some(mine) if mine.is_same(&entry) => here.push(mine),
                    // Where the copy was made, this person was removed.
                    Some(mine) if entry.removes().is_some() && mine.bare_line() == entry.to_line() => {
                        fresh.push((place, entry, line));
                    }
                    Some(_) => damaged.add(place, Damage::SameId),
                    None => fresh.push((place, entry, line)),
                }
            }
        }
    }
    let highest = highest(journal, &fresh);
    let mut named = 0;
    fresh.retain(|(place, entry, _)| {
        named += entry.act.names_aside();
        let reason = if entry.clock > highest {
            "its clock cannot be"
        } else if named > MOST_ASIDE && entry.act.names_aside() > 0 {
            "copies were taken in and books replaced too often"
        } else {
            return true;
        };
        damaged.add(*place, Damage::Unknown { reason: reason.to_owned() });
        false
    });
    // Of one id the first in the file is taken.
    sort::by(&mut fresh, |(_, a, _), (_, b, _)| a.id.cmp(&b.id));
    fresh.dedup_by(|(place, later, _), (_, mine, _)| {
        let again = later.id == mine.id;
        if again && later.is_same(mine) {
            twice += 1;
        } else if again {
            damaged.add(*place, Damage::SameId);
        }
        again
    });
    sort::by(&mut damaged.named, |(a, _), (b, _)| a.cmp(b));
    let known = here.len() + twice;
    if fresh.is_empty() && known == 0 {
        return Err(if any || seal != Seal::Without { CopyError::NotACopy } else { CopyError::Empty });
    }
    let replace = (seal != Seal::Broken && damaged.named.is_empty()).then(|| {
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
    let removes = removes(journal, &after);
    let resent = resent(journal.state(), after.state(), fresh.iter().map(|(e, _)| e));
    let new: Vec<&Entry> = fresh.iter().map(|(entry, _)| entry).collect();
    let aside = journal.number_aside(&here) + after.number_aside(&new);
    let mine: Vec<&Entry> = journal.entries().iter().collect();
    let puts_aside = after.number_aside(&mine).saturating_sub(journal.number_aside(&mine));
    let brings = fresh.iter().any(|(e, _)| e.act.is_undoable() && journal.find(&e.id).is_none());
    let undoable = !brings || journal.took(fresh.iter().map(|(e, _)| e), made).is_some();
    let prospects = prospects(journal, after, replace.as_ref());
    let photos = journal.photos();
    let mut named: Vec<&str> = photos.iter().map(String::as_str).collect();
    named.extend(fresh.iter().filter_map(|(entry, _)| entry.photo()));
    sort::by(&mut named, |a, b| a.cmp(b));
    let (photos, no_photos) = brought(backup::photos(text, sealed.is_some()), &named);
    let more_left_out = damaged.more + no_photos.more;
    let (damaged, no_photos) = (damaged.named, no_photos.named);
    Ok(Copy {
        fresh,
        known,
        aside,
        puts_aside,
        undoable,
        damaged,
        photos,
        no_photos,
        more_left_out,
        seal,
        made,
        replace,
        prospects,
        clashes,
        removes,
        resent,
    })
}

/// The highest clock of a copy that can be. Where something beyond [`HIGHEST`] is here all the same, what other devices
/// wrote after it can still be taken in.
fn highest(journal: &Journal, fresh: &[(usize, Entry, String)]) -> u64 {
    let mut clocks: Vec<u64> =
        fresh.iter().map(|(_, e, _)| e.clock).filter(|clock| *clock > HIGHEST).collect();
    sort::by(&mut clocks, |a, b| a.cmp(b));
    let known = journal.last_clock().max(HIGHEST);
    clocks.into_iter().fold(known, |top, clock| if clock <= top + STEP { top.max(clock) } else { top })
}
