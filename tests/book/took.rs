//! A copy that was taken in is taken back for good, brought back, and merged, always to the same book.

use super::merge::{Deed, act, book, deeds, merged, same};
use super::sample::{does, id, ingredient, undo};
use potside::book::{Act, Book, Copy, Damage, Entry, Journal, Replace, UpTo, backup, read_copy};
use potside::quantity::Voice;
use potside::shelf::Customer;
use proptest::prelude::*;

fn lines(entries: &[Entry]) -> Vec<String> {
    entries.iter().map(Entry::to_line).collect()
}

fn copy(of: &[Entry], journal: &Journal) -> Copy {
    read_copy(&backup(&lines(of), "table", 7), journal).expect("it is a copy")
}

/// A book with these entries into which a copy of those was taken.
fn took(here: &[Entry], there: &[Entry]) -> Book {
    let mut book = Book::open(lines(here), "tablet");
    let copy = copy(there, book.journal());
    book.take_copy(copy.fresh, copy.made, None, 9, 9).expect("taken in");
    book
}

/// Opened anew from its lines, with more of them.
fn opened(journal: &Journal, more: &[Entry]) -> Journal {
    Journal::open([lines(journal.entries()), lines(more)].concat(), "tablet")
}

/// The tablet's book from these entries on. No id is one of those that are gone: a device draws its numbers anew.
fn went_on(from: &[Entry], deeds: &[Deed]) -> Journal {
    let mut journal = Journal::open(lines(from), "tablet");
    for (at, deed) in deeds.iter().enumerate() {
        let entry = journal.entry(act(&journal, deed), 1_764_000_000_000, 3 + at as u32);
        journal.take(entry);
    }
    journal
}

fn is_removal(entry: &Entry) -> bool {
    matches!(entry.act, Act::Forgotten { .. })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, ..ProptestConfig::default() })]

    /// Taken in and taken back is the book as it was; what was done since stays, as if nothing had been taken in; brought
    /// back it is the merged book. All of it also after a reload, and on another device whichever way it comes there.
    #[test]
    fn taken_back_it_is_the_book_as_it_was(
        base in deeds(),
        mine in deeds(),
        theirs in deeds(),
        since in deeds(),
        lost in prop::collection::vec(0..4_u8, 40),
    ) {
        let base = book("tablet", &[], &base);
        // Some of what was written here is gone, and only the copy has it.
        let mut kept = lost.iter().map(|lost| *lost > 0);
        let left: Vec<Entry> =
            base.entries().iter().filter(|e| kept.next() != Some(false) || is_removal(e)).cloned().collect();
        let before = went_on(&left, &mine);
        let there = book("table", base.entries(), &theirs);
        prop_assume!(!there.entries().is_empty());
        let fresh = copy(there.entries(), &before).fresh;
        prop_assume!(!fresh.iter().any(|(e, _)| is_removal(e) || before.find(&e.id).is_some()));
        let mut taken = took(before.entries(), there.entries());
        let merged_state = merged(&before, &there);
        prop_assert_eq!(taken.state(), merged_state.state(), "step 1");
        let Some(one) = taken.journal().taken().into_iter().find(|t| t.at == 9) else {
            prop_assert!(fresh.iter().all(|(e, _)| !e.act.is_undoable()));
            return Ok(());
        };
        let came = fresh.iter().filter(|(e, _)| e.act.is_undoable()).count() as u64;
        prop_assert_eq!((one.entries, one.made, one.device.as_str()), (came, Some(7), "tablet"));

        // Taken back at once.
        let mut back = taken.clone();
        let entry = back.act(one.back.clone(), 10, 10).expect("taken back");
        prop_assert_eq!(back.state(), before.state(), "step 2");
        prop_assert!(fresh.iter().all(|(e, _)| back.journal().find(&e.id).is_some()), "nothing is deleted");
        same(back.journal(), &opened(back.journal(), &[]));
        prop_assert!(back.journal().taken().iter().all(|t| t.at != 9));
        let earlier = back.journal().earlier();
        prop_assert_eq!((&earlier[0].entry, earlier[0].taken, earlier[0].entries), (&entry, Some(9), fresh.len()));
        let again = copy(there.entries(), back.journal());
        prop_assert!(again.fresh.is_empty() && again.aside >= fresh.len());
        // Merged either way.
        let mut other = there.clone();
        does(&mut other, ingredient("t0", "Meanwhile", 4));
        same(&merged(back.journal(), &other), &merged(&other, back.journal()));
        // Brought back.
        back.act(undo(&entry), 11, 11).expect("brought back");
        prop_assert_eq!(back.state(), merged_state.state(), "step 3");
        prop_assert!(back.journal().taken().iter().any(|t| t.at == 9));

        // Taken back later: what was done since is as if nothing had been taken in.
        let first = taken.journal().entries().len();
        let later = book("tablet", taken.journal().entries(), &since);
        let since: Vec<Entry> =
            later.entries().iter().filter(|e| taken.journal().find(&e.id).is_none()).cloned().collect();
        prop_assert_eq!(later.entries().len(), first + since.len());
        for entry in &since {
            taken.hear(entry.to_line());
        }
        taken.act(one.back, 12, 12).expect("taken back");
        let without = opened(&before, &since);
        prop_assert_eq!(taken.state(), without.state(), "step 4");
    }
}

