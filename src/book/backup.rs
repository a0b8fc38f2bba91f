//! A backup: the whole book as one JSON file that a person can read; `docs/backup.md` says what stands in it.
//!
//! Every entry stands on a line of its own, to the byte as it is stored, so that each still has its own checksum; the
//! last thing in the file is the checksum of all that stands before it.

use super::crc::crc32c;
use super::entry::split_sum;
use super::{Damage, Entry, LARGEST_COPY};
use crate::photo::Photo;
use crate::wire::{self, Json, put_text, wire_struct};

/// The version of the file's format written today; the entries in it have their own.
pub const BACKUP: u32 = 1;

/// What the first line of every backup begins with.
const HEAD: &str = "{\"potside\":\"backup\",";

/// What the lines that were set aside begin with, on a line of its own, and the photos.
const ASIDE: &str = "\n],\"set_aside\":[";
const PHOTOS: &str = "\n],\"photos\":[";
/// So many bytes are filled with photos: a little less than is read.
const ROOM: usize = LARGEST_COPY as usize - 1_000;

/// What the first line says.
pub(super) struct Head {
    pub(super) format: u32,
    /// Milliseconds since 1970.
    pub(super) made: u64,
    pub(super) device: String,
    /// How many entries there are.
    pub(super) count: u64,
}

wire_struct!(Head { format, made, device, count });

/// A file that begins as a backup does.
pub(super) struct Sealed {
    /// None where the first line cannot be read.
    pub(super) head: Option<Head>,
    /// True where all of it is as it was written.
    pub(super) whole: bool,
}

/// The backup of a book with these stored lines. What is no entry goes into it too, as text. `made` is in milliseconds
/// since 1970.
pub fn backup(lines: &[String], device: &str, made: u64) -> String {
    backup_with(lines, &[], device, made).0
}

/// The backup with photos, as many as keep it a file that can be opened again; and how many of the last did not fit.
pub fn backup_with(lines: &[String], photos: &[Photo], device: &str, made: u64) -> (String, usize) {
    let good = |line: &&String| match Entry::from_line(line) {
        // One in several lines, which Potside never writes, would be read as so many.
        Ok(_) => !line.contains('\n'),
        Err(Damage::Newer { .. }) => !line.contains('\n') && Json::parse(line).is_some(),
        Err(_) => false,
    };
    let (entries, aside): (Vec<&String>, Vec<&String>) = lines.iter().partition(good);
    let head = Head { format: BACKUP, made, device: device.to_owned(), count: entries.len() as u64 };
    let mut text = [HEAD, wire::write(&head).trim_start_matches('{')].concat();
    text.pop();
    text.push_str(",\"entries\":[");
    let mut first = true;
    for line in entries {
        text.push_str(if first { "\n" } else { ",\n" });
        text.push_str(line);
        first = false;
    }
    text.push_str(ASIDE);
    first = true;
    for line in aside {
        text.push_str(if first { "\n" } else { ",\n" });
        put_text(&mut text, line);
        first = false;
    }
    let mut left = photos.iter();
    if !photos.is_empty() {
        text.push_str(PHOTOS);
        first = true;
        while let Some(photo) = left.as_slice().first().filter(|p| text.len() + p.jpeg.len() < ROOM) {
            text.push_str(if first { "\n" } else { ",\n" });
            text.push_str(&wire::write(photo));
            first = false;
            left.next();
        }
    }
    text.push_str("\n]");
    let sum = crc32c(text.as_bytes());
    text.push_str(&format!(",\"sum\":\"{sum:08x}\"}}\n"));
    (text, left.len())
}

/// Reads what is around the entries; none where the file does not begin as a backup.
pub(super) fn open(text: &str) -> Option<Sealed> {
    let (first, _) = text.split_once('\n')?;
    let first = first.trim_end();
    if !first.starts_with(HEAD) {
        return None;
    }
    let head: Option<Head> = wire::read(&[first, "]}"].concat()).ok();
    let counted = head.as_ref().is_some_and(|h| h.count == entries(text, true).count() as u64);
    let whole =
        counted && (summed(text.trim_end()) || (text.contains('\r') && summed(&text.replace("\r\n", "\n"))));
    Some(Sealed { head, whole })
}

/// The lines of the entries, each with its number from 1; without a head all lines are. They are never gathered: of short
/// ones there may be so many that the list is far larger than the file.
pub(super) fn entries(text: &str, sealed: bool) -> impl Iterator<Item = (usize, &str)> {
    list(text.lines().enumerate().skip(sealed.into()), sealed)
}

/// The lines of the photos, likewise; without a head there are none.
pub(super) fn photos(text: &str, sealed: bool) -> impl Iterator<Item = (usize, &str)> {
    after(PHOTOS, text, sealed)
}

/// Entries among the lines that were set aside, likewise: an earlier version that made the copy did not know them.
pub(super) fn aside(text: &str, sealed: bool) -> impl Iterator<Item = (usize, String)> {
    after(ASIDE, text, sealed)
        .filter_map(|(at, line)| Some((at, wire::read::<String>(line).ok()?)))
        .filter(|(_, line)| Entry::from_line(line).is_ok())
}

fn after<'a>(head: &'static str, text: &'a str, sealed: bool) -> impl Iterator<Item = (usize, &'a str)> {
    let before = move |(_, line): &(usize, &str)| !sealed || line.trim_end() != head.trim_start();
    list(text.lines().enumerate().skip_while(before).skip(1), true)
}

/// The lines of a list, until it `ends` by a bracket.
fn list<'a>(
    lines: impl Iterator<Item = (usize, &'a str)>,
    ends: bool,
) -> impl Iterator<Item = (usize, &'a str)> {
    let inside = lines.take_while(move |(_, line)| !ends || !line.starts_with(']'));
    inside.map(|(at, line)| (at + 1, line.trim_end().trim_end_matches(',')))
}

/// True where the checksum at the end is that of what stands before it.
fn summed(text: &str) -> bool {
    split_sum(text.trim_end()).is_some_and(|(body, sum)| crc32c(body.as_bytes()) == sum)
}
