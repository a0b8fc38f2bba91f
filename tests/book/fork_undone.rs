//! Versions made beside each other over one that was taken back, or that is not here: both are shown all the same.

use super::sample::{does, id, ingredient, undo};
use potside::book::{Act, Entry, Journal};

fn version(name: &str, over: Option<&Entry>) -> Act {
    let Act::Ingredient { id, body, .. } = ingredient("w", name, 862) else { panic!("it is an ingredient") };
    Act::Ingredient { id, over: over.map(|e| e.id.clone()), body }
}

fn tips(journal: &Journal) -> Vec<String> {
    let fork = journal.fork(&id("w"));
    let differs = fork.iter().flat_map(|f| &f.differs).find(|d| d.of == "name");
    let mut all: Vec<String> = differs.iter().flat_map(|d| d.values.iter().flatten().cloned()).collect();
    all.sort();
    all
}

fn with(lines: &[&Journal]) -> Journal {
    let mut all = Journal::open(vec![], "x");
    all.take_all(lines.iter().flat_map(|j| j.entries().to_vec()).collect());
    all
}

#[test]
fn two_changes_of_a_version_that_was_taken_back_are_both_shown() {
    let mut tablet = Journal::open(vec![], "tablet");
    let first = does(&mut tablet, version("First", None));
    let second = does(&mut tablet, version("Second", Some(&first)));
    let mut table = with(&[&tablet]);
    let third = does(&mut tablet, version("Tablet's", Some(&second)));
    does(&mut table, version("Table's", Some(&second)));
    let both = with(&[&tablet, &table]);
    assert_eq!(tips(&both), ["Table's", "Tablet's"]);
    does(&mut tablet, undo(&second.id));
    assert_eq!(tips(&with(&[&tablet, &table])), ["Table's", "Tablet's"], "taken back");
    // What was made over one of them takes the place of that one only.
    does(&mut tablet, version("Tablet's again", Some(&third)));
    assert_eq!(tips(&with(&[&tablet, &table])), ["Table's", "Tablet's again"]);
    // The line of the version that both were made over is damaged.
    let lacks = |j: &Journal| {
        Journal::open(j.entries().iter().filter(|e| e.id != second.id).map(Entry::to_line).collect(), "x")
    };
    assert_eq!(tips(&lacks(&both)), ["Table's", "Tablet's"], "not here");
}

#[test]
fn what_was_made_over_a_choice_that_was_taken_back_is_over_all_it_chose_among() {
    let mut tablet = Journal::open(vec![], "tablet");
    let first = does(&mut tablet, version("First", None));
    let mut table = with(&[&tablet]);
    does(&mut tablet, version("Tablet's", Some(&first)));
    does(&mut table, version("Table's", Some(&first)));
    let mut both = with(&[&tablet, &table]);
    let fork = both.fork(&id("w")).expect("both are shown");
    let choice = does(&mut both, fork.choose(&fork.tips[0].entry));
    does(&mut both, version("Last", Some(&choice)));
    assert!(both.forks().is_empty());
    does(&mut both, undo(&choice.id));
    assert!(both.forks().is_empty(), "{:?}", tips(&both));
}
