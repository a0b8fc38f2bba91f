//! What a label bears of a batch into which more went than its formula asks.

use crate::label::{ask, front, workshop};
use crate::sample::{entry, id};
use potside::book::{Act, Labelled, Labelling, State};
use potside::desk::hazard::SafetySheet;
use potside::desk::label::{Design, Face, Item, Market, Part, lay};
use potside::formula::PartKind;
use potside::pot::{Event, Plan, Run, StepKey, Way};
use potside::quantity::{Amount, Exact, Mass, ShareUnit, Voice};

const OIL: &str = "Late orchard oil";

fn sheet(ingredient: &str, lines: &str) -> Act {
    let body = SafetySheet { ingredient: ingredient.into(), lines: lines.into(), dated: String::new() };
    Act::Safety { id: id(ingredient), over: None, body }
}

/// The workshop with a batch `b` of its orchard candle, into which so many percent of the fragrance asked for went; none:
/// nothing was typed in. `until`: the kind of step before which it stands still.
fn poured(percent: Option<i128>, until: impl Fn(StepKey) -> bool) -> State {
    poured_by(|_| {}, percent, until)
}

/// The same by a plan that differs in this.
fn poured_by(differs: impl Fn(&mut Plan), percent: Option<i128>, until: impl Fn(StepKey) -> bool) -> State {
    let mut state = workshop();
    state.take(&entry("sheet", 899, sheet(OIL, "A; 13 %; Skin Sens. 1B H317")));
    let known = state.finished().iter().find(|b| b.formula == id("demo-orchard")).map(|b| (*b).clone());
    let known = known.expect("the demo has one");
    let mut plan = Plan::clone(&known.run.plan);
    differs(&mut plan);
    let plan = std::rc::Rc::new(plan);
    let (formula, version, vessel) = (known.formula, known.version, known.vessel);
    let began = Act::Began { batch: id("b"), formula, version, vessel, day: None, plan: plan.clone() };
    state.take(&entry("x", 900, began));
    let mut run = Run::new(plan.clone());
    let mut clock = 900;
    let mut act = |run: &mut Run, event: Event| {
        run.take(event.clone()).expect("it can be done");
        clock += 1;
        state.take(&entry(&format!("x{clock}"), clock, Act::At { batch: id("b"), event }));
    };
    while let Some(step) = run.now().filter(|step| !until(step.key)) {
        let line = match step.key {
            StepKey::Add { pour, line } => run.line(pour, line).cloned(),
            _ => None,
        };
        let oil = line.filter(|line| line.kind == Some(PartKind::Fragrance));
        let weighed = oil.and_then(|line| Some(line.dose.mass().times(Exact::ratio(percent?, 100))));
        let over = weighed.is_some() && percent.is_some_and(|p| p > 102);
        act(&mut run, Event::Did { step: step.key, weighed, temperature: None, at: 1 });
        if over {
            act(&mut run, Event::Mended { step: step.key, way: Way::Keep, at: 1 });
        }
    }
    state
}

fn label(state: &State, of_batch: bool) -> Labelled {
    let batch = state.batches.get(&id("b")).expect("it began");
    let (formula, vessel) = state.made_of(batch).expect("it is in the book");
    let design = Design { parts: vec![Part::Hazards], ..front(state, Market::EuropeanUnion) };
    let batch = Some(batch).filter(|_| of_batch);
    let asked = Labelling { batch, ..ask(&design, formula, vessel, false) };
    state.label(&asked, Face::default(), Voice::default())
}

/// What stands on it, and what is told of what was weighed.
fn said(state: &State, of_batch: bool) -> (String, Option<String>) {
    let label = label(state, of_batch);
    let design = Design { parts: vec![Part::Hazards], ..front(state, Market::EuropeanUnion) };
    let laid = lay(&label.content, &design.sheet).expect("it fits");
    let words = laid.items.iter().filter_map(|item| match item {
        Item::Words { text, .. } => Some(text.as_str()),
        _ => None,
    });
    let words = words.collect::<Vec<_>>().join(" ");
    (words, label.remarks.into_iter().find(|r| r.starts_with("More was weighed")))
}

const CLASSED: &str = "May cause an allergic skin reaction.";
const NAMED: &str = "Contains A. May produce an allergic reaction.";

