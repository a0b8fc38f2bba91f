//! Solving a formula: every basis, exact, linear; both conventions; what is left of one ingredient.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod formula_shared;

use formula_shared::*;
use potside::formula::{
    Basis, Caution, Formula, FormulaError, Makes, Part, PartKind, UsualBatch, total_for, wax_to_whole,
    whole_to_wax,
};
use potside::quantity::{Amount, Exact, Mass, MassUnit, Quantity, Share, ShareUnit, Voice, VolumeUnit};
use proptest::prelude::*;

/// What `basis` comes to in `total`, alone beside the wax.
#[track_caller]
fn basis(basis: Basis, total: Mass, wanted: Exact) {
    let formula = formula(vec![fragrance(basis)]);
    let solved = solve(&formula, total);
    assert_eq!(mass_of(&solved, "Fig & cedar").in_base(), wanted);
    let sum: Mass = solved.waxes.iter().chain(&solved.parts).map(|p| p.mass).sum();
    assert_eq!(sum, total, "waxes and parts add up to the total");
}

// Expected values are worked by hand from the definition of each basis.
#[test]
fn every_basis() {
    // 8 % of the wax: 1080 g is 1000 g of wax and 80 g.
    basis(Basis::OfWax(percent("8")), g("1080").value, number("80"));
    basis(Basis::OfWhole(percent("8")), g("1000").value, number("80"));
    // 1 oz per lb is one sixteenth of the wax: 1700 g is 1600 g of wax and 100 g.
    basis(Basis::PerWax { amount: oz("1"), wax: lb("1") }, g("1700").value, number("100"));
    basis(
        Basis::PerWax { amount: g("80"), wax: Amount::new(Exact::ONE, MassUnit::Kilogram) },
        g("1080").value,
        number("80"),
    );
    // The usual batch is 4 vessels of 8 oz: 32 oz. 16 oz is half of it.
    basis(Basis::Weight(oz("2.15")), oz("16").value, oz("1.075").value.in_base());
    // 0.6 g/mL (see `Weighed`).
    basis(Basis::Spoon(tbsp("1.5")), oz("16").value, tbsp("0.75").value.in_base() * number("0.6"));
    basis(Basis::Drops(6), oz("16").value, number("0.063"));
    basis(Basis::PerVessel(1), oz("16").value, Exact::ZERO);
}

fn full() -> Formula {
    formula(vec![
        part("Hardener", PartKind::Additive, Basis::Spoon(tbsp("3/4")), range("186", "190")),
        part("Red", PartKind::Dye, Basis::Drops(3), range("182", "186")),
        part("Blue", PartKind::Dye, Basis::Drops(6), range("182", "186")),
        part(
            "Shine",
            PartKind::Additive,
            Basis::PerWax { amount: g("5"), wax: g("1000") },
            range("181", "185"),
        ),
        part("Soy oil", PartKind::Other, Basis::OfWhole(percent("1.5")), range("180", "185")),
        part("Vanilla", PartKind::Fragrance, Basis::OfWax(percent("2")), range("176", "180")),
        fragrance(Basis::Weight(oz("2.15"))),
        part("Wick", PartKind::Other, Basis::PerVessel(2), range("70", "80")),
    ])
}

// common practice, no source: a formula for 8 vessels made as 4 halves everything; fragrance 2.15 oz for 4 is 61 g
// to the gram and 4.30 oz for 8; 3/4 tbsp of additive for 4 is 1 1/2 tbsp for 8.
#[test]
fn eight_made_as_four_halves_everything() {
    let written = full();
    let (four, eight) = (solve(&written, oz("32").value), solve(&written, oz("64").value));
    for (half, whole) in four.waxes.iter().chain(&four.parts).zip(eight.waxes.iter().chain(&eight.parts)) {
        assert_eq!(half.mass.times(Exact::whole(2)), whole.mass, "{}", half.name);
        assert_eq!(half.of_wax, whole.of_wax, "{}", half.name);
        assert_eq!(half.of_whole, whole.of_whole, "{}", half.name);
    }
    assert_eq!(mass_of(&four, "Fig & cedar").in_base().round(), 61);
    assert_eq!(mass_of(&eight, "Fig & cedar"), oz("4.30").value);
    let spoon =
        |solved: &potside::formula::Solved| solved.parts[0].volume.unwrap().to(VolumeUnit::Tablespoon);
    assert_eq!(spoon(&four), number("3/4"));
    assert_eq!(spoon(&eight), number("3/2"));
    assert_eq!(four.parts[1].drops, Some(Exact::whole(3)));
    assert_eq!(eight.parts[2].drops, Some(Exact::whole(12)));
    assert_eq!(eight.parts[7].pieces, Some(2), "pieces are per vessel, whatever the batch");
    assert_eq!((four.scale, eight.scale), (Some(Exact::ONE), Some(Exact::whole(2))));
}

