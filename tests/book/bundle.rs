//! A book opened from a bundle is the book folded from its entries, whatever was done in it before and is done in it after;
//! and a bundle that is not whole is none.

use super::merge::{Deed, act, book, deeds, merged, same};
use super::sample::{began, began_on, burns, does, ended, id, ingredient, pictured, said, trial, undo};
use potside::book::bundle::{Read, Tying, read};
use potside::book::{Act, Entry, Journal, backup, read_copy};
use potside::day::Day;
use proptest::prelude::*;

const FIXTURE: &str = include_str!("../fixtures/v2.journal");

fn tie(journal: &Journal) -> Option<Vec<u8>> {
    let mut tying = Tying::begin(journal)?;
    while tying.go_on(journal) {}
    tying.finish(journal, "this build", journal.len())
}

fn open(bytes: Vec<u8>, device: &str) -> Option<Journal> {
    let Read { bundle, entries, .. } = read(bytes, "this build")?;
    Some(Journal::open_tied(bundle, entries, device))
}

/// The same book, its ended batches tied up.
pub(super) fn tied(journal: &Journal) -> Journal {
    open(tie(journal).expect("it can be tied up"), journal.device()).expect("it can be read")
}

fn is_tied(journal: &Journal) -> usize {
    journal.len() - journal.entries().len()
}

/// The same, whether untied or not.
#[track_caller]
pub(super) fn alike(tied: &Journal, folded: &Journal) {
    assert_eq!(tied.len(), folded.len());
    assert_eq!(tied.state(), folded.state());
    assert_eq!(tied.forks(), folded.forks());
    assert_eq!(tied.earlier(), folded.earlier());
    assert_eq!(tied.taken(), folded.taken());
    let mut untied = tied.clone();
    untied.untie_all();
    same(&untied, folded);
}

/// A book in which every few things done is a whole pour, or a whole trial.
pub(super) fn pours(device: &str, from: &[Entry], deeds: &[Deed]) -> Journal {
    let mut journal = Journal::open(from.iter().map(Entry::to_line).collect(), device);
    for (number, deed) in deeds.iter().enumerate() {
        if number % 3 == 0 {
            let batch = format!("b{}", (number / 3 + from.len()) % 5);
            let day = (number % 2 == 0).then_some(Day(20_415 + number as u32));
            for act in [
                began_on(&batch, 2, day),
                said(&batch, "smooth \"tops\" ¾"),
                ended(&batch, &format!("n{number}")),
            ] {
                does(&mut journal, act);
            }
        }
        if number % 6 == 3 {
            let candle = format!("k{}", (number / 6 + from.len()) % 5);
            let latest = journal.state().trials.get(&id(&candle)).and_then(|k| k.latest());
            let over = latest.map(|v| v.entry.clone());
            does(&mut journal, trial(&candle, over, "Late pear"));
            for act in burns(&candle) {
                does(&mut journal, act);
            }
        }
        let act = act(&journal, deed);
        does(&mut journal, act);
    }
    journal
}

#[test]
fn ended_batches_are_tied_up_and_untied_when_something_is_about_them() {
    let mut folded = Journal::open(FIXTURE.lines().map(str::to_owned).collect(), "tablet");
    for batch in ["one", "two", "three"] {
        does(&mut folded, began(batch, 2));
        does(&mut folded, ended(batch, "smooth"));
    }
    does(&mut folded, began("on", 2));
    let mut book = tied(&folded);
    let before = is_tied(&book);
    assert!(before >= 6, "{before} are tied up");
    alike(&book, &folded);
    // A note on one unties that one.
    let entry = book.entry(said("two", "late"), 5, 5);
    assert_eq!(entry, folded.entry(said("two", "late"), 5, 5));
    book.take(entry.clone());
    folded.take(entry);
    assert_eq!(is_tied(&book), before - 2);
    alike(&book, &folded);
    // What is looked for by its name is found; an entry that is here already is no other.
    let known = folded.history(&id("three"))[0].0.clone();
    book.take(known);
    assert_eq!(is_tied(&book), before - 4);
    alike(&book, &folded);
    // One that bears the name of an entry that is tied up, and is about something else: one of the two is set aside.
    let like = folded.history(&id("one"))[1].0.clone();
    let forged = Entry { act: ingredient("wax", "Forged", 1), ..like };
    let (mut taken, mut there) = (tied(&folded), folded.clone());
    taken.take(forged.clone());
    there.take(forged);
    assert_eq!(taken.damaged(), there.damaged());
    assert_eq!(taken.damaged().len(), 1);
    alike(&taken, &there);
    // The last things done are untied to be told.
    let mut told = tied(&folded);
    told.untie_latest(3);
    let said = |j: &Journal| j.done(None, 3, Default::default());
    assert_eq!(said(&told), said(&folded));
    assert!(is_tied(&told) > 0);
    // A copy is read against the whole book.
    let copy = backup(&folded.entries().iter().map(Entry::to_line).collect::<Vec<_>>(), "tablet", 1);
    assert_eq!(read_copy(&copy, &tied(&folded)), read_copy(&copy, &folded));
    // Tied up again from what is tied up, it is the same.
    let again = tied(&tied(&folded));
    assert_eq!(is_tied(&again), is_tied(&tied(&folded)));
    alike(&again, &folded);
}

