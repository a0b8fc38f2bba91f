//! A storage that never answers, or answers late.

use super::sample::ingredient;
use potside::book::{ActError, Book, FailingStore, Fault, Journal, Saving, Store, StoreError, crc32c};
use std::pin::{Pin, pin};
use std::task::{Context, Poll, Waker};

fn book_with(entries: usize) -> Book {
    let mut book = Book::open(vec![], "tablet");
    for n in 0..entries {
        book.act(ingredient(&format!("t{n}"), "Meadow wax", 1), n as u64, n as u32).expect("done");
    }
    book
}

fn poll<T>(future: Pin<&mut impl Future<Output = T>>) -> Poll<T> {
    future.poll(&mut Context::from_waker(Waker::noop()))
}

#[test]
fn a_write_that_never_answers_is_told_and_tried_again() {
    for kept in [false, true] {
        let store = FailingStore::at([(1, Fault::Silent { kept })]);
        let mut book = book_with(2);
        let lines = book.to_store().expect("two wait");
        let flight = book.flight();
        let mut first = pin!(store.append(&lines));
        assert!(poll(first.as_mut()).is_pending());
        assert_eq!((book.saving(), book.to_store()), (Saving::Saving, None));
        assert!(book.late(flight) && !book.late(flight), "late once");
        assert_eq!((book.saving(), book.unsaved()), (Saving::NotSaved(StoreError::Silent), 2));
        assert!(book.pause() > 0);
        let again = book.to_store().expect("it is tried again");
        assert_eq!(again, lines);
        book.answered(book.flight(), at_once(store.append(&again)));
        assert_eq!((book.saving(), book.unsaved()), (Saving::Saved, 0));
        assert_eq!(at_once(store.load()).map(|l| l.len()), Ok(2));
    }
}

fn at_once<T>(future: impl Future<Output = T>) -> T {
    match poll(pin!(future)) {
        Poll::Ready(out) => out,
        Poll::Pending => panic!("it answers at once"),
    }
}

/// The answer to a write that was given up counts, whatever is on its way by then.
#[test]
fn a_late_answer_counts() {
    let mut book = book_with(2);
    book.to_store().expect("two wait");
    let first = book.flight();
    book.late(first);
    book.act(ingredient("t9", "Chalk wax", 1), 9, 9).expect("done");
    assert_eq!(book.to_store().map(|l| l.len()), Some(3));
    let second = book.flight();
    book.answered(first, Ok(()));
    assert_eq!(book.unsaved(), 1, "two of the three are stored");
    assert_eq!(book.to_store(), None, "the second is still on its way");
    // Neither a second answer of the first, nor its failure, changes anything.
    book.answered(first, Ok(()));
    book.answered(first, Err(StoreError::Full));
    assert_eq!(book.unsaved(), 1);
    book.answered(second, Ok(()));
    assert_eq!((book.saving(), book.unsaved()), (Saving::Saved, 0));
    // And the other way round.
    let mut book = book_with(1);
    book.to_store().expect("one waits");
    let first = book.flight();
    book.late(first);
    book.to_store().expect("again");
    let second = book.flight();
    assert_eq!(first, second, "both carry the same");
    book.answered(second, Ok(()));
    book.answered(first, Err(StoreError::Full));
    assert_eq!((book.saving(), book.unsaved()), (Saving::Saved, 0));
}

/// A tab of an old version, open beside one of a new version that writes: from then on it only reads, and still stores
/// what it had done before.
#[test]
fn an_old_tab_beside_a_new_version_stops_writing() {
    let mut book = book_with(1);
    let newer = "{\"v\":9,\"later\":true";
    book.hear(format!("{newer},\"sum\":\"{:08x}\"}}", crc32c(newer.as_bytes())));
    assert_eq!(book.act(ingredient("x", "Chalk wax", 1), 1, 1), Err(ActError::ReadOnly));
    let lines = book.to_store().expect("what was done before waits");
    book.stored(Ok(()));
    assert_eq!((lines.len(), book.saving()), (1, Saving::Saved));
}

/// A clock set back ten years: what is done then still comes after, here and where it is merged.
#[test]
fn a_clock_set_back_ten_years_changes_no_order() {
    let ten_years = 10 * 365 * 24 * 60 * 60 * 1000;
    let mut book = Book::open(vec![], "tablet");
    let mut times = vec![1_764_000_000_000, 1_764_000_000_000 - ten_years, 0, 1_764_000_000_001];
    for (n, at) in times.drain(..).enumerate() {
        book.act(ingredient("w", &format!("Wax {n}"), 1), at, n as u32).expect("done");
    }
    assert_eq!(book.state().name(&super::sample::id("w")), Some("Wax 3"));
    let mut stored: Vec<String> = book.to_store().expect("four").into_iter().map(|(_, l)| l).collect();
    stored.reverse();
    assert_eq!(Journal::open(stored, "x").state(), book.state());
}
