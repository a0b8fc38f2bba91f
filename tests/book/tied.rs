//! A book opened from a bundle is the book, and unties what it is asked to.

use super::sample::{began, does, ended, id};
use potside::book::bundle::{Tying, read};
use potside::book::{Book, Entry, Journal};

const FIXTURE: &str = include_str!("../fixtures/v2.journal");

#[test]
fn a_book_is_opened_from_its_bundle_and_unties_what_is_asked() {
    let mut folded = Journal::open(FIXTURE.lines().map(str::to_owned).collect(), "tablet");
    for batch in ["one", "two"] {
        does(&mut folded, began(batch, 2));
        does(&mut folded, ended(batch, "well"));
    }
    let mut tying = Tying::begin(&folded).unwrap();
    while tying.go_on(&folded) {}
    let bytes = tying.finish(&folded, "this build", folded.len()).unwrap();
    let open = || Book::open_tied(read(bytes.clone(), "this build").unwrap(), "tablet");
    let untied = |book: &Book| book.journal().entries().len();

    let mut book = open();
    assert_eq!((book.journal().len(), book.journal().device()), (folded.len(), "tablet"));
    assert_eq!(book.state(), folded.state());
    let before = untied(&book);
    assert!(before < folded.len());
    // A batch that began and ended.
    book.untie(&id("one"));
    assert_eq!(untied(&book), before + 2);
    assert_eq!(book.state(), folded.state());

    let mut book = open();
    book.untie_latest(3);
    let last = |entries: &[Entry]| entries.iter().rev().take(3).map(|e| e.id.clone()).collect::<Vec<_>>();
    assert_eq!(last(book.journal().entries()), last(folded.entries()));
    assert!(untied(&book) > before);
}
