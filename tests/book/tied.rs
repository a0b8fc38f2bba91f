//! A book opened from a bundle is the book, and unties what it is asked to and no more.

use super::decade_shared::{Size, lines};
use super::sample::{began, burns, does, ended, entry, id, ingredient, trial};
use potside::bench::burn::{Trial, Verdict};
use potside::book::bundle::{Tying, read};
use potside::book::{Act, Batch, Book, Bundle, Burns, Entry, Id, Journal, Kept, Reminder, Subject};
use potside::pot::{Event, StepKey, Used};
use potside::quantity::Mass;
use std::cell::Cell;
use std::rc::Rc;

const FIXTURE: &str = include_str!("../fixtures/v2.journal");

fn tie(journal: &Journal) -> Vec<u8> {
    let mut tying = Tying::begin(journal).unwrap();
    while tying.go_on(journal) {}
    tying.finish(journal, "this build", journal.len()).unwrap()
}

/// A bundle that counts how often it is untied.
struct Watched {
    bundle: Rc<dyn Bundle>,
    untied: Rc<Cell<usize>>,
}

impl Bundle for Watched {
    fn batches(&self, bundle: &Rc<dyn Bundle>, each: &mut dyn FnMut(Batch)) {
        self.bundle.batches(bundle, each);
    }
    fn trials(&self, bundle: &Rc<dyn Bundle>) -> Vec<(Kept<Trial>, Burns)> {
        self.bundle.trials(bundle)
    }
    fn places(&self) -> usize {
        self.bundle.places()
    }
    fn of_thing(&self, id: &Id) -> Option<usize> {
        self.bundle.of_thing(id)
    }
    fn of_entry(&self, id: &Id) -> Option<usize> {
        self.bundle.of_entry(id)
    }
    fn entries(&self, place: usize) -> Vec<Entry> {
        self.untied.set(self.untied.get() + 1);
        self.bundle.entries(place)
    }
    fn last(&self, place: usize) -> (u64, usize) {
        self.bundle.last(place)
    }
    fn times(&self) -> (u64, u64) {
        self.bundle.times()
    }
    fn verdict(&self, place: usize) -> Option<Verdict> {
        self.bundle.verdict(place)
    }
    fn pictured(&self, place: usize) -> bool {
        self.bundle.pictured(place)
    }
    fn fills(&self, place: usize) -> (usize, Option<u64>) {
        self.bundle.fills(place)
    }
    fn cure_days(&self, place: usize) -> u32 {
        self.bundle.cure_days(place)
    }
    fn wick(&self, place: usize) -> &str {
        self.bundle.wick(place)
    }
    fn used(&self, place: usize) -> Vec<Used<'_>> {
        self.bundle.used(place)
    }
    fn takes(&self, place: usize, name: &str) -> bool {
        self.bundle.takes(place, name)
    }
}

/// The book opened from its bundle, and how often something of it was untied.
fn watched(folded: &Journal) -> (Journal, Rc<Cell<usize>>) {
    let read = read(tie(folded), "this build").unwrap();
    let untied = Rc::default();
    let bundle = Rc::new(Watched { bundle: read.bundle, untied: Rc::clone(&untied) });
    (Journal::open_tied(bundle, read.entries, folded.device()), untied)
}

fn years() -> Journal {
    Journal::open(lines(Size { batches: 12, lots: 6, trials: 5 }), "tablet")
}

