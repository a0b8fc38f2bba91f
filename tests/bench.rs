//! What weighing trials tell: drop mass and how good it is, bulk density; and what cannot be used.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod formula_shared;

use formula_shared::{g, number, tbsp};
use potside::bench::{
    BenchError, DropTrial, DropWeighing, MeltingPot, PotBody, Scale, ScaleTrial, SpoonTrial, Stuff,
    bulk_density, drop_mass, mean_drop,
};
use potside::quantity::{Amount, Exact, Locale, Mass, MassUnit, Voice};
use proptest::prelude::*;

fn trial(weighings: &[(u32, &str)], division: &str) -> DropTrial {
    let one = |&(drops, mass): &(u32, &str)| DropWeighing { drops, mass: g(mass) };
    DropTrial { weighings: weighings.iter().map(one).collect(), division: g(division) }
}

#[track_caller]
fn milligrams(mass: Mass, wanted: &str, step: &str) {
    assert_eq!((mass.in_base() * Exact::whole(1000)).round_to(number(step)), number(wanted));
}

// The reading part for one weighing of 20 drops on a 0.01 g division, √2 × (d ÷ √12) ÷ N = 0.204 mg: GUM F.2.2.1
// (from memory), worked with a calculator. USP 32 <1101>: a drop of water is 45 to 55 mg, so 20 drops are about 1 g.
#[test]
fn one_weighing_is_as_good_as_the_reading() {
    let found = drop_mass(&trial(&[(20, "1.00")], "0.01"), Voice::default()).unwrap();
    assert_eq!(found.mean, g("0.05").value);
    assert_eq!(
        found.say(Voice::default()),
        "One drop weighs 50.0 mg ± 0.2 mg (0.41 %). So well the scale tells it; weigh as many again: that tells how far \
         your drops stray."
    );
    assert_eq!(found.why.result, "50.0 mg");
    milligrams(found.error, "0.204", "0.001");
    assert_eq!(found.more_for_5_percent, 0);
}

// Worked with a calculator: means 50, 54, 46 mg of 20 drops each; their scatter is 4 mg, ÷ √3 is 2.309 mg; the
// reading √3 × √2 × (10 mg ÷ √12) ÷ 60 is 0.118 mg; together 2.312 mg.
#[test]
fn several_weighings_show_the_scatter() {
    let found =
        drop_mass(&trial(&[(20, "1.00"), (20, "1.08"), (20, "0.92")], "0.01"), Voice::default()).unwrap();
    assert_eq!(found.mean, g("0.05").value);
    milligrams(found.error, "2.312", "0.001");
    assert_eq!(found.more_for_5_percent, 0);
}

// Worked by hand.
#[test]
fn unequal_weighings_are_weighted_by_their_drops() {
    let found = drop_mass(&trial(&[(10, "0.60"), (30, "1.40")], "0.0001"), Voice::default()).unwrap();
    assert_eq!(found.mean, g("0.05").value);
    // s² = 10 × 10² + 30 × (10/3)² = 1333.3 mg²; ÷ 40 drops, root: 5.774 mg.
    milligrams(found.error, "5.774", "0.001");
}

// A 0.1 g division and one weighing of 10 drops, 0.5 g: √2 × 100 mg ÷ √12 ÷ 10 = 4.08 mg of 50 mg, 8.2 %. A second
// weighing of n drops makes it √2 × 40.8 mg ÷ (10 + n), which is 2.5 mg at 23.09 drops: 14 more.
#[test]
fn more_drops_make_it_good_to_5_percent() {
    let found = drop_mass(&trial(&[(10, "0.5")], "0.1"), Voice::default()).unwrap();
    milligrams(found.error, "4.082", "0.001");
    let says =
        |more| potside::bench::DropMass { more_for_5_percent: more, ..found.clone() }.say(Voice::default());
    let opening = "One drop weighs 50.0 mg ± 4.1 mg (8.16 %).";
    assert_eq!(says(14), format!("{opening} 14 more drops, weighed in one go, make it good to 5 %."));
    assert_eq!(says(1), format!("{opening} 1 more drop, weighed on its own, makes it good to 5 %."));
    assert_eq!(found.more_for_5_percent, 14);
    let then = drop_mass(&trial(&[(10, "0.5"), (14, "0.7")], "0.1"), Voice::default()).unwrap();
    assert_eq!(then.more_for_5_percent, 0);
    let short = drop_mass(&trial(&[(10, "0.5"), (13, "0.65")], "0.1"), Voice::default()).unwrap();
    assert!(short.more_for_5_percent > 0);
}

