//! What trials tell, held against certified data, a general-purpose statistics library and cases worked out by hand.

use super::candle::{MINUTE, MORNING, burned, lit, out, read, trial};
use super::strd;
use potside::bench::burn::{
    BurnEvent, Compared, Course, Look, Told, Trial, WickSeries, clock, compare, course, rate, side_by_side,
};
use potside::quantity::Voice;
use potside::student::student;
use std::collections::BTreeMap;

const TABLE: &str = include_str!("../tables/burning.tsv");
const WICKS: &str = include_str!("../tables/wicks.tsv");

fn rows(kind: &str) -> Vec<Vec<&'static str>> {
    let lines = TABLE.lines().chain(WICKS.lines()).map(|l| l.split('\t').collect::<Vec<_>>());
    lines.filter(|l| l[0] == kind).map(|l| l[1..].to_vec()).collect()
}

/// By case, and in it by burn or wick.
type Cases<T> = BTreeMap<&'static str, BTreeMap<&'static str, Vec<T>>>;

pub(super) fn number(text: &str) -> f64 {
    text.parse().unwrap()
}

#[track_caller]
pub(super) fn near(got: f64, wanted: f64, share: f64, what: &str) {
    assert!((got - wanted).abs() <= share * wanted.abs().max(1e-12), "{what}: {got}, not {wanted}");
}

/// SciPy's quantiles; and 12.706, 4.303, 2.228 of the NIST/SEMATECH e-Handbook, 1.3.6.7.2.
#[test]
fn students_quantiles_are_those_of_the_tables() {
    for row in rows("quantile") {
        near(student(number(row[0]), row[1].parse().unwrap()), number(row[2]), 1e-8, &row.join(" "));
    }
    for (freedom, t) in [(1, 12.706), (2, 4.303), (10, 2.228)] {
        near(student(0.975, freedom), t, 1e-4, "printed");
    }
    assert!(student(0.5, 3) < 1e-12);
    assert_eq!(student(0.975, 0), student(0.975, 1));
}

/// NIST StRD, all eleven sets: every value, standard deviation and spread to eleven digits, but for those of higher
/// difficulty whose powers of x are nearly one another.
#[test]
fn certified_data_come_out_as_certified() {
    for (set, columns) in strd::SETS {
        let worst = strd::worst(set, columns);
        let most = match set {
            "Filip" | "Wampler5" => 1e-6,
            "Wampler4" => 1e-8,
            "Wampler1" | "Wampler3" => 1e-10,
            _ => 1e-11,
        };
        assert!(worst < most, "{set}: {worst:e}");
    }
}

/// Columns of which one is made of the others tell nothing.
#[test]
fn what_cannot_be_told_apart_is_not_fitted() {
    use potside::bench::burn::least_squares;
    assert!(least_squares(&[vec![1.0, 1.0, 1.0], vec![2.0, 2.0, 2.0]], &[1.0, 2.0, 3.0]).is_none());
    assert!(least_squares(&[vec![1.0], vec![2.0]], &[1.0]).is_none());
}

#[test]
fn burn_rates_are_those_of_a_library() {
    let mut cases: Cases<(u64, f64)> = BTreeMap::new();
    for row in rows("weighing") {
        let (case, burn) = (row[0], row[1]);
        cases
            .entry(case)
            .or_default()
            .entry(burn)
            .or_default()
            .push((row[2].parse().unwrap(), number(row[3])));
    }
    assert_eq!(cases.len(), 12);
    let mut fits = Vec::new();
    for row in rows("rate") {
        let mut events = Vec::new();
        for (burn, weighings) in &cases[row[0]] {
            let at = MORNING + number(burn) as u64 * 1440 * MINUTE;
            let last = weighings.len() - 1;
            for (index, (minutes, grams)) in weighings.iter().enumerate() {
                let now = at + minutes * MINUTE;
                let mass = Some(read(&format!("{grams} g")));
                events.push(match index {
                    0 => lit(now, *grams),
                    _ if index == last => out(now, *grams),
                    _ => BurnEvent::Looked(Box::new(Look { at: now, mass, ..Look::default() })),
                });
            }
        }
        let got = rate(&course(&events), Voice::default()).unwrap();
        near(got.grams, number(row[1]), 1e-9, "rate");
        near(got.half.unwrap(), number(row[4]), 1e-7, "range");
        fits.push((row[0], got));
    }
    // And those of the fit with a column for each burn.
    let blocks = rows("blocks");
    assert_eq!((fits.len(), blocks.len()), (12, 12));
    for ((case, got), row) in fits.iter().zip(blocks) {
        assert_eq!(*case, row[0]);
        let (freedom, half) = (row[3].parse().unwrap(), got.half.unwrap());
        near(got.grams, number(row[1]), 1e-9, "slope");
        near(half / student(0.975, freedom), number(row[2]), 1e-7, "standard error");
        near(got.grams - half, number(row[4]), 1e-8, "least");
        near(got.grams + half, number(row[5]), 1e-8, "most");
    }
}

