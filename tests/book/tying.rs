//! A bundle is made a piece at a time, while the book goes on: what is begun meanwhile neither is in it twice nor moves
//! what is in it.

use super::bundle::alike;
use super::sample::{began, burns, does, ended, entry, id, said, trial, undo};
use potside::book::Journal;
use potside::book::bundle::{Read, Tying, read};

/// Batches and judged trials of these names, tied up while `meanwhile` is done after so many steps; opened from that.
fn tied_meanwhile(steps: usize, meanwhile: impl Fn(&mut Journal)) -> Option<(Journal, Journal)> {
    let mut folded = Journal::open(Vec::new(), "tablet");
    for batch in ["d", "h", "p"] {
        does(&mut folded, began(batch, 2));
        does(&mut folded, ended(batch, batch));
    }
    for candle in ["d2", "h2", "p2"] {
        does(&mut folded, trial(candle, None, "Late pear"));
        burns(candle).into_iter().for_each(|act| drop(does(&mut folded, act)));
    }
    let mut tying = Tying::begin(&folded)?;
    for _ in 0..steps {
        tying.go_on(&folded);
    }
    meanwhile(&mut folded);
    let Read { bundle, entries, .. } =
        read(tying.finish(&folded, "this build", folded.len())?, "this build").expect("it is whole");
    Some((Journal::open_tied(bundle, entries, "tablet"), folded))
}

#[test]
fn what_is_begun_while_a_bundle_is_made_is_not_in_it() {
    for steps in 0..9 {
        for name in ["a", "e", "i", "z"] {
            for over in [false, true] {
                let (book, folded) = tied_meanwhile(steps, |journal| {
                    does(journal, began(name, 2));
                    if over {
                        does(journal, ended(name, name));
                        does(journal, trial(&format!("{name}2"), None, "Late pear"));
                        burns(&format!("{name}2")).into_iter().for_each(|act| drop(does(journal, act)));
                    }
                })
                .expect("what is tied up is as it was");
                alike(&book, &folded);
                // Each entry is found in what it is about.
                for batch in ["d", "h", "p"] {
                    let (mut book, mut folded) = (book.clone(), folded.clone());
                    let last = folded.history(&id(batch)).last().expect("it ended").0.clone();
                    assert!(book.knows(&last.id), "{steps} {name}");
                    for act in [undo(&last.id), said(batch, "late")] {
                        let entry = entry(&format!("late{}", folded.len()), folded.last_clock() + 1, act);
                        book.take(entry.clone());
                        folded.take(entry);
                        alike(&book, &folded);
                    }
                }
            }
        }
    }
}
