//! All lines of a book in memory once more, for where what was stored of it is gone.

use super::{Bundle, Entry, Id, Journal, crc32c};
use std::rc::Rc;

/// So many batches or trials that are tied up are gone through at once.
const PLACES: usize = 200;

/// Goes through a journal a piece at a time, while it may go on to change: what comes meanwhile is stored as ever, and what
/// is untied meanwhile is in the bundle too.
pub struct Again {
    bundle: Option<Rc<dyn Bundle>>,
    /// The next place of the bundle.
    place: usize,
    /// The place of the last entry that was gone through.
    last: Option<(u64, Id)>,
    /// True where all is gone: then also the lines that were set aside, whose keys are not known.
    gone: bool,
    /// How many of those were gone through.
    aside: usize,
}

impl Again {
    pub fn of(journal: &Journal, gone: bool) -> Self {
        Self { bundle: journal.ties.bundle.clone(), place: 0, last: None, gone, aside: 0 }
    }

    /// The next lines, `most` or some more or fewer, each with its key, without those of entries that `has` knows; none once
    /// all was gone through. Lines that were set aside get keys made of them: the same in every tab.
    pub fn next(
        &mut self,
        journal: &Journal,
        most: usize,
        has: &dyn Fn(&str) -> bool,
    ) -> Option<Vec<(String, String)>> {
        let mut lines = Vec::new();
        let mut add = |entry: &Entry| {
            if !has(&entry.id.0) {
                lines.push((entry.id.0.clone(), entry.to_line()));
            }
        };
        // First those that are nowhere else.
        let last = self.last.as_ref().map(|(clock, id)| (*clock, id));
        let entries = journal.entries();
        let from = last.map_or(0, |last| entries.partition_point(|e| e.place() <= last));
        let piece = entries.iter().skip(from).take(most);
        if let Some(last) = piece.clone().next_back() {
            piece.for_each(&mut add);
            self.last = Some((last.clock, last.id.clone()));
            return Some(lines);
        }
        if let Some(bundle) = &self.bundle {
            let end = bundle.places().min(self.place + PLACES);
            for place in self.place..end {
                let entries = bundle.entries(place);
                // Another one of the same id was chosen since, and given.
                let stays = |e: &&Entry| journal.find(&e.id).is_none_or(|mine| mine.is_same(e));
                entries.iter().filter(stays).for_each(&mut add);
            }
            self.place = end;
            if end == bundle.places() {
                self.bundle = None;
            }
            return Some(lines);
        }
        let aside = journal.damaged().iter().skip(self.aside).take(if self.gone { most } else { 0 });
        for (line, _) in aside {
            self.aside += 1;
            let key = format!("aside-{:x}-{:08x}", line.len(), crc32c(line.as_bytes()));
            if !has(&key) {
                lines.push((key, line.clone()));
            }
        }
        (!lines.is_empty()).then_some(lines)
    }
}
