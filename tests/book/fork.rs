//! Versions made beside each other: kept, shown, chosen among, the same whichever way books are merged.

use super::sample::{began, does, entry, id, ingredient, said, undo};
use potside::book::{Act, Entry, Fork, Journal};
use potside::quantity::Voice;

/// A version of the wax `w` made over these.
fn version(name: &str, over: Option<&Entry>) -> Act {
    let Act::Ingredient { id, body, .. } = ingredient("w", name, 862) else { panic!("it is an ingredient") };
    Act::Ingredient { id, over: over.map(|e| e.id.clone()), body }
}

fn name(journal: &Journal) -> &str {
    journal.state().name(&id("w")).unwrap_or_default()
}

/// What the versions beside each other say of the name.
fn names(journal: &Journal) -> Vec<String> {
    let Some(fork) = journal.fork(&id("w")) else { return Vec::new() };
    assert_eq!(journal.forks(), std::slice::from_ref(&fork));
    let field = fork.differs.iter().find(|d| d.of == "name").expect("the names differ");
    field.values.iter().map(|v| v.clone().unwrap_or_default()).collect()
}

/// One version, opened on two devices and changed on both.
fn two() -> (Journal, Journal, Entry) {
    let mut tablet = Journal::open(vec![], "tablet");
    let first = does(&mut tablet, version("First", None));
    let table = Journal::open(vec![first.to_line()], "table");
    (tablet, table, first)
}

fn merged(a: &Journal, b: &Journal, device: &str) -> Journal {
    let mut all = Journal::open(vec![], device);
    all.take_all([a.entries(), b.entries()].concat());
    all
}

#[test]
fn one_after_the_other_is_no_fork() {
    let (mut tablet, mut table, first) = two();
    let second = does(&mut tablet, version("Second", Some(&first)));
    table.take(second.clone());
    does(&mut table, version("Third", Some(&second)));
    assert_eq!((names(&table).len(), name(&table)), (0, "Third"));
    // A version that names none is made over the one before it.
    does(&mut table, version("Fourth", None));
    assert!(table.fork(&id("w")).is_none());
}

#[test]
fn two_changes_of_one_version_are_both_kept_and_shown() {
    let (mut tablet, mut table, first) = two();
    does(&mut tablet, version("Tablet's", Some(&first)));
    does(&mut table, version("Table's", Some(&first)));
    let (one, other) = (merged(&tablet, &table, "x"), merged(&table, &tablet, "x"));
    assert_eq!(one.forks(), other.forks());
    let fork = one.fork(&id("w")).expect("they were made beside each other");
    assert_eq!(fork.since, Some(first.at));
    assert_eq!(fork.tips.len(), 2);
    let mut all = names(&one);
    all.sort();
    assert_eq!(all, ["Table's", "Tablet's"]);
    assert_eq!(one.state().ingredients.get(&id("w")).map(|k| k.versions.len()), Some(3));
    assert_eq!(fork.differs.len(), 1, "only what differs: {:?}", fork.differs);
}

/// A version made over one that is not the one before, without the same parent: two steps here, one there.
#[test]
fn a_change_of_an_older_version_is_a_fork_too() {
    let (mut tablet, mut table, first) = two();
    let second = does(&mut tablet, version("Second", Some(&first)));
    does(&mut tablet, version("Third", Some(&second)));
    does(&mut table, version("Aside", Some(&first)));
    let mut all = names(&merged(&tablet, &table, "x"));
    all.sort();
    assert_eq!(all, ["Aside", "Third"]);
}

#[test]
fn three_may_be_beside_each_other() {
    let (mut tablet, mut table, first) = two();
    let mut phone = Journal::open(vec![first.to_line()], "phone");
    for (journal, name) in [(&mut tablet, "Tablet's"), (&mut table, "Table's"), (&mut phone, "Phone's")] {
        does(journal, version(name, Some(&first)));
    }
    let mut all = names(&merged(&merged(&tablet, &table, "x"), &phone, "x"));
    all.sort();
    assert_eq!(all, ["Phone's", "Table's", "Tablet's"]);
}

