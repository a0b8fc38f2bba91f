//! Scales, spoons and drops: which measure a part is sent to and how far off it is.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

use potside::bench::Scale;
use potside::pot::{ScaleChoice, Shade, SpoonChoice, Wanted, choose_drops, choose_scale, choose_spoon};
use potside::quantity::{
    Amount, Exact, Mass, MassUnit, Quantity, Share, ShareUnit, Voice, Volume, VolumeUnit,
};
use proptest::prelude::*;

fn g(num: i128, den: i128) -> Mass {
    Mass::base(Exact::ratio(num, den))
}

fn percent(n: i128) -> Share {
    Share::of(Exact::whole(n), ShareUnit::Percent)
}

fn scale(name: &str, capacity: i128, division: (i128, i128), least: i128) -> Scale {
    let grams = |num, den| Amount::new(Exact::ratio(num, den), MassUnit::Gram);
    Scale {
        name: name.into(),
        capacity: grams(capacity, 1),
        division: grams(division.0, division.1),
        least: grams(least, 1),
        trial: None,
    }
}

/// `expected`: scale, loads and error, or the least mass.
#[track_caller]
fn weighs(mass: Mass, scales: &[Scale], tolerance: Share, expected: ScaleChoice) {
    assert_eq!(choose_scale(mass, scales, tolerance), expected);
}

#[test]
fn each_part_goes_where_its_error_is_smallest() {
    let scales = [scale("bench", 5000, (1, 1), 20), scale("small", 500, (1, 10), 2)];
    // 5 kg × 1 g, class III: 500 g is good to ±0.5 g (OIML R 76-1 table 6; NIST HB 44 class III says the same).
    let bench = &scales[..1];
    weighs(
        g(500, 1),
        bench,
        percent(2),
        ScaleChoice::On { scale: 0, loads: 1, error: Share::base(Exact::ratio(1, 1000)) },
    );
    // The small scale takes 61 g at ±0.05 g.
    weighs(
        g(61, 1),
        &scales,
        percent(2),
        ScaleChoice::On { scale: 1, loads: 1, error: Share::base(Exact::ratio(5, 6100)) },
    );
    // 1200 g: three loads of ±0.05 g would be nearer, but the bench takes it in one go.
    weighs(
        g(1200, 1),
        &scales,
        percent(2),
        ScaleChoice::On { scale: 0, loads: 1, error: Share::base(Exact::ratio(5, 12_000)) },
    );
    // 6000 g is beyond both: two loads of ±0.5 g, or twelve of ±0.05 g.
    weighs(
        g(6000, 1),
        &scales,
        percent(2),
        ScaleChoice::On { scale: 1, loads: 12, error: Share::base(Exact::ratio(6, 60_000)) },
    );
    // Of equals the larger.
    let alike = [scale("small", 500, (1, 10), 2), scale("large", 2000, (1, 10), 2)];
    weighs(
        g(400, 1),
        &alike,
        percent(2),
        ScaleChoice::On { scale: 1, loads: 1, error: Share::base(Exact::ratio(5, 40_000)) },
    );
}

#[test]
fn of_scales_that_are_alike_the_first_is_taken() {
    let alike = [scale("one", 500, (1, 10), 2), scale("other", 500, (1, 10), 2)];
    let on = |scale| ScaleChoice::On { scale, loads: 1, error: Share::base(Exact::ratio(5, 40_000)) };
    weighs(g(400, 1), &alike, percent(2), on(0));
    // One that shows nothing or holds nothing weighs nothing.
    let none = [scale("blank", 500, (0, 1), 0), scale("nothing", 0, (1, 10), 0)];
    weighs(g(400, 1), &none, percent(2), ScaleChoice::None { from: None });
}

#[test]
fn a_load_too_small_is_said_to_be() {
    // Class III starts at 20 e (OIML R 76-1 table 3), where half a division is 2.5 %: 2 % needs 25 divisions.
    let scales = [scale("small", 500, (1, 10), 2)];
    weighs(g(24, 10), &scales, percent(2), ScaleChoice::None { from: Some(g(25, 10)) });
    weighs(
        g(25, 10),
        &scales,
        percent(2),
        ScaleChoice::On { scale: 0, loads: 1, error: Share::base(Exact::ratio(2, 100)) },
    );
    // With a wide tolerance the least load is what counts.
    weighs(g(19, 10), &scales, percent(10), ScaleChoice::None { from: Some(g(2, 1)) });
    weighs(g(1, 1), &[], percent(2), ScaleChoice::None { from: None });
    weighs(g(1, 1), &scales, Share::ZERO, ScaleChoice::None { from: None });
    weighs(Mass::ZERO, &scales, percent(2), ScaleChoice::None { from: Some(g(25, 10)) });
}

