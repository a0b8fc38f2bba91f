//! A copy has all of the book: also what the storage did not take, and what it does not give.

use super::decade_shared::{Size, lines};
use super::sample::{id, ingredient, said};
use potside::book::bundle::{Tying, read};
use potside::book::{Act, Book, Entry, Journal, StoreError, backup, read_copy};
use potside::shelf::Customer;

fn customer() -> Act {
    let body = Customer { name: "Quill".to_owned(), ..Customer::default() };
    Act::Customer { id: id("c"), over: None, body }
}

fn sorted(mut lines: Vec<String>) -> Vec<String> {
    lines.sort();
    lines
}

fn of(journal: &Journal) -> Vec<String> {
    sorted(journal.entries().iter().map(Entry::to_line).collect())
}

/// The storage is full: what was done since is in the copy all the same, and what it takes the place of is not.
#[test]
fn what_is_not_stored_is_in_a_copy() {
    let mut book = Book::open(vec![], "tablet");
    book.act(customer(), 1, 1).expect("done");
    book.act(ingredient("w", "Meadow wax", 862), 2, 2).expect("done");
    let stored: Vec<String> = book.to_store().expect("it waits").into_iter().map(|(_, line)| line).collect();
    book.stored(Ok(()));
    assert_eq!(book.lines(Some(stored.clone())), stored);
    book.act(Act::Forgotten { customer: id("c") }, 3, 3).expect("done");
    book.to_store();
    book.stored(Err(StoreError::Full));
    book.act(said("b", "late"), 4, 4).expect("done");
    let copied = book.lines(Some(stored));
    assert_eq!(sorted(copied.clone()), of(book.journal()));
    let text = backup(&copied, "tablet", 5);
    assert!(!text.contains("Quill"), "nor does it tell of one who was removed");
    let copy = read_copy(&text, &Journal::open(vec![], "phone")).expect("it is a copy");
    assert_eq!((copy.fresh.len(), copy.damaged.len()), (4, 0));
}

/// The storage does not answer: the copy is made of what is in memory, tied up or set aside as it is.
#[test]
fn what_cannot_be_read_is_copied_from_memory() {
    let folded = Journal::open(lines(Size { batches: 12, lots: 6, trials: 5 }), "tablet");
    let bytes = Tying::begin(&folded).and_then(|t| t.finish(&folded, "b", folded.len())).expect("tied up");
    let mut book = Book::open_tied(read(bytes, "b").expect("it is whole"), "tablet");
    assert!(book.journal().entries().len() < folded.len());
    assert_eq!(sorted(book.lines(None)), of(&folded));
    book.hear("torn".to_owned());
    assert_eq!(book.lines(None).len(), folded.len() + 1);
    assert!(book.lines(None).contains(&"torn".to_owned()));
}
