//! What a formula is refused for, what must be read about it, and how it is kept.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

#[path = "../formula_shared/mod.rs"]
mod formula_shared;
mod kept;

use formula_shared::*;
use potside::formula::{
    Basis, Caution, Doing, Formula, FormulaError, Part, PartKind, UsualBatch, check, order,
};
use potside::quantity::{Share, Voice};
use std::slice;

fn plain() -> Formula {
    let mut fig = fragrance(Basis::OfWax(percent("8")));
    fig.flash = Some(f("201"));
    formula(vec![fig])
}

#[track_caller]
fn refused(change: impl Fn(&mut Formula), wanted: &[FormulaError]) {
    let mut written = plain();
    change(&mut written);
    assert_eq!(check(&written, &Weighed), Err(wanted.to_vec()));
    let solved = potside::formula::solve(&written, makes(g("500").value), &Weighed, Voice::default());
    assert_eq!(solved.as_ref().err(), wanted.first(), "solving refuses for the first of them");
}

#[track_caller]
fn cautioned(change: impl Fn(&mut Formula), wanted: &[Caution]) {
    let mut written = plain();
    change(&mut written);
    assert_eq!(check(&written, &()), Ok(wanted.to_vec()));
}

#[test]
fn a_sound_formula_has_nothing_to_say() {
    cautioned(|_| {}, &[]);
}

#[test]
fn each_refusal() {
    use FormulaError::*;
    let part = || "Fig & cedar".to_owned();
    refused(|w| w.name = " ".into(), &[NoName]);
    refused(|w| w.wax.clear(), &[NoWax]);
    refused(|w| w.wax[1].name = String::new(), &[WaxNoName { place: 2 }]);
    refused(|w| w.wax[0].share = percent("79"), &[Blend { adds_to: percent("99").value }]);
    refused(|w| w.wax[0].share = percent("80.001"), &[Blend { adds_to: percent("100.001").value }]);
    let third = || percent("100/3");
    let thirds = |w: &mut Formula| {
        w.wax = vec![wax("A", "1"), wax("B", "1"), wax("C", "1")];
        w.wax.iter_mut().for_each(|x| x.share = third());
    };
    cautioned(thirds, &[]);
    let empty = |w: &mut Formula| {
        w.wax[0].share = percent("100");
        w.wax[1].share = percent("0");
    };
    refused(empty, &[WaxShare { name: "Hard wax".into() }]);
    refused(|w| w.parts[0].name = String::new(), &[PartNoName { place: 1 }]);
    refused(|w| w.parts[0].name = " soft WAX ".into(), &[Twice { name: "soft WAX".into() }]);
    for nothing in [
        Basis::OfWax(percent("0")),
        Basis::OfWhole(percent("0")),
        Basis::PerWax { amount: oz("0"), wax: lb("1") },
        Basis::Weight(oz("0")),
        Basis::Spoon(tbsp("0")),
        Basis::Drops(0),
        Basis::PerVessel(0),
    ] {
        refused(|w| w.parts[0].basis = nothing.clone(), &[NoAmount { part: part() }]);
    }
    let negative = Basis::OfWax(potside::quantity::Amount::new(-number("8"), percent("8").unit));
    refused(|w| w.parts[0].basis = negative.clone(), &[NoAmount { part: part() }]);
    let per_none = Basis::PerWax { amount: oz("1"), wax: lb("0") };
    refused(|w| w.parts[0].basis = per_none.clone(), &[PerNoWax { part: part() }]);
    for of_a_batch in [Basis::Weight(oz("2")), Basis::Spoon(tbsp("1")), Basis::Drops(3)] {
        let no_usual = |w: &mut Formula| {
            w.parts[0].basis = of_a_batch.clone();
            w.usual = None;
        };
        refused(no_usual, &[NoUsual { part: part() }]);
    }
    refused(|w| w.usual = Some(UsualBatch { vessels: 0, fill: oz("8") }), &[EmptyUsual]);
    refused(|w| w.usual = Some(UsualBatch { vessels: 4, fill: oz("0") }), &[EmptyUsual]);
    let upside_down = |doing| UpsideDown { doing, range: Box::new(range("180", "175")) };
    refused(|w| w.parts[0].add = range("180", "175"), &[upside_down(Doing::Adding(part()))]);
    refused(|w| w.pour.warmed = range("180", "175"), &[upside_down(Doing::PouringWarmed)]);
    refused(|w| w.pour.unwarmed = range("180", "175"), &[upside_down(Doing::PouringUnwarmed)]);
}