#[test]
fn judged_trials_are_tied_up_and_untied_when_something_is_about_them() {
    let mut folded = Journal::open(Vec::new(), "tablet");
    for candle in ["one", "two", "three", "four"] {
        does(&mut folded, trial(candle, None, "Late pear"));
        does(&mut folded, pictured(candle, if candle == "one" { "a" } else { "b" }, 0));
        let [lit, out, weighed, closed] = burns(candle);
        does(&mut folded, lit);
        does(&mut folded, out);
        if candle != "four" {
            does(&mut folded, weighed);
            does(&mut folded, closed);
        }
    }
    // Put right and put away since, it is tied up as well.
    let over = folded.state().trials.get(&id("two")).and_then(|k| k.latest()).map(|v| v.entry.clone());
    does(&mut folded, trial("two", over.clone(), "Early pear"));
    does(&mut folded, Act::Retire { id: id("two"), retired: true });
    let book = tied(&folded);
    assert_eq!(is_tied(&book), 6 + 8 + 6, "all of those that were judged");
    alike(&book, &folded);
    // Its last entry is no burn of it: that one is the last still when it is tied up again.
    let again = tied(&book);
    assert_eq!((is_tied(&again), again.last_clock()), (6 + 8 + 6, folded.last_clock()));
    alike(&again, &folded);
    // What is asked of all of them unties none.
    let burns_of = |j: &Journal, candle: &str| j.state().burns.get(&id(candle)).unwrap().clone();
    for candle in ["one", "two", "three", "four"] {
        let (tied, here) = (burns_of(&book, candle), burns_of(&folded, candle));
        assert_eq!((tied.verdict(), tied.burning()), (here.verdict(), here.burning()), "{candle}");
    }
    assert_eq!(book.photos(), folded.photos());
    assert_eq!(book.photos(), ["b".repeat(64), "a".repeat(64)]);
    // A version that was made beside one that is tied up is beside it.
    let beside = trial("two", None, "Quince");
    let beside = Entry { device: "phone".to_owned(), ..folded.entry(beside, 5, 5) };
    let (mut taken, mut there) = (book.clone(), folded.clone());
    taken.take(beside.clone());
    there.take(beside);
    assert_eq!(is_tied(&taken), 6 + 6);
    alike(&taken, &there);
    // Made beside each other, neither is tied up.
    let mut forked = folded.clone();
    let beside = Entry { device: "phone".to_owned(), ..folded.entry(trial("three", over, "Quince"), 5, 5) };
    forked.take(beside);
    assert_eq!(is_tied(&tied(&forked)), 6 + 8);
    alike(&tied(&forked), &forked);
    // One more burn of it unties that one; so does taking back what was done last.
    for change in [burns("three")[0].clone(), undo(folded.state().last_done(&id("three")).unwrap())] {
        let (mut book, mut folded) = (book.clone(), folded.clone());
        let entry = book.entry(change, 5, 5);
        book.take(entry.clone());
        folded.take(entry);
        assert_eq!(is_tied(&book), 6 + 8);
        alike(&book, &folded);
        assert_eq!(is_tied(&tied(&folded)), 6 + 8, "it is not judged now");
    }
}

