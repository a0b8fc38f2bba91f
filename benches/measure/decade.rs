//! The book of ten years: opened, searched, added to.

use crate::decade_shared::{TEN_YEARS, lines};
use crate::line;
use potside::book::{Act, Book, Settings};
use std::hint::black_box;
use std::time::Instant;

fn ms<T>(call: impl FnOnce() -> T) -> (f64, T) {
    let start = Instant::now();
    let out = black_box(call());
    (start.elapsed().as_secs_f64() * 1e3, out)
}

/// Natively, at full speed.
pub(crate) fn natively() {
    let lines = lines(TEN_YEARS);
    line("ten_year_entries", lines.len() as f64, "", None);
    line("ten_year_stored_mb", lines.iter().map(String::len).sum::<usize>() as f64 / 1e6, "MB", None);
    let (opening, mut book) = ms(|| Book::open(lines, "tablet"));
    line("ten_year_fold_native_ms", opening, "ms", None);
    let (search, found) = ms(|| book.state().find("windy market salt").len());
    assert!(found > 0, "a batch is found by its words");
    line("ten_year_search_native_ms", search, "ms", Some(16.7));
    let (act, _) = ms(|| book.act(Act::Settings(Settings::default()), 1, 1));
    line("ten_year_act_native_ms", act, "ms", None);
}
