//! Stores and the writer: acknowledged means durable.

use super::sample::{id, ingredient, said, undo};
use potside::book::{
    Act, ActError, Book, FailingStore, Fault, Journal, MemoryStore, Reading, Saving, Store, StoreError,
};
use proptest::prelude::*;
use std::pin::pin;
use std::task::{Context, Poll, Waker};

/// The outcome of a store that answers at once.
fn at_once<T>(future: impl Future<Output = T>) -> T {
    match pin!(future).poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(out) => out,
        Poll::Pending => panic!("a store in memory does not wait"),
    }
}

fn pair(id: &str, line: &str) -> (String, String) {
    (id.to_owned(), line.to_owned())
}

#[test]
fn memory_keeps_one_line_an_id() {
    let store = MemoryStore::default();
    at_once(store.append(&[pair("b", "two"), pair("a", "one")])).expect("kept");
    at_once(store.append(&[pair("a", "one")])).expect("kept");
    assert_eq!(at_once(store.load()), Ok(vec!["one".to_owned(), "two".to_owned()]));
}

#[test]
fn faults_come_where_they_are_asked_for() {
    let faults = [(2, Fault::Refused(StoreError::Full)), (3, Fault::KeptUnsaid)];
    let store = FailingStore::at(faults);
    assert_eq!(at_once(store.append(&[pair("a", "1")])), Ok(()));
    assert_eq!(at_once(store.append(&[pair("b", "2"), pair("c", "3")])), Err(StoreError::Full));
    assert_eq!(at_once(store.load()).map(|l| l.len()), Ok(1));
    assert!(matches!(at_once(store.append(&[pair("d", "4")])), Err(StoreError::Failed(_))));
    assert_eq!(at_once(store.load()).map(|l| l.len()), Ok(2));
    assert_eq!(at_once(FailingStore::deaf(StoreError::Denied).load()), Err(StoreError::Denied));
}

#[test]
fn every_failure_has_a_sentence() {
    let failed = StoreError::Failed("the disk is on fire".to_owned());
    for e in [
        StoreError::Denied,
        StoreError::Full,
        StoreError::Blocked,
        StoreError::Newer,
        StoreError::Silent,
        failed,
    ] {
        let sentence = e.to_string();
        assert!(sentence.len() > 30 && sentence.ends_with('.'), "{sentence}");
    }
}

/// Stores what waits, once.
fn pump(book: &mut Book, store: &impl Store) {
    if let Some(lines) = book.to_store() {
        assert_eq!(book.to_store(), None, "one append at a time");
        book.stored(at_once(store.append(&lines)));
    }
}

fn note(n: usize) -> Act {
    ingredient(&format!("t{n}"), "Meadow wax", 1 + n as i128)
}

#[test]
fn what_fails_stays_and_is_tried_again_ahead_of_what_came_since() {
    let store =
        FailingStore::at([(1, Fault::Refused(StoreError::Full)), (2, Fault::Refused(StoreError::Full))]);
    let mut book = Book::open(vec![], "tablet");
    assert_eq!((book.saving(), book.unsaved(), book.pause()), (Saving::Saved, 0, 0));
    let first = book.act(note(0), 1, 1).expect("done");
    assert_eq!((book.saving(), book.unsaved()), (Saving::Saving, 1));
    pump(&mut book, &store);
    assert!(book.waits(&first.0) && !book.waits("another"));
    assert_eq!((book.saving(), book.pause()), (Saving::NotSaved(StoreError::Full), 1000));
    book.act(note(1), 2, 2).expect("done");
    assert_eq!(book.state().ingredients.len(), 2, "both are on the screen");
    pump(&mut book, &store);
    assert_eq!((book.unsaved(), book.pause()), (2, 2000));
    pump(&mut book, &store);
    assert_eq!((book.saving(), book.unsaved(), book.pause()), (Saving::Saved, 0, 0));
    assert!(!book.waits(&first.0));
    assert_eq!(at_once(store.load()).map(|l| l.len()), Ok(2));
}

