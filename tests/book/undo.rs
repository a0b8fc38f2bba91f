//! Undo and redo, in the order of what was done.

use super::journal::lines;
use super::sample::{began, does, ended, entry, id, ingredient, said, undo};
use potside::book::Journal;

/// A small book: an ingredient twice, a batch with a note that is undone, its end.
pub(crate) fn journal_of_a_day() -> Journal {
    let mut j = Journal::open(vec![], "tablet");
    does(&mut j, ingredient("w", "Meadow wax", 1));
    does(&mut j, ingredient("w", "Meadow wax", 2));
    does(&mut j, began("b1", 4));
    let note = does(&mut j, said("b1", "a slip"));
    does(&mut j, undo(&note.id));
    does(&mut j, ended("b1", "well"));
    j
}

#[test]
fn undo_and_redo_step_through_what_was_done_here() {
    let mut j = Journal::open(vec![], "tablet");
    assert!(j.last_undoable().is_none() && j.last_redoable().is_none());
    let a = does(&mut j, ingredient("w", "First", 1));
    let b = does(&mut j, ingredient("w", "Second", 2));
    let name = |j: &Journal| {
        j.state().ingredients.get(&id("w")).and_then(|k| k.body()).map(|i| i.name.clone()).unwrap_or_default()
    };
    let step = |j: &mut Journal, redo: bool| {
        let target = if redo { j.last_redoable() } else { j.last_undoable() };
        let target = target.expect("something to take back").id.clone();
        does(j, undo(&target))
    };
    step(&mut j, false);
    assert_eq!((name(&j).as_str(), j.counts(&b.id)), ("First", false));
    step(&mut j, false);
    assert_eq!(name(&j), "");
    assert!(j.last_undoable().is_none() && !j.counts(&a.id));
    step(&mut j, true);
    assert_eq!(name(&j), "First");
    step(&mut j, true);
    assert_eq!(name(&j), "Second");
    assert!(j.last_redoable().is_none());
    step(&mut j, false);
    does(&mut j, ingredient("w", "Third", 3));
    assert!(j.last_redoable().is_none(), "something else was done since");
    assert_eq!(name(&j), "Third");
    assert_eq!(
        j.history(&id("w")).iter().map(|(_, counts)| *counts).collect::<Vec<_>>(),
        [true, false, true]
    );
}

#[test]
fn undo_takes_back_what_this_device_did() {
    let mut table = Journal::open(vec![], "table");
    let theirs = does(&mut table, ingredient("w", "Theirs", 1));
    let mut j = Journal::open(vec![theirs.to_line()], "tablet");
    assert!(j.last_undoable().is_none());
    let mine = does(&mut j, ingredient("v", "Mine", 2));
    assert_eq!(j.last_undoable().map(|e| &e.id), Some(&mine.id));
    // Named, anything can be undone.
    does(&mut j, undo(&theirs.id));
    assert!(!j.state().ingredients.contains_key(&id("w")));
}

#[test]
fn a_ring_of_undos_has_no_effect_and_ends() {
    let ring =
        [entry("e1", 5, undo(&id("e2"))), entry("e2", 5, undo(&id("e1"))), entry("e3", 1, undo(&id("e3")))];
    let mut j = Journal::open(lines(&ring), "here");
    does(&mut j, ingredient("w", "Meadow wax", 1));
    assert_eq!(j.state().ingredients.len(), 1);
    // One that undoes itself stays what it is: something that was done.
    assert!(j.counts(&id("e3")));
}
