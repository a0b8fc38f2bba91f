//! All lines of a book in memory, given once more: read, they are the same book, tied up or not, and whatever is done in it
//! meanwhile.

use super::bundle::{alike, pours, tied};
use super::merge::deeds;
use super::sample::{began, does, ended, said};
use potside::book::{Again, Entry, Journal};
use proptest::prelude::*;
use std::collections::BTreeMap;

type Lines = BTreeMap<String, String>;

/// What is stored in the end, where some of it is there; and how many lines were given.
fn stored(
    journal: &mut Journal,
    there: &Lines,
    most: usize,
    mut meanwhile: impl FnMut(&mut Journal),
) -> (Lines, usize) {
    let (mut kept, mut given) = (there.clone(), 0);
    let mut again = Again::of(journal, true);
    let mut pieces = 0;
    while let Some(lines) = again.next(journal, most, &|key| there.contains_key(key)) {
        given += lines.len();
        kept.extend(lines);
        meanwhile(journal);
        pieces += 1;
        assert!(pieces < 10_000, "it comes to an end");
    }
    (kept, given)
}

fn read(lines: Lines, device: &str) -> Journal {
    Journal::open(lines.into_values().collect(), device)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(60))]

    #[test]
    fn what_is_given_is_the_book(first in deeds(), later in deeds(), most in 1_usize..40, part in 0_usize..5) {
        let folded = pours("tablet", &[], &first);
        let mut book = tied(&folded);
        let mut whole = folded.clone();
        // What is done after it was tied up.
        for entry in pours("second", folded.entries(), &later).entries() {
            // One that is known would only be untied.
            if folded.find(&entry.id).is_some() {
                continue;
            }
            book.take(entry.clone());
            whole.take(entry.clone());
        }
        book.hear("odd".to_owned());
        whole.hear("odd".to_owned());
        let all: Lines = whole.entries().iter().map(|e| (e.id.0.clone(), e.to_line())).collect();
        // Some of it is there already, or nothing.
        let there: Lines = all.clone().into_iter().enumerate().filter(|(at, _)| part > 1 && at % part == 0).map(|(_, l)| l).collect();
        let (kept, given) = stored(&mut book, &there, most, |_| ());
        prop_assert!(given >= all.len() + 1 - there.len());
        let again = read(kept, "tablet");
        prop_assert_eq!(again.damaged(), whole.damaged());
        alike(&again, &whole);
    }
}

#[test]
fn what_is_untied_or_done_meanwhile_is_missed_by_nobody() {
    let folded = {
        let mut journal = Journal::open(Vec::new(), "tablet");
        for n in 0..30 {
            let batch = format!("b{n}");
            does(&mut journal, began(&batch, 2));
            does(&mut journal, ended(&batch, "smooth"));
        }
        journal
    };
    let mut book = tied(&folded);
    // What is not tied up is given first: it is nowhere else.
    let latest = does(&mut book, said("b29", "late"));
    let first = Again::of(&book, true).next(&book, 100, &|_| false);
    assert!(first.is_some_and(|lines| lines.iter().any(|(id, _)| *id == latest.id.0)));
    let mut done: Vec<Entry> = Vec::new();
    let (kept, _) = stored(&mut book, &Lines::new(), 3, |book| {
        if done.len() < 20 {
            done.push(does(book, said(&format!("b{}", done.len()), "late")));
        }
    });
    for entry in folded.entries() {
        assert_eq!(kept.get(&entry.id.0), Some(&entry.to_line()));
    }
}
