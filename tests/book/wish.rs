//! What is wished for at the pot, in terms of the book.

use potside::book::{Book, Id, State, Wish, demo};
use potside::pot::{Residue, Target};
use potside::quantity::Voice;

fn workshop() -> Book {
    let lines = demo("demo", 1_800_000_000_000, || 7);
    Book::open(lines.into_iter().map(|(_, line)| line).collect(), "test")
}

fn id(text: &str) -> Id {
    Id(text.to_owned())
}

fn wish(formula: &str, vessel: &str) -> Wish {
    Wish {
        formula: id(formula),
        vessel: id(vessel),
        wick: "Cotton 14".to_owned(),
        target: Target::Vessels(4),
        residue: Residue::None,
        warmed: true,
        pot: None,
    }
}

#[track_caller]
fn refused(state: &State, wish: &Wish, expected: &str) {
    assert_eq!(state.plan(wish, Voice::default()).unwrap_err().to_string(), expected);
}

#[test]
fn a_wish_becomes_a_plan_with_the_names_of_the_book() {
    let book = workshop();
    let plan = book.state().plan(&wish("demo-orchard", "demo-jar"), Voice::default()).unwrap();
    let formula = book.state().formulas[&id("demo-orchard")].body().unwrap();
    let vessel = book.state().vessels[&id("demo-jar")].body().unwrap();
    assert_eq!((&plan.formula, &plan.vessel, plan.vessels), (&formula.name, &vessel.name, 4));
    assert_eq!((plan.wick.as_str(), plan.pot, plan.warmed), ("Cotton 14", None, true));
}

#[test]
fn what_is_not_in_the_book_is_named() {
    let book = workshop();
    let state = book.state();
    refused(state, &wish("gone", "demo-jar"), "Choose a formula first.");
    refused(state, &wish("demo-orchard", "gone"), "Choose a vessel first.");
    let pot = Wish { pot: Some(id("gone")), ..wish("demo-orchard", "demo-jar") };
    refused(state, &pot, "That pot is not in this book any more. Choose another one.");
    let none = Wish { target: Target::Vessels(0), ..wish("demo-orchard", "demo-jar") };
    refused(state, &none, "That fills no vessel. Ask for at least one.");
}

#[test]
fn the_vessels_of_the_formula_come_first_with_their_wicks() {
    let book = workshop();
    let named = &book.state().formulas[&id("demo-orchard")].body().unwrap().vessels;
    let offers = book.state().vessels_for(&id("demo-orchard"));
    for (offer, named) in offers.iter().zip(named) {
        assert_eq!((&offer.vessel, offer.wick.as_ref()), (&named.vessel, Some(&named.wick)));
    }
    assert!(offers[named.len()..].iter().all(|o| o.wick.is_none()));
    let mut all: Vec<_> = offers.iter().map(|o| &o.vessel).collect();
    all.sort();
    all.dedup();
    assert_eq!(all.len(), book.state().vessels_shown().len());
}

#[test]
fn a_batch_is_made_again_as_it_was() {
    let book = workshop();
    let state = book.state();
    let batch = state.batches_shown()[0];
    let plan = state.plan(&state.again(batch), Voice::default()).unwrap();
    let before = &batch.run.plan;
    assert_eq!((&plan.vessel, &plan.wick, plan.vessels), (&before.vessel, &before.wick, before.vessels));
    assert_eq!((&plan.pot, plan.warmed, plan.total), (&before.pot, before.warmed, before.total));
}

#[test]
fn what_can_run_short_is_weighed_or_dropped_not_counted() {
    let book = workshop();
    let names = book.state().ingredients_of(&id("demo-orchard"));
    let formula = book.state().formulas[&id("demo-orchard")].body().unwrap();
    let counted = |name: &String| formula.parts.iter().any(|p| p.is_counted() && p.name == *name);
    assert!(!names.is_empty() && !names.iter().any(counted));
    assert!(book.state().ingredients_of(&id("gone")).is_empty());
}