#[test]
fn shares_of_the_whole_leave_room_for_wax() {
    let with = |share: &str, weight: &str| {
        let share = share.to_owned();
        let weight = weight.to_owned();
        move |w: &mut Formula| {
            w.parts[0].basis = Basis::OfWhole(percent(&share));
            w.parts.push(part("Oil", PartKind::Other, Basis::Weight(oz(&weight)), range("175", "180")));
        }
    };
    // The usual batch is 32 oz: 8 oz is a quarter of it.
    let full = FormulaError::Full { adds_to: percent("100").value, largest: "Fig & cedar".into() };
    refused(with("75", "8"), &[full]);
    cautioned(with("74.999", "8"), &[]);
}

#[test]
fn everything_wrong_is_told_at_once() {
    let bad = |w: &mut Formula| {
        w.name.clear();
        w.wax.clear();
        w.parts[0].basis = Basis::Drops(0);
        w.usual = None;
        w.pour.warmed = range("180", "175");
    };
    let mut written = plain();
    bad(&mut written);
    let errors = check(&written, &()).unwrap_err();
    assert_eq!(errors.len(), 5);
    let said: Vec<String> = errors.iter().map(|e| e.say(Voice::default())).collect();
    insta::assert_snapshot!(said.join("\n"));
}

#[test]
fn above_the_highest_load() {
    let load = |of_wax: &str, of_whole: Share, highest: &str| Caution::Load {
        part: "Fig & cedar".into(),
        of_wax: percent(of_wax).value,
        of_whole,
        highest: percent(highest),
    };
    let at = |basis: Basis, highest: &str| {
        let highest = percent(highest);
        move |w: &mut Formula| {
            w.parts[0].basis = basis.clone();
            w.parts[0].highest = Some(highest);
        }
    };
    cautioned(at(Basis::OfWax(percent("8")), "8"), &[]);
    let over = load("8", potside::formula::wax_to_whole(percent("8").value), "7.9");
    cautioned(at(Basis::OfWax(percent("8")), "7.9"), &[over]);
    // 8 % of the whole is 8 ÷ 92 of the wax: 8.70 %, above a load of 8.5 % of the wax.
    cautioned(at(Basis::OfWhole(percent("8")), "8.5"), &[load("800/92", percent("8").value, "8.5")]);
    cautioned(at(Basis::OfWhole(percent("8")), "8.7"), &[]);
    // 2.56 oz of the usual 32 oz is 8 % of the whole too.
    cautioned(at(Basis::Weight(oz("2.56")), "8.5"), &[load("800/92", percent("8").value, "8.5")]);
    let two = |w: &mut Formula| {
        w.parts[0].highest = Some(percent("10"));
        let mut rose = w.parts[0].clone();
        rose.name = "Rose".into();
        rose.basis = Basis::OfWax(percent("3"));
        rose.highest = Some(percent("12"));
        w.parts.push(rose);
    };
    let together = Caution::LoadTogether {
        of_wax: percent("11").value,
        part: "Fig & cedar".into(),
        highest: percent("10"),
    };
    cautioned(two, slice::from_ref(&together));
    // An additive above its own load takes nothing away from what is said of the fragrances.
    let mut hard = plain();
    two(&mut hard);
    let mut additive = hard.parts[0].clone();
    (additive.name, additive.kind) = ("Hardener".into(), PartKind::Additive);
    (additive.basis, additive.highest) = (Basis::OfWax(percent("2")), Some(percent("1")));
    hard.parts.push(additive);
    let found = check(&hard, &()).unwrap();
    assert!(found.contains(&together), "{found:?}");
    assert!(found.iter().any(|c| matches!(c, Caution::Load { part, .. } if part == "Hardener")));
}