#[test]
fn a_book_is_opened_from_its_bundle_and_unties_what_is_asked() {
    let mut folded = Journal::open(FIXTURE.lines().map(str::to_owned).collect(), "tablet");
    for batch in ["one", "two"] {
        does(&mut folded, began(batch, 2));
        does(&mut folded, ended(batch, "well"));
    }
    let bytes = tie(&folded);
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

/// Nothing went into the vessel: tied up, the batch has none filled either.
#[test]
fn a_vessel_left_empty_is_tied_up_as_none() {
    let mut folded = Journal::open(FIXTURE.lines().map(str::to_owned).collect(), "tablet");
    does(&mut folded, began("one", 2));
    let step = StepKey::Fill { pour: 0, vessel: 1 };
    let event = Event::Did { step, weighed: Some(Mass::ZERO), temperature: None, at: 7 };
    does(&mut folded, Act::At { batch: id("one"), event });
    does(&mut folded, ended("one", "cracked"));
    let (book, untied) = watched(&folded);
    let of = |journal: &Journal| {
        let run = &journal.state().batches.get(&id("one")).unwrap().run;
        (run.fills(), run.used().len())
    };
    assert_eq!(of(&book), of(&folded));
    assert_eq!((of(&book).0, untied.get()), ((0, None), 0));
}

#[test]
fn what_is_asked_of_every_batch_and_trial_unties_none() {
    let folded = years();
    let (book, untied) = watched(&folded);
    let trials = folded.state().burns.iter().filter(|(_, burns)| burns.verdict().is_some());
    let all: Vec<&Id> = folded.state().batches.values().map(|b| &b.id).chain(trials.map(|t| t.0)).collect();
    assert!(all.len() > 12 + 5, "those of the demo are among them");
    let about = |e: &Entry| matches!(e.act.subject(), Subject::Thing(thing) if all.contains(&thing));
    assert!(!book.entries().iter().any(about), "all of them are tied up");
    for here in folded.state().batches.values() {
        let tied = book.state().batches.get(&here.id).unwrap();
        assert!(here.run.fills().0 > 0 || here.run.used().len() > 1, "something was done");
        assert_eq!(tied.run.fills(), here.run.fills());
        assert_eq!((tied.run.cure_days(), tied.run.wick()), (here.run.cure_days(), here.run.wick()));
        assert_eq!(tied.run.used(), here.run.used());
        let plan = &here.run.plan;
        let needs = plan.needs();
        let names = needs.iter().map(|need| need.name.as_str()).chain([&*plan.vessel, &*plan.wick, "Chalk"]);
        for name in names {
            assert_eq!(tied.run.takes(name), here.run.takes(name), "{name}");
            let other = format!("{} ", name.to_uppercase());
            assert_eq!(tied.run.takes(&other), here.run.takes(name), "{other}");
        }
        assert!(!tied.run.takes("Chalk"));
    }
    for (thing, here) in folded.state().burns.iter() {
        let tied = book.state().burns.get(thing).unwrap();
        assert_eq!((tied.verdict(), tied.burning()), (here.verdict(), here.burning()));
    }
    assert_eq!((book.len(), book.is_empty()), (folded.len(), false));
    assert!(Journal::default().is_empty());
    assert_eq!(book.last_clock(), folded.last_clock());
    assert!(folded.entries().iter().all(|e| book.knows(&e.id)));
    assert!(!book.knows(&id("of nothing here")));
    for copied in std::iter::once(None).chain(folded.entries().iter().map(|e| Some(e.at))) {
        let asked = |j: &Journal| Reminder { days: 1, pours: 1 }.said(copied, j, u64::MAX);
        assert_eq!(asked(&book), asked(&folded), "{copied:?}");
    }
    assert!(book.photos().is_empty());
    assert_eq!(untied.get(), 0);
    // To look into one unties that one, once.
    let batch = folded.state().batches.at(3).unwrap();
    for _ in 0..2 {
        assert_eq!(book.state().batches.get(&batch.id).unwrap().run.entries(), batch.run.entries());
    }
    assert_eq!(untied.get(), 1);
}

/// Such ids come from no device; but what is stored may be anything.
#[test]
fn what_has_its_id_with_something_else_is_not_tied_up() {
    let mut folded = Journal::open(Vec::new(), "tablet");
    does(&mut folded, began("one", 2));
    does(&mut folded, ended("one", "well"));
    let version = does(&mut folded, trial("two", None, "Late pear"));
    burns("two").into_iter().for_each(|act| drop(does(&mut folded, act)));
    assert_eq!(watched(&folded).0.entries().len(), 0);
    does(&mut folded, ingredient("one", "Wax", 1));
    let Act::Ingredient { id, body, .. } = ingredient("two", "Dye", 1) else { unreachable!("it is one") };
    does(&mut folded, Act::Ingredient { id, over: Some(version.id), body });
    let (book, _) = watched(&folded);
    assert_eq!(book.state(), folded.state());
    assert_eq!(book.entries(), folded.entries());
}

#[test]
fn what_is_tied_up_is_told_apart() {
    let (book, _) = watched(&years());
    let state = book.state();
    let (one, two) = (state.batches.at(0).unwrap(), state.batches.at(1).unwrap());
    assert!(one.run == one.run.clone() && one.run != two.run);
    let burns: Vec<&Burns> = state.burns.values().collect();
    assert!(burns[0] == burns[0] && burns[0] != burns[1]);
}

/// Fifty times as many entries as are asked for: then it is long ago.
#[test]
fn the_last_thing_done_here_is_untied_if_it_is_not_long_ago() {
    for (elsewhere, long_ago) in [(10, false), (49, false), (50, true), (60, true)] {
        let mut folded = Journal::open(Vec::new(), "tablet");
        does(&mut folded, began("one", 2));
        let last = does(&mut folded, ended("one", "well"));
        for n in 0..elsewhere {
            let act = ingredient("wax", &format!("Wax {n}"), 1);
            folded.take(Entry { device: "phone".to_owned(), ..entry(&format!("p{n}"), 10 + n, act) });
        }
        let (mut book, _) = watched(&folded);
        assert_eq!(book.last_undoable(), None);
        book.untie_latest(1);
        assert_eq!(book.last_undoable(), (!long_ago).then_some(&last), "{elsewhere}");
        assert_eq!(book.entries().len() == folded.len(), !long_ago, "{elsewhere}");
    }
}
