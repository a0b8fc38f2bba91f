//! A bundle of another build of the app is renewed from its entries, as if the whole book were tied up by this one; what the
//! other found in them is not believed, and what stored lines say more than it is seen.

use super::bundle::{alike, pours};
use super::merge::deeds;
use super::sample::{began, burned, burns, does, ended, id, said, trial, undo};
use potside::bench::burn::BurnEvent;
use potside::book::bundle::{Found, Read, Tying, find, read};
use potside::book::{Act, Entry, Id, Journal, Replace, UpTo};
use potside::quantity::{Amount, Exact, MassUnit};
use potside::shelf::Finish;
use proptest::prelude::*;

const FIXTURE: &str = include_str!("../fixtures/v2.journal");

fn tied_by(journal: &Journal, build: &str) -> Vec<u8> {
    Tying::begin(journal).unwrap().finish(journal, build, journal.len()).expect("it can be tied up")
}

/// The bundle that this build makes of one of another.
fn renewed(bytes: Vec<u8>) -> Option<Vec<u8>> {
    match find(bytes, "this build")? {
        Found::Old(renewing) => renewing.finish("this build"),
        Found::Read(_) => panic!("it is of this build"),
    }
}

fn open(bytes: Vec<u8>) -> Journal {
    let Read { bundle, entries, .. } = read(bytes, "this build").expect("it can be read");
    Journal::open_tied(bundle, entries, "tablet")
}

/// A batch and a trial that are tied up, and something that is not.
fn some() -> Journal {
    let mut journal = Journal::open(FIXTURE.lines().map(str::to_owned).collect(), "tablet");
    for batch in ["one", "two"] {
        does(&mut journal, began(batch, 2));
        does(&mut journal, said(batch, "even"));
        does(&mut journal, ended(batch, "smooth"));
    }
    does(&mut journal, trial("candle", None, "Late pear"));
    for act in burns("candle") {
        does(&mut journal, act);
    }
    does(&mut journal, began("on", 2));
    journal
}

/// Sealed again after a change, as another build would have written it. As in `seal` of the bundle, told once more.
fn sealed(mut bytes: Vec<u8>) -> Vec<u8> {
    let at = bytes.iter().position(|b| *b == b'\n').unwrap() + 1;
    let body = &bytes[at + 8..];
    let mut sum = body.len() as u64;
    let mut padded = body.chunks_exact(8).map(<[u8]>::to_vec).collect::<Vec<_>>();
    let mut last = body.chunks_exact(8).remainder().to_vec();
    last.resize(8, 0);
    padded.extend([last, vec![0; 8]]);
    for eight in padded {
        let word = u64::from_le_bytes(eight.try_into().unwrap());
        sum = (sum ^ word).wrapping_mul(0x9e37_79b9_7f4a_7c15).rotate_left(29);
    }
    bytes[at..at + 8].copy_from_slice(&sum.to_le_bytes());
    bytes
}

/// Puts one text in the place of another that is as long.
fn put(bytes: &mut [u8], from: &str, to: &str) {
    let at = bytes.windows(from.len()).position(|w| w == from.as_bytes()).unwrap();
    bytes[at..at + from.len()].copy_from_slice(to.as_bytes());
}

#[test]
fn a_bundle_of_another_build_is_renewed() {
    let journal = some();
    let old = tied_by(&journal, "another build");
    assert_eq!(sealed(old.clone()), old);
    assert!(read(old.clone(), "this build").is_none(), "as it is it is not read");
    let new = renewed(old).unwrap();
    assert!(new == tied_by(&journal, "this build"), "it is the one that this build makes of the whole book");
    assert_eq!(read(new.clone(), "this build").unwrap().lines, journal.len());
    alike(&open(new), &journal);
}

#[test]
fn a_bundle_of_another_build_that_is_not_whole_is_none() {
    let bytes = tied_by(&some(), "another build");
    for at in (0..bytes.len()).step_by(7) {
        let mut changed = bytes.clone();
        changed[at] ^= 1 << (at % 8);
        assert!(find(changed, "this build").is_none(), "byte {at}");
        assert!(find(bytes[..at].to_vec(), "this build").is_none(), "cut off at {at}");
    }
}

