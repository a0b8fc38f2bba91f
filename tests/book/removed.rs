//! A person who asked to be removed is gone for good: out of the state, out of every stored line, out of what is merged.

use super::merge::merged;
use super::sample::{does, id, ingredient, undo};
use potside::book::{
    Act, Book, Entry, FailingStore, Fault, Id, Journal, MemoryStore, Seal, Store, StoreError, backup,
    read_copy,
};
use potside::shelf::{Customer, Order};
use std::pin::pin;
use std::task::{Context, Poll, Waker};

fn customer(name: &str, over: Option<&Id>) -> Act {
    let body = Customer { name: name.to_owned(), contact: "12 Long Lane".to_owned(), ..Customer::default() };
    Act::Customer { id: id("c"), over: over.cloned(), body }
}

fn order() -> Act {
    let body = Order {
        customer: Some(id("c")),
        lines: Vec::new(),
        wanted: None,
        in_parts: false,
        note: String::new(),
        closed: false,
    };
    Act::Order { id: id("o"), over: None, body }
}

const FORGOTTEN: fn() -> Act = || Act::Forgotten { customer: id("c") };

fn tells(text: &str) -> bool {
    text.contains("Quill") || text.contains("Long Lane")
}

/// Nothing of what was said of the person is in the state or in an entry; the order and its customer's id are there.
#[track_caller]
fn is_gone(journal: &Journal) {
    let lines: Vec<String> = journal.entries().iter().map(Entry::to_line).collect();
    assert!(!tells(&lines.concat()), "{lines:?}");
    assert!(!tells(&format!("{:?}", journal.state())));
    assert!(!tells(&format!("{:?}", journal.damaged())));
    assert!(journal.state().customers_shown().is_empty());
}

fn at_once<T>(future: impl Future<Output = T>) -> T {
    match pin!(future).poll(&mut Context::from_waker(Waker::noop())) {
        Poll::Ready(out) => out,
        Poll::Pending => panic!("it answers at once"),
    }
}

/// Does what a page does: stores what waits until nothing does.
fn stored(book: &mut Book, store: &impl Store) {
    while let Some(lines) = book.to_store() {
        let outcome = at_once(store.append(&lines));
        let failed = outcome.is_err();
        book.stored(outcome);
        if failed {
            return;
        }
    }
}

fn lines(store: &impl Store) -> Vec<String> {
    let mut lines = at_once(store.load()).expect("it answers");
    lines.sort();
    lines
}

/// A book with two versions of a customer and an order of theirs, and its storage.
fn shop() -> (Book, MemoryStore) {
    let (mut book, store) = (Book::open(vec![], "tablet"), MemoryStore::default());
    let first = book.act(customer("Quill", None), 1, 1).expect("done");
    book.act(customer("A. Quill", Some(&first)), 2, 2).expect("done");
    book.act(order(), 3, 3).expect("done");
    stored(&mut book, &store);
    (book, store)
}

#[test]
fn every_stored_line_is_replaced_by_one_that_tells_nothing() {
    let (mut book, store) = shop();
    let before = lines(&store);
    assert!(tells(&before.concat()));
    book.act(FORGOTTEN(), 4, 4).expect("done");
    // All in one piece: the storage has either everything of before or nothing of the person.
    assert_eq!(book.to_store().map(|l| l.len()), Some(3));
    book.stored(Err(StoreError::Full));
    assert_eq!(lines(&store), before);
    stored(&mut book, &store);
    let after = lines(&store);
    assert!(!tells(&after.concat()), "{after:?}");
    assert_eq!(after.len(), before.len() + 1);
    let read = |lines: &[String]| -> Vec<(Id, u64, u64)> {
        lines
            .iter()
            .map(|l| Entry::from_line(l).expect("it is whole"))
            .map(|e| (e.id, e.clock, e.at))
            .collect()
    };
    assert!(read(&before).iter().all(|e| read(&after).contains(e)), "the entries themselves stay");
    let again = Book::open(after, "tablet");
    assert_eq!(again.state(), book.state());
    is_gone(again.journal());
    let order = again.state().orders.get(&id("o")).and_then(|k| k.body()).expect("it stays");
    assert_eq!(order.customer, Some(id("c")));
}

