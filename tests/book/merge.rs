//! The laws of merging: two books, or three, whatever was done in each, come to the same whichever way they are merged.

use super::sample::{began_on, burns, does, ended, id, ingredient, pictured, said, trial, undo};
use potside::book::{Act, Copy, Entry, Journal, backup, read_copy};
use potside::day::Day;
use potside::shelf::Customer;
use proptest::prelude::*;

/// What a person does, as numbers: what, to which thing, and which of the entries there it names.
pub(super) type Deed = (u8, u8, prop::sample::Index);

pub(super) fn deeds() -> impl Strategy<Value = Vec<Deed>> {
    prop::collection::vec((0..19_u8, 0..3_u8, any::<prop::sample::Index>()), 0..10)
}

pub(super) fn act(journal: &Journal, (what, thing, named): &Deed) -> Act {
    let (thing, batch, candle) = (format!("t{thing}"), format!("b{thing}"), format!("k{thing}"));
    let known = |journal: &Journal| {
        let entries = journal.entries();
        (!entries.is_empty()).then(|| entries[named.index(entries.len())].id.clone())
    };
    let Some(known) = known(journal) else { return ingredient(&thing, "First", 1) };
    let over = |name: &str| {
        let latest = journal.state().ingredients.get(&id(&thing)).and_then(|k| k.latest());
        let Act::Ingredient { id, body, .. } = ingredient(&thing, name, 1 + i128::from(*what)) else {
            unreachable!("it is an ingredient")
        };
        Act::Ingredient { id, over: latest.map(|v| v.entry.clone()), body }
    };
    match what {
        0 | 1 => over(&format!("{}'s {}", journal.device(), journal.entries().len())),
        2 => Act::Retire { id: id(&thing), retired: true },
        3 => began_on(&batch, 2, [None, Some(Day(20_415)), Some(Day(20_416))][named.index(3)]),
        4 => said(&batch, &known.0),
        5 => ended(&batch, &known.0),
        6 | 7 => undo(&known),
        9 | 10 => Act::Customer {
            id: id(&["c", &thing].concat()),
            over: None,
            body: Customer { name: ["Quill ", &known.0].concat(), ..Customer::default() },
        },
        12 => {
            let latest = journal.state().trials.get(&id(&candle)).and_then(|k| k.latest());
            trial(&candle, latest.map(|v| v.entry.clone()), &known.0)
        }
        13 | 14 => burns(&candle)[named.index(4)].clone(),
        15 => pictured(&candle, ["a", "b"][named.index(2)], 1),
        16 => Act::Retire { id: id(&candle), retired: named.index(2) == 0 },
        // A copy taken in, and taken back.
        17 => match copy_of(journal, named) {
            Some(Copy { replace: Some(Act::Replace(back)), .. }) => Act::Took { entries: 1, back },
            _ => undo(&known),
        },
        18 => journal.taken().pop().map_or_else(|| undo(&known), |taken| taken.back),
        // Seldom, or nobody would be left.
        11 if known.0.ends_with(['0', '1', '2', '3', '4', '5']) => {
            Act::Forgotten { customer: id(&["c", &thing].concat()) }
        }
        _ => match (journal.forks().first(), copy_of(journal, named)) {
            (Some(fork), _) => fork.choose(&fork.tips[named.index(fork.tips.len())].entry),
            (None, Some(Copy { replace: Some(replace), .. })) => replace,
            _ => undo(&known),
        },
    }
}

/// A backup of a beginning of the book, read against all of it.
fn copy_of(journal: &Journal, named: &prop::sample::Index) -> Option<Copy> {
    let some = named.index(journal.entries().len()) + 1;
    let lines: Vec<String> = journal.entries().iter().take(some).map(Entry::to_line).collect();
    read_copy(&backup(&lines, "tablet", 1), journal).ok()
}

/// A book that goes on from these entries on a device of its own.
pub(super) fn book(device: &str, from: &[Entry], deeds: &[Deed]) -> Journal {
    let mut journal = Journal::open(from.iter().map(Entry::to_line).collect(), device);
    for deed in deeds {
        let act = act(&journal, deed);
        does(&mut journal, act);
    }
    journal
}

pub(super) fn merged(a: &Journal, b: &Journal) -> Journal {
    let mut all = a.clone();
    all.take_all(b.entries().to_vec());
    all
}

#[track_caller]
pub(super) fn same(a: &Journal, b: &Journal) {
    assert_eq!(a.entries(), b.entries());
    assert_eq!(a.state(), b.state());
    assert_eq!(a.forks(), b.forks());
    assert_eq!(a.earlier(), b.earlier());
    assert_eq!(a.taken(), b.taken());
    assert!(a.entries().iter().all(|e| a.counts(&e.id) == b.counts(&e.id)));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, ..ProptestConfig::default() })]

    #[test]
    fn merging_is_the_same_whichever_way(base in deeds(), one in deeds(), two in deeds(), three in deeds()) {
        let base = book("base", &[], &base);
        let [a, b, c] = [("tablet", &one), ("table", &two), ("phone", &three)]
            .map(|(device, deeds)| book(device, base.entries(), deeds));
        let ab = merged(&a, &b);
        same(&ab, &merged(&b, &a));
        same(&merged(&ab, &c), &merged(&a, &merged(&b, &c)));
        same(&merged(&a, &a), &a);
        same(&merged(&ab, &a), &ab);
        // One entry after the other, and from what is stored, comes to the same.
        let mut slowly = a.clone();
        b.entries().iter().rev().for_each(|e| slowly.take(e.clone()));
        same(&slowly, &ab);
        same(&Journal::open(ab.entries().iter().rev().map(Entry::to_line).collect(), "tablet"), &ab);
    }
}