/// The entries that are undone, as this build sees it, are not tied up.
#[test]
fn what_this_build_would_not_tie_up_is_untied() {
    let mut journal = some();
    let [tied, loose] = ["one", "on"].map(|b| journal.history(&id(b)).last().unwrap().0.id.clone());
    does(&mut journal, undo(&loose));
    let mut changed = tied_by(&journal, "another build");
    // The undo names an entry that is tied up.
    put(&mut changed, &loose.0, &tied.0);
    let mut other = Journal::open(Vec::new(), "tablet");
    other.take_all(
        journal
            .entries()
            .iter()
            .map(|e| if e.act == undo(&loose) { Entry { act: undo(&tied), ..e.clone() } } else { e.clone() })
            .collect(),
    );
    let book = open(renewed(sealed(changed)).unwrap());
    assert!(book.knows(&tied) && book.find(&tied).is_some(), "it is among the others");
    alike(&book, &other);
    assert!(book.find(&journal.history(&id("two"))[0].0.id).is_none(), "the other is tied up");
}

/// The book was replaced by a copy that has nothing of this device: of a longer time than the other build took it to be.
#[test]
fn what_a_copy_in_the_books_place_does_not_have_is_untied() {
    let mut journal = some();
    let replace = |device: &str| {
        let had = vec![UpTo { device: device.to_owned(), clock: 1_000 }];
        Act::Replace(Box::new(Replace { had, kept: Vec::new(), without: Vec::new(), made: None }))
    };
    let replaced = does(&mut journal, replace("nobody"));
    does(&mut journal, began("after", 2));
    let last = does(&mut journal, ended("after", "smooth"));
    let mut old = tied_by(&journal, "another build");
    put(&mut old, "\"nobody\"", "\"tablet\"");
    let entries = journal.entries().iter();
    let entries = entries.map(|e| match *e == replaced {
        true => Entry { act: replace("tablet"), ..e.clone() },
        false => e.clone(),
    });
    let mut other = Journal::open(Vec::new(), "tablet");
    other.take_all(entries.collect());
    let book = open(renewed(sealed(old)).unwrap());
    let first = &journal.history(&id("one"))[0].0.id;
    assert!(!other.counts(first) && book.find(first).is_some(), "it is among the others");
    assert!(other.counts(&last.id) && book.find(&last.id).is_none(), "what came after it is tied up");
    alike(&book, &other);
}

/// Three versions of a candle, of which the other build has taken the last to be made over the second.
#[test]
fn versions_that_stand_beside_each_other_are_untied() {
    let mut journal = some();
    let first = does(&mut journal, trial("pear", None, "Late pear")).id;
    let second = does(&mut journal, trial("pear", Some(first.clone()), "Early pear")).id;
    let third = does(&mut journal, trial("pear", Some(second.clone()), "Quince")).id;
    for act in burns("pear") {
        does(&mut journal, act);
    }
    let mut old = tied_by(&journal, "another build");
    put(&mut old, &second.0, &first.0);
    let beside = |e: &Entry| match e.id == third {
        true => Entry { act: trial("pear", Some(first.clone()), "Quince"), ..e.clone() },
        false => e.clone(),
    };
    let mut other = Journal::open(Vec::new(), "tablet");
    other.take_all(journal.entries().iter().map(beside).collect());
    assert_eq!(other.forks().len(), journal.forks().len() + 1);
    let book = open(renewed(sealed(old)).unwrap());
    assert!(book.find(&first).is_some(), "it is among the others");
    alike(&book, &other);
}

/// Where the other build read a verdict, this one reads that the candle was weighed.
#[test]
fn a_trial_that_is_not_judged_is_untied() {
    let mut journal = Journal::open(Vec::new(), "tablet");
    does(&mut journal, trial("pear", None, "Late pear"));
    let [lit, out, _, closed] = burns("pear");
    does(&mut journal, lit);
    does(&mut journal, out);
    let closed = does(&mut journal, closed);
    let mut old = tied_by(&journal, "another build");
    put(&mut old, "\"Closed\":{\"verdict\":", "\"Weighed\":{  \"mass\":");
    put(&mut old, "\"Passed\"", "\"0.3 kg\"");
    let mass = Amount::new(Exact::ratio(3, 10), MassUnit::Kilogram);
    let weighed = Entry { act: burned("pear", BurnEvent::Weighed { mass, lit: None }), ..closed.clone() };
    let mut other = Journal::open(Vec::new(), "tablet");
    let entries = journal.entries().iter();
    other.take_all(entries.map(|e| if *e == closed { weighed.clone() } else { e.clone() }).collect());
    assert!(other.state().ignored.is_empty() && other.counts(&weighed.id));
    let book = open(renewed(sealed(old)).unwrap());
    assert_eq!(book.find(&weighed.id), Some(&weighed), "it is among the others");
    alike(&book, &other);
}

