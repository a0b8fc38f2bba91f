//! A vessel filled with water and weighed several times: the mean, how good it is, and whether its inside says the same.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod formula_shared;

use formula_shared::{g, number};
use potside::bench::{Beside, beside, held};
use potside::quantity::{Amount, Exact, LengthUnit, Locale, MassUnit, TemperatureUnit, Voice};
use potside::vessel::{Draft, FillRule, Inside, Vessel, VesselError, Water, capacity, read_weighings};
use proptest::prelude::*;

fn water(masses: &[&str]) -> Water {
    let again = masses[1..].iter().map(|m| g(m)).collect();
    Water { mass: g(masses[0]), at: Amount::new(number("20"), TemperatureUnit::Celsius), again }
}

fn jar(masses: &[&str], top: &str, bottom: &str, height: &str, unit: LengthUnit) -> Vessel {
    let length = |text| Amount::new(number(text), unit);
    let inside = Inside { top: length(top), bottom: length(bottom), height: length(height) };
    let fill = FillRule::Weight(g("180"));
    let water = Some(water(masses));
    Vessel { name: "Jar".into(), inside: Some(inside), water, fill, wall: None, note: String::new() }
}

fn said(masses: &[&str]) -> String {
    held(&water(masses), Voice::default()).unwrap().0
}

// By hand, with the published 0.9982067 g/mL of water at 20 °C (tests/vessel.rs). Of two weighings s ÷ √2 is half their
// difference: of 300 and 302 g it is 1 g, of 298 and 304 g 3 g of 301 g. For half a per cent the second takes
// 2 × 9 ÷ 301² ÷ 0.005² = 7.9 weighings: six more.
#[test]
fn several_weighings_tell_how_good_the_mean_is() {
    let opening = "By water it holds 301.5 mL to the brim. ";
    assert_eq!(
        said(&["301"]),
        format!("{opening}Fill it and weigh it again: that tells how far your fillings stray.")
    );
    assert_eq!(
        said(&["300", "302"]),
        format!("{opening}Give or take 1.0 mL (0.33 %). That is good to 0.5 %.")
    );
    assert_eq!(
        said(&["298", "304"]),
        format!(
            "{opening}Give or take 3.0 mL (1.00 %). Filled and weighed 6 times more, it is good to 0.5 %."
        )
    );
    // As often again with the same scatter: s² ÷ 8 is within what was promised.
    let eight = said(&["298", "304", "298", "304", "298", "304", "298", "304"]);
    assert!(eight.ends_with("That is good to 0.5 %."), "{eight}");
    assert_eq!(held(&water(&["0"]), Voice::default()).unwrap_err(), VesselError::NoWater);
}

#[test]
fn the_mean_is_what_the_vessel_holds() {
    let any = LengthUnit::Millimetre;
    let of = |masses: &[&str]| capacity(&jar(masses, "80", "80", "90", any), Voice::default()).unwrap();
    assert_eq!(of(&["298", "304"]).0, of(&["301"]).0);
    assert_eq!(of(&["298", "304"]).1.values[0].shown, "301.0 g, the mean of 2");
    assert_eq!(of(&["301"]).1.values[0].shown, "301 g");
}

fn told(masses: &[&str], top: &str, bottom: &str, height: &str) -> Beside {
    beside(&jar(masses, top, bottom, height, LengthUnit::Millimetre), Voice::default()).unwrap()
}

// 80 mm across, 90 mm high: π/4 × 64 × 9 = 452.389 mL. A length by a rule in millimetres is good to 1 ÷ √6 = 0.40825 mm
// (two readings of 1 mm ÷ √12: GUM F.2.2.1, from memory); π/2 × 80 × 90 is 11.310 mL for each mm across, π/4 × 80² 5.027 mL
// for each up: √(4.617² + 2.052²) = 5.053 mL, twice that 10.1 mL. 449.193 g at 20 °C are 450 mL, 429.229 g are 430 mL.
#[test]
fn the_inside_is_held_against_the_water() {
    let near = told(&["449.193015"], "80", "80", "90");
    assert_eq!(
        near.say(Voice::default()),
        "By its inside it holds 452.4 mL, 2.4 mL (0.53 %) more than by water. They agree: the rule allows 10.1 mL."
    );
    let less = told(&["429.228881"], "80", "80", "90");
    assert_eq!(
        less.say(Voice::default()),
        "By its inside it holds 452.4 mL, 22.4 mL (5.21 %) more than by water. That is more than the 10.1 mL that the \
         measures allow. Measure again: either the inside diameter is off, by about 2.0 mm, or the water did not reach the \
         brim. A rounded bottom or a neck also makes them differ; the water is right then."
    );
    let more = told(&["600"], "80", "80", "90").say(Voice::default());
    assert!(more.contains(" less than by water") && more.contains("weighed with the vessel"), "{more}");
    // Fillings that stray by 6 g allow more: √(5.053² + 3.005²) × 2.
    let stray = told(&["443.193015", "449.193015"], "80", "80", "90");
    assert_eq!(stray.allowed.in_base().round_to(number("0.01")), number("11.76"));
    // A rule in sixteenths of an inch is coarser: 1.5875 times.
    let inches = jar(&["449.193015"], "3.15", "3.15", "3.54", LengthUnit::Inch);
    let coarse = beside(&inches, Voice::default()).unwrap().allowed.in_base().to_f64();
    assert!((coarse / 10.105 - 1.5875).abs() < 0.01, "{coarse}");
    let bare = Vessel { inside: None, ..jar(&["300"], "1", "1", "1", LengthUnit::Millimetre) };
    assert_eq!(beside(&bare, Voice::default()), None);
    assert_eq!(beside(&jar(&["300"], "0", "80", "90", LengthUnit::Millimetre), Voice::default()), None);
}