/// A person who was removed stays so; all else that came goes again.
#[test]
fn who_was_removed_stays_removed() {
    let customer = |name: &str| Act::Customer {
        id: id("c"),
        over: None,
        body: Customer { name: name.to_owned(), ..Customer::default() },
    };
    let mut here = Journal::open(vec![], "tablet");
    does(&mut here, customer("Quill"));
    let mut there = Journal::open(lines(here.entries()), "table");
    does(&mut there, Act::Forgotten { customer: id("c") });
    // Nothing else came: there is nothing to take back.
    let copy = copy(there.entries(), &here);
    assert!(copy.undoable && copy.removes == ["Quill"]);
    assert!(took(here.entries(), there.entries()).journal().taken().is_empty());
    does(&mut there, ingredient("w", "Meadow wax", 1));
    let mut book = took(here.entries(), there.entries());
    let taken = book.journal().taken().remove(0);
    assert_eq!((taken.entries, book.state().ingredients.len()), (1, 1));
    book.act(taken.back, 10, 10).expect("taken back");
    assert!(book.state().ingredients.is_empty() && book.state().customers_shown().is_empty());
    assert_eq!(book.state().customers.len(), 1);
    assert!(!lines(book.journal().entries()).concat().contains("Quill"));
}

/// Replaced in one go, it is first the earlier book that is brought back; then what the copy brought can go too.
#[test]
fn a_replacing_is_taken_back_in_two_steps() {
    let mut here = Journal::open(vec![], "tablet");
    does(&mut here, ingredient("w", "Meadow wax", 1));
    let mut there = Journal::open(vec![], "table");
    does(&mut there, ingredient("v", "Chalk wax", 1));
    let mut book = Book::open(lines(here.entries()), "tablet");
    let copy = copy(there.entries(), book.journal());
    book.take_copy(copy.fresh, copy.made, copy.replace, 9, 9).expect("replaced");
    assert_eq!(book.state(), there.state());
    // Stored in one piece.
    assert_eq!(book.to_store().map(|all| all.len()), Some(3));
    assert!(book.journal().taken().is_empty());
    let earlier = book.journal().earlier().remove(0);
    assert_eq!((earlier.taken, earlier.entries), (None, 1));
    book.act(undo(&earlier.entry), 10, 10).expect("brought back");
    assert_eq!(book.state().ingredients.len(), 2);
    let taken = book.journal().taken().remove(0);
    book.act(taken.back, 11, 11).expect("taken back");
    assert_eq!(book.state(), here.state());
}

/// It can be taken back until it was, whatever else was replaced before it or since.
#[test]
fn what_was_taken_in_is_listed_until_it_is_taken_back() {
    let mut here = Journal::open(vec![], "tablet");
    does(&mut here, ingredient("w", "Meadow wax", 1));
    let mut there = Journal::open(vec![], "table");
    does(&mut there, ingredient("v", "Chalk wax", 1));
    let mut book = took(here.entries(), there.entries());
    let taken = book.journal().taken().remove(0);
    // From elsewhere there may come an act that says the same and stands before it.
    let mut desk = Journal::open(lines(here.entries()), "desk");
    let odd = does(&mut desk, taken.back.clone());
    assert!(odd.place() < book.journal().entries().last().expect("word of it").place());
    assert_eq!(opened(book.journal(), &[odd]).taken(), std::slice::from_ref(&taken));
    // Another device, which knows nothing of it, replaces its book at the very next clock.
    let mut desk = Journal::open(lines(here.entries()), "desk");
    does(&mut desk, ingredient("x", "Fern oil", 1));
    let other = copy(here.entries(), &desk).replace.expect("it can be");
    let at = does(&mut desk, other).clock;
    assert_eq!(Some(at), book.journal().entries().last().map(|e| e.clock + 1));
    assert_eq!(opened(book.journal(), desk.entries()).taken(), std::slice::from_ref(&taken));
    book.act(ingredient("y", "Fern oil", 1), 12, 12).expect("done");
    book.act(taken.back, 13, 13).expect("taken back");
    assert!(book.journal().taken().is_empty());
}

/// Two who give each other copies in turn come to the same book, and then nothing more is brought.
#[test]
fn copies_given_in_turn_come_to_an_end() {
    let mut here = Journal::open(vec![], "tablet");
    does(&mut here, ingredient("w", "Meadow wax", 1));
    let mut there = Journal::open(vec![], "table");
    does(&mut there, ingredient("v", "Chalk wax", 1));
    let (mut both, mut brought) = ([here, there], Vec::new());
    for turn in 0..6 {
        let (one, other) = (&both[turn % 2], &both[1 - turn % 2]);
        let mut book = Book::open(lines(one.entries()), one.device());
        let copy = copy(other.entries(), book.journal());
        assert!(copy.undoable);
        brought.push(copy.fresh.len());
        book.take_copy(copy.fresh, copy.made, None, 9, 9).expect("taken in");
        both[turn % 2] = book.journal().clone();
    }
    // The wax; the other wax and word of that taking in; word of this one; and no more.
    assert_eq!(brought, [1, 2, 1, 0, 0, 0]);
    same(&both[0], &both[1]);
}