/// Candles of one burn each, or of the burns in each list.
fn candles(of: &[Vec<f64>]) -> Vec<(Trial, Course)> {
    of.iter().map(|lost| (trial("A1", "C 10"), burned(lost))).collect()
}

pub(super) fn each(of: &[f64]) -> Vec<(Trial, Course)> {
    candles(&of.iter().map(|lost| vec![*lost]).collect::<Vec<_>>())
}

fn compared(a: &[(Trial, Course)], b: &[(Trial, Course)]) -> Option<Compared> {
    let [a, b] = [a, b].map(|of| of.iter().map(|(t, c)| (t, c)).collect::<Vec<_>>());
    compare(&a, &b, Voice::default())
}

#[test]
fn two_wicks_are_compared_as_a_library_compares() {
    let mut cases: Cases<f64> = BTreeMap::new();
    for row in rows("burn") {
        cases.entry(row[0]).or_default().entry(row[1]).or_default().push(number(row[2]));
    }
    let mut told = [0, 0, 0];
    for row in rows("test") {
        let got = compared(&each(&cases[row[0]]["A"]), &each(&cases[row[0]]["B"])).unwrap();
        near(got.difference, number(row[1]), 1e-6, "difference");
        near(got.half.unwrap(), number(row[2]), 1e-6, "range");
        assert_eq!(got.told == Told::Differs, row[3] == "True", "{row:?}");
        told[usize::from(got.told == Told::Differs)] += 1;
    }
    assert!(told[0] > 0 && told[1] > 0, "{told:?}");
}

/// Several burns of each of several candles: what differs from candle to candle counts, as in the mixed model of a library
/// (tests/tables/wicks.py). It is fitted to no more than four digits.
#[test]
fn burns_of_one_candle_count_as_one() {
    let mut cases: BTreeMap<&str, BTreeMap<&str, BTreeMap<&str, Vec<f64>>>> = BTreeMap::new();
    for row in rows("nested") {
        let wick = cases.entry(row[0]).or_default().entry(row[1]).or_default();
        wick.entry(row[2]).or_default().push(number(row[3]));
    }
    let mut seen = 0;
    for row in rows("mixed") {
        let of = |wick: &str| candles(&cases[row[0]][wick].values().cloned().collect::<Vec<_>>());
        let got = compared(&of("A"), &of("B")).unwrap();
        near(got.difference, number(row[1]), 1e-6, "difference");
        near(got.half.unwrap(), number(row[4]), 2e-4, "range");
        seen += 1;
    }
    assert_eq!(seen, 8);
    // However often one candle of each is burned, whether it is the wick cannot be told.
    let got = compared(&candles(&[vec![9.9; 6]]), &candles(&[vec![12.1; 6]])).unwrap();
    assert_eq!((got.half, got.told), (None, Told::NotYet { more: Some(1) }));
    assert_eq!(
        got.say("C 10", "C 12", Voice::default()),
        "Whether C 12 burns faster or slower than C 10 cannot be told yet: one more candle of each may tell."
    );
}

