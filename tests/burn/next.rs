//! Which wick next.

use potside::bench::burn::{Advice, PASSES, Place, Tried, Verdict, WickSeries, advise};
use potside::quantity::Voice;
use proptest::prelude::*;

const SIZES: usize = 7;

/// The vessel and fragrance that most of these ask about.
const HERE: Place = Place { across: 70.0, weight: 0.0 };

fn tried(size: usize, verdict: Verdict) -> Tried {
    Tried { size, place: HERE, same: true, worth: 1.0, verdict }
}

/// One of another candle, so many steps heavier and mm wider than this.
fn other(heavier: f64, wider: f64, size: usize, verdict: Verdict) -> Tried {
    let place = Place { across: HERE.across + wider, weight: HERE.weight + heavier };
    Tried { place, same: false, worth: 0.5, ..tried(size, verdict) }
}

fn next(all: &[Tried]) -> Advice {
    advise(SIZES, HERE, all).unwrap()
}

/// The chance that a size is too small less the chance that it is too large, all sizes added up.
fn wants(a: &Advice) -> f64 {
    a.chances.iter().map(|(small, _, large)| small - large).sum()
}

/// Without a trial the middle is tried first; each verdict halves what is left.
#[test]
fn the_search_closes_in() {
    assert_eq!(next(&[]).size, 3);
    let small = tried(3, Verdict::Small);
    assert!([4, 5].contains(&next(&[small]).size));
    let large = tried(5, Verdict::Large);
    assert_eq!(next(&[small, large]).size, 4);
    let passed = tried(4, Verdict::Passed);
    let found = next(&[small, large, passed]);
    assert_eq!((found.size, found.passed, found.search), (4, 1, 0.0));
    assert!(found.chances[4].1 > next(&[small, large]).chances[4].1);
    assert!(advise(0, HERE, &[]).is_none());
}

#[test]
fn fewer_candles_are_left_the_more_is_known() {
    let none = next(&[]);
    let some = next(&[tried(3, Verdict::Small), tried(5, Verdict::Large)]);
    assert!(none.search > some.search && some.search >= 1.0, "{} {}", none.search, some.search);
}

/// In one vessel a heavier fragrance, and with one fragrance a wider vessel, wants no smaller wick
/// (`common practice, no source`).
#[test]
fn what_passed_lighter_or_narrower_is_where_to_start() {
    let lent = |heavier: f64, wider: f64| next(&[other(heavier, wider, 3, Verdict::Passed); 3]);
    let here = lent(0.0, 0.0);
    assert_eq!((here.size, here.lent, here.passed), (3, 3, 0));
    // What passed was lighter, narrower: this one wants more.
    assert!(wants(&lent(-1.0, 0.0)) > wants(&here) && wants(&lent(0.0, -15.0)) > wants(&here));
    assert!(wants(&lent(1.0, 0.0)) < wants(&here) && wants(&lent(0.0, 15.0)) < wants(&here));
    assert!(lent(-1.0, 0.0).size >= 3 && lent(0.0, -15.0).size > 3);
}

/// The farther off in width, and the less it is worth, the less a trial tells: the chance of what passed there falls.
#[test]
fn what_is_less_like_it_tells_less() {
    let sure = |wider: f64, worth: f64| {
        let like = Tried { worth, ..other(0.0, wider, 3, Verdict::Passed) };
        next(&[like; 3]).chances.iter().map(|c| c.1).fold(0.0, f64::max)
    };
    for wider in [[0.0, -10.0], [-10.0, -20.0], [0.0, 10.0], [10.0, 20.0]] {
        assert!(sure(wider[0], 0.5) > sure(wider[1], 0.5) + 0.01, "{wider:?}");
    }
    for worth in [[1.0, 0.5], [0.5, 0.25], [0.25, 0.1]] {
        assert!(sure(0.0, worth[0]) > sure(0.0, worth[1]) + 0.01, "{worth:?}");
    }
    // Three that passed nearby outweigh three that were too small where all else differs.
    let both = [
        [other(0.0, 0.0, 3, Verdict::Passed); 3],
        [Tried { worth: 0.1, ..other(0.0, 0.0, 5, Verdict::Small) }; 3],
    ];
    assert_eq!(next(&both.concat()).size, 3);
    let turned = [[Tried { worth: 0.1, ..both[0][0] }; 3], [Tried { worth: 0.5, ..both[1][0] }; 3]];
    assert!(next(&turned.concat()).size > 3);
}

