//! The journal: the same whatever the order, undo and redo, ids, and what is set aside.

use super::sample::{began, does, ended, entry, id, ingredient, said, undo};
use super::undo::journal_of_a_day;
use potside::book::{Act, Damage, Entry, Journal, Replace, Settings, UpTo};
use proptest::prelude::*;

pub(crate) fn lines(entries: &[Entry]) -> Vec<String> {
    entries.iter().map(Entry::to_line).collect()
}

#[track_caller]
fn same(a: &Journal, b: &Journal) {
    assert_eq!(a.entries(), b.entries());
    assert_eq!(a.state(), b.state());
    assert_eq!(a.forks(), b.forks());
    assert_eq!(a.earlier(), b.earlier());
    assert_eq!(a.taken(), b.taken());
    for e in a.entries() {
        assert_eq!(a.counts(&e.id), b.counts(&e.id), "{:?}", e.id);
    }
    let mut aside = [a, b].map(|j| j.damaged().iter().map(|(line, _)| line.clone()).collect::<Vec<_>>());
    aside.iter_mut().for_each(|lines| lines.sort());
    assert_eq!(aside[0], aside[1]);
}

/// Any entry, also hostile ones: few ids and clocks, so that everything meets everything.
fn any_entry() -> impl Strategy<Value = Entry> {
    let act = prop_oneof![
        (0..3, 1..5_i128).prop_map(|(i, n)| ingredient(&format!("t{i}"), "Meadow wax", n)),
        (0..5, any::<bool>()).prop_map(|(i, retired)| Act::Retire { id: id(&format!("t{i}")), retired }),
        (0..3, 1..4_u32).prop_map(|(i, n)| began(&format!("b{i}"), n)),
        (0..3, 0..3).prop_map(|(i, n)| said(&format!("b{i}"), &format!("note {n}"))),
        (0..3, 0..3).prop_map(|(i, n)| ended(&format!("b{i}"), &format!("end {n}"))),
        Just(Act::Settings(Settings::default())),
        (0..3, prop::option::of(0..30), 1..4_i128).prop_map(|(i, over, n)| {
            let Act::Ingredient { id: thing, body, .. } = ingredient(&format!("t{i}"), "Meadow wax", n)
            else {
                return undo(&id("none"));
            };
            Act::Ingredient { id: thing, over: over.map(|n| id(&format!("e{n}"))), body }
        }),
        ((0..20_u64, 0..20_u64), prop::collection::vec(0..30, 0..3)).prop_map(|((had, kept), without)| {
            let upto = |clock| vec![UpTo { device: "tablet".to_owned(), clock }];
            let without = without.into_iter().map(|n| id(&format!("e{n}"))).collect();
            Act::Replace(Box::new(Replace { had: upto(had), kept: upto(kept), without, made: None }))
        }),
        (0..3_u64, 0..20_u64, 0..20_u64).prop_map(|(entries, had, kept)| {
            let upto = |clock| vec![UpTo { device: "tablet".to_owned(), clock }];
            let back = Replace { had: upto(had), kept: upto(kept), without: vec![], made: None };
            Act::Took { entries, back: Box::new(back) }
        }),
        (0..3, 0..30, 0..30, 0..30).prop_map(|(i, chosen, a, b)| Act::Choose {
            id: id(&format!("t{i}")),
            chosen: id(&format!("e{chosen}")),
            among: [a, b].map(|n| id(&format!("e{n}"))).to_vec(),
        }),
        (0..30, 0..2).prop_map(|(i, _)| undo(&id(&format!("e{i}")))),
        (0..30, 0..2).prop_map(|(i, _)| undo(&id(&format!("e{i}")))),
    ];
    (0..30, 1..20_u64, act).prop_map(|(i, clock, act)| entry(&format!("e{i}"), clock, act))
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, ..ProptestConfig::default() })]

    /// The fold is a function of the set of entries: opened, or taken one by one in any order and again.
    #[test]
    fn order_and_repetition_change_nothing(
        (entries, shuffled) in prop::collection::vec(any_entry(), 0..24)
            .prop_flat_map(|v| (Just(v.clone()), Just([v.clone(), v].concat()).prop_shuffle())),
        part in any::<prop::sample::Index>(),
    ) {
        let opened = Journal::open(lines(&entries), "here");
        same(&opened, &Journal::open(lines(&shuffled), "here"));
        let mut taken = Journal::open(vec![], "here");
        for e in &shuffled {
            taken.take(e.clone());
        }
        same(&opened, &taken);
        // A part of them opens, and taking the rest in comes to the same.
        let (some, rest) = shuffled.split_at(part.index(shuffled.len() + 1));
        let mut journal = Journal::open(lines(some), "here");
        rest.iter().for_each(|e| journal.take(e.clone()));
        same(&opened, &journal);
    }

    /// Undo, then redo, of anything is as if nothing had been done.
    #[test]
    fn redo_takes_undo_back(entries in prop::collection::vec(any_entry(), 1..24), times in 1_usize..6) {
        let mut journal = Journal::open(lines(&entries), "tablet");
        let before = journal.state().clone();
        let mut undone = 0;
        for _ in 0..times {
            let Some(last) = journal.last_undoable().map(|e| e.id.clone()) else { break };
            does(&mut journal, undo(&last));
            prop_assert!(!journal.counts(&last));
            undone += 1;
        }
        for _ in 0..undone {
            let redo = journal.last_redoable().map(|e| e.id.clone());
            let Some(redo) = redo else { return Err(TestCaseError::fail("nothing to redo")) };
            does(&mut journal, undo(&redo));
        }
        prop_assert_eq!(journal.state(), &before);
        let opened = Journal::open(lines(journal.entries()), "tablet");
        prop_assert_eq!(journal.state(), opened.state());
    }

    /// A line flipped somewhere is set aside or is what it was; the others open as if it were not there.
    #[test]
    fn a_flipped_line_is_set_aside(entries in prop::collection::vec(any_entry(), 1..8), which in any::<prop::sample::Index>(), at in any::<prop::sample::Index>(), bit in 0..7) {
        let mut stored = lines(&entries);
        let which = which.index(stored.len());
        let mut bytes = stored[which].clone().into_bytes();
        let at = at.index(bytes.len());
        bytes[at] ^= 1_u8 << bit;
        let Ok(flipped) = String::from_utf8(bytes) else { return Ok(()) };
        stored[which] = flipped.clone();
        let journal = Journal::open(stored.clone(), "here");
        prop_assert!(journal.damaged().iter().any(|(line, d)| *line == flipped && *d != Damage::SameId));
        stored.remove(which);
        let without = Journal::open(stored, "here");
        prop_assert_eq!(journal.state(), without.state());
    }
}

