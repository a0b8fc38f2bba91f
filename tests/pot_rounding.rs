//! Rounding to divisions: the sum is kept, no part moves by a whole division.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

use potside::pot::{Rounded, apportion};
use potside::quantity::{Exact, Mass};
use proptest::prelude::*;

fn grams(n: i128) -> Mass {
    Mass::base(Exact::whole(n))
}

fn tenths(n: i128) -> Mass {
    Mass::base(Exact::ratio(n, 10))
}

/// Seats shared out by weights: the parts are the quotas, the division is one.
#[track_caller]
fn seats(weights: &[i128], seats: i128, expected: &[i128]) {
    let all: i128 = weights.iter().sum();
    let parts: Vec<_> =
        weights.iter().map(|w| (Mass::base(Exact::ratio(w * seats, all)), grams(1))).collect();
    let got = apportion(&parts, grams(seats));
    assert_eq!(got.parts, expected.iter().map(|n| grams(*n)).collect::<Vec<_>>());
    assert_eq!(got.over, Mass::ZERO);
}

#[test]
fn largest_remainder_as_published() {
    // infinitelexicon.com, largest remainder method: quotas 3.5, 2.1, 1.4.
    seats(&[50, 30, 20], 7, &[4, 2, 1]);
    // archipel-des-libertes.fr, la méthode des plus forts restes.
    seats(&[500, 300, 110, 20], 4, &[2, 1, 1, 0]);
    // The much-copied six-party example, its votes as in Wikipedia's “Highest averages method” (as a public
    // test suite quotes it); the seats worked by the rule.
    seats(&[47_000, 16_000, 15_900, 12_000, 6_000, 3_100], 10, &[5, 2, 1, 1, 1, 0]);
    // Ties go to the part listed first: our own rule.
    seats(&[1, 1, 1], 100, &[34, 33, 33]);
}

#[test]
fn a_larger_whole_can_lower_a_part() {
    // The Alabama paradox (arithmetic; weights 6, 6, 2): known, and no fault.
    seats(&[6, 6, 2], 10, &[4, 4, 2]);
    seats(&[6, 6, 2], 11, &[5, 5, 1]);
}

#[test]
fn the_coarse_and_the_fine_scale_together() {
    // 800.4 + 61.27 + 0.33 = 862 g: the fine parts take up what the coarse one leaves.
    let parts = [
        (Mass::base(Exact::ratio(8004, 10)), grams(1)),
        (Mass::base(Exact::ratio(6127, 100)), tenths(1)),
        (Mass::base(Exact::ratio(33, 100)), tenths(1)),
    ];
    let Rounded { parts, whole, over } = apportion(&parts, grams(862));
    assert_eq!(whole, grams(862));
    // 800 or 801, 61.2 or 61.3, 0.3 or 0.4: 861.7 is the nearest below, 862.5 the nearest above.
    assert_eq!(parts, [grams(800), tenths(613), tenths(4)]);
    assert_eq!(over, tenths(-3));
}

#[test]
fn a_part_without_a_division_stays() {
    let third = Mass::base(Exact::ratio(1, 3));
    let got = apportion(&[(third, Mass::ZERO), (Mass::base(Exact::ratio(29, 3)), grams(1))], grams(10));
    assert_eq!(got.parts, [third, grams(10)]);
}

#[test]
fn the_whole_is_rounded_to_the_finest_division_there_is() {
    // What has none does not count: 10.5 goes to 10 or 11 beside 0.5, of 11.3 rounded to 11: as near, so it does not go up.
    let got = apportion(&[(tenths(105), grams(1)), (tenths(5), Mass::ZERO)], tenths(113));
    assert_eq!(got, Rounded { parts: vec![grams(10), tenths(5)], whole: grams(11), over: tenths(-5) });
}

#[test]
fn all_may_go_up_together() {
    // 3 of 6 g, and six times 1.5 of 3 g: 6 + 6 · 3 are the 24 g; the fine ones alone come to 18.
    let fine = [(tenths(15), grams(3)); 6];
    let got = apportion(&[&[(grams(3), grams(6))][..], &fine].concat(), grams(24));
    assert_eq!((got.parts[0], got.parts[6], got.over), (grams(6), grams(3), Mass::ZERO));
}