#[test]
fn a_bundle_that_is_not_whole_or_of_another_build_is_none() {
    let mut journal = Journal::open(vec![], "tablet");
    does(&mut journal, began("one", 2));
    does(&mut journal, ended("one", "smooth"));
    let bytes = tie(&journal).unwrap();
    assert!(read(bytes.clone(), "this build").is_some());
    assert!(read(bytes.clone(), "another build").is_none());
    for at in 0..bytes.len() {
        for bit in 0..8 {
            let mut changed = bytes.clone();
            changed[at] ^= 1 << bit;
            assert!(read(changed, "this build").is_none(), "bit {bit} of byte {at}");
        }
        assert!(read(bytes[..at].to_vec(), "this build").is_none(), "cut off at {at}");
    }
    assert!(read([bytes, vec![0]].concat(), "this build").is_none());
}

#[test]
fn a_damaged_book_is_not_tied_up() {
    let mut journal = Journal::open(vec!["not an entry".to_owned()], "tablet");
    does(&mut journal, began("one", 2));
    does(&mut journal, ended("one", "smooth"));
    assert!(tie(&journal).is_none());
}

#[test]
fn what_changes_while_a_book_is_tied_up_is_not_in_the_bundle_or_there_is_none() {
    let mut journal = Journal::open(vec![], "tablet");
    for batch in ["one", "two"] {
        does(&mut journal, began(batch, 2));
        does(&mut journal, ended(batch, "smooth"));
    }
    let while_tied = |change: &dyn Fn(&mut Journal)| {
        let mut journal = journal.clone();
        let mut tying = Tying::begin(&journal).unwrap();
        assert!(tying.go_on(&journal));
        change(&mut journal);
        let bytes = tying.finish(&journal, "this build", 4);
        bytes.map(|bytes| alike(&open(bytes, "tablet").unwrap(), &journal)).is_some()
    };
    assert!(while_tied(&|_| {}));
    assert!(while_tied(&|j| drop(does(j, began("three", 2)))));
    // Nothing was tied up of it yet, but it was looked through.
    assert!(while_tied(&|j| drop(does(j, ended("three", "not begun")))));
    let [first, second] = [0, 2].map(|n: usize| journal.entries()[n].id.clone());
    assert!(!while_tied(&|j| drop(does(j, said("one", "late")))));
    assert!(!while_tied(&|j| drop(does(j, undo(&first)))));
    assert!(!while_tied(&|j| drop(does(j, said("two", "late")))));
    // Undone before it was looked at, it is left among the others.
    assert!(while_tied(&|j| drop(does(j, undo(&second)))));
    assert!(!while_tied(&|j| j.hear("not an entry".to_owned())));
    // The book replaced by an empty one.
    let empty = backup(&[first_line(&journal)], "tablet", 1);
    assert!(!while_tied(&|j| {
        let replace = read_copy(&empty, j).unwrap().replace.unwrap();
        does(j, replace);
    }));
}

fn first_line(journal: &Journal) -> String {
    journal.entries()[0].to_line()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, ..ProptestConfig::default() })]

    #[test]
    fn opening_a_bundle_is_folding(
        fixture: bool, base in deeds(), one in deeds(), two in deeds(), at in any::<prop::sample::Index>()
    ) {
        let lines: Vec<&str> = if fixture { FIXTURE.lines().collect() } else { Vec::new() };
        let frozen = Journal::open(lines.into_iter().map(str::to_owned).collect(), "base");
        let base = pours("base", frozen.entries(), &base);
        let [mut folded, other] =
            [("tablet", &one), ("phone", &two)].map(|(device, deeds)| pours(device, base.entries(), deeds));
        let mut book = tied(&folded);
        alike(&book, &folded);
        // What is done after, one thing after the other: by the one and by the other book alike.
        for deed in &two {
            let act = act(&folded, deed);
            let entry = book.entry(act.clone(), 7, 7);
            prop_assert_eq!(&entry, &folded.entry(act, 7, 7));
            book.take(entry.clone());
            folded.take(entry);
            alike(&book, &folded);
        }
        // A book from elsewhere, at once and one entry after the other, in any order.
        let all = merged(&folded, &other);
        alike(&merged(&book, &other), &all);
        let mut slowly = book.clone();
        let mut entries = other.entries().to_vec();
        let first = at.index(entries.len().max(1));
        entries.rotate_left(first);
        entries.into_iter().rev().for_each(|entry| slowly.take(entry));
        alike(&slowly, &all);
        alike(&tied(&slowly), &all);
        // Stored lines that came after the bundle.
        let mut later = tied(&base);
        folded.entries().iter().for_each(|entry| later.hear(entry.to_line()));
        alike(&later, &folded);
        same(&book_of(&folded), &folded);
    }
}

fn book_of(journal: &Journal) -> Journal {
    book(journal.device(), journal.entries(), &[])
}