#[test]
fn the_pause_grows_to_half_a_minute() {
    let mut book = Book::open(vec![], "tablet");
    book.act(note(0), 1, 1).expect("done");
    let pauses: Vec<u32> = (0..8)
        .map(|_| {
            book.to_store().expect("it waits");
            book.stored(Err(StoreError::Full));
            book.pause()
        })
        .collect();
    assert_eq!(pauses, [1000, 2000, 4000, 8000, 16_000, 30_000, 30_000, 30_000]);
}

/// An answer is for the append it is asked of: to one that is not on its way it means nothing.
#[test]
fn what_is_not_on_its_way_neither_fails_nor_comes_late() {
    let full = || Err(StoreError::Full);
    let mut book = Book::open(vec![], "tablet");
    assert!(!book.late(book.flight()));
    book.answered(book.flight(), full());
    assert_eq!((book.saving(), book.pause()), (Saving::Saved, 0));
    // Two on their way together.
    book.act(note(0), 1, 1).expect("done");
    book.act(note(1), 1, 2).expect("done");
    book.to_store().expect("they wait");
    let flight = book.flight();
    assert!(!book.late(flight + 1));
    book.answered(flight + 1, full());
    assert_eq!((book.saving(), book.pause()), (Saving::Saving, 0));
    book.answered(flight, full());
    assert_eq!((book.saving(), book.pause()), (Saving::NotSaved(StoreError::Full), 1000));
    // What was given up does not fail once more.
    book.answered(flight, full());
    assert_eq!(book.pause(), 1000);
    // Stored at last, while a third came: that one waits, and nothing has failed.
    book.to_store().expect("they wait");
    book.act(note(2), 1, 3).expect("done");
    book.answered(book.flight(), Ok(()));
    assert_eq!((book.saving(), book.unsaved(), book.pause()), (Saving::Saving, 1, 0));
    // Given up, and then stored all the same.
    book.to_store().expect("it waits");
    let flight = book.flight();
    assert!(book.late(flight) && !book.late(flight));
    assert_eq!((book.saving(), book.pause()), (Saving::NotSaved(StoreError::Silent), 1000));
    book.answered(flight, Ok(()));
    assert_eq!((book.saving(), book.unsaved(), book.pause()), (Saving::Saved, 0, 0));
}

#[test]
fn what_would_not_be_read_back_is_not_done() {
    let mut book = Book::open(vec![], "tablet");
    let long = said("b", &"x".repeat(1_000_001));
    assert!(matches!(book.act(long, 1, 1), Err(ActError::Unwritable(_))));
    let hostile = undo(&id("not an id"));
    assert!(matches!(book.act(hostile, 1, 1), Err(ActError::Unwritable(_))));
    assert_eq!((book.unsaved(), book.journal().entries().len()), (0, 0));
}

#[test]
fn nothing_is_written_into_a_newer_book() {
    let newer = "{\"v\":7,\"later\":true";
    let newer = format!("{newer},\"sum\":\"{:08x}\"}}", potside::book::crc32c(newer.as_bytes()));
    let mut book = Book::open(vec![newer], "tablet");
    assert_eq!(book.act(note(0), 1, 1), Err(ActError::ReadOnly));
    assert!(ActError::ReadOnly.to_string().ends_with('.'));
    assert_eq!(book.to_store(), None);
}

