//! Photos in the book and in its backups: which are named, which a backup brings, and which nothing will ever name.

use super::left::LeftOut;
use super::{Act, Entry, Journal};
use crate::bench::burn::BurnEvent;
use crate::day::DAY;
use crate::photo::{self, Photo, PhotoError, check};
use crate::sort;
use crate::wire::{self, wire_struct};

/// A line of a backup that is longer is no photo: its text, its name and what stands around them.
const LONGEST_LINE: usize = photo::MOST_BYTES / 3 * 4 + 200;

impl Entry {
    /// The name of the photo that it tells of.
    pub(super) fn photo(&self) -> Option<&str> {
        match &self.act {
            Act::AtTrial { event: BurnEvent::Pictured { photo, .. }, .. } => Some(photo),
            _ => None,
        }
    }
}

impl Journal {
    /// The names of all photos, each once, the latest first; also of those undone, which may come back.
    pub fn photos(&self) -> Vec<String> {
        let tied = self.tied_pictured();
        let mut named: Vec<&Entry> = self.entries().iter().chain(&tied).collect();
        named.retain(|e| e.photo().is_some_and(photo::is_name));
        sort::by(&mut named, |a, b| b.place().cmp(&a.place()));
        let mut all: Vec<String> = Vec::new();
        for name in named.into_iter().filter_map(Entry::photo) {
            if !all.iter().any(|known| known == name) {
                all.push(name.to_owned());
            }
        }
        all
    }
}

/// What lines of a backup bring: each photo that is `named` (in order), and what is no photo, by the number of its line.
/// Others are passed over, so that no file fills the device with what no entry tells of.
pub(super) fn brought<'a>(
    lines: impl Iterator<Item = (usize, &'a str)>,
    named: &[&str],
) -> (Vec<Photo>, LeftOut<PhotoError>) {
    let (mut photos, mut wrong) = (Vec::<Photo>::new(), LeftOut::default());
    for (place, line) in lines {
        let read = if line.len() > LONGEST_LINE { None } else { wire::read::<Photo>(line).ok() };
        match read.ok_or(PhotoError::Damaged).and_then(|p| check(&p.name, &p.jpeg).map(|()| p)) {
            Ok(photo) if named.binary_search(&photo.name.as_str()).is_ok() => photos.push(photo),
            Ok(_) => {}
            Err(why) => wrong.add(place, why),
        }
    }
    sort::by(&mut photos, |a, b| a.name.cmp(&b.name));
    photos.dedup_by(|a, b| a.name == b.name);
    (photos, wrong)
}

/// A stored photo that no entry names, and when it was first seen so, milliseconds since 1970. A photo is stored before its
/// entry: where the entry never came, nothing shows the photo or takes it along.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Stray {
    pub name: String,
    pub since: u64,
}

wire_struct!(Stray { name, since });

/// Those of the stored photos that are not named; `known` are those of the last time.
pub fn strays(known: &[Stray], stored: Vec<String>, named: &[String], now: u64) -> Vec<Stray> {
    let unnamed = stored.into_iter().filter(|name| !named.contains(name));
    let mut strays = Vec::new();
    for name in unnamed {
        // Seen after now: the clock was set back, and the day begins anew.
        let since = known.iter().find(|k| k.name == name).map_or(now, |k| k.since.min(now));
        strays.push(Stray { name, since });
    }
    strays
}

/// The names of those that have been strays for a day: their entry is not on its way any more.
pub fn overdue(strays: &[Stray], now: u64) -> Vec<String> {
    let old = strays.iter().filter(|s| s.since.saturating_add(DAY) <= now);
    old.map(|s| s.name.clone()).collect()
}

/// Leaves the names that stand in none of these stored lines: what is undone, tied up, set aside, from another tab or of a
/// newer version counts as well.
pub fn leave_unsaid(names: &mut Vec<String>, lines: &[String]) {
    names.retain(|name| !lines.iter().any(|line| line.contains(name.as_str())));
}