// At the size it is written for, the amounts are as written, whatever stays in the pot.
#[test]
fn usual_size_takes_amounts_as_written() {
    let residue = g("37.5").value;
    let total = oz("32").value + residue;
    let made = Makes { total, usual_residue: residue };
    let solved = potside::formula::solve(&full(), made, &Weighed, Voice::default()).unwrap();
    assert_eq!(mass_of(&solved, "Fig & cedar"), oz("2.15").value);
    assert_eq!(solved.parts[0].volume, Some(tbsp("3/4").value));
    assert_eq!(solved.parts[1].drops, Some(Exact::whole(3)));
}

#[test]
fn blend_is_shared_out() {
    let solved = solve(&formula(vec![fragrance(Basis::OfWax(percent("8")))]), g("1080").value);
    assert_eq!(mass_of(&solved, "Soft wax"), g("800").value);
    assert_eq!(mass_of(&solved, "Hard wax"), g("200").value);
    assert_eq!(solved.wax, g("1000").value);
}

// 8 % of the wax = 7.41 % of the whole: the project's design, worked as 8 ÷ 108.
#[test]
fn both_conventions() {
    let whole = wax_to_whole(percent("8").value);
    assert_eq!(whole.to(ShareUnit::Percent).round_to(number("0.01")), number("7.41"));
    assert_eq!(whole_to_wax(whole), Some(percent("8").value));
    assert_eq!(whole_to_wax(percent("100").value), None);
    let solved = solve(&formula(vec![fragrance(Basis::OfWax(percent("8")))]), g("500").value);
    assert_eq!(solved.parts[0].of_wax, percent("8").value);
    assert_eq!(solved.parts[0].of_whole, whole);
}

#[test]
fn what_is_not_weighed_is_said_and_counts_as_nothing() {
    let written = full();
    let solved = potside::formula::solve(&written, makes(g("900").value), &(), Voice::default()).unwrap();
    assert_eq!(mass_of(&solved, "Hardener"), Mass::ZERO);
    assert_eq!(mass_of(&solved, "Red"), Mass::ZERO);
    assert!(solved.parts[0].volume.is_some() && solved.parts[1].drops.is_some());
    let spoon = Caution::SpoonUnweighed { part: "Hardener".into(), measure: tbsp("3/4") };
    assert!(solved.cautions.contains(&spoon));
    for part in ["Red", "Blue"] {
        assert!(solved.cautions.contains(&Caution::DropsUnweighed { part: part.into() }), "{part}");
    }
    let sum: Mass = solved.waxes.iter().chain(&solved.parts).map(|p| p.mass).sum();
    assert_eq!(sum, g("900").value);
}

#[test]
fn as_far_as_what_is_left_goes() {
    let written = formula(vec![fragrance(Basis::OfWax(percent("8"))), full().parts[7].clone()]);
    let go = |name: &str, left: &str| {
        total_for(&written, name, g(left).value, Mass::ZERO, &Weighed, Voice::default()).map(|t| t.0)
    };
    assert_eq!(go("Fig & cedar", "40"), Ok(g("540").value));
    assert_eq!(go("Hard wax", "200"), Ok(g("1080").value));
    assert_eq!(go("Wick", "5"), Err(FormulaError::NotWeighed { name: "Wick".into() }));
    assert_eq!(go("Rose", "5"), Err(FormulaError::NotInIt { name: "Rose".into() }));
    assert_eq!(go("Hard wax", "0"), Err(FormulaError::NothingToMake));
}