#[test]
fn of_ways_as_good_the_finer_parts_go_up() {
    // 1 of 2 g, and twice 0.5 of 1 g: 2 + 0 + 0 and 0 + 1 + 1 come to the 2 g, each half a division for every part.
    let got = apportion(&[(grams(1), grams(2)), (tenths(5), grams(1)), (tenths(5), grams(1))], grams(2));
    assert_eq!((got.parts, got.over), (vec![grams(0), grams(1), grams(1)], Mass::ZERO));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    /// Against every way of sending parts up or down: the sum nearest the whole, then the least squared errors, each in
    /// divisions.
    #[test]
    fn nearest_the_whole_and_then_nearest_each_part(
        parts in prop::collection::vec((0_i128..400, prop::sample::select(vec![1, 2, 3, 6])), 1..8),
        den in 1_i128..12, more in -9_i128..9,
    ) {
        let exact: Vec<_> =
            parts.iter().map(|(n, d)| (Mass::base(Exact::ratio(*n, den)), grams(*d))).collect();
        let got = apportion(&exact, exact.iter().map(|p| p.0).sum::<Mass>() + grams(more));
        let off = |parts: &[Mass]| {
            let sum: Mass = parts.iter().copied().sum();
            let moved = exact.iter().zip(parts).map(|((mass, division), part)| {
                let off = (*part - *mass).over(*division).unwrap();
                off * off
            });
            ((sum - got.whole).in_base().abs(), moved.fold(Exact::ZERO, |sum, off| sum + off))
        };
        let ways = (0..1_u32 << exact.len()).map(|ways| {
            let up = |i: usize, n: Exact| if ways >> i & 1 == 1 { n.ceil() } else { n.floor() };
            let part = |(i, (mass, division)): (usize, &(Mass, Mass))| {
                division.times(Exact::whole(up(i, mass.over(*division).unwrap())))
            };
            off(&exact.iter().enumerate().map(part).collect::<Vec<_>>())
        });
        prop_assert_eq!(off(&got.parts), ways.min().unwrap());
    }

    #[test]
    fn one_division_keeps_the_sum(parts in prop::collection::vec(0_i128..10_000_000, 1..14), den in 1_i128..999) {
        let exact: Vec<_> = parts.iter().map(|n| (Mass::base(Exact::ratio(*n, den)), tenths(1))).collect();
        let whole: Mass = exact.iter().map(|p| p.0).sum();
        let got = apportion(&exact, whole);
        prop_assert_eq!(got.over, Mass::ZERO);
        prop_assert_eq!(got.parts.iter().copied().sum::<Mass>(), whole.round_to(tenths(1)));
    }

    #[test]
    fn no_part_moves_a_division_and_no_choice_comes_nearer(
        parts in prop::collection::vec((0_i128..100_000, prop::sample::select(vec![(1, 1), (1, 10), (1, 100), (28_349_523, 10_000_000)])), 1..9),
        den in 1_i128..99,
    ) {
        let exact: Vec<_> = parts
            .iter()
            .map(|(n, (dn, dd))| (Mass::base(Exact::ratio(*n, den)), Mass::base(Exact::ratio(*dn, *dd))))
            .collect();
        let whole: Mass = exact.iter().map(|p| p.0).sum();
        let got = apportion(&exact, whole);
        for ((mass, division), part) in exact.iter().zip(&got.parts) {
            prop_assert!((part.in_base() - mass.in_base()).abs() < division.in_base());
            prop_assert!(part.over(*division).unwrap().is_whole());
        }
        prop_assert_eq!(got.parts.iter().copied().sum::<Mass>() - got.whole, got.over);
        // Every way of sending parts up or down, one by one.
        for ways in 0..1_u32 << exact.len() {
            let sum: Mass = exact
                .iter()
                .enumerate()
                .map(|(i, (mass, division))| {
                    let n = mass.over(*division).unwrap();
                    let n = if ways >> i & 1 == 1 { n.ceil() } else { n.floor() };
                    division.times(Exact::whole(n))
                })
                .sum();
            prop_assert!((sum - got.whole).in_base().abs() >= got.over.in_base().abs());
        }
    }
}