/// Two candles with each wick, half a gram an hour apart but a spread of as much: by hand, spread s = 0.354 of one candle,
/// so with n candles each the range is t·s·√(2/n): 0.63 with 4 (t = 2.447), 0.52 with 5 (t = 2.306) and 0.46 with 6 (t = 2.228).
#[test]
fn how_many_more_candles_would_tell() {
    let of = trial("A1", "C 10");
    let got = compared(&each(&[9.5, 10.5]), &each(&[10.5, 11.5])).unwrap();
    assert_eq!(got.told, Told::NotYet { more: Some(4) });
    assert_eq!(
        got.say("C 10", "C 12", Voice::default()),
        "Whether C 12 burns faster or slower than C 10 cannot be told yet: about 4 more candles of each would tell."
    );
    let (one, none) = (burned(&[10.0]), Course::default());
    let two = compare(&[(&of, &one)], &[(&of, &one)], Voice::default()).unwrap();
    assert_eq!((two.told, two.half), (Told::NotYet { more: Some(1) }, None));
    assert!(compare(&[(&of, &one)], &[(&of, &none)], Voice::default()).is_none());
    let (same, again) = (each(&[10.0, 10.02, 9.98]), each(&[10.01, 10.0, 10.0]));
    assert_eq!(compared(&same, &again).unwrap().told, Told::Alike);
}

/// A wick that was not weighed yet does not keep those on its two sides apart; one that burns slower than a smaller one is
/// said to be odd, in its own series only.
#[test]
fn wicks_are_told_side_by_side() {
    let (small, none, large) =
        (each(&[9.9, 10.0, 10.1]), vec![(trial("N", "C 10"), Course::default())], each(&[12.0, 12.1, 12.2]));
    let set = |name: &'static str, of: &[(Trial, Course)]| (name, of.to_vec());
    let series =
        WickSeries { name: "Cotton".to_owned(), sizes: vec!["C 8".into(), "C 10".into(), "C 12".into()] };
    let told = |all: &[(&'static str, Vec<(Trial, Course)>)], series: Option<&WickSeries>| -> Vec<String> {
        let sets: Vec<_> =
            all.iter().map(|(name, of)| (*name, of.iter().map(|(t, c)| (t, c)).collect())).collect();
        side_by_side(&sets, series, Voice::default()).into_iter().map(|(said, _)| said).collect()
    };
    let said = told(&[set("C 8", &small), set("C 10", &none), set("C 12", &large)], Some(&series));
    assert_eq!(said.len(), 1);
    assert!(said[0].starts_with("C 12 burns 1.05 g an hour (give or take "), "{said:?}");
    assert!(said[0].ends_with(" faster than C 8."), "{said:?}");
    let odd = [set("C 8", &large), set("C 12", &small)];
    assert!(told(&odd, Some(&series))[0].ends_with("slower than C 8. A larger wick mostly burns faster: check the marks, the trims and the order of the series."));
    assert!(told(&odd, None)[0].ends_with("slower than C 8."));
    assert!(told(&[set("C 8", &small), set("C 10", &none)], Some(&series)).is_empty());
}

/// Weighed only once it could be carried; a look or a light that cannot be is passed over.
#[test]
fn a_course_takes_what_fits() {
    let late = BurnEvent::Weighed { mass: read("392 g"), lit: None };
    let stray = BurnEvent::Looked(Box::new(Look { at: MORNING - MINUTE, ..Look::default() }));
    let unweighed = BurnEvent::Out { at: MORNING + 60 * MINUTE, mass: None, itself: true };
    let events =
        [stray.clone(), lit(MORNING, 400.0), lit(MORNING + MINUTE, 1.0), stray, unweighed.clone(), unweighed];
    let before = course(&events);
    assert!(before.unweighed() && before.burning().is_none());
    assert_eq!(
        (before.sessions.len(), before.looks().count(), before.sessions[0].out),
        (1, 0, Some((MORNING + 60 * MINUTE, true)))
    );
    let after = course(events.iter().chain([&late]));
    assert!(!after.unweighed());
    near(rate(&after, Voice::default()).unwrap().grams, 8.0, 1e-12, "rate");
    assert_eq!(after.seconds(MORNING), 3600.0);
    assert_eq!(course(&[lit(MORNING, 400.0)]).seconds(MORNING + 3_909_000), 3909.0);
    assert_eq!(clock(3909.0), "1:05:09");
}

/// A burn of 14 minutes tells nothing by itself; one of 15 does.
#[test]
fn a_short_burn_is_not_compared() {
    let of = trial("A1", "C 10");
    let burn = |minutes: u64| course(&[lit(MORNING, 400.0), out(MORNING + minutes * MINUTE, 399.0)]);
    let (short, long) = (burn(14), burn(15));
    assert!(compare(&[(&of, &short)], &[(&of, &long)], Voice::default()).is_none());
    assert!(compare(&[(&of, &long)], &[(&of, &long)], Voice::default()).is_some());
}