/// 8 % of the wax are, beside some powder, 7.39 % of the candle, and 13 % of that are 0.96 %: not classed (Annex I, Table 3.4.5: 1 %), but named.
/// A tenth more of the oil is 8.07 % of the candle, and 1.05 %.
#[test]
fn more_fragrance_than_the_formula_asks_counts_as_it_was_weighed() {
    let state = poured(Some(110), |_| false);
    let (formula, told) = said(&state, false);
    assert!(formula.contains(NAMED) && !formula.contains(CLASSED) && told.is_none(), "{formula}");
    let (batch, told) = said(&state, true);
    assert!(batch.contains(CLASSED) && !batch.contains(NAMED), "{batch}");
    assert_eq!(
        told.as_deref(),
        Some(
            "More was weighed in this batch than the formula asks: 8.07 % of Late orchard oil instead of 7.39 %. The hazards \
             are those of what was weighed."
        )
    );
}

#[test]
fn what_was_not_weighed_or_less_counts_as_the_formula_asks() {
    for percent in [None, Some(100), Some(101), Some(60)] {
        let state = poured(percent, |_| false);
        let (batch, told) = said(&state, true);
        assert!(batch.contains(NAMED) && !batch.contains(CLASSED) && told.is_none(), "{percent:?}: {told:?}");
    }
}

/// While it is being made, what is not in yet is taken to come. The wax is 92.4 % of the candle, so its 1.05 % of a sensitiser
/// are 0.97 %; of the wax alone they would be 1.05 %.
#[test]
fn what_is_not_in_yet_is_taken_as_planned() {
    let mut state = poured(Some(110), |step| matches!(step, StepKey::Add { .. }));
    state.take(&entry("wax", 990, sheet("Meadow soft wax", "W; 1.05 %; Skin Sens. 1B H317")));
    let (batch, told) = said(&state, true);
    assert!(
        batch.contains("Contains W, A. May") && !batch.contains(CLASSED) && told.is_none(),
        "{batch} {told:?}"
    );
}

/// Of two parts the first is in, half as much again, and the other is not: what is told is told of what is in, and says so.
#[test]
fn what_was_weighed_so_far_is_told_as_such() {
    let last = |plan: &mut Plan| {
        for pour in &mut plan.pours {
            // The fragrance before the others.
            let at = pour.lines.iter().position(|line| line.name == OIL).expect("it is there");
            let first = pour.lines.iter().position(|line| line.kind.is_some()).expect("it is there");
            pour.lines.swap(first, at);
        }
    };
    let state = poured_by(last, Some(150), |key| matches!(key, StepKey::Add { line, .. } if line > 1));
    let remarks = label(&state, true).remarks;
    assert!(
        remarks.iter().any(|r| r.starts_with("As weighed in this batch so far, the rest as planned: ")),
        "{remarks:?}"
    );
    assert!(
        remarks
            .iter()
            .any(|r| r.starts_with("More was weighed in this batch so far, with the rest as planned, than")),
        "{remarks:?}"
    );
    assert!(!remarks.iter().any(|r| r.starts_with("As weighed in this batch: ")), "{remarks:?}");
}

/// By the plan it is within its supplier's highest load of 10 % of the wax; as weighed it is 12 %.
#[test]
fn a_highest_load_that_was_passed_at_the_pot_is_told() {
    let state = poured(Some(150), |_| false);
    let above =
        |label: Labelled| label.remarks.into_iter().find(|r| r.starts_with("As weighed in this batch: "));
    let told = above(label(&state, true)).expect("it is told");
    assert!(
        told.contains("“Late orchard oil” is 12.00 % of the wax") && told.contains("above its highest load"),
        "{told}"
    );
    assert_eq!(above(label(&state, false)), None);
    assert_eq!(above(label(&poured(Some(100), |_| false), true)), None);
}

/// Planned at its highest load, and weighed a division up, as the plan says: nothing went past it at the pot. A tenth more did.
#[test]
fn a_dose_that_the_plan_rounds_up_passes_no_load() {
    let tight = |plan: &mut Plan| {
        for line in plan.pours.iter_mut().flat_map(|pour| &mut pour.lines).filter(|line| line.name == OIL) {
            let percent = line.of_wax.in_base() * Exact::whole(100);
            line.highest = Some(Amount::new(percent, ShareUnit::Percent));
            line.dose = line.dose.of(line.exact + Mass::base(Exact::ratio(1, 10)));
        }
    };
    let above = |percent: Option<i128>| {
        let state = poured_by(tight, percent, |_| false);
        label(&state, true).remarks.into_iter().find(|r| r.starts_with("As weighed in this batch: "))
    };
    assert_eq!((above(None), above(Some(100))), (None, None));
    assert!(above(Some(110)).is_some());
}
