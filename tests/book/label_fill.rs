//! What a label says of a batch of which all, some, one or none was weighed as it was filled.

use crate::label::{ask, front, workshop};
use crate::sample::{entry, id};
use potside::book::{Act, Labelled, Labelling, State};
use potside::desk::label::{Face, Market};
use potside::pot::{Event, StepKey};
use potside::quantity::{Exact, Mass, Voice};

fn grams(tenths: i128) -> Mass {
    Mass::base(Exact::ratio(tenths, 10))
}

/// The workshop with a batch `b` after one of its own, of which these vessels were weighed, so many tenths of a gram over
/// the planned fill; that fill, and how many vessels there are.
fn filled(over: impl Fn(u32) -> Option<i128>) -> (State, Mass, u32) {
    let mut state = workshop();
    let known = state.finished()[0].clone();
    let plan = std::rc::Rc::clone(&known.run.plan);
    let (fill, vessels) = (plan.fill, plan.vessels);
    let (formula, version, vessel) = (known.formula, known.version, known.vessel);
    let began = Act::Began { batch: id("b"), formula, version, vessel, day: None, plan: plan.clone() };
    state.take(&entry("x", 900, began));
    let mut run = potside::pot::Run::new(plan);
    let mut clock = 900;
    while let Some(step) = run.now() {
        let weighed = match step.key {
            StepKey::Fill { vessel, .. } => over(vessel).map(|tenths| fill + grams(tenths)),
            _ => None,
        };
        let event = Event::Did { step: step.key, weighed, temperature: None, at: 1 };
        run.take(event.clone()).expect("it can be done");
        clock += 1;
        state.take(&entry(&format!("x{clock}"), clock, Act::At { batch: id("b"), event }));
    }
    (state, fill, vessels)
}

/// The label of the batch `b`; `declared`: as typed.
fn label(state: &State, market: Market, declared: Option<Mass>) -> Labelled {
    let batch = state.batches.get(&id("b")).expect("it began");
    let (formula, vessel) = state.made_of(batch).expect("it is in the book");
    let design = front(state, market);
    let asked = Labelling { batch: Some(batch), declared, ..ask(&design, formula, vessel, false) };
    state.label(&asked, Face::default(), Voice::default())
}

fn text(label: &Labelled) -> &str {
    &label.declared.as_ref().expect("it is declared").text
}

fn said(label: &Labelled) -> &str {
    label.remarks.iter().find(|r| r.starts_with("As filled, by the record: ")).expect("it is said")
}

fn whole(mass: Mass) -> String {
    format!("{} g", mass.in_base().floor())
}

/// Of a batch what was filled is declared, not what was planned.
#[test]
fn a_batch_that_was_weighed_declares_its_average() {
    let (state, fill, vessels) = filled(|vessel| Some(if vessel == 0 { 320 } else { 20 }));
    assert!(vessels > 2, "one of several");
    let label = label(&state, Market::EuropeanUnion, None);
    let mean = fill + grams(20) + Mass::base(Exact::ratio(30, vessels.into()));
    assert_eq!(text(&label), whole(mean));
    let voice = Voice::default();
    let all = format!(
        "As filled, by the record: {vessels} of {vessels} candles weighed, on average {}, the smallest {}.",
        voice.both(mean),
        voice.both(fill + grams(20))
    );
    assert_eq!(said(&label), all);
    assert_eq!(label.tests.len(), 1);
    assert!(label.tests[0].1.why.result == "would pass" && label.over.is_none());
    // All were weighed, so chance excuses nothing: 1 g more than the average does not pass, though the fills spread by more.
    let more = |tenths: i128| self::label(&state, Market::UnitedStates, Some(mean + grams(tenths))).tests;
    assert_eq!((more(0)[0].1.passes, more(10)[0].1.passes), (Some(true), Some(false)));
}

/// Weights that nobody took prove nothing: no test is passed on them, and the planned fill is said to be what it rests on.
#[test]
fn a_batch_that_nobody_weighed_passes_no_test() {
    let (state, fill, vessels) = filled(|_| None);
    for market in [Market::EuropeanUnion, Market::UnitedStates, Market::Both] {
        let label = label(&state, market, None);
        assert!(label.tests.is_empty() && label.over.is_none(), "{:?}", label.tests);
        let begins = format!("As filled, by the record: 0 of {vessels} candles weighed. ");
        let rests = format!("rests on the planned fill, {}.", Voice::default().both(fill));
        let said = said(&label);
        assert!(
            said.starts_with(&begins) && said.contains("cannot be told") && said.contains(&rests),
            "{said}"
        );
        assert!(label.declared.expect("it is declared").enforced.is_some_and(|e| e <= fill));
    }
    // No test tells that too much was typed.
    assert_eq!(label(&state, Market::Both, Some(fill)).over, None);
    let over = label(&state, Market::Both, Some(fill + grams(1))).over.expect("more than was planned");
    assert!(over.contains("More than is in it may not stand on a label"), "{over}");
}

/// Only what was weighed counts; of the others no more than the planned fill is declared.
#[test]
fn a_batch_weighed_in_part_counts_what_was() {
    let voice = Voice::default();
    let (state, fill, vessels) = filled(|vessel| (vessel < 2).then_some(if vessel == 0 { 200 } else { 180 }));
    let full = label(&state, Market::Both, None);
    let share = format!("2 of {vessels}");
    assert_eq!(full.declared.as_ref().expect("it is declared"), &potside::desk::net::declare(fill));
    let found = format!(
        "{share} candles weighed, on average {}, the smallest {}.",
        voice.both(fill + grams(190)),
        voice.both(fill + grams(180))
    );
    assert!(
        said(&full).contains(&found) && said(&full).contains("What is in the others is not known"),
        "{:?}",
        said(&full)
    );
    for (_, test) in &full.tests {
        assert_eq!(
            (test.passes, &test.why.result),
            (Some(true), &format!("would pass, by the {share} weighed"))
        );
        assert!(test.why.values.iter().any(|v| v.name == "weighed" && v.shown == share));
    }
    // Less than was planned: that is declared, as before.
    let (state, fill, _) = filled(|vessel| (vessel < 2).then_some(-50));
    assert_eq!(text(&label(&state, Market::EuropeanUnion, None)), whole(fill + grams(-50)));
    for (_, test) in label(&state, Market::Both, Some(fill)).tests {
        assert_eq!(
            (test.passes, test.why.result),
            (Some(false), format!("would not pass, by the {share} weighed"))
        );
    }
}

/// How the fills spread cannot be told from one of several: it passes nothing, however full it is.
#[test]
fn one_of_several_is_not_enough_to_pass() {
    let (state, fill, vessels) = filled(|vessel| (vessel == 0).then_some(200));
    let label = label(&state, Market::Both, None);
    assert_eq!(label.declared.as_ref().expect("it is declared"), &potside::desk::net::declare(fill));
    assert_eq!(label.tests.len(), 2);
    for (_, test) in &label.tests {
        assert_eq!(test.passes, None);
        assert_eq!(test.why.result, format!("cannot be told here, by the 1 of {vessels} weighed"));
        assert!(test.rules.iter().any(|(holds, said)| holds.is_none() && said.contains("one tells nothing")));
    }
}
