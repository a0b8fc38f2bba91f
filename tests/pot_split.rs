//! A batch split over pots: the fewest, and as equal as whole vessels allow. Why no library of packings applies is said in
//! tests/planning/packing.rs; of equal things the fewest bins are known, and first fit finds them.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod common;

use common::{Workshop, g};
use potside::pot::{Residue, Target};
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