/// The device died between the two, or the line came from elsewhere.
#[test]
fn what_a_storage_still_tells_is_taken_out_on_opening() {
    let (book, store) = shop();
    let forgotten = book.journal().entry(FORGOTTEN(), 9, 9);
    at_once(store.append(&[(forgotten.id.0.clone(), forgotten.to_line())])).expect("it is kept");
    let mut book = Book::open(lines(&store), "tablet");
    is_gone(book.journal());
    stored(&mut book, &store);
    assert!(!tells(&lines(&store).concat()));
    // Nothing more waits the next time; and a book that may not be written is not.
    assert_eq!(Book::open(lines(&store), "tablet").to_store(), None);
}

#[test]
fn nothing_brings_a_person_back() {
    let (mut book, store) = shop();
    let (old, first) = (book.journal().clone(), book.journal().entries()[0].id.clone());
    let forgotten = book.act(FORGOTTEN(), 4, 4).expect("done");
    assert!(book.journal().last_undoable().is_some_and(|e| e.id != forgotten));
    for act in [
        undo(&forgotten),
        Act::Retire { id: id("c"), retired: false },
        customer("Quill again", Some(&first)),
        Act::Choose { id: id("c"), chosen: first.clone(), among: vec![first.clone()] },
    ] {
        book.act(act.clone(), 5, 5).expect("done");
        is_gone(book.journal());
        assert!(book.journal().counts(&forgotten), "{act:?}");
    }
    // Nor does a copy of before, taken in or put in the place of the book.
    let text = backup(&old.entries().iter().map(Entry::to_line).collect::<Vec<_>>(), "tablet", 6);
    let copy = read_copy(&text, book.journal()).expect("it is a copy");
    assert_eq!((copy.fresh.len(), copy.known, copy.damaged.len(), copy.seal), (0, 3, 0, Seal::Whole));
    book.act(copy.replace.expect("it is whole"), 7, 7).expect("done");
    is_gone(book.journal());
    assert!(book.journal().counts(&forgotten));
    stored(&mut book, &store);
    assert!(!tells(&lines(&store).concat()));
    // What another tab tells late is taken out of the storage again.
    for entry in old.entries() {
        at_once(store.append(&[(entry.id.0.clone(), entry.to_line())])).expect("it is kept");
        book.hear(entry.to_line());
    }
    is_gone(book.journal());
    stored(&mut book, &store);
    assert!(!tells(&lines(&store).concat()));
    let done = book.journal().done(None, 99, potside::quantity::Voice::default());
    let removal = done.iter().find(|d| d.entry == forgotten).expect("it is told");
    assert_eq!((removal.turn(), removal.undone.clone()), (None, None));
}

/// A tablet removes somebody whom a phone, meanwhile, has changed.
#[test]
fn a_removal_counts_over_what_another_device_did() {
    let (book, _) = shop();
    let base: Vec<String> = book.journal().entries().iter().map(Entry::to_line).collect();
    let mut tablet = Journal::open(base.clone(), "tablet");
    does(&mut tablet, FORGOTTEN());
    let mut phone = Journal::open(base.clone(), "phone");
    for n in 0..4 {
        does(&mut phone, ingredient("t", "Meadow wax", n));
    }
    let last = phone.state().customers.get(&id("c")).and_then(|k| k.latest()).map(|v| v.entry.clone());
    does(&mut phone, customer("B. Quill", last.as_ref()));
    for both in [merged(&tablet, &phone), merged(&phone, &tablet)] {
        is_gone(&both);
        assert!(both.forks().is_empty());
        // A third device that has only the old lines takes the new ones in, one after the other in any order.
        for reversed in [false, true] {
            let mut third = Journal::open(base.clone(), "third");
            let mut entries = both.entries().to_vec();
            if reversed {
                entries.reverse();
            }
            entries.into_iter().for_each(|e| third.take(e));
            is_gone(&third);
            assert_eq!((third.entries(), third.state()), (both.entries(), both.state()));
        }
    }
    // A copy made after the removal removes the person where it is taken in; nothing of it is left out.
    let after: Vec<String> = tablet.entries().iter().map(Entry::to_line).collect();
    let mut book = Book::open(base.clone(), "phone");
    let store = MemoryStore::default();
    for line in &base {
        let entry = Entry::from_line(line).expect("whole");
        at_once(store.append(&[(entry.id.0, line.clone())])).expect("kept");
    }
    let copy = read_copy(&backup(&after, "tablet", 5), book.journal()).expect("it is a copy");
    assert_eq!((copy.damaged.len(), copy.replace.is_some()), (0, true));
    book.take_in(copy.fresh).expect("taken in");
    is_gone(book.journal());
    stored(&mut book, &store);
    assert!(!tells(&lines(&store).concat()));
    // And a copy made before it is taken in without what it tells.
    let mut book = Book::open(vec![], "fourth");
    let store = FailingStore::at([(1, Fault::KeptUnsaid)]);
    book.take_in(read_copy(&backup(&[after[3].clone()], "t", 5), book.journal()).expect("a copy").fresh)
        .expect("taken in");
    book.take_in(read_copy(&backup(&base, "t", 5), book.journal()).expect("a copy").fresh).expect("taken in");
    is_gone(book.journal());
    let waiting = book.to_store().expect("it waits");
    assert!(!tells(&format!("{waiting:?}")), "{waiting:?}");
    book.stored(at_once(store.append(&waiting)));
    stored(&mut book, &store);
    assert!(!tells(&lines(&store).concat()));
}

