//! The burn rate, the life and the trend by hand, and held against rates that were measured and published.

use super::candle::{MINUTE, MORNING, burned, lit, out, trial};
use super::tells::{near, number};
use potside::bench::burn::{course, life, odd, rate, tells, trend};
use potside::quantity::Voice;

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