/// What a copy brings is stored with one append, and goes into no book that may not be written.
#[test]
fn what_is_taken_in_is_stored_all_together() {
    let mut other = Book::open(vec![], "desk");
    for n in 0..3 {
        other.act(note(n), 1, n as u32).expect("done");
    }
    let entries: Vec<_> = other.journal().entries().iter().map(|e| (e.clone(), e.to_line())).collect();
    let mut book = Book::open(vec![], "tablet");
    assert_eq!(book.take_in(entries.clone()), Ok(()));
    assert_eq!(book.state(), other.state());
    assert_eq!(book.to_store().map(|lines| lines.len()), Some(3));
    let newer = "{\"v\":7,\"later\":true";
    let newer = format!("{newer},\"sum\":\"{:08x}\"}}", potside::book::crc32c(newer.as_bytes()));
    let mut locked = Book::open(vec![newer], "tablet");
    assert_eq!(locked.take_in(entries), Err(ActError::ReadOnly));
    assert_eq!((locked.unsaved(), locked.journal().entries().len()), (0, 0));
}

fn fault() -> impl Strategy<Value = Fault> {
    prop_oneof![
        Just(Fault::Refused(StoreError::Full)),
        Just(Fault::Refused(StoreError::Failed("odd".to_owned()))),
        Just(Fault::KeptUnsaid),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, ..ProptestConfig::default() })]

    /// Whatever fails when, a page killed after any step finds everything that had been shown as saved, and what it
    /// finds is a beginning of what was done.
    #[test]
    fn what_is_acknowledged_is_there(
        faults in prop::collection::btree_map(1_u32..12, fault(), 0..8),
        steps in prop::collection::vec(any::<bool>(), 1..24),
    ) {
        let store = FailingStore::at(faults);
        let mut book = Book::open(vec![], "tablet");
        for (n, act) in steps.into_iter().enumerate() {
            if act {
                prop_assert!(book.act(note(n), n as u64, n as u32).is_ok());
            } else {
                pump(&mut book, &store);
            }
            let found = Journal::open(at_once(store.load()).unwrap_or_default(), "tablet");
            let saved = book.journal().entries().len() - book.unsaved();
            prop_assert!(found.entries().len() >= saved);
            prop_assert_eq!(found.entries(), &book.journal().entries()[..found.entries().len()]);
            prop_assert_eq!(book.saving() == Saving::Saved, book.unsaved() == 0);
        }
        for _ in 0..12 {
            pump(&mut book, &store);
        }
        prop_assert_eq!(book.unsaved(), 0);
        let found = Journal::open(at_once(store.load()).unwrap_or_default(), "tablet");
        prop_assert_eq!(found.state(), book.state());
    }
}

/// However many lines are read at once, and whatever is among them: it is the book of all of them.
#[test]
fn lines_read_in_pieces_are_the_book() {
    let mut lines: Vec<String> = include_str!("../fixtures/v2.journal").lines().map(str::to_owned).collect();
    lines.insert(3, "not an entry".to_owned());
    lines.push(lines[0].clone());
    lines.reverse();
    let whole = Journal::open(lines.clone(), "tablet");
    let reading = |most: usize| {
        let mut reading = Reading::of("tablet");
        lines.chunks(most).for_each(|some| reading.add(some.to_vec()));
        reading
    };
    let same = |book: &Book| {
        assert_eq!(book.journal().entries(), whole.entries());
        assert_eq!(book.state(), whole.state());
        assert_eq!(book.journal().damaged(), whole.damaged());
    };
    for most in [1, 2, 7, lines.len()] {
        assert_eq!(reading(most).lines(), lines.len());
        same(&reading(most).book());
        let mut beside = Book::open(Vec::new(), "tablet");
        beside.join(reading(most));
        same(&beside);
    }
    // Beside something that was done meanwhile and is not stored yet.
    let mut book = Book::open(Vec::new(), "tablet");
    book.act(ingredient("wax", "Meadow wax", 900), 1, 1).unwrap();
    book.join(reading(2));
    assert_eq!(book.journal().len(), whole.len() + 1);
    // A customer of the old book was removed: their line is stored anew, however the book was read.
    assert_eq!(book.unsaved(), Book::open(lines, "tablet").unsaved() + 1);
    assert_eq!(book.state().ingredients.len(), whole.state().ingredients.len() + 1);
}