#[test]
fn flash_points() {
    let flash =
        |of: &str, doing, at, point| Caution::Flash { of: of.into(), doing, at: f(at), flash: f(point) };
    let fig = "Fig & cedar";
    // Added at up to 180 °F: at the flash point is a caution, a degree below is none.
    cautioned(|w| w.parts[0].flash = Some(f("181")), &[]);
    let adding = || Doing::Adding(fig.into());
    cautioned(|w| w.parts[0].flash = Some(f("180")), &[flash(fig, adding(), "180", "180")]);
    // What comes after it is in counts: poured hotter than it is added.
    let poured = |w: &mut Formula| {
        w.parts[0].flash = Some(f("185"));
        w.pour.warmed = range("175", "190");
    };
    cautioned(poured, &[flash(fig, Doing::PouringWarmed, "190", "185")]);
    // What comes before it is in does not: melted at 200 °F.
    cautioned(|w| w.parts[0].flash = Some(f("190")), &[]);
    // A wax is in from the start.
    cautioned(|w| w.wax[0].flash = Some(f("200")), &[flash("Soft wax", Doing::Melting, "200", "200")]);
    cautioned(|w| w.wax[0].flash = Some(f("201")), &[]);
    cautioned(|w| w.parts[0].flash = None, &[Caution::FlashUnknown { part: fig.into() }]);
}

#[test]
fn above_130_degrees() {
    // 130 °C is 266 °F.
    cautioned(|w| w.melt_to = f("266"), &[]);
    cautioned(|w| w.melt_to = f("266.1"), &[Caution::Hot { doing: Doing::Melting, at: f("266.1") }]);
}

fn in_order(parts: &[(&str, &str, &str)]) -> Vec<Part> {
    let one = |&(name, low, high): &(&str, &str, &str)| {
        part(name, PartKind::Additive, Basis::OfWax(percent("1")), range(low, high))
    };
    parts.iter().map(one).collect()
}

// common practice, no source: light stabiliser and hardening additives first, at about 188 °F, dye while hot,
// fragrance at 175 to 180 °F: the sheet takes the parts by falling temperature and says so where a formula does not.
#[test]
fn parts_by_falling_temperature() {
    let falling = in_order(&[("Stabiliser", "186", "190"), ("Dye", "180", "186"), ("Scent", "175", "180")]);
    cautioned(|w| w.parts = falling.clone(), &[]);
    assert_eq!(order(&formula(falling.clone())), [0, 1, 2]);
    let mixed = in_order(&[("Scent", "175", "180"), ("Stabiliser", "186", "190"), ("Dye", "180", "186")]);
    let said = Caution::Order { first: "Stabiliser".into(), then: "Scent".into() };
    cautioned(|w| w.parts = mixed.clone(), &[said]);
    assert_eq!(order(&formula(mixed)), [1, 2, 0]);
    // Where the ranges are the same the formula's own order stands; pieces come last.
    let mut same = in_order(&[("A", "175", "180"), ("B", "175", "180")]);
    same.insert(0, part("Wick", PartKind::Other, Basis::PerVessel(1), range("70", "300")));
    cautioned(|w| w.parts = same.clone(), &[]);
    assert_eq!(order(&formula(same)), [1, 2, 0]);
}

#[test]
fn gates_that_do_not_follow() {
    let pour = |w: &mut Formula| w.pour.unwarmed = range("181", "185");
    let above = Caution::PourAboveAdd {
        doing: Doing::PouringUnwarmed,
        low: f("181"),
        part: "Fig & cedar".into(),
        high: f("180"),
    };
    cautioned(pour, &[above]);
    cautioned(|w| w.pour.unwarmed = range("180", "185"), &[]);
    let add = |w: &mut Formula| w.melt_to = f("174");
    let low =
        Caution::AboveMelt { doing: Doing::Adding("Fig & cedar".into()), low: f("175"), melt_to: f("174") };
    cautioned(add, &[low]);
    cautioned(|w| w.melt_to = f("175"), &[]);
}