#[test]
fn nothing_weighed_tells_nothing() {
    for empty in [trial(&[], "0.01"), trial(&[(0, "1")], "0.01"), trial(&[(20, "0")], "0.01")] {
        assert_eq!(drop_mass(&empty, Voice::default()), None);
        assert_eq!(mean_drop(&empty), None);
    }
    let with_an_empty_row = drop_mass(&trial(&[(20, "1"), (0, "0"), (20, "1")], "0.01"), Voice::default());
    assert_eq!(with_an_empty_row.map(|d| d.mean), Some(g("0.05").value));
}

fn spoons(spoons: u32, mass: &str) -> SpoonTrial {
    SpoonTrial { spoon: tbsp("1"), spoons, mass: g(mass), again: Vec::new() }
}

#[test]
fn bulk_density_from_level_spoons() {
    let (density, _) = bulk_density(&spoons(5, "44.36029434375"), Voice::default()).unwrap();
    // 1 tbsp = 14.78676478125 mL exactly (NIST Handbook 44 App. C): five are 73.93382390625 mL, here 0.6 g/mL.
    assert_eq!(density.in_base(), number("0.6"));
    let said = |count, mass| spoons(count, mass).say(Voice::default());
    assert_eq!(
        said(5, "44.36029434375").unwrap(),
        "One level tbsp weighs 8.9 g (0.31 oz): 0.600 g/mL. Weigh as many again: that tells how far your spoons stray."
    );
    assert_eq!(said(0, "44"), None);
    assert_eq!(bulk_density(&spoons(0, "44"), Voice::default()), None);
    assert_eq!(bulk_density(&spoons(5, "0"), Voice::default()), None);
    assert_eq!(spoons(0, "0").check(), Err(vec![BenchError::NoSpoons, BenchError::SpoonsWeighNothing]));
    assert_eq!(spoons(5, "44").check(), Ok(()));
}

/// By hand: 32 g and 40 g are a ninth off their mean to either side, s² = 2 ÷ 81 of it, so the mean is good to
/// √(2 ÷ 81 ÷ 2) = 1 ÷ 9. For 5 % it takes 2 ÷ 81 ÷ 0.05² = 9.9 weighings: 8 more.
#[test]
fn spoons_weighed_again_tell_how_far_they_stray() {
    let twice = |first: &str, then: &str| SpoonTrial { again: vec![g(then)], ..spoons(4, first) };
    let trial = twice("32", "40");
    let said = trial.say(Voice::default()).unwrap();
    assert!(said.starts_with("One level tbsp weighs 9.0 g (0.32 oz): 0.609 g/mL. "), "{said}");
    assert!(said.ends_with("Give or take 11.11 %. Weighed 8 times more, it is good to 5 %."), "{said}");
    let ten = SpoonTrial {
        again: [["40"].as_slice(), &["32", "40"].repeat(4)].concat().into_iter().map(g).collect(),
        ..trial.clone()
    };
    assert!(ten.say(Voice::default()).unwrap().ends_with("That is good to 5 %."), "{ten:?}");
    let same = twice("36", "36.1").say(Voice::default()).unwrap();
    assert!(same.ends_with("Give or take 0.14 %. That is good to 5 %."), "{same}");
    assert_eq!(twice("36", "0").check(), Err(vec![BenchError::SpoonsWeighNothing]));
    let written = potside::wire::write(&trial);
    assert_eq!(potside::wire::read(&written), Ok(trial));
    // As it was written before there was a second weighing.
    let once = r#"{"spoon":"1 tbsp","spoons":4,"mass":"32 g"}"#;
    assert_eq!(potside::wire::read(once), Ok(spoons(4, "32")));
    assert_eq!(potside::wire::write(&spoons(4, "32")), once);
}

