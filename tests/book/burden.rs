//! What a formula puts into the candle, where the book does not tell how much of it.

use crate::label::{ask, workshop};
use crate::sample::{entry, id};
use potside::book::{Act, State};
use potside::desk::hazard::{Mixed, SafetySheet, mix, remarks};
use potside::desk::label::{Design, Face, Part};
use potside::formula::{Basis, Formula};
use potside::quantity::Voice;
use potside::vessel::Vessel;
use potside::wire::read;

const OIL: &str = "Late orchard oil";
const NOT_TOLD: &str = "The formula does not tell how much is in the candle of Late orchard oil: its hazards are not in the result.";
const NONE: &str = "has no hazard statement to bear";

/// The demo's book and its orchard candle, the fragrance of which is measured so.
fn measured(basis: &str) -> (State, Formula) {
    let state = workshop();
    let mut formula =
        state.formulas.get(&id("demo-orchard")).and_then(|k| k.body()).expect("it is in the demo").clone();
    let oil = formula.parts.iter_mut().find(|p| p.name == OIL).expect("its fragrance");
    oil.basis = read::<Basis>(basis).expect("a basis");
    (state, formula)
}

fn found(state: &State, formula: &Formula) -> (Mixed, String) {
    let mixed = mix(&state.hazards_of(formula, Voice::default()), true);
    let said = remarks(&mixed, Voice::default()).join("\n");
    (mixed, said)
}

/// What is said of a label that has the hazards only.
fn on_the_label(state: &State, formula: &Formula) -> String {
    let kept = state.labels.get(&id("demo-label-front")).and_then(|k| k.body()).expect("it is in the demo");
    let design = Design { parts: vec![Part::Hazards], ..kept.clone() };
    let vessel: Vessel = read(r#"{"name":"Plain","fill":{"Weight":"100 g"}}"#).expect("a vessel");
    let asked = ask(&design, formula, &vessel, false);
    state.label(&asked, Face::default(), Voice::default()).remarks.join("\n")
}

/// Drops and spoons that were never weighed, pieces, no usual batch, no room for wax: nowhere is it told that there are no
/// hazards.
#[test]
fn a_fragrance_of_unknown_share_is_named_and_never_taken_for_none() {
    for basis in [r#"{"Drops":40}"#, r#"{"Spoon":"2 tsp"}"#, r#"{"PerVessel":2}"#, r#"{"OfWhole":"100 %"}"#] {
        let (state, formula) = measured(basis);
        let (mixed, said) = found(&state, &formula);
        assert!(mixed.is_open() && mixed.no_share == [OIL] && said.contains(NOT_TOLD), "{basis}: {said}");
        let label = on_the_label(&state, &formula);
        assert!(label.contains(NOT_TOLD) && label.contains("the label is not complete"), "{basis}: {label}");
        assert!(!label.contains(NONE), "{basis}: {label}");
    }
    let (state, mut formula) = measured(r#"{"Weight":"20 g"}"#);
    assert!(!found(&state, &formula).0.is_open());
    formula.usual = None;
    assert_eq!(found(&state, &formula).0.no_share, [OIL]);
}

/// Once its drops are weighed the share is known; a share that is written always was.
#[test]
fn a_known_share_is_not_called_unknown() {
    let (state, formula) = measured(r#"{"OfWax":"8 %"}"#);
    let (mixed, said) = found(&state, &formula);
    assert!(
        !mixed.is_open() && mixed.no_share.is_empty() && !said.contains("does not tell how much"),
        "{said}"
    );
    let label = on_the_label(&state, &formula);
    assert!(!label.contains("not complete"), "{label}");
    // Neither a wick, which is counted, nor wax is asked for a share.
    assert!(state.hazards_of(&formula, Voice::default()).iter().all(|part| !part.percent.is_zero()));
}

/// Beside hazards that are found it is told that there may be more.
#[test]
fn hazards_of_one_fragrance_do_not_hide_another_of_unknown_share() {
    let (mut state, mut formula) = measured(r#"{"OfWax":"8 %"}"#);
    let mut second = formula.parts.iter().find(|p| p.name == OIL).expect("its fragrance").clone();
    second.name = "Second oil".to_owned();
    second.basis = read(r#"{"Drops":9}"#).expect("a basis");
    formula.parts.push(second);
    let body =
        SafetySheet { ingredient: OIL.into(), lines: "A; 90 %; Carc. 2 H351".into(), dated: String::new() };
    state.take(&entry("sheet", 1_000_000, Act::Safety { id: id("sheet"), over: None, body }));
    let (mixed, _) = found(&state, &formula);
    assert!(!mixed.classes.is_empty() && mixed.no_share == ["Second oil"]);
    let label = on_the_label(&state, &formula);
    assert!(label.contains("may have more hazards to bear than stand here"), "{label}");
}

/// A line of a sheet of which nothing is known leaves it open as well.
#[test]
fn what_is_not_known_of_a_sheet_leaves_the_label_open() {
    let (mut state, formula) = measured(r#"{"OfWax":"8 %"}"#);
    let body = SafetySheet { ingredient: OIL.into(), lines: "A; 90 %; no data".into(), dated: String::new() };
    state.take(&entry("sheet", 1_000_000, Act::Safety { id: id("sheet"), over: None, body }));
    let label = on_the_label(&state, &formula);
    assert!(
        label.contains("cannot be told yet: the label is not complete") && !label.contains(NONE),
        "{label}"
    );
}

/// A formula that cannot be made has no limits that can be held against it, and is not said to be within them.
#[test]
fn limits_of_a_formula_with_errors_are_not_passed_over() {
    let (state, mut formula) = measured(r#"{"OfWax":"8 %"}"#);
    assert!(state.limits_of(&formula, Voice::default()).is_empty());
    formula.wax.clear();
    let said = state.limits_of(&formula, Voice::default());
    assert!(
        said.len() == 1 && said[0].contains("cannot be held against this formula until it is mended: "),
        "{said:?}"
    );
}