/// What would have to be named entry by entry has its bounds, and it is said before.
#[test]
fn more_than_can_be_named_is_not_written_down() {
    let mut whole = Journal::open(vec![], "tablet");
    for n in 0..2_002 {
        does(&mut whole, ingredient(&format!("t{}", n % 3), "Meadow wax", 1 + n % 5));
    }
    let all = whole.entries();
    for (lost, undoable) in [(2_000, true), (2_001, false)] {
        let here = Journal::open(lines(&all[lost..]), "tablet");
        let copy = copy(all, &here);
        assert_eq!((copy.undoable, copy.fresh.len()), (undoable, lost));
        let mut book = took(here.entries(), all);
        assert_eq!(book.state(), whole.state());
        assert_eq!(book.journal().taken().len(), usize::from(undoable));
        let Some(taken) = book.journal().taken().pop() else { continue };
        assert_eq!(opened(book.journal(), &[]).taken(), book.journal().taken());
        book.act(taken.back, 10, 10).expect("taken back");
        assert_eq!(book.state(), here.state());
    }
    // From elsewhere there may come one all the same: it is passed over, and so is what it says.
    let mut journal = Journal::open(lines(&all[..1]), "tablet");
    for devices in [2_001, 2_000] {
        let had = (0..devices).map(|n| UpTo { device: format!("d{n}"), clock: 9 }).collect();
        let back = Box::new(Replace { had, kept: vec![], without: vec![], made: None });
        let before = journal.state().clone();
        does(&mut journal, Act::Took { entries: 1, back });
        assert_eq!(journal.state(), &before);
        assert_eq!(journal.taken().len(), usize::from(devices == 2_000), "{devices}");
    }
}

/// From more devices than are named no way back is written, nor a replacing.
#[test]
fn a_copy_of_very_many_devices_is_only_taken_in() {
    let entry = |n: usize| {
        let mut journal = Journal::open(vec![], &format!("d{}", n * 7_919 % 10_007));
        does(&mut journal, ingredient("t", "Meadow wax", 1))
    };
    for (devices, named) in [(2_000, true), (2_001, false)] {
        let there: Vec<Entry> = (0..devices).map(entry).collect();
        let copy = copy(&there, &Journal::open(vec![], "tablet"));
        assert_eq!((copy.fresh.len(), copy.undoable, copy.replace.is_some()), (devices, named, named));
    }
}

/// The undo button takes back what was done here, not that a copy was taken in: that has a way of its own, and is told.
#[test]
fn a_taking_in_is_told_and_no_undo_names_it() {
    let mut here = Journal::open(vec![], "tablet");
    let mine = does(&mut here, ingredient("w", "Meadow wax", 1));
    let mut there = Journal::open(vec![], "table");
    does(&mut there, ingredient("v", "Chalk wax", 1));
    let mut book = took(here.entries(), there.entries());
    assert_eq!(book.journal().last_undoable().map(|e| &e.id), Some(&mine.id));
    let told = book.journal().done(None, 1, Voice::default()).remove(0);
    assert!(told.what.starts_with("A copy taken in") && told.changes.is_empty() && told.turn().is_none());
    book.act(undo(&told.entry), 10, 10).expect("done");
    assert_eq!(book.journal().taken().len(), 1, "an undo from elsewhere hides nothing");
    let taken = book.journal().taken().remove(0);
    book.act(taken.back, 11, 11).expect("taken back");
    let told = book.journal().done(None, 1, Voice::default()).remove(0);
    assert_eq!(told.what, "A copy taken back");
    // The button takes that back too, and brings what came.
    let last = book.journal().last_undoable().expect("the taking back").id.clone();
    book.act(undo(&last), 12, 12).expect("brought back");
    assert_eq!(book.state().ingredients.len(), 2);
}

/// What the version before this one makes of it: a whole line that it does not understand, set aside; the rest opens, and
/// can be written in.
#[test]
fn an_act_that_is_not_known_yet_is_set_aside() {
    let mut journal = Journal::open(vec![], "tablet");
    does(&mut journal, ingredient("w", "Meadow wax", 1));
    let back = Box::new(Replace { had: vec![], kept: vec![], without: vec![], made: None });
    let line = does(&mut journal, Act::Took { entries: 1, back }).to_line();
    let (body, _) = line.split_once(",\"sum\"").expect("it has a sum");
    let body = body.replace("\"Took\"", "\"Later\"");
    let line = format!("{body},\"sum\":\"{:08x}\"}}", potside::book::crc32c(body.as_bytes()));
    let old = Journal::open(vec![journal.entries()[0].to_line(), line], "tablet");
    assert!(matches!(old.damaged(), [(_, Damage::Unknown { reason })] if reason.contains("Later")));
    assert!(!old.read_only() && old.state() == journal.state());
}
