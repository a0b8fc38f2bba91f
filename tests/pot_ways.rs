//! What is said where a measure is off, or cannot be taken: the sizes that would do, other ways, and when nothing is said.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod common;

use common::{Workshop, line, read};
use potside::formula::Basis;
use potside::pot::{Dose, Target, keeps_shade, outline, shades};
use potside::quantity::{Exact, Share};

/// What is said at the first colour of so many vessels.
fn said(w: &Workshop, vessels: u32) -> String {
    let plan = w.plan(Target::Vessels(vessels)).unwrap();
    line(&plan, "Red").notes.first().map(|n| n.text.clone()).unwrap_or_default()
}

#[test]
fn sizes_up_to_what_the_pot_just_holds_are_named() {
    let mut w = Workshop::new();
    let pot = |w: &mut Workshop, holds| w.pot.as_mut().unwrap().capacity = read(holds);
    // Every fourth keeps the shade; eight vessels of 180 g are 1440 g.
    pot(&mut w, "1440 g");
    assert!(said(&w, 7).contains(" A batch of 4 or 8 vessels keeps the shade exactly."));
    pot(&mut w, "1439 g");
    assert!(said(&w, 7).contains(" A batch of 4 vessels keeps the shade exactly."));
    // Of three at most none does. Wanted are 0.75 and 1.5 drops for each: one and two are a third too many, for two vessels
    // two and four as well; for three two and four are a ninth too few.
    pot(&mut w, "600 g");
    w.tolerance = read::<Share>("15 %").value;
    assert!(said(&w, 2).contains(" A batch of 3 vessels keeps it to within 15.00 %."), "{}", said(&w, 2));
    assert_eq!(said(&w, 3), "");
}

#[test]
fn next_best_is_named_only_where_it_is_nearer_in_depth() {
    let mut w = Workshop::new();
    // 1.5 drops of either for two: two and two are a third too many, one and one a third too few.
    w.formula.parts[4].basis = Basis::Drops(3);
    let text = said(&w, 2);
    assert!(
        text.starts_with("Red 2 drops for 1.50, Blue 2 drops for 1.50: 33.3 % too strong, the hue is kept.")
    );
    assert!(!text.contains("Next best"), "{text}");
}

#[test]
fn one_colour_has_no_hue_to_keep() {
    let mut w = Workshop::new();
    w.formula.parts.remove(4);
    assert!(said(&w, 2).starts_with("Red 2 drops for 1.50: 33.3 % too strong. "), "{}", said(&w, 2));
}

/// What is in drops and no dye has no part in the shade, and is nearest whole by itself.
#[test]
fn a_fragrance_in_drops_is_no_colour() {
    let mut w = Workshop::new();
    let alone: Vec<String> = (1..=8).map(|n| said(&w, n)).collect();
    w.formula.parts[0].basis = Basis::Drops(41);
    let beside: Vec<String> = (1..=8).map(|n| said(&w, n)).collect();
    assert_eq!(beside, alone);
    let fig = |vessels| {
        let plan = w.plan(Target::Vessels(vessels)).unwrap();
        let fig = line(&plan, "Fig leaf").clone();
        let Dose::Drops { drops, .. } = fig.dose else { panic!("{:?}", fig.dose) };
        (drops, fig.notes.iter().map(|n| n.text.clone()).collect::<Vec<_>>(), fig.why.relation)
    };
    let relation = "the nearest whole drops, at least one".to_owned();
    // 20.5 drops for two: a half goes to the even one. 0.5/20.5 is more than 2 %, 0.25/30.75 is not.
    let two = "20 drops of “Fig leaf” for 20.50: 2.44 % too little. A batch of 4, 8, 12 or 16 vessels takes whole drops.";
    assert_eq!(fig(2), (20, vec![two.to_owned()], relation.clone()));
    assert_eq!(fig(3), (31, vec![], relation.clone()));
    assert_eq!(fig(8), (82, vec![], relation));
    // Nor does it make sizes unfit for the dyes.
    assert!(keeps_shade(&w.ask(Target::Vessels(4))).unwrap());
    w.formula.parts[0].basis = Basis::Drops(1);
    assert!(keeps_shade(&w.ask(Target::Vessels(8))).unwrap());
    assert_eq!(shades(&w.ask(Target::Vessels(8))).unwrap(), Vec::<String>::new());
}