#[track_caller]
fn scale(name: &str, capacity: &str, division: &str, least: &str, wanted: &[BenchError]) {
    let (name, trial) = (name.into(), None);
    let scale = Scale { name, capacity: g(capacity), division: g(division), least: g(least), trial };
    let wanted = if wanted.is_empty() { Ok(()) } else { Err(wanted.to_vec()) };
    assert_eq!(scale.check(), wanted);
}

#[test]
fn scales_and_pots_are_looked_over() {
    use BenchError::*;
    scale("Small", "500", "0.01", "0.2", &[]);
    scale("Small", "500", "0.1", "0.1", &[]);
    scale(" ", "500", "0.01", "0.2", &[ScaleNoName]);
    scale("Small", "500", "0", "0.2", &[NoDivision]);
    scale("Small", "500", "1", "0.2", &[LeastBelowDivision { least: g("0.2"), division: g("1") }]);
    scale("Small", "0.2", "0.01", "0.2", &[CapacityBelowLeast { capacity: g("0.2"), least: g("0.2") }]);
    scale(
        "",
        "0",
        "0",
        "0",
        &[ScaleNoName, NoDivision, CapacityBelowLeast { capacity: g("0"), least: g("0") }],
    );
    let comma = Voice { locale: Locale::Comma, ..Voice::default() };
    let below = LeastBelowDivision { least: g("0.2"), division: g("1") }.say(comma);
    assert!(below.contains("worth weighing, 0,2 g, is below one division, 1 g."), "{below}");
    let pot = |name: &str, capacity: &str| {
        MeltingPot { name: name.into(), capacity: g(capacity), body: None }.check()
    };
    assert_eq!(pot("Jug", "1500"), Ok(()));
    assert_eq!(pot(" ", "0"), Err(vec![PotNoName, PotHoldsNothing]));
    let weighing = |weight: &str| {
        let body = Some(PotBody { weight: g(weight), stuff: Stuff::Steel });
        MeltingPot { name: "Jug".into(), capacity: g("1500"), body }.check()
    };
    assert_eq!(weighing("800"), Ok(()));
    assert_eq!(weighing("0"), Err(vec![PotWeighsNothing]));
    assert_eq!(trial(&[(20, "1")], "0.01").check(), Ok(()));
    assert_eq!(trial(&[], "0").check(), Err(vec![NoWeighing, NoDivision]));
    let second = trial(&[(20, "1"), (20, "0")], "0.01").check();
    assert_eq!(second, Err(vec![EmptyWeighing { place: 2 }]));
}

fn tried(division: &str, readings: &str, known: &str) -> Scale {
    let trial = ScaleTrial::read(readings, known, Voice::default()).unwrap();
    Scale { name: "Fine".into(), capacity: g("500"), division: g(division), least: g(division), trial }
}