/// What was made over a version that was taken back since was made over the one before that.
#[test]
fn a_change_of_what_was_undone_is_no_fork() {
    let (mut tablet, _, first) = two();
    let second = does(&mut tablet, version("Second", Some(&first)));
    let mut table = Journal::open(tablet.entries().iter().map(Entry::to_line).collect(), "table");
    does(&mut tablet, undo(&second.id));
    does(&mut table, version("Third", Some(&second)));
    let all = merged(&tablet, &table, "x");
    assert_eq!((name(&all), all.forks().len()), ("Third", 0));
}

#[test]
fn the_same_change_twice_is_no_fork() {
    let (mut tablet, mut table, first) = two();
    does(&mut tablet, version("Same", Some(&first)));
    does(&mut table, version("Same", Some(&first)));
    assert!(merged(&tablet, &table, "x").forks().is_empty());
}

fn forked() -> (Journal, Fork) {
    let (mut tablet, mut table, first) = two();
    does(&mut tablet, version("Tablet's", Some(&first)));
    does(&mut table, version("Table's", Some(&first)));
    let journal = merged(&tablet, &table, "tablet");
    let fork = journal.fork(&id("w")).expect("a fork");
    (journal, fork)
}

#[test]
fn either_can_be_chosen_and_the_choice_undone() {
    for which in 0..2 {
        let (mut journal, fork) = forked();
        let (before, wanted) = (journal.state().clone(), names(&journal)[which].clone());
        let choice = does(&mut journal, fork.choose(&fork.tips[which].entry));
        assert_eq!((name(&journal), journal.fork(&id("w"))), (wanted.as_str(), None));
        let opened = Journal::open(journal.entries().iter().map(Entry::to_line).collect(), "x");
        assert_eq!(opened.state(), journal.state());
        assert_eq!(journal.last_undoable().map(|e| &e.id), Some(&choice.id));
        let back = does(&mut journal, undo(&choice.id));
        assert_eq!((journal.state(), journal.fork(&id("w"))), (&before, Some(fork.clone())));
        does(&mut journal, undo(&back.id));
        assert_eq!(name(&journal), wanted);
    }
}

#[test]
fn what_is_made_over_the_choice_goes_on_from_it() {
    let (mut journal, fork) = forked();
    let choice = does(&mut journal, fork.choose(&fork.tips[0].entry));
    does(&mut journal, version("Later", Some(&choice)));
    assert_eq!((name(&journal), journal.forks().len()), ("Later", 0));
}

#[test]
fn two_different_choices_are_shown_again_and_the_same_one_is_not() {
    for (second, still) in [(1, 1), (0, 0)] {
        let (mut tablet, fork) = forked();
        let mut table = Journal::open(tablet.entries().iter().map(Entry::to_line).collect(), "table");
        does(&mut tablet, fork.choose(&fork.tips[0].entry));
        does(&mut table, fork.choose(&fork.tips[second].entry));
        assert_eq!(merged(&tablet, &table, "x").forks().len(), still);
    }
}

#[test]
fn what_was_chosen_and_is_then_undone_leaves_the_other() {
    let (mut journal, fork) = forked();
    let other = names(&journal)[1].clone();
    does(&mut journal, fork.choose(&fork.tips[0].entry));
    does(&mut journal, undo(&fork.tips[0].entry));
    assert_eq!((name(&journal), journal.forks().len()), (other.as_str(), 0));
}

