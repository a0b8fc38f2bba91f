//! A batch split over pots: the fewest, and as equal as whole vessels allow. Why no library of packings applies is said in
//! tests/planning/packing.rs; of equal things the fewest bins are known, and first fit finds them.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod common;

use common::{Workshop, g, read};
use potside::pot::{Plan, PlanError, Residue, Target};
use potside::quantity::{Amount, Exact, MassUnit};
use proptest::prelude::*;

/// Vessels of each pour, where a vessel takes `fill` grams, `stays` stay in each pot and a pot holds `holds`.
fn split(vessels: u32, fill: i128, stays: i128, holds: i128) -> Vec<u32> {
    let mut shop = Workshop { fill: g(fill, 1), ..Workshop::new() };
    let grams = |n: i128| Amount::new(Exact::whole(n), MassUnit::Gram);
    shop.residue = Residue::Each(grams(stays));
    shop.pot.as_mut().unwrap().capacity = grams(holds);
    shop.plan(Target::Vessels(vessels)).unwrap().pours.iter().map(|p| p.vessels).collect()
}

/// How many pots first fit takes: one thing after the other into the first pot that has room for it.
fn first_fit(vessels: u32, fill: i128, stays: i128, holds: i128) -> usize {
    let mut pots: Vec<i128> = Vec::new();
    for _ in 0..vessels {
        match pots.iter_mut().find(|room| **room >= fill) {
            Some(room) => *room -= fill,
            None => pots.push(holds - stays - fill),
        }
    }
    pots.len()
}

/// The examples of equal things of “BinPackingEasy” (see tests/planning/packing.rs): five of 150 into 300 take three, nine
/// of 101 five. And each width by itself of the cutting-stock example of GAMS's model library (cutstock: raws of 100;
/// 211 of 14, 395 of 31, 610 of 36, 97 of 45), whose best for one width is ⌈number ÷ ⌊100 ÷ width⌋⌉ by hand.
#[test]
fn equal_things_take_the_fewest_pots() {
    for (vessels, fill, holds, pots) in [
        (5, 150, 300, 3),
        (9, 101, 300, 5),
        (211, 14, 100, 31),
        (395, 31, 100, 132),
        (610, 36, 100, 305),
        (97, 45, 100, 49),
    ] {
        let pours = split(vessels, fill, 0, holds);
        assert_eq!(pours.len(), pots, "{vessels} of {fill} into {holds}");
        assert_eq!(pours.iter().sum::<u32>(), vessels);
    }
}

/// The plan for vessels of 180 g, where `stays` stays in each pot and a pot holds `holds`.
fn ask(stays: &str, holds: Option<&str>, target: Target) -> Plan {
    let mut shop = Workshop::new();
    shop.residue = Residue::Each(read(stays));
    match holds {
        Some(holds) => shop.pot.as_mut().unwrap().capacity = read(holds),
        None => shop.pot = None,
    }
    shop.plan(target).unwrap()
}

fn vessels(plan: &Plan) -> Vec<u32> {
    plan.pours.iter().map(|p| p.vessels).collect()
}

#[test]
fn a_total_is_shared_by_the_pots_with_what_is_spare() {
    // By hand: 580 = 2 · (180 + 100) + 20; with half of what is spare each pot takes 290 of the 300 it holds.
    let plan = ask("100 g", Some("300 g"), Target::Total(read("580 g")));
    assert_eq!((vessels(&plan), plan.total, plan.residue), (vec![1, 1], g(580, 1), g(200, 1)));
    assert_eq!(
        plan.notes.last().unwrap().text,
        "That fills 2 vessels and leaves 20.0 g (0.71 oz), too little for one more."
    );
    // 1000 = 5 · 180 + 100: two pots of 500 would take 600 and 400, so it takes three: 2 · 180 + 40 in the fullest.
    let plan = ask("0 g", Some("500 g"), Target::Total(read("1 kg")));
    assert_eq!((vessels(&plan), plan.total), (vec![2, 2, 1], g(1000, 1)));
    // In a pot that takes one vessel and 20 g more, 560 = 2 · (180 + 100) leaves nothing.
    let plan = ask("100 g", Some("300 g"), Target::Total(read("560 g")));
    assert!(plan.notes.iter().all(|n| !n.text.contains("too little for one more")));
}

#[test]
fn what_is_left_has_to_do_for_what_stays_in_every_pot() {
    // 2.15 oz goes into 4 · 180 + 20 = 740 g, so 8.6 oz into 2960 g; a pot of 200 g is full with one vessel and its 20 g:
    // 14 pots take 2800 g, 15 would take 3000 g. In one pot it would have been 16.
    let left = || Target::Left { ingredient: "Fig leaf".into(), mass: read("8.6 oz") };
    assert_eq!(ask("20 g", Some("200 g"), left()).vessels, 14);
    assert_eq!(ask("20 g", None, left()).vessels, 16);
}

#[test]
fn a_batch_is_at_most_ten_thousand_vessels() {
    let shop = Workshop { fill: g(90, 1), pot: None, ..Workshop::new() };
    for target in [Target::Vessels(10_000), Target::Total(read("900 kg"))] {
        assert_eq!(shop.plan(target).unwrap().vessels, 10_000);
    }
    for target in [Target::Vessels(10_001), Target::Total(read("900.09 kg")), Target::Total(read("1000 kg"))]
    {
        assert_eq!(shop.plan(target), Err(PlanError::TooMany));
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, ..ProptestConfig::default() })]

    #[test]
    fn no_fewer_pots_would_do_and_all_hold_nearly_the_same(
        vessels in 1..200_u32, fill in 20..400_i128, stays in 0..60_i128, more in 0..4000_i128,
    ) {
        let holds = fill + stays + more;
        let pours = split(vessels, fill, stays, holds);
        prop_assert_eq!(pours.len(), first_fit(vessels, fill, stays, holds));
        prop_assert_eq!(pours.iter().sum::<u32>(), vessels);
        for pour in &pours {
            prop_assert!(i128::from(*pour) * fill + stays <= holds);
            prop_assert!(pours[0] - pour <= 1);
        }
    }
}