#[test]
fn every_beginning_of_a_book_opens() {
    let j = journal_of_a_day();
    let stored = lines(j.entries());
    let whole = stored.join("\n");
    for n in 0..=stored.len() {
        let opened = Journal::open(stored[..n].to_vec(), "tablet");
        assert_eq!((opened.entries().len(), opened.damaged().len()), (n, 0));
        assert!(opened.state().ignored.is_empty(), "each beginning makes sense");
    }
    // Cut off anywhere, the last line alone is set aside.
    for n in (0..whole.len()).step_by(97) {
        let cut: Vec<String> = whole.get(..n).into_iter().flat_map(str::lines).map(str::to_owned).collect();
        let opened = Journal::open(cut, "tablet");
        assert!(opened.damaged().len() <= 1);
    }
}

/// No screen makes one that names more than 2,000 devices or entries: it would take its time at every opening.
#[test]
fn a_book_is_not_replaced_by_what_names_too_much() {
    for (devices, entries) in [(2_000, 0), (2_001, 1)] {
        let upto =
            |n: usize| UpTo { device: if n == 0 { "tablet".to_owned() } else { format!("d{n}") }, clock: 9 };
        let had = (0..devices).map(upto).collect();
        let replace = Act::Replace(Box::new(Replace { had, kept: vec![], without: vec![], made: None }));
        let all = [entry("e1", 1, ingredient("w", "Meadow wax", 1)), entry("e2", 10, replace)];
        assert_eq!(Journal::open(lines(&all), "here").state().ingredients.len(), entries);
    }
}

/// Of what was taken back and is not in the copy either, it is told who took it back.
#[test]
fn what_was_undone_is_not_in_an_earlier_book() {
    let upto = || vec![UpTo { device: "tablet".to_owned(), clock: 5 }];
    let without = vec![id("e1")];
    let replace = Act::Replace(Box::new(Replace { had: upto(), kept: upto(), without, made: None }));
    let told = |undone: bool| {
        let mut all = vec![entry("e1", 1, ingredient("w", "Meadow wax", 1)), entry("e3", 6, replace.clone())];
        all.extend(undone.then(|| entry("e2", 2, undo(&id("e1")))));
        let journal = Journal::open(lines(&all), "here");
        let done = journal.done(Some(&id("w")), 1, potside::quantity::Voice::default()).remove(0);
        (done.undone.is_some(), done.earlier)
    };
    assert_eq!([true, false].map(told), [(true, false), (false, true)]);
}

