//! What joins on a label: formula, safety data, vessel, batch as filled; and that both kinds of thing are kept.

use super::label_left_out::placed;
use crate::sample::{entry, id};
use potside::book::{Act, Id, Journal, Labelling, State, demo};
use potside::day::Zone;
use potside::desk::hazard::{SafetySheet, statements};
use potside::desk::label::{Design, Face, Market, Part, lay};
use potside::formula::Formula;
use potside::quantity::{Exact, Length, Mass, Voice};
use potside::vessel::Vessel;
use potside::wire::{read, write};

pub(crate) fn sheet(ingredient: &str, lines: &str) -> Act {
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
    assert_eq!(state.safety_shown().len(), 1);
    state.take(&entry("c", 3, Act::Retire { id: id("Apple"), retired: true }));
    assert_eq!((lines(&state), state.safety_shown().len()), (None, 0));
}

pub(crate) fn workshop() -> State {
    let mut n = 0;
    let lines = demo("tablet", 1_764_000_000_000, Zone::GREENWICH, || {
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
            let number = "261125-K7M2-9".to_owned();
            let mut ask = Labelling { batch: Some(batch), number, ..ask(design, formula, vessel, false) };
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
                assert!(
                    said.contains(&format!(": {0} of {0} candles weighed, on average ", fills.len())),
                    "{said}"
                );
                assert!(declared.enforced.is_some_and(|e| e <= mean), "{}", declared.text);
                assert!(
                    label.tests.len() == 2 && label.tests.iter().all(|(_, test)| test.passes == Some(true))
                );
                // More than there is does not pass.
                ask.declared = Some(mean + mean);
                assert!(
                    state
                        .label(&ask, Face::default(), voice)
                        .tests
                        .iter()
                        .all(|(_, test)| test.passes == Some(false))
                );
                ask.tapers = Some((2, Length::base(Exact::whole(254))));
                let tapers = state.label(&ask, Face::default(), voice);
                assert_eq!(
                    tapers.declared.as_ref().map(|d| d.text.as_str()),
                    Some("2 candles, each 10 in (25.4 cm)")
                );
                // They stand in no vessel: the label is all that is known of what they are packed in, and it is said.
                let packed = |r: &&String| r.contains("vessel");
                let packed: Vec<&String> = tapers.remarks.iter().filter(packed).collect();
                assert!(
                    packed.len() == 1 && packed[0].starts_with("Tapers stand in no vessel"),
                    "{packed:?}"
                );
                let place = placed(&tapers, design, voice).expect("the label is its panel");
                assert!(place.contains("of the lower edge of the label"), "{place}");
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

/// A sheet that another version kept may have a line that this one does not read: it is named and never passed over.
#[test]
fn a_kept_line_that_is_not_read_is_named() {
    let mut state = workshop();
    let formula = orchard(&state);
    state.take(&entry("z", 9000, sheet("Late orchard oil", "Linalool; 5 %; H317\nOdd; 20 %; Skin Irit. 2")));
    let mixed = potside::desk::hazard::mix(&state.hazards_of(&formula, Voice::default()), true);
    let said = potside::desk::hazard::remarks(&mixed, Voice::default());
    let line = "Hazards not known in full: line 2 of the sheet of Late orchard oil.".to_owned();
    assert!(said.contains(&line), "{said:?}");
}

pub(crate) fn orchard(state: &State) -> Formula {
    state.formulas.get(&id("demo-orchard")).and_then(|k| k.body()).expect("it is in the demo").clone()
}

/// 40 mm wide at the top and 50 mm high inside, with walls of 5 mm; 100 g.
pub(crate) fn thick() -> Vessel {
    let text = r#"{"name":"Thick","inside":{"top":"40 mm","bottom":"30 mm","height":"50 mm"},"wall":"5 mm","fill":{"Weight":"100 g"}}"#;
    read(text).expect("a vessel")
}

pub(crate) fn front(state: &State, market: Market) -> Design {
    let kept = state.labels.get(&id("demo-label-front")).and_then(|k| k.body()).expect("it is in the demo");
    Design { parts: Part::ALL.to_vec(), market, ..kept.clone() }
}

pub(crate) fn ask<'a>(
    design: &'a Design,
    formula: &'a Formula,
    vessel: &'a Vessel,
    small: bool,
) -> Labelling<'a> {
    Labelling {
        design,
        formula,
        vessel,
        batch: None,
        name: String::new(),
        number: String::new(),
        day: String::new(),
        declared: None,
        tapers: None,
        small,
        few_names: false,
    }
}

#[test]
fn who_makes_it_stands_there_where_it_is_said() {
    let (state, formula, vessel) = (workshop(), orchard(&workshop()), thick());
    let has = |maker: &str, parts: &[Part]| {
        let design = Design { maker: maker.to_owned(), parts: parts.to_vec(), ..front(&state, Market::Both) };
        state
            .label(&ask(&design, &formula, &vessel, false), Face::default(), Voice::default())
            .content
            .has(Part::Maker)
    };
    assert!(has(" Hedge Lane ", &[Part::Maker]));
    assert!(!has(" ", &[Part::Maker]) && !has("Hedge Lane", &[Part::Name]));
}

#[test]
fn the_suppliers_limits_are_remarks() {
    let (state, vessel) = (workshop(), thick());
    let mut formula = orchard(&state);
    assert!(state.limits_of(&formula, Voice::default()).is_empty());
    let oil = formula.parts.iter_mut().find(|p| p.name == "Late orchard oil").expect("its fragrance");
    oil.highest = None;
    let said = state.limits_of(&formula, Voice::default());
    assert!(said.len() == 1 && said[0].starts_with("The highest load of “Late orchard oil”"), "{said:?}");
    let oil = formula.parts.iter_mut().find(|p| p.name == "Late orchard oil").expect("its fragrance");
    oil.highest = Some(read("\"1 %\"").expect("a share"));
    let said = state.limits_of(&formula, Voice::default());
    assert!(said.len() == 1 && said[0].contains("Late orchard oil") && said[0].contains("1 %"), "{said:?}");
    let design = front(&state, Market::Both);
    let label = state.label(&ask(&design, &formula, &vessel, false), Face::default(), Voice::default());
    assert!(label.remarks.contains(&said[0]));
    // Of what is not declared, only the fragrance may do harm.
    let parts = state.hazards_of(&formula, Voice::default());
    let harmful: Vec<&str> = parts.iter().filter(|p| !p.harmless).map(|p| p.name.as_str()).collect();
    assert_eq!(harmful, ["Late orchard oil"]);
}

/// The label says what the candle is sold as; a candle that is not sold yet has its formula's name, and what is typed counts
/// before both.
#[test]
fn the_name_on_a_label_is_what_it_is_sold_as() {
    let mut state = workshop();
    let batch = state.finished()[0].clone();
    let product = state.product_of(&batch).expect("it is sold").clone();
    let (formula, vessel) =
        state.made_of(&batch).map(|(f, v)| (f.clone(), v.clone())).expect("both are here");
    let none = Id(String::new());
    let of_batch = [batch.id.clone(), none.clone(), none.clone()];
    let alone = [none.clone(), product.formula.clone(), product.vessel.clone()];
    assert_ne!(product.name, formula.name);
    assert_eq!([state.label_name(&of_batch), state.label_name(&alone)], [&*product.name, &product.name]);
    // Another vessel with it is not sold.
    let other = [none.clone(), product.formula.clone(), none.clone()];
    assert_eq!(state.label_name(&other), formula.name);
    state.products = potside::book::Map::default();
    assert_eq!([state.label_name(&of_batch), state.label_name(&alone)], [&*formula.name, &formula.name]);
    assert_eq!(state.label_name(&[none.clone(), none.clone(), none]), "");
    let design = front(&state, Market::EuropeanUnion);
    for (typed, name) in [("", formula.name.as_str()), (" ", &formula.name), (" Dusk ", "Dusk")] {
        let asked = Labelling { name: typed.to_owned(), ..ask(&design, &formula, &vessel, false) };
        let label = state.label(&asked, Face::default(), Voice::default());
        let named = format!("{:?}", label.content).contains(&format!("{name:?}"));
        assert!(named, "{typed:?}: {:?}", label.content);
    }
}