#[test]
fn a_series_that_ends_too_soon_is_said() {
    let series =
        WickSeries { name: "Cotton".to_owned(), sizes: (1..=SIZES).map(|n| format!("C {n}")).collect() };
    let said = next(&[tried(6, Verdict::Small), tried(6, Verdict::Small)]).say(&series, Voice::default());
    assert!(said[0].starts_with("Try C 7 next"), "{said:?}");
    assert!(said.iter().any(|s| s.contains("Even the largest")), "{said:?}");
    // Its maker closed them, and how far they were burned is told.
    let settled = |passed_burns: usize, burned_down: usize| {
        let advice = Advice { passed_burns, burned_down, ..next(&[tried(3, Verdict::Passed); PASSES]) };
        advice.say(&series, Voice::default())[0].clone()
    };
    assert_eq!(
        settled(24, 3),
        "C 4: passed by you in 3 candles, on 24 burns; all burned to their end: the wick for this candle, as far as these \
         trials go."
    );
    assert_eq!(
        settled(3, 0),
        "C 4: passed by you in 3 candles, on 3 burns; none of them burned to its end: burn one down before you settle on it."
    );
    assert_eq!(
        settled(12, 1),
        "C 4: passed by you in 3 candles, on 12 burns; 1 of them burned to its end. It may be the wick for this candle, as far \
         as these trials go."
    );
    let said = next(&[tried(3, Verdict::Passed)]).say(&series, Voice::default());
    assert_eq!(said[1], "C 4: passed by you once, on no burn; 2 candles more of it would settle it.");
    // By hand: two more candles at three burns each are six burns, five candles at four are twenty.
    let once = Advice { burns: Some(3.0), passed_burns: 3, ..next(&[tried(3, Verdict::Passed)]) };
    assert_eq!(
        once.say(&series, Voice::default())[1],
        "C 4: passed by you once, on 3 burns; 2 candles more of it would settle it. That is some 6 burns, at 3 a candle as until now."
    );
    let one = Advice { burns: Some(1.0), ..next(&[tried(3, Verdict::Passed); 2]) };
    let said = one.say(&series, Voice::default());
    assert!(said[1].ends_with("settle it. That is one burn, at 1 a candle as until now."), "{said:?}");
    let none = Advice { search: 2.6, burns: Some(4.0), ..next(&[]) };
    let said = none.say(&series, Voice::default());
    assert!(said[1].starts_with("About 5 candles left to burn: 3 candles until one passes"), "{said:?}");
    assert!(said[1].ends_with("That is some 20 burns, at 4 a candle as until now."), "{said:?}");
    for all in [vec![], vec![tried(3, Verdict::Small)], vec![tried(3, Verdict::Passed); PASSES]] {
        assert!(next(&all).say(&series, Voice::default()).last().unwrap().contains("test before sale"));
    }
}

fn any_trial() -> impl Strategy<Value = Tried> {
    let verdict =
        prop_oneof![Just(Verdict::Passed), Just(Verdict::Small), Just(Verdict::Large), Just(Verdict::Other)];
    (0..SIZES, verdict).prop_map(|(size, verdict)| tried(size, verdict))
}

/// Of whatever vessel and fragrance, and worth whatever.
fn any_other() -> impl Strategy<Value = Tried> {
    let place =
        (40.0..110.0, -2..=1_i32).prop_map(|(across, weight)| Place { across, weight: weight.into() });
    (any_trial(), place, 0.0..=1.0).prop_map(|(trial, place, worth)| Tried {
        place,
        worth,
        same: false,
        ..trial
    })
}

fn any_trials() -> impl Strategy<Value = Vec<Tried>> {
    prop::collection::vec(prop_oneof![any_trial(), any_other()], 0..8)
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    /// The law that keeps it honest: a wick that was too small for this candle never makes a smaller one look better, one too
    /// large never a larger one, whatever was tried of others; and a larger size is less likely too small.
    #[test]
    fn it_is_monotone(all in any_trials(), size in 0..SIZES) {
        let before = next(&all);
        for (more, up) in [(Verdict::Small, true), (Verdict::Large, false)] {
            let after = next(&[&all[..], &[tried(size, more)]].concat());
            let no_way_back = if up { after.size >= before.size } else { after.size <= before.size };
            prop_assert!(no_way_back);
            for (a, b) in before.chances.iter().zip(&after.chances) {
                let (small, large) = (b.0 - a.0, b.2 - a.2);
                let shifted = if up { small > -1e-9 && large < 1e-9 } else { small < 1e-9 && large > -1e-9 };
                prop_assert!(shifted);
            }
        }
        for (a, b) in before.chances.iter().zip(before.chances.iter().skip(1)) {
            prop_assert!(b.0 <= a.0 + 1e-12 && b.2 >= a.2 - 1e-12);
        }
        for (small, passes, large) in before.chances {
            prop_assert!((small + passes + large - 1.0).abs() < 1e-9);
        }
    }

    /// In one vessel a heavier fragrance never gets a smaller guess, and with one fragrance a wider vessel never does,
    /// whatever was tried of whatever candles, and however they contradict each other.
    #[test]
    fn a_heavier_fragrance_or_a_wider_vessel_gets_no_smaller_wick(
        all in any_trials(), across in 40.0..110.0, weight in -2..=1_i32, wider in 0.0..40.0, heavier in 0..=2_i32,
    ) {
        let of = |across: f64, weight: i32| {
            advise(SIZES, Place { across, weight: weight.into() }, &all).unwrap()
        };
        let before = of(across, weight);
        for after in [of(across + wider, weight), of(across, weight + heavier)] {
            prop_assert!(after.size >= before.size, "{} then {}", before.size, after.size);
            for (a, b) in before.chances.iter().zip(&after.chances) {
                prop_assert!(b.0 >= a.0 - 1e-9 && b.2 <= a.2 + 1e-9);
            }
        }
    }

    /// The order in which trials ended does not matter.
    #[test]
    fn order_does_not_matter(all in any_trials()) {
        let mut turned = all.clone();
        turned.reverse();
        let (a, b) = (next(&all), next(&turned));
        prop_assert!(wants(&a) - wants(&b) < 1e-9);
        prop_assert!((a.search - b.search).abs() < 1e-9);
    }
}