/// USP, general chapter 41 (2019): the least that is weighed to 0.10 % is 2000 s, in its own example 0.30 g of s 0.00015 g;
/// to 1 % it is a tenth of that. Where no spread is seen it is 820 divisions, to 1 % 82 (a maker's summary of the chapter).
#[test]
fn a_scale_tells_how_small_a_load_is_worth_weighing() {
    let voice = Voice::default();
    // Ten readings whose standard deviation is 0.00015 g: half of them 0.00015 × √(9 ÷ 10) above, half below.
    let off = 0.00015_f64 * 0.9_f64.sqrt();
    let lines: String =
        (0..10).map(|n| format!("{:.9} g\n", 20.0 + if n % 2 == 0 { off } else { -off })).collect();
    let steady = tried("0.0001", &lines, "").steady(voice).unwrap();
    assert!((steady.spread.in_base().to_f64() - 0.00015).abs() < 1e-9, "{steady:?}");
    assert_eq!((steady.least, steady.off, steady.caution), (g("0.03"), None, None));
    let still = tried("0.1", "100 g\n100 g\n\n100 g", "100 g").steady(voice).unwrap();
    assert_eq!((still.spread, still.least), (Mass::ZERO, g("8.2")));
    assert!(
        still.said.contains(" 7 more make it ten") && !steady.said.contains("more make it ten"),
        "{still:?}"
    );
    assert!(still.said.ends_with("it shows to the division.") && still.caution.is_none(), "{still:?}");
    // 0.1, 0 and −0.1 g from their mean: s is 0.1 g, so 20 g; and half a gram too little of 100 g.
    let low = tried("0.1", "99.6 g\n99.5 g\n99.4 g", "100 g").steady(voice).unwrap();
    assert_eq!((low.least, low.off), (g("20"), Some(g("-0.5").value)));
    assert!(low.caution.unwrap().starts_with("It shows 0.500 g too little of 100 g."));
    // Said in the unit that the scale shows, whichever comes first for the person.
    let ounces = Voice { mass: MassUnit::Ounce, ..voice };
    let told = tried("0.1", "99.6 g\n99.5 g\n99.4 g", "100 g").steady(ounces).unwrap();
    assert!(told.said.starts_with("3 weighings of one thing stray by 0.100 g: from 20 g on"), "{told:?}");
    assert_eq!(tried("0.1", "", "100 g").steady(voice), None);
    assert_eq!(tried("0", "1 g\n1 g\n1 g", "").steady(voice), None);
    let wrong = |readings: &str, known: &str| ScaleTrial::read(readings, known, voice).unwrap_err();
    assert!(wrong("1 g\n2 g", "").contains("three times"));
    assert!(wrong("1 g\n\nx\n1 g", "").starts_with("Line 3: "));
    // Without a unit that of the scale is meant; a mistaken one is seen.
    let bare = ScaleTrial::read("99.6\n99.5\n99.4 g", "", voice).unwrap().unwrap();
    assert_eq!(bare.readings, [g("99.6"), g("99.5"), g("99.4")]);
    assert!(wrong("99.6 oz\n99.5 g\n99.4 g", "").starts_with("They go from 99.4 g to 99.6 oz: "));
    assert_eq!(ScaleTrial::read("1 g\n2 g\n1 g", "", voice).map(|t| t.is_some()), Ok(true));
    assert!(wrong("1 g\n1 g\n1 g", "heavy").starts_with("What it weighs: "));
    let whole = tried("0.1", "99.6 g\n99.5 g\n99.4 g", "100 g");
    assert_eq!(potside::wire::read(&potside::wire::write(&whole)), Ok(whole));
}

proptest! {
    // Counting the same weighings twice over cannot make the mean worse, and the promise of more drops holds where
    // they weigh the mean.
    #[test]
    fn the_promise_holds(drops in 1..60u32, tenths in 1..80i128) {
        let mass = Amount::new(Exact::ratio(tenths, 10), MassUnit::Gram);
        let first = DropWeighing { drops, mass };
        let mut trial = DropTrial { weighings: vec![first.clone()], division: g("0.1") };
        let found = drop_mass(&trial, Voice::default()).unwrap();
        prop_assert_eq!(mean_drop(&trial), Some(found.mean));
        let more = found.more_for_5_percent;
        prop_assert_eq!(more == 0, found.error.in_base() <= found.mean.in_base() * number("0.05"));
        if more > 0 {
            let mass = found.mean.times(Exact::whole(more.into()));
            trial.weighings.push(DropWeighing { drops: more, mass: Amount { value: mass, unit: MassUnit::Gram } });
            prop_assert_eq!(drop_mass(&trial, Voice::default()).unwrap().more_for_5_percent, 0);
        }
    }
}