#[test]
fn nothing_to_make_is_refused() {
    let made = makes(Mass::ZERO);
    let solved = potside::formula::solve(&full(), made, &Weighed, Voice::default());
    assert_eq!(solved, Err(FormulaError::NothingToMake));
}

fn any_basis() -> impl Strategy<Value = Basis> {
    let thousandth = |n: u32| Exact::ratio(n.into(), 1000);
    prop_oneof![
        (1..15_000u32).prop_map(move |n| Basis::OfWax(Amount::new(thousandth(n), ShareUnit::Percent))),
        (1..15_000u32).prop_map(move |n| Basis::OfWhole(Amount::new(thousandth(n), ShareUnit::Percent))),
        (1..200u32).prop_map(|n| Basis::PerWax { amount: g(&n.to_string()), wax: lb("2.5") }),
        (1..1500u32).prop_map(move |n| Basis::Weight(oz(&format!("{n}/1000")))),
        (1..12u32).prop_map(|n| Basis::Spoon(tbsp(&format!("{n}/8")))),
        (1..60u32).prop_map(Basis::Drops),
        (1..4u32).prop_map(Basis::PerVessel),
    ]
}

prop_compose! {
    fn any_formula()(bases in prop::collection::vec(any_basis(), 0..5), soft in 1..99u32, vessels in 1..24u32) -> Formula {
        let name = |(i, basis)| Part { name: format!("Part {i}"), ..fragrance(basis) };
        let mut written = formula(bases.into_iter().enumerate().map(name).collect());
        written.wax = vec![wax("Soft", &soft.to_string()), wax("Hard", &(100 - soft).to_string())];
        written.usual = Some(UsualBatch { vessels, fill: oz("8.25") });
        written
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, ..ProptestConfig::default() })]

    #[test]
    fn the_sum_is_the_total(written in any_formula(), tenths in 1..200_000u32) {
        let total = Mass::base(Exact::ratio(tenths.into(), 10));
        let solved = solve(&written, total);
        let sum: Mass = solved.waxes.iter().chain(&solved.parts).map(|p| p.mass).sum();
        prop_assert_eq!(sum, total);
        let waxes: Mass = solved.waxes.iter().map(|p| p.mass).sum();
        prop_assert_eq!(waxes, solved.wax);
        let shares: Share = solved.waxes.iter().chain(&solved.parts).map(|p| p.of_whole).sum();
        prop_assert_eq!(shares.in_base(), Exact::ONE);
    }

    #[test]
    fn linear_in_the_total(written in any_formula(), a in 1..50_000u32, b in 1..50_000u32) {
        let total = |n: u32| Mass::base(Exact::ratio(n.into(), 10));
        let (x, y, both) = (solve(&written, total(a)), solve(&written, total(b)), solve(&written, total(a + b)));
        for ((p, q), r) in x.parts.iter().zip(&y.parts).zip(&both.parts) {
            prop_assert_eq!(p.mass + q.mass, r.mass);
        }
    }

    #[test]
    fn scaling_there_and_back(written in any_formula(), tenths in 1..50_000u32, n in 1..40i128, d in 1..40i128) {
        let (total, k) = (Mass::base(Exact::ratio(tenths.into(), 10)), Exact::ratio(n, d));
        let there = solve(&written, total.times(k));
        let back = solve(&written, there.total.times(Exact::ONE / k));
        prop_assert_eq!(solve(&written, total), back);
    }

    #[test]
    fn what_is_left_is_used_up(written in any_formula(), tenths in 1..5_000u32) {
        let left = Mass::base(Exact::ratio(tenths.into(), 10));
        let (total, _) = total_for(&written, "Soft", left, Mass::ZERO, &Weighed, Voice::default()).unwrap();
        prop_assert_eq!(mass_of(&solve(&written, total), "Soft"), left);
    }

    #[test]
    fn of_wax_to_of_whole_and_back(n in 0..500_000i128) {
        let of_wax = Share::base(Exact::ratio(n, 100_000));
        prop_assert_eq!(whole_to_wax(wax_to_whole(of_wax)), Some(of_wax));
    }
}
