//! Which wick next.

use potside::bench::burn::{Advice, PASSES, Tried, Verdict, WickSeries, advise};
use potside::quantity::Voice;
use proptest::prelude::*;

const SIZES: usize = 7;

fn tried(size: usize, verdict: Verdict) -> Tried {
    Tried { size, wider: 0.0, heavier: 0.0, same: true, verdict }
}

fn next(all: &[Tried]) -> Advice {
    advise(SIZES, all).unwrap()
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
    assert!(advise(0, &[]).is_none());
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
    let lent = |heavier: f64, wider: f64| {
        let like = Tried { heavier, wider, same: false, ..tried(3, Verdict::Passed) };
        next(&[like; 3])
    };
    let mean = |a: &Advice| -> f64 { a.chances.iter().map(|(small, _, large)| small - large).sum() };
    let here = lent(0.0, 0.0);
    assert_eq!((here.size, here.lent, here.passed), (3, 3, 0));
    // What passed was lighter, narrower: this one wants more.
    assert!(mean(&lent(-1.0, 0.0)) > mean(&here) && mean(&lent(0.0, -15.0)) > mean(&here));
    assert!(mean(&lent(1.0, 0.0)) < mean(&here) && mean(&lent(0.0, 15.0)) < mean(&here));
    assert!(lent(-1.0, 0.0).size >= 3 && lent(0.0, -15.0).size > 3);
}

#[test]
fn a_series_that_ends_too_soon_is_said() {
    let series =
        WickSeries { name: "Cotton".to_owned(), sizes: (1..=SIZES).map(|n| format!("C {n}")).collect() };
    let said = next(&[tried(6, Verdict::Small), tried(6, Verdict::Small)]).say(&series, Voice::default());
    assert!(said[0].starts_with("Try C 7 next"), "{said:?}");
    assert!(said.iter().any(|s| s.contains("Even the largest")), "{said:?}");
    let said = next(&[tried(3, Verdict::Passed); PASSES]).say(&series, Voice::default());
    assert!(said[0].starts_with("C 4 passed in 3 candles"), "{said:?}");
    let said = next(&[tried(3, Verdict::Passed)]).say(&series, Voice::default());
    assert_eq!(said[1], "C 4 passed once; 2 candles more of it would settle it.");
    // By hand: two more candles at three burns each are six burns, five candles at four are twenty.
    let once = Advice { burns: Some(3.0), ..next(&[tried(3, Verdict::Passed)]) };
    assert_eq!(
        once.say(&series, Voice::default())[1],
        "C 4 passed once; 2 candles more of it would settle it. That is some 6 burns, at 3 a candle as until now."
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

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    /// The law that keeps it honest: a wick that was too small never makes a smaller one look better, one too large never a
    /// larger one; and whatever was tried, a larger size is less likely too small.
    #[test]
    fn it_is_monotone(all in prop::collection::vec(any_trial(), 0..8), size in 0..SIZES) {
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

    /// The order in which trials ended does not matter.
    #[test]
    fn order_does_not_matter(all in prop::collection::vec(any_trial(), 0..8)) {
        let mut turned = all.clone();
        turned.reverse();
        let (a, b) = (next(&all), next(&turned));
        prop_assert_eq!(a.size, b.size);
        prop_assert!((a.search - b.search).abs() < 1e-9);
    }
}
