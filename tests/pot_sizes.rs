//! How many vessels a pour fills and in how many pots: so many as asked for, as a total allows, as far as what is left goes.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod common;

use common::{Workshop, g, read, refused, takes};
use potside::formula::Basis;
use potside::pot::{Residue, Target};
use potside::quantity::{Amount, Exact, Mass, MassUnit, Quantity};
use proptest::prelude::*;

#[test]
fn pours_are_as_equal_as_whole_vessels_allow() {
    let mut w = Workshop::new();
    // 3 kg holds 16 vessels of 180 g with 20 g staying behind.
    w.pot.as_mut().unwrap().capacity = read("3000 g");
    w.residue = Residue::Each(read("20 g"));
    let plan = w.plan(Target::Vessels(17)).unwrap();
    assert_eq!(plan.pours.iter().map(|p| p.vessels).collect::<Vec<_>>(), [9, 8]);
    assert_eq!(plan.residue, g(40, 1));
    assert_eq!(plan.total, g(17 * 180 + 40, 1));
    let plan = w.plan(Target::Vessels(16)).unwrap();
    assert_eq!(plan.pours.len(), 1);
    w.pot = None;
    assert_eq!(w.plan(Target::Vessels(1000)).unwrap().pours.len(), 1);
}

#[test]
fn as_far_as_it_goes() {
    let mut w = Workshop::new();
    // 2.15 oz for 4 vessels: 30 oz is enough for 55 and a bit.
    let plan = w.plan(Target::Left { ingredient: "Fig leaf".into(), mass: read("30 oz") }).unwrap();
    assert_eq!(plan.vessels, 55);
    assert!(takes(&plan, "Fig leaf") <= Mass::of(Exact::whole(30), MassUnit::Ounce));
    // 2.15 oz is 60.95 g, enough for 4; but in tenths of a gram the plan would take 61.0 g.
    w.scales[1].division = read("0.1 g");
    let exactly = w.plan(Target::Left { ingredient: "Fig leaf".into(), mass: read("2.15 oz") }).unwrap();
    assert_eq!(exactly.vessels, 3);
    // With one less it still says why there are so many.
    let vessels = exactly.why.values.iter().find(|v| v.name == "vessels").unwrap();
    assert_eq!(vessels.shown, "3");
    assert!(vessels.why.as_ref().is_some_and(|why| why.what.contains("Fig leaf")), "{:?}", vessels.why);
    let enough = w.plan(Target::Left { ingredient: "Fig leaf".into(), mass: read("61.0 g") }).unwrap();
    assert_eq!(enough.vessels, 4);
}

#[test]
fn what_is_left_is_enough_though_every_pot_rounds_up() {
    let mut w = Workshop::new();
    w.formula.parts.truncate(1);
    w.formula.parts[0].basis = Basis::OfWax(read("8.3 %"));
    w.fill = g(20, 1);
    w.pot.as_mut().unwrap().capacity = read("400 g");
    w.scales.truncate(1);
    w.scales[0].least = read("1 g");
    // Of 400 g in a pot of twenty 30.66 g are weighed as 31, in up to thirteen pots: one vessel less is not enough.
    for left in [399, 397, 368, 276] {
        let mass = Amount::new(Exact::whole(left), MassUnit::Gram);
        let plan = w.plan(Target::Left { ingredient: "Fig leaf".into(), mass }).unwrap();
        assert!(takes(&plan, "Fig leaf") <= mass.value, "{left}: {:?}", takes(&plan, "Fig leaf"));
        assert!(plan.vessels > 170);
    }
}

#[test]
fn a_total_is_never_exceeded_in_pots_of_one_vessel() {
    let mut w = Workshop::new();
    w.fill = g(100, 1);
    w.residue = Residue::Each(read("50 g"));
    w.pot.as_mut().unwrap().capacity = read("150 g");
    // Six pots of one vessel are 900 g; nine vessels in one pot would be 950 g.
    let plan = w.plan(Target::Total(read("1000 g"))).unwrap();
    assert_eq!((plan.vessels, plan.pours.len(), plan.total), (6, 6, g(900, 1)));
    let told = "Of the 1000.0 g (35.27 oz) asked for, whole vessels in such a pot use 900.0 g (31.75 oz).";
    assert!(plan.notes.iter().any(|n| n.text == told), "{:?}", plan.notes);
    refused(
        &w,
        Target::Total(read("149 g")),
        "149.0 g (5.26 oz) fills no vessel: one needs 150.0 g (5.29 oz) in the pot. Ask for more.",
    );
}

#[test]
fn a_total_fills_whole_vessels() {
    let w = Workshop::new();
    let plan = w.plan(Target::Total(read("2 kg"))).unwrap();
    assert_eq!((plan.vessels, plan.total), (11, g(2000, 1)));
    assert!(
        plan.notes
            .iter()
            .any(|n| n.text == "That fills 11 vessels and leaves 20.0 g (0.71 oz), too little for one more.")
    );
    let doses: Mass = plan.pours.iter().map(|p| p.total).sum();
    assert!((doses - g(2000, 1)).in_base().abs() < Exact::ONE);
}

#[test]
fn what_cannot_be_planned_is_said_plainly() {
    let mut w = Workshop::new();
    refused(&w, Target::Vessels(0), "That fills no vessel. Ask for at least one.");
    refused(&w, Target::Vessels(u32::MAX), "That is more than 10000 vessels. Plan it as several batches.");
    refused(
        &w,
        Target::Total(read("100 g")),
        "100.0 g (3.53 oz) fills no vessel: one needs 180.0 g (6.35 oz) in the pot. Ask for more.",
    );
    refused(
        &w,
        Target::Left { ingredient: "Fig leaf".into(), mass: read("1 g") },
        "1 g of “Fig leaf” is not enough for one vessel. Get more of it, or take a smaller vessel.",
    );
    refused(
        &w,
        Target::Left { ingredient: "Cedar".into(), mass: read("1 g") },
        "“Cedar” is not in this formula. Choose one of its waxes or parts.",
    );
    w.pot.as_mut().unwrap().capacity = read("150 g");
    refused(
        &w,
        Target::Vessels(2),
        "“Jug” holds 150 g, but one vessel needs 180.0 g (6.35 oz) in it. Take a larger pot or a smaller vessel.",
    );
    refused(
        &w,
        Target::Total(read("2 kg")),
        "“Jug” holds 150 g, but one vessel needs 180.0 g (6.35 oz) in it. Take a larger pot or a smaller vessel.",
    );
    w.fill = Mass::ZERO;
    refused(&w, Target::Vessels(2), "The fill of this vessel is zero. Say how full it is made, in the Book.");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    #[test]
    fn a_total_is_kept(total in 150_i128..9000, fill in 20_i128..300, capacity in 300_i128..2000, stays in 0_i128..60) {
        let mut w = Workshop::new();
        let grams = |n| Amount::new(Exact::whole(n), MassUnit::Gram);
        w.pot.as_mut().unwrap().capacity = grams(capacity);
        w.fill = g(fill, 1);
        w.residue = Residue::Each(grams(stays));
        if let Ok(plan) = w.plan(Target::Total(grams(total))) {
            prop_assert!(plan.total <= g(total, 1));
            let exact = |p: &potside::pot::Pour| p.lines.iter().map(|l| l.exact).sum::<Mass>();
            prop_assert!(plan.pours.iter().all(|p| exact(p) <= g(capacity, 1)));
            prop_assert_eq!(plan.pours.iter().map(exact).sum::<Mass>(), plan.total);
        }
    }
}