#[test]
fn lines_that_say_more_than_a_bundle_are_seen() {
    let journal = some();
    let book = open(tied_by(&journal, "this build"));
    let says = |lines: &[(Id, String)]| book.says(lines.iter().map(|(id, line)| (id, line.as_str())));
    let lines: Vec<(Id, String)> = journal.entries().iter().map(|e| (e.id.clone(), e.to_line())).collect();
    assert!(says(&lines));
    // Of a format before, or with a field written out that may be left out: it says the same.
    let older: Vec<(Id, String)> = lines
        .iter()
        .map(|(id, line)| (id.clone(), summed(&line.replacen("\"v\":2", "\"v\":1", 1))))
        .collect();
    assert!(older != lines && says(&older));
    for (at, (id, line)) in lines.iter().enumerate() {
        let other = |id: &Id, line: String| says(&[lines[0].clone(), (id.clone(), line)]);
        assert!(!other(&Id("nobody-1-1".to_owned()), line.clone()), "there is none of this id");
        assert!(!other(id, lines[(at + 1) % lines.len()].1.clone()), "it is the line of another");
        assert!(!other(id, line.replacen("\"at\":1", "\"at\":2", 1)), "damaged");
    }
    // A note that another build did not know to keep.
    let (id, line) = lines.iter().find(|(_, line)| line.contains("\"even\"")).unwrap();
    assert!(!says(&[(id.clone(), summed(&line.replacen("\"even\"", "\"evenly\"", 1)))]));
}

/// The line with the checksum that it should have.
fn summed(line: &str) -> String {
    let (body, _) = line.rsplit_once(",\"sum\":").unwrap();
    format!("{body},\"sum\":\"{:08x}\"}}", potside::book::crc32c(body.as_bytes()))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, ..ProptestConfig::default() })]

    #[test]
    fn renewing_is_tying_the_whole_book(fixture: bool, deeds in deeds()) {
        let lines: Vec<&str> = if fixture { FIXTURE.lines().collect() } else { Vec::new() };
        let base = Journal::open(lines.into_iter().map(str::to_owned).collect(), "base");
        let journal = pours("tablet", base.entries(), &deeds);
        let new = renewed(tied_by(&journal, "another build")).unwrap();
        prop_assert!(new == tied_by(&journal, "this build"));
        alike(&open(new), &journal);
    }
}

/// Whatever another build may have found in the entries, or have tied up: what is opened is what its entries fold to, and
/// all of each thing is found. Every byte in turn is other than it was.
#[test]
fn what_another_build_found_is_not_believed() {
    let mut journal = Journal::open(Vec::new(), "tablet");
    for batch in ["b1", "b2"] {
        does(&mut journal, began(batch, 2));
        does(&mut journal, said(batch, "even"));
        does(&mut journal, ended(batch, "smooth"));
        does(&mut journal, Act::Ticked { batch: id(batch), step: Finish::Closed, done: true });
    }
    for candle in ["c1", "c2"] {
        does(&mut journal, trial(candle, None, "Late pear"));
        for act in burns(candle) {
            does(&mut journal, act);
        }
    }
    let bytes = tied_by(&journal, "another build");
    let from = bytes.iter().position(|b| *b == b'\n').unwrap() + 1 + 8 + 32;
    let mut renewals = 0;
    for at in from..bytes.len() {
        for flip in [1, 3] {
            let mut changed = bytes.clone();
            changed[at] ^= flip;
            let Some(new) = renewed(sealed(changed)) else { continue };
            let book = open(new);
            let mut untied = book.clone();
            untied.untie_all();
            let folded = Journal::open(untied.entries().iter().map(Entry::to_line).collect(), "tablet");
            // What no build ever wrote: a device, clock or id that cannot be.
            if folded.len() != untied.len() || !folded.damaged().is_empty() || !untied.damaged().is_empty() {
                continue;
            }
            renewals += 1;
            assert!(book.state() == folded.state(), "byte {at}");
            let state = folded.state();
            for thing in state.batches.iter().map(|(id, _)| id).chain(state.trials.iter().map(|(id, _)| id)) {
                let mut one = book.clone();
                one.untie(thing);
                assert_eq!(one.history(thing), folded.history(thing), "byte {at}");
            }
        }
    }
    assert!(renewals > 100, "{renewals} came to an end");
}