#[test]
fn weighings_are_typed_and_kept() {
    let voice = Voice::default();
    let three = jar(&["300", "301.5", "302"], "80", "80", "90", LengthUnit::Millimetre);
    for voice in [voice, Voice { locale: Locale::Comma, ..voice }] {
        let draft = Draft::of(&three, voice);
        assert_eq!(draft.read(voice), (three.clone(), Vec::new()), "{draft:?}");
    }
    let draft = Draft { water: "300; x; 301".into(), ..Draft::of(&three, voice) };
    let wrong = draft.read(voice).1;
    assert!(wrong.len() == 1 && wrong[0].starts_with("Water to the brim: weighing 2: "), "{wrong:?}");
    assert!(read_weighings("", voice).is_err() && read_weighings("300;", voice).is_err());
    // All were read off one scale: 251 is not ounces among grams.
    let ounces = Voice { mass: MassUnit::Ounce, ..voice };
    for (text, unit) in [
        ("251.3 g; 250.9; 251", MassUnit::Gram),
        ("250.9; 251 g", MassUnit::Gram),
        ("8.9; 8.85", MassUnit::Ounce),
        ("8.9 oz; 8.85", MassUnit::Ounce),
    ] {
        assert!(read_weighings(text, ounces).unwrap().iter().all(|m| m.unit == unit), "{text}");
    }
    let grams = read_weighings("8.9 oz; 8.85", voice).unwrap();
    assert!(grams.iter().all(|m| m.unit == MassUnit::Ounce), "{grams:?}");
    // A weighing of nothing among others is none.
    let none = Vessel { water: Some(water(&["300", "0"])), ..three };
    assert_eq!(potside::vessel::check(&none), Err(vec![VesselError::NoWater]));
}

/// The volume of a frustum, millilitres of millimetres.
fn frustum(top: f64, bottom: f64, height: f64) -> f64 {
    std::f64::consts::PI * height * (top * top + top * bottom + bottom * bottom) / 12_000.0
}

fn grams(tenths: &[i128]) -> Water {
    let all: Vec<_> = tenths.iter().map(|n| Amount::new(Exact::ratio(*n, 10), MassUnit::Gram)).collect();
    Water { again: all[1..].to_vec(), mass: all[0], ..water(&["1"]) }
}

proptest! {
    #[test]
    fn equal_weighings_have_that_mean_and_their_order_does_not_matter(
        tenths in prop::collection::vec(500..9000i128, 1..9), turn in 0..9usize
    ) {
        let one = grams(&tenths[..1]);
        let same = grams(&vec![tenths[0]; tenths.len()]);
        prop_assert_eq!(same.mean(), one.mean());
        let mut turned = tenths.clone();
        turned.rotate_left(turn % tenths.len());
        turned.reverse();
        let (a, b) = (grams(&tenths), grams(&turned));
        prop_assert_eq!(a.mean(), b.mean());
        prop_assert_eq!(held(&a, Voice::default()).unwrap().0, held(&b, Voice::default()).unwrap().0);
        let (least, most) = (tenths.iter().min().unwrap(), tenths.iter().max().unwrap());
        prop_assert!(a.mean() >= grams(&[*least]).mean() && a.mean() <= grams(&[*most]).mean());
    }

    // The slopes by formula against differences of the volume itself.
    #[test]
    fn what_is_allowed_follows_from_the_volume(top in 40..150i32, bottom in 40..150i32, height in 30..200i32) {
        let found = told(&["300"], &top.to_string(), &bottom.to_string(), &height.to_string());
        let (d, e, h) = (f64::from(top), f64::from(bottom), f64::from(height));
        let slope = |a: [f64; 3]| (frustum(d + a[0], e + a[1], h + a[2]) - frustum(d - a[0], e - a[1], h - a[2])) / 0.02;
        let all: Vec<[f64; 3]> = if top == bottom {
            vec![[0.01, 0.01, 0.0], [0.0, 0.0, 0.01]]
        } else {
            vec![[0.01, 0.0, 0.0], [0.0, 0.01, 0.0], [0.0, 0.0, 0.01]]
        };
        let wanted = 2.0 * (all.into_iter().map(|a| slope(a).powi(2)).sum::<f64>() / 6.0).sqrt();
        let allowed = found.allowed.in_base().to_f64();
        prop_assert!((allowed / wanted - 1.0).abs() < 1e-6, "{} against {}", allowed, wanted);
        // Set right across, the inside says what the water says.
        let right = if found.inside > found.water { -1.0 } else { 1.0 } * found.across.in_base().to_f64();
        let apart = (frustum(d + right, e + right, h) - found.water.in_base().to_f64()).abs();
        prop_assert!(right.abs() > 5.0 || apart < 0.1 * found.apart().in_base().to_f64().abs() + 0.01, "{}", apart);
    }
}