/// Volume in teaspoons as a fraction; expected eighths, and whether 2 % holds.
#[track_caller]
fn spoons(teaspoons: (i128, i128), eighths: u32, off: (i128, i128), within: bool) {
    let volume = Volume::of(Exact::ratio(teaspoons.0, teaspoons.1), VolumeUnit::Teaspoon);
    let off = Share::base(Exact::ratio(off.0, off.1));
    assert_eq!(choose_spoon(volume, percent(2)), SpoonChoice { eighths, off, within });
}

#[test]
fn spoons_go_to_the_nearest_eighth() {
    // ¾ tbsp for 4 is 1½ tbsp for 8 (common practice, no source); 1 tbsp = 3 tsp (NIST HB 44 App. C).
    spoons((9, 4), 18, (0, 1), true);
    spoons((9, 2), 36, (0, 1), true);
    spoons((101, 400), 2, (1, 101), true);
    spoons((3, 10), 2, (1, 6), false);
    // Never none of what is wanted.
    spoons((1, 100), 1, (23, 2), false);
    spoons((0, 1), 0, (0, 1), true);
}

/// Dye of 3 and 6 drops for 4 vessels, made for `vessels`.
fn shade(vessels: u32) -> Shade {
    let colour =
        |name: &str, drops| Wanted { name: name.into(), drops: Exact::ratio(drops * i128::from(vessels), 4) };
    choose_drops(&[colour("red", 3), colour("blue", 6)], vessels, percent(2), Voice::default()).unwrap()
}

/// The first choice: drops, strength off, ratio off; and the dilution.
#[track_caller]
fn shade_of(vessels: u32, drops: [u32; 2], strength: (i128, i128), ratio: (i128, i128), dilute: Option<u32>) {
    let shade = shade(vessels);
    let first = &shade.choices[0];
    assert_eq!(first.drops, drops, "{vessels} vessels");
    assert_eq!(first.strength_off, Exact::ratio(strength.0, strength.1), "{vessels} vessels");
    assert_eq!(first.ratio_off, Exact::ratio(ratio.0, ratio.1), "{vessels} vessels");
    assert_eq!(shade.dilute, dilute, "{vessels} vessels");
    assert_eq!(shade.exact_every, Some(4));
    assert!(shade.choices.len() <= 3);
}

#[test]
fn three_and_six_drops_for_four_vessels() {
    // Which sizes keep the shade exactly: common practice, no source (plain arithmetic).
    for vessels in [4, 8, 16, 24] {
        let drops = [3 * vessels / 4, 6 * vessels / 4];
        shade_of(vessels, drops, (0, 1), (0, 1), None);
    }
    // Wanted 0.75 and 1.5: 1 and 2 keep the hue, a third too deep.
    shade_of(1, [1, 2], (1, 3), (0, 1), Some(4));
    // Wanted 1.5 and 3: 2 and 3 cost the same to the last digit, so the hue decides.
    shade_of(2, [2, 4], (1, 3), (0, 1), Some(2));
    shade_of(3, [2, 4], (-1, 9), (0, 1), Some(4));
    shade_of(5, [4, 8], (1, 15), (0, 1), Some(4));
    shade_of(6, [5, 10], (1, 9), (0, 1), Some(2));
    shade_of(7, [5, 10], (-1, 21), (0, 1), Some(4));
}

#[test]
fn one_colour_has_no_ratio_to_lose() {
    let one = [Wanted { name: "green".into(), drops: Exact::ratio(26, 10) }];
    let shade = choose_drops(&one, 1, percent(2), Voice::default()).unwrap();
    assert_eq!(shade.choices[0].drops, [3]);
    assert_eq!(shade.choices[0].ratio_off, Exact::ZERO);
    assert_eq!(shade.exact_every, Some(5));
    assert_eq!(choose_drops(&[], 4, percent(2), Voice::default()), None);
    let none = [Wanted { name: "green".into(), drops: Exact::ZERO }];
    assert_eq!(choose_drops(&none, 4, percent(2), Voice::default()), None);
}

