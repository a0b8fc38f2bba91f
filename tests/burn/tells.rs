//! What trials tell, held against certified data, a general-purpose statistics library and cases worked out by hand.

use super::candle::{MINUTE, MORNING, burned, lit, out, read, trial};
use super::strd;
use potside::bench::burn::{
    BurnEvent, Compared, Course, Look, Told, Trial, WickSeries, clock, compare, course, life, odd, rate,
    side_by_side, tells, trend,
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

fn number(text: &str) -> f64 {
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

/// 180 g at 5 g an hour last 36 h. What is lost between two burns, as a snippet of wick, is not burned.
#[test]
fn a_rate_and_the_life_from_it() {
    let voice = Voice::default();
    let events =
        [lit(MORNING, 400.0), out(MORNING + 120 * MINUTE, 390.0), lit(MORNING + 600 * MINUTE, 389.0)];
    let first = rate(&course(&events), voice).unwrap();
    assert_eq!((first.burns, first.half), (1, None));
    near(first.grams, 5.0, 1e-12, "rate");
    assert_eq!(first.say(voice), "5.00 g an hour, from one burn");
    assert_eq!(life(&trial("A1", "C 10"), &first).unwrap().say(voice), "It lasts about 36 h.");
    let more = [&events[..], &[out(MORNING + 720 * MINUTE, 379.0)]].concat();
    let second = rate(&course(&more), voice).unwrap();
    near(second.grams, 5.0, 1e-12, "rate");
    assert_eq!(life(&trial("A1", "C 10"), &second).unwrap().say(voice), "It lasts about 36 h, 36 to 36.");
    assert!(rate(&course(&[lit(MORNING, 400.0)]), voice).is_none());
    // A gram lost in a few seconds is the scale's doing; two burns of eight minutes are a quarter of an hour together.
    let short = |at: u64, minutes: u64| [lit(at, 400.0), out(at + minutes * MINUTE, 399.0)];
    assert!(rate(&course(&short(MORNING, 14)), voice).is_none());
    let both = [short(MORNING, 8), short(MORNING + 600 * MINUTE, 8)].concat();
    near(rate(&course(&both), voice).unwrap().grams, 7.5, 1e-12, "rate");
}

/// g an hour that were measured. A paraffin taper: 0.1 g a minute ("Characterization of Candle Flames", J. Fire Prot. Eng. 15
/// (2005) 265–285, as it is quoted by others). Five kinds of pillar candle: 4.4 to 7.3 in the first hour, 4.7 to 7.1 in the five
/// after it ("Emissions of ultrafine particles from five types of candles during steady burn conditions", Indoor Air 2021, its
/// summary).
const MEASURED: [f64; 5] = [6.0, 4.4, 7.3, 4.7, 7.1];

/// What burns as candles were measured to burn comes out so, and is not odd; with grams taken for ounces, or the other way
/// round, each of them is.
#[test]
fn measured_rates_are_not_odd_and_a_mistaken_unit_is() {
    let (voice, of) = (Voice::default(), trial("A1", "C 10"));
    let burns = |rate: f64| {
        course(&[lit(MORNING, 400.0), out(MORNING + 60 * MINUTE, ((400.0 - rate) * 1000.0).round() / 1000.0)])
    };
    for measured in MEASURED {
        near(rate(&burns(measured), voice).unwrap().grams, measured, 1e-3, "rate");
        assert_eq!(odd(&of, &burns(measured), voice), None, "{measured}");
        for mistaken in [measured * 28.35, measured / 28.35] {
            assert!(odd(&of, &burns(mistaken), voice).is_some(), "{mistaken}");
        }
    }
}

/// The rate that a burn is held against is one that was measured: it is within those of the pillar candles, and of a wax with
/// 42 MJ/kg gives the 80 W of the taper to a seventh. Told off below a quarter of it and above four times: 3 g in two hours are
/// just not.
#[test]
fn a_rate_that_hardly_any_candle_has_is_said_to_be_odd() {
    let voice = Voice::default();
    let of = trial("A1", "C 10");
    let odd = |lost: &[f64]| odd(&of, &burned(lost), voice);
    for (lost, is) in [(2.9, true), (3.0, false), (12.0, false), (48.0, false), (48.1, true)] {
        assert_eq!(odd(&[lost]).is_some(), is, "{lost}");
    }
    let said = tells(&of, &burned(&[12.0, 60.0]), voice);
    let wanted = "A burn of 30.00 g an hour is far from the 6.00 g an hour that were measured of a paraffin taper: check its \
                  weights and times.";
    assert!(said.iter().any(|(said, _)| said == wanted), "{said:?}");
    let said = odd(&[60.0]).unwrap();
    let usual = said.split(" is far from the ").nth(1).and_then(|s| s.split(' ').next()).map(number).unwrap();
    let watts = usual / 3600.0 * 42e3;
    assert!(
        (4.4..=7.3).contains(&usual) && (watts / 80.0 - 1.0).abs() < 1.0 / 7.0,
        "{usual} g an hour, {watts} W"
    );
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

#[test]
fn a_trend_is_told_only_past_its_range() {
    let of = trial("A1", "C 10");
    let slower = trend(&of, &burned(&[12.0, 11.5, 11.02, 10.5])).unwrap();
    assert!(slower.change < 0.0 && -slower.change > slower.half, "{slower:?}");
    // By hand, rates of 6, 5.75, 5.51 and 5.25 g an hour against 6, 17.75, 29.01 and 39.77 g gone by the middle of each burn.
    near(slower.change, -2.210_709_07, 1e-5, "change");
    near(slower.half, 0.209_290_6, 1e-4, "range");
    assert!(slower.say(Voice::default()).starts_with("It burns slower on the way down: 2."));
    let level = trend(&of, &burned(&[12.0, 11.0, 12.1, 11.0])).unwrap();
    assert_eq!(level.say(Voice::default()), "No change told between the top and here.");
    assert!(trend(&of, &burned(&[12.0, 11.0])).is_none());
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
