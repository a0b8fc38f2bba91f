//! What joins on a label: formula, safety data, vessel, batch as filled; and that both kinds of thing are kept.

use crate::sample::{entry, id};
use potside::book::{Act, Journal, Labelling, State, demo};
use potside::desk::hazard::{SafetySheet, statements};
use potside::desk::label::{Face, lay};
use potside::quantity::{Exact, Length, Mass, Voice};
use potside::wire::{read, write};

fn sheet(ingredient: &str, lines: &str) -> Act {
    let body = SafetySheet { ingredient: ingredient.into(), lines: lines.into(), dated: String::new() };
    Act::Safety { id: id(ingredient), over: None, body }
}

#[test]
fn safety_data_is_kept_found_by_name_and_put_away() {
    let mut state = State::default();
    let act = sheet("Apple", "Linalool; 5 %; H317");
    assert_eq!(read::<Act>(&write(&act)), Ok(act.clone()));
    state.take(&entry("a", 1, act));
    state.take(&entry("b", 2, sheet("Apple", "Linalool; 6 %; H317")));
    let lines = |state: &State| state.safety_of(" apple ").and_then(|k| k.body()).map(|s| s.lines.clone());
    assert_eq!(lines(&state).as_deref(), Some("Linalool; 6 %; H317"));
    state.take(&entry("c", 3, Act::Retire { id: id("Apple"), retired: true }));
    assert_eq!((lines(&state), state.safety_shown().len()), (None, 0));
}

fn workshop() -> State {
    let mut n = 0;
    let lines = demo("tablet", 1_764_000_000_000, || {
        n += 7919;
        n
    });
    let lines = lines.into_iter().map(|(_, line)| line).collect();
    Journal::open(lines, "tablet").state().clone()
}

/// The demo's own labels for its own batches: both fit, and say what they have to.
#[test]
fn the_labels_of_the_demo() {
    let state = workshop();
    let voice = Voice::default();
    assert_eq!(state.labels_shown().len(), 2);
    for batch in state.finished() {
        let (formula, vessel) = state.made_of(batch).expect("it is in the book");
        for design in state.labels_shown().into_iter().filter_map(|k| k.body()) {
            let mut ask = Labelling {
                design,
                formula,
                vessel,
                batch: Some(batch),
                number: "261125-K7M2-9".to_owned(),
                day: "25 Nov 2026".to_owned(),
                declared: None,
                tapers: None,
                small: false,
            };
            let label = state.label(&ask, Face::default(), voice);
            assert!(lay(&label.content, &design.sheet).is_ok(), "{} for {}", design.name, formula.name);
            if let Some(declared) = &label.declared {
                let fills = batch.run.record(voice).vessels;
                let mean =
                    fills.iter().map(|v| v.mass).sum::<Mass>().times(Exact::ratio(1, fills.len() as i128));
                // The smallest as filled stands beside the average, in both units.
                let least = fills.iter().map(|v| v.mass).min().expect("there is one");
                let said = label.remarks.iter().find(|r| r.starts_with("As filled, by the record: "));
                let said = said.expect("it is said");
                assert!(
                    said.contains(&[&voice.both(mean), ", the smallest ", &voice.both(least)].concat()),
                    "{said}"
                );
                assert!(declared.enforced.is_some_and(|e| e <= mean), "{}", declared.text);
                assert!(label.tests.len() == 2 && label.tests.iter().all(|(_, test)| test.passes));
                // More than there is does not pass.
                ask.declared = Some(mean + mean);
                assert!(state.label(&ask, Face::default(), voice).tests.iter().all(|(_, test)| !test.passes));
                ask.tapers = Some((2, Length::base(Exact::whole(254))));
                let tapers = state.label(&ask, Face::default(), voice);
                assert_eq!(
                    tapers.declared.map(|d| d.text).as_deref(),
                    Some("2 candles, each 10 in (25.4 cm)")
                );
            }
        }
    }
}

/// 8 % of the wax of the orchard oil: named allergens, and nothing of them above its own limit but what is.
#[test]
fn a_formula_meets_the_safety_data_of_its_parts() {
    let state = workshop();
    let formula =
        state.formulas_shown().into_iter().filter_map(|k| k.body()).find(|f| f.name.contains("rchard"));
    let parts = state.hazards_of(formula.expect("the demo has an orchard"), Voice::default());
    let sheets: Vec<&str> = parts.iter().filter(|p| p.sheet.is_some()).map(|p| p.name.as_str()).collect();
    assert_eq!(sheets, ["Late orchard oil"]);
    let all: Exact = parts.iter().map(|p| p.percent).sum();
    assert_eq!(all, Exact::whole(100));
    let said = statements(&potside::desk::hazard::mix(&parts, true), false);
    assert!(
        said.further.first().is_some_and(|line| line.contains("Linalool") && line.contains("Citral")),
        "{said:?}"
    );
}