#[test]
fn a_weight_that_rounding_moves_too_far_is_said() {
    let mut w = Workshop::new();
    w.scales.truncate(1);
    w.scales[0].division = read("0.1 g");
    w.scales[0].least = read("0.2 g");
    w.fill = common::g(1811, 10);
    let said = |w: &Workshop| {
        let plan = w.plan(Target::Vessels(5)).unwrap();
        let guard = line(&plan, "Sun guard");
        let notes: Vec<String> = guard.notes.iter().map(|n| n.text.clone()).collect();
        (guard.dose.mass().over(guard.exact).unwrap() - Exact::ONE, notes)
    };
    // 4 g of 4.085 g: the others have more left over. The scale by itself is good to 0.05 g of it, 1.2 %.
    let (off, notes) = said(&w);
    assert_eq!(notes, ["4.085 g is wanted: rounding to the scale puts it off by −2.1 %."]);
    assert!(off < Exact::ratio(-2, 100));
    w.tolerance = Share::base(off.abs());
    assert_eq!(said(&w), (off, Vec::new()));
}

#[test]
fn the_ways_out_of_what_cannot_be_weighed() {
    let mut w = Workshop::new();
    w.scales.truncate(1);
    let plan = w.plan(Target::Vessels(1)).unwrap();
    let guard = line(&plan, "Sun guard");
    assert!(matches!(guard.dose, Dose::Unweighable { .. }));
    insta::assert_snapshot!(guard.notes[0].text);
    w.scales.clear();
    let plan = w.plan(Target::Vessels(1)).unwrap();
    assert!(line(&plan, "Soy").notes[0].text.contains("Add your scales at the Bench"));
}

#[test]
fn a_spoon_measure_that_does_not_come_out() {
    // ¾ tbsp for four is 4½ eighths of a teaspoon for one, so it is weighed where a scale can: 2.25/4 tsp · 4.93 mL · 0.54.
    let mut w = Workshop::new();
    let said = |w: &Workshop| {
        let plan = w.plan(Target::Vessels(1)).unwrap();
        let line =
            plan.pours[0].lines.iter().find(|l| ["Hardener", "Powder"].contains(&l.name.as_str())).unwrap();
        (matches!(line.dose, Dose::Spoon { .. }), line.notes[0].text.clone())
    };
    let opening = |name| format!("0.56 tsp of “{name}”: the nearest measure, ½ tsp, is off by 11.11 %.");
    assert_eq!(said(&w), (false, opening("Hardener") + " So it is weighed."));
    // Without a scale it is spooned. For n vessels 4½·n eighths are whole where n is even; from 7 on half of one is less than
    // 2 %.
    let scales = std::mem::take(&mut w.scales);
    let spooned = opening("Hardener") + " A batch of 2, 4, 6 or 7 vessels can be spooned.";
    assert_eq!(said(&w), (true, spooned));
    // Nor can it be weighed where it is not known what a spoon weighs.
    w.scales = scales;
    w.formula.parts[2].name = "Powder".into();
    let (spoon, text) = said(&w);
    assert!(
        spoon
            && text
                .ends_with(" Or weigh level spoons of it at the Bench, so that it can be weighed instead.")
    );
}

#[test]
fn the_choices_of_drops_are_said_nearest_first() {
    let w = Workshop::new();
    // 5.25 and 10.5 drops.
    let seven = w.ask(Target::Vessels(7));
    let said = shades(&seven).unwrap();
    assert_eq!(
        said,
        [
            "Red 5 drops for 5.25, Blue 10 drops for 10.50: 4.8 % too weak, the hue is kept",
            // 16/15.75, and 5/16 against a third.
            "Red 5 drops for 5.25, Blue 11 drops for 10.50: 1.6 % too strong, the share of Red among the colours is off by −6.2 %",
            // 17/15.75, and 6/17.
            "Red 6 drops for 5.25, Blue 11 drops for 10.50: 7.9 % too strong, the share of Red among the colours is off by +5.9 %"
        ]
    );
    assert_eq!(outline(&seven).unwrap().1, said);
    // Of several pots those of the first: 4 and 3 vessels.
    let w = Workshop {
        pot: Some(potside::bench::MeltingPot { name: "Jug".into(), capacity: read("800 g"), body: None }),
        ..w
    };
    let several = w.ask(Target::Vessels(7));
    assert_eq!(shades(&several).unwrap(), Vec::<String>::new());
    assert_eq!(outline(&several).unwrap().1, Vec::<String>::new());
}

#[test]
fn drops_say_how_far_off_and_what_to_do() {
    let w = Workshop::new();
    let notes: Vec<String> = [1, 2, 3, 4, 5, 6, 7, 8]
        .into_iter()
        .map(|n| {
            let plan = w.plan(Target::Vessels(n)).unwrap();
            let said = line(&plan, "Red").notes.iter().map(|n| n.text.clone()).collect::<Vec<_>>().join(" ");
            format!("{n}: {said}")
        })
        .collect();
    insta::assert_snapshot!(notes.join("\n"));
}