/// So many colours of `drops` hundredths of a drop each.
fn alike(colours: usize, hundredths: i128) -> Vec<u32> {
    let wanted: Vec<_> =
        (0..colours).map(|_| Wanted { name: "dye".into(), drops: Exact::ratio(hundredths, 100) }).collect();
    choose_drops(&wanted, 1, percent(2), Voice::default()).unwrap().choices[0].drops.clone()
}

#[test]
fn many_colours_are_looked_through_in_a_narrower_window() {
    // Of 1.45 drops, ln(2/1.45) = 0.32 is nearer than ln(1/1.45) = −0.37, though 1.45 is rounded to 1. Around each colour
    // 2 + 2·2, 2 + 2·1 or 2 whole numbers: 4^7 and 2^9 are less than 100,000 combinations, 6^7, 4^9 and 2^17 more.
    for colours in [1, 2, 7, 9, 16] {
        assert_eq!(alike(colours, 145), vec![2; colours]);
    }
    // Of seventeen each is rounded by itself.
    assert_eq!(alike(17, 145), vec![1; 17]);
    assert_eq!(alike(17, 155), vec![2; 17]);
}

#[test]
fn of_colours_equally_far_off_the_first_is_named() {
    let wanted = ["red", "blue"].map(|name| Wanted { name: name.into(), drops: Exact::ratio(3, 2) });
    let shade = choose_drops(&wanted, 1, percent(2), Voice::default()).unwrap();
    // By hand: 2 and 2 cost ln(4/3)² = 0.083, 1 and 1 ln(2/3)² = 0.164, then 2 and 3, where the shares are 2/5 and 3/5 in
    // place of halves: 0.243 + 4 · 0.041.
    let drops: Vec<&[u32]> = shade.choices.iter().map(|c| c.drops.as_slice()).collect();
    assert_eq!(drops, [[2, 2], [1, 1], [2, 3]]);
    assert_eq!((shade.choices[2].colour, shade.choices[2].ratio_off), (0, Exact::ratio(-1, 5)));
}

#[test]
fn a_dilution_that_is_not_exact_is_the_smallest_within_tolerance() {
    let dilute = |hundredths: &[i128]| {
        let colour = |n: &i128| Wanted { name: "dye".into(), drops: Exact::ratio(*n, 100) };
        let wanted: Vec<_> = hundredths.iter().map(colour).collect();
        choose_drops(&wanted, 4, percent(2), Voice::default()).unwrap().dilute
    };
    // By hand: fivefold 6.85 and 13.05 drops, as 7 and 13 0.5 % too strong with the first's share off by 1.7 %; fourfold
    // 5.48 and 10.44 as 5 and 10 are 6 % too weak.
    assert_eq!(dilute(&[137, 261]), Some(5));
    // A colour of which nothing is wanted does not count.
    assert_eq!(dilute(&[0, 137, 261]), Some(5));
    // Thirteenfold 4.03 and 68.51 as 4 and 69; before that the first is too far off, tenfold 3.1 as 3.
    assert_eq!(dilute(&[31, 527]), Some(13));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn whole_drops_are_kept_and_none_is_lost(wanted in prop::collection::vec((1_i128..400, 1_i128..12), 1..5)) {
        let wanted: Vec<_> = wanted
            .into_iter()
            .map(|(n, d)| Wanted { name: "dye".into(), drops: Exact::ratio(n, d) })
            .collect();
        let shade = choose_drops(&wanted, 4, percent(2), Voice::default()).unwrap();
        let first = &shade.choices[0];
        prop_assert!(first.drops.iter().all(|k| *k > 0));
        if wanted.iter().all(|w| w.drops.is_whole()) {
            prop_assert!(first.drops.iter().zip(&wanted).all(|(k, w)| Exact::whole((*k).into()) == w.drops));
            prop_assert_eq!(first.strength_off, Exact::ZERO);
        }
        if let Some(every) = shade.exact_every {
            let per = Exact::ratio(every.into(), 4);
            prop_assert!(wanted.iter().all(|w| (w.drops * per).is_whole()));
        }
    }
}
