//! Every line of a book, for a copy: also where some are not stored, or the storage cannot be read.

use super::{Again, Book};
use crate::sort;

/// So many lines are made in one go.
const PIECE: usize = 2_000;

impl Book {
    /// The lines of the book: those that are stored, and in their place what waits to be stored. Where the storage does not
    /// give them, all that is in memory; lines that were set aside are among them.
    pub fn lines(&self, stored: Option<Vec<String>>) -> Vec<String> {
        let Some(mut lines) = stored else { return self.in_memory() };
        let mut waiting: Vec<&(String, String)> = Vec::new();
        // Of several lines of one entry the last one is to stay.
        for line in self.waiting().iter().rev() {
            waiting.push(line);
        }
        sort::by(&mut waiting, |a, b| a.0.cmp(&b.0));
        waiting.dedup_by(|a, b| a.0 == b.0);
        if waiting.is_empty() {
            return lines;
        }
        let waits = |id: &str| waiting.binary_search_by(|(waits, _)| waits.as_str().cmp(id)).is_ok();
        lines.retain(|line| !id_of(line).is_some_and(waits));
        lines.extend(waiting.iter().map(|(_, line)| line.clone()));
        lines
    }

    fn in_memory(&self) -> Vec<String> {
        let (mut again, mut lines) = (Again::of(self.journal(), true), Vec::new());
        while let Some(more) = again.next(self.journal(), PIECE, &|_| false) {
            lines.extend(more.into_iter().map(|(_, line)| line));
        }
        lines
    }
}

/// The id in a line, which stands at its head.
fn id_of(line: &str) -> Option<&str> {
    let (_, rest) = line.split_once("\"id\":\"")?;
    Some(rest.split_once('"')?.0)
}