/// Choices that no screen offers: of nothing, of itself, of another thing, in a ring.
#[test]
fn hostile_choices_change_nothing_and_end() {
    let choose = |chosen: &str| Act::Choose { id: id("w"), chosen: id(chosen), among: vec![id("e1")] };
    let base = [entry("e0", 1, ingredient("w", "Wax", 1)), entry("f0", 1, ingredient("v", "Other", 1))];
    for (case, acts) in
        [vec![choose("none")], vec![choose("e1")], vec![choose("f0")], vec![choose("e2"), choose("e1")]]
            .into_iter()
            .enumerate()
    {
        let mut journal = Journal::open(base.iter().map(Entry::to_line).collect(), "x");
        for (n, act) in acts.into_iter().enumerate() {
            journal.take(entry(&format!("e{}", n + 1), 2, act));
        }
        assert_eq!((name(&journal), journal.forks().len()), ("Wax", 0), "case {case}");
        assert!(!journal.state().ignored.is_empty());
        assert!(journal.done(None, 99, Voice::default()).iter().any(|d| d.refused.is_some()));
    }
}

#[test]
fn the_history_tells_who_did_what_and_takes_any_of_it_back() {
    let (mut tablet, mut table, first) = two();
    let second = does(&mut table, version("Second", Some(&first)));
    tablet.take(second.clone());
    let note = does(&mut tablet, Act::Retire { id: id("w"), retired: true });
    does(&mut tablet, began("b", 4));
    does(&mut tablet, said("b", "a slip"));
    let done = tablet.done(Some(&id("w")), 99, Voice::default());
    let told: Vec<(&str, &str)> = done.iter().map(|d| (d.what.as_str(), d.device.as_str())).collect();
    assert_eq!(told, [("Put away", "tablet"), ("Changed", "table"), ("Written down", "tablet")]);
    // What it says is told; of what it is about there is a name, and what happened at the pot is in the words.
    let said = |d: &potside::book::Done| format!("{:?}", d.changes);
    assert_eq!(said(&done[0]), r#"[Difference { of: "retired", values: [None, Some("yes")] }]"#);
    assert_eq!(done[2].changes, []);
    let pour = tablet.done(Some(&id("b")), 99, Voice::default());
    assert_eq!(pour[0].changes, []);
    let began: Vec<_> = pour[1].changes.iter().map(|c| (c.of.as_str(), c.values[1].as_deref())).collect();
    assert_eq!(began, [("formula", Some("f")), ("vessel", Some("v"))]);
    assert_eq!(done[1].changes.len(), 1);
    assert_eq!(done[1].changes[0].values, [Some("First".to_owned()), Some("Second".to_owned())]);
    does(&mut tablet, done[0].turn().expect("it can be undone"));
    let done = tablet.done(Some(&id("w")), 99, Voice::default());
    assert_eq!((done[0].entry.clone(), done[0].undone.is_some()), (note.id, true));
    assert_eq!(tablet.state().ingredients.get(&id("w")).map(|k| k.retired), Some(false));
    does(&mut tablet, done[0].turn().expect("it can be undone"));
    assert_eq!(tablet.state().ingredients.get(&id("w")).map(|k| k.retired), Some(true));
    let all = tablet.done(None, 2, Voice::default());
    assert_eq!(all.iter().map(|d| d.what.as_str()).collect::<Vec<_>>(), ["Note: a slip", "The pour began"]);
    assert_eq!(all[0].name, "Plain meadow");
    does(&mut tablet, Act::Retire { id: id("w"), retired: false });
    does(&mut tablet, Act::Pinned { product: id("p"), body: potside::shelf::Pins::default() });
    let last = tablet.done(None, 2, Voice::default());
    let last: Vec<&str> = last.iter().map(|d| d.what.as_str()).collect();
    assert_eq!(last, ["The plan of its pours changed", "Taken out again"]);
}

/// A field of every kind, told as a person reads it.
#[test]
fn what_differs_is_told_in_words() {
    let journal = Journal::open(
        include_str!("../fixtures/v1.journal").lines().map(str::to_owned).collect(),
        "k3f9q2mw",
    );
    let done = journal.done(Some(&id("k3f9q2mw-a-h")), 99, Voice::default());
    let changes: Vec<String> =
        done[0].changes.iter().map(|d| format!("{}: {:?} to {:?}", d.of, d.values[0], d.values[1])).collect();
    assert_eq!(changes, ["parts, Orchard oil, basis: Some(\"of wax 8 %\") to Some(\"of wax 7.5 %\")"]);
    let said: Vec<String> = journal.done(None, 99, Voice::default()).into_iter().map(|d| d.what).collect();
    assert!(said.contains(&"Step done: add, Brick dye".to_owned()), "{said:?}");
}

/// A customer who was forgotten is forgotten in the history too, and in what differs.
#[test]
fn nothing_is_told_of_a_customer_who_was_forgotten() {
    let customer = |contact: &str, over: Option<&Entry>| Act::Customer {
        id: id("c"),
        over: over.map(|e| e.id.clone()),
        body: potside::shelf::Customer {
            name: "Someone".into(),
            contact: contact.into(),
            ..Default::default()
        },
    };
    let mut tablet = Journal::open(vec![], "tablet");
    let first = does(&mut tablet, customer("12 High Street", None));
    let mut table = Journal::open(vec![first.to_line()], "table");
    does(&mut tablet, customer("14 High Street", Some(&first)));
    does(&mut table, customer("16 High Street", Some(&first)));
    let mut all = merged(&tablet, &table, "tablet");
    let told = |j: &Journal| format!("{:?} {:?}", j.done(None, 99, Voice::default()), j.forks());
    assert!(told(&all).contains("14 High Street") && told(&all).contains("16 High Street"));
    does(&mut all, Act::Forgotten { customer: id("c") });
    assert!(!told(&all).contains("High Street") && !told(&all).contains("Someone"), "{}", told(&all));
}

/// What a thing done says, field by field.
fn told(act: Act) -> Vec<(String, String)> {
    let mut journal = Journal::open(vec![], "tablet");
    does(&mut journal, began("b", 4));
    does(&mut journal, super::sample::trial("A1", None, "Fig"));
    does(&mut journal, act);
    let last = journal.done(None, 1, Voice::default()).remove(0);
    last.changes.into_iter().map(|c| (c.of, c.values[1].clone().unwrap_or_default())).collect()
}

#[track_caller]
fn tells(act: Act, expected: &[(&str, &str)]) {
    let told = told(act);
    let told: Vec<(&str, &str)> = told.iter().map(|(of, said)| (of.as_str(), said.as_str())).collect();
    assert_eq!(told, expected);
}

#[test]
fn what_is_said_is_told_field_by_field() {
    let taken = |parts: &[(&str, &[&str])]| {
        let source = |(part, lots): &(&str, &[&str])| potside::stores::Source {
            part: (*part).to_owned(),
            lots: lots.iter().map(|lot| id(lot)).collect(),
        };
        Act::TakenFrom { batch: id("b"), sources: parts.iter().map(source).collect() }
    };
    // What has no name is numbered from 1; the order is told of what has, where there are several.
    tells(
        taken(&[("Fig", &["l1", "l2"])]),
        &[("sources, Fig, part", "Fig"), ("sources, Fig, lots, 1", "l1"), ("sources, Fig, lots, 2", "l2")],
    );
    tells(
        taken(&[("Fig", &[]), ("Oak", &[]), ("Fig", &[])]),
        &[
            ("sources, Fig, part", "Fig"),
            ("sources, Oak, part", "Oak"),
            ("sources, Fig 3, part", "Fig"),
            ("sources, order", "Fig, Oak, Fig 3"),
        ],
    );
    // One of several kinds, and the one thing it holds; an empty text says nothing.
    let mass = potside::quantity::Amount::new(
        potside::quantity::Exact::whole(385),
        potside::quantity::MassUnit::Gram,
    );
    tells(
        super::sample::burned("A1", potside::bench::burn::BurnEvent::Weighed { mass, lit: None }),
        &[("event", "weighed"), ("event, mass", "385 g")],
    );
    tells(super::sample::ended("b", ""), &[("how", "Poured")]);
}