/// No screen makes one that says it was here itself.
#[test]
fn a_replacing_is_not_in_the_book_it_replaced() {
    let had = vec![UpTo { device: "tablet".to_owned(), clock: 99 }];
    let replace = Act::Replace(Box::new(Replace { had, kept: vec![], without: vec![], made: None }));
    let all = [entry("e1", 1, ingredient("w", "Meadow wax", 1)), entry("e2", 10, replace)];
    let journal = Journal::open(lines(&all), "here");
    assert_eq!(journal.earlier().iter().map(|e| e.entries).collect::<Vec<_>>(), [1]);
}

#[test]
fn order_holds_though_the_clock_of_the_tablet_jumps_back() {
    let mut j = Journal::open(vec![], "tablet");
    let first = j.entry(ingredient("w", "First", 1), 1_764_000_000_000, 1);
    j.take(first);
    let second = j.entry(ingredient("w", "Second", 2), 1_448_000_000_000, 2);
    j.take(second);
    let name = j.state().ingredient("second").map(|i| i.name.clone());
    assert_eq!(name.as_deref(), Some("Second"));
    same(&j, &Journal::open(lines(j.entries()).into_iter().rev().collect(), "tablet"));
}

#[test]
fn ids_are_apart_on_two_devices_and_in_two_tabs() {
    let tablet = Journal::open(vec![], "tablet");
    let table = Journal::open(vec![], "table");
    let ids = [tablet.new_id(1), tablet.new_id(2), table.new_id(1), table.new_id(2)];
    assert_eq!(ids.iter().collect::<std::collections::BTreeSet<_>>().len(), 4);
    // A device whose name was spoilt still writes lines that can be read.
    let mut spoilt = Journal::open(vec![], "no name <here>");
    let e = does(&mut spoilt, ingredient("w", "Meadow wax", 1));
    assert_eq!(Entry::from_line(&e.to_line()), Ok(e));
}

#[test]
fn clocks_at_their_end_still_write_readable_lines() {
    let hostile = Entry { clock: 1 << 53, ..entry("e", 1, said("b", "hostile")) };
    let mut j = Journal::open(vec![hostile.to_line()], "tablet");
    assert_eq!(j.entries().len(), 1);
    let e = does(&mut j, ingredient("w", "Meadow wax", 1));
    assert_eq!(Entry::from_line(&e.to_line()), Ok(e));
}

#[test]
fn damaged_lines_are_set_aside_once_and_the_rest_opens() {
    let good = entry("e1", 1, ingredient("w", "Meadow wax", 1)).to_line();
    let cut = good[..good.len() - 4].to_owned();
    let mut j = Journal::open(vec![cut.clone(), good, "foreign".to_owned(), cut.clone()], "here");
    j.hear(cut.clone());
    assert_eq!(j.damaged(), [(cut, Damage::Checksum), ("foreign".to_owned(), Damage::NotAnEntry)]);
    assert_eq!(j.state().ingredients.len(), 1);
    assert!(!j.read_only());
    j.hear(entry("e2", 2, ingredient("v", "Chalk wax", 1)).to_line());
    assert_eq!(j.state().ingredients.len(), 2);
}

#[test]
fn a_book_of_a_newer_version_is_read_only() {
    let good = entry("e1", 1, ingredient("w", "Meadow wax", 1)).to_line();
    let newer = "{\"v\":3,\"note\":\"what later versions write\"";
    let newer = format!("{newer},\"sum\":\"{:08x}\"}}", potside::book::crc32c(newer.as_bytes()));
    let j = Journal::open(vec![good, newer], "here");
    assert!(j.read_only());
    assert_eq!(j.state().ingredients.len(), 1);
    assert_eq!(j.damaged().len(), 1);
}

#[test]
fn two_entries_of_one_id_settle_the_same_everywhere() {
    let a = entry("e1", 1, ingredient("w", "One", 1));
    let b = entry("e1", 1, ingredient("w", "Two", 2));
    let one = Journal::open(lines(&[a.clone(), b.clone()]), "here");
    let mut two = Journal::open(lines(&[b]), "here");
    two.take(a);
    same(&one, &two);
    assert_eq!(one.entries().len(), 1);
    assert_eq!(one.damaged().len(), 1);
}
