//! What a label may leave out.

use super::label::{ask, front, orchard, sheet, thick, workshop};
use crate::sample::{entry, id};
use potside::book::{Act, Labelled, Labelling};
use potside::desk::label::{Design, Face, Item, Market, Part, lay};
use potside::formula::PartKind;
use potside::quantity::{LengthUnit, Voice};
use potside::vessel::Vessel;

/// Where the net contents have to stand, by themselves on the label.
pub(crate) fn placed(label: &Labelled, design: &Design, voice: Voice) -> Option<String> {
    let laid = lay(&label.content, &design.sheet).expect("it fits");
    label.placing(&laid, voice).map(|asked| asked.said)
}

#[test]
fn a_label_of_no_batch_declares_the_fill() {
    let (state, voice) = (workshop(), Voice::default());
    let (formula, vessel) = (orchard(&state), thick());
    let label =
        |market| state.label(&ask(&front(&state, market), &formula, &vessel, false), Face::default(), voice);
    let text = |market| label(market).declared.expect("it is declared").text;
    // 100 g are 3.527 oz; in the European Union there are none.
    assert_eq!(text(Market::UnitedStates), "Net wt. 3.52 oz (100 g)");
    assert_eq!(text(Market::EuropeanUnion), "100 g");
    assert!(
        label(Market::Both).tests.is_empty()
            && !label(Market::Both).remarks.iter().any(|r| r.starts_with("As filled"))
    );
    // 0.4 · π · 50 · 55 mm² are 5.4 square inches, so the lowest 30 % of 55 mm count; without its walls it were less than 5.
    let place = |market, voice: Voice| {
        let design = Design { parts: vec![Part::Net], ..front(&state, market) };
        let label = state.label(&ask(&design, &formula, &vessel, false), Face::default(), voice);
        placed(&label, &design, voice)
    };
    let said = place(Market::UnitedStates, voice).expect("it has its place");
    assert!(said.contains(" within 16.5 mm of the foot of the vessel"), "{said}");
    assert_eq!(place(Market::EuropeanUnion, voice), None);
    let inches = Voice { length: LengthUnit::Inch, ..voice };
    let said = place(Market::Both, inches).expect("it has its place");
    assert!(said.contains(" within 0.64 in of the foot"), "{said}");
    // A vessel that is not measured inside has no side.
    let bare = Vessel { inside: None, ..vessel.clone() };
    let label =
        state.label(&ask(&front(&state, Market::Both), &formula, &bare, false), Face::default(), voice);
    assert!(label.remarks.iter().any(|r| r.starts_with("The inside of the vessel is not measured")));
    // Nor does anybody know how high the letters of the hazards are to be.
    let told = |label: &Labelled| label.remarks.iter().any(|r| r.starts_with("How much the vessel holds"));
    assert!(told(&label));
    let front = front(&state, Market::Both);
    assert!(!told(&state.label(&ask(&front, &formula, &vessel, false), Face::default(), voice)));
}

#[test]
fn a_small_package_may_leave_things_out_and_a_large_one_may_not() {
    let (state, voice) = (workshop(), Voice::default());
    let formula = orchard(&state);
    let design = front(&state, Market::Both);
    // About 48 mL, and 9.6 oz of water.
    let large = state.vessels.get(&id("demo-jar")).and_then(|k| k.body()).expect("it is in the demo");
    for (vessel, may) in [(&thick(), true), (large, false)] {
        let label = |small| state.label(&ask(&design, &formula, vessel, small), Face::default(), voice);
        assert_eq!(label(false).may_be_small, may);
        assert_eq!(label(true).content != label(false).content, may);
    }
}

/// All names stand on it unless the person says otherwise; which may go is told either way.
#[test]
fn names_are_left_off_only_where_that_is_chosen() {
    let (mut state, voice) = (workshop(), Voice::default());
    let formula = orchard(&state);
    let part = formula
        .parts
        .iter()
        .find(|p| p.kind == PartKind::Fragrance)
        .expect("it has a fragrance")
        .name
        .clone();
    let lines: Vec<String> = ('A'..='E')
        .map(|name| format!("{name}; 19.{} %; STOT RE 1 H372 >= 0.1 %", name as u32 - 64))
        .collect();
    // The newest of a name counts.
    for old in state.safety_shown().into_iter().map(|k| k.id.clone()).collect::<Vec<_>>() {
        state.take(&entry(&["r", &old.0].concat(), 1_000_000, Act::Retire { id: old, retired: true }));
    }
    state.take(&entry("names", 1_000_001, sheet(&part, &lines.join("\n"))));
    let design = Design { parts: vec![Part::Hazards], ..front(&state, Market::Both) };
    let vessel = thick();
    let label = |few_names| {
        let ask = Labelling { few_names, ..ask(&design, &formula, &vessel, false) };
        let label = state.label(&ask, Face::default(), voice);
        let laid = lay(&label.content, &design.sheet).expect("it fits");
        let words: Vec<String> = laid
            .items
            .iter()
            .filter_map(|item| match item {
                Item::Words { text, .. } => Some(text.clone()),
                _ => None,
            })
            .collect();
        (words.join(" "), label.spare.expect("one may go"))
    };
    let ((all, said), (few, again)) = (label(false), label(true));
    assert!(said.ends_with("left off: A.") && said == again, "{said}");
    assert!(all.contains("Contains: E, D, C, B, A."), "{all}");
    assert!(few.contains("Contains: E, D, C, B.") && !few.contains(", A"), "{few}");
}