/// What is taken in with a removal is stored as it is, but for what it tells of the person; and that it was is said once.
#[test]
fn what_comes_with_a_removal_is_stored_once_each() {
    let mut other = Journal::open(vec![], "desk");
    does(&mut other, customer("Quill", None));
    does(&mut other, ingredient("w", "Meadow wax", 1));
    let mut book = Book::open(vec![], "tablet");
    let taken = |journal: &Journal, from: usize| {
        journal.entries()[from..].iter().map(|e| (e.clone(), e.to_line())).collect::<Vec<_>>()
    };
    let first = taken(&other, 0);
    does(&mut other, FORGOTTEN());
    does(&mut other, ingredient("v", "Chalk wax", 1));
    // The customer as they were, then the removal, and a wax before and after.
    book.take_in([first, taken(&other, 2)].concat()).expect("taken in");
    let waiting = book.to_store().expect("it waits");
    let mut ids: Vec<&str> = waiting.iter().map(|(id, _)| id.as_str()).collect();
    ids.sort_unstable();
    let mut all: Vec<&str> = other.entries().iter().map(|e| e.id.0.as_str()).collect();
    all.sort_unstable();
    assert_eq!(ids, all);
    assert!(!tells(&format!("{waiting:?}")) && waiting.iter().any(|(_, line)| line.contains("Meadow wax")));
    assert!(book.has_taken_out() && !book.has_taken_out());
    assert!(!Book::open(vec![], "tablet").has_taken_out());
}

/// Two entries of one id, one of them of somebody: which one stays does not hang on when the person was removed.
#[test]
fn of_two_entries_of_one_id_the_same_stays_before_and_after() {
    for name in ["Aa Quill", "Zz Quill"] {
        // The customer's line comes before that of an ingredient, and after that of a note.
        for other in [ingredient("t", "Meadow wax", 1), super::sample::said("b", "a slip")] {
            let one = super::sample::entry("same", 3, customer(name, None));
            let two = super::sample::entry("same", 3, other);
            let gone = super::sample::entry("gone", 4, FORGOTTEN());
            let all = [one, two, gone];
            let mut told = Vec::new();
            for order in [[0, 1, 2], [0, 2, 1], [1, 0, 2], [1, 2, 0], [2, 0, 1], [2, 1, 0]] {
                let mut journal = Journal::open(vec![], "tablet");
                order.iter().for_each(|n| journal.take(all[*n].clone()));
                is_gone(&journal);
                told.push((journal.entries().to_vec(), journal.state().clone()));
            }
            assert!(told.iter().all(|t| *t == told[0]));
        }
    }
}

/// What was set aside and tells of nobody stays where it is.
#[test]
fn only_what_tells_of_the_person_is_dropped_of_what_was_set_aside() {
    let aside = |n: u32| super::sample::entry("same", 3, ingredient("t", &format!("Wax {n}"), 1));
    let mut journal = Journal::open(vec!["foreign".to_owned()], "tablet");
    for entry in [aside(1), aside(2), super::sample::entry("c", 4, customer("Quill", None))] {
        journal.take(entry);
    }
    let before = journal.damaged().to_vec();
    assert_eq!(before.len(), 2);
    does(&mut journal, FORGOTTEN());
    assert_eq!(journal.damaged(), before);
}
