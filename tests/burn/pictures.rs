//! The pictures of one candle's burns: the wax going down, and the pool growing. Places are worked out by hand: 480 across,
//! and down from 30, below the words on top, 186 to the foot at 216, above those below.

use super::candle::{MINUTE, MORNING, burned, good, lit, out, trial};
use potside::bench::burn::{
    BurnEvent, Course, Limits, burn_curve, course, life, pool_picture, rate, trim_first,
};
use potside::pot::Chart;
use potside::quantity::Voice;

fn words(chart: &Chart) -> Vec<(i32, i32, &'static str, &str)> {
    chart.words.iter().map(|w| (w.x, w.y, w.anchor, w.text.as_str())).collect()
}

fn curve(of: &Course) -> Option<Chart> {
    let voice = Voice::default();
    burn_curve(&trial("A1", "C 10"), of, &rate(of, voice)?, voice)
}

/// Two burns of two hours that lose 45 g each: 22.5 g an hour, so 180 g last 8 h and the picture ends at 8.16 h. Two hours
/// are 118 across and four 235, the end 471; 135 g are a quarter of 186 down, 46.5, and 90 g half of it, 93.
#[test]
fn the_wax_goes_down_to_nothing_at_its_rate() {
    let chart = curve(&burned(&[45.0, 45.0])).unwrap();
    // The second burn begins where the first ended.
    assert_eq!(chart.dots, [(0, 30, false), (118, 77, false), (118, 77, false), (235, 123, false)]);
    assert_eq!(chart.curve, "M0 30L118 77L118 77L235 123");
    assert_eq!(chart.at, "M235 123L471 216");
    let said = words(&chart);
    assert_eq!(said[0], (0, 18, "start", "180.0 g of wax"));
    assert_eq!(said[1..], [(0, 235, "start", "first light"), (480, 235, "end", "8 h")]);
    let begins =
        "Picture of the wax left against hours burned: 4 weighings, and the way down at 22.50 g an hour";
    assert!(chart.said.starts_with(begins), "{}", chart.said);
    assert!(chart.band.is_empty() && chart.strips.is_empty());
    // Nothing weighed at both ends is no picture.
    assert_eq!(curve(&course(&[lit(MORNING, 400.0)])), None);
}

/// The jar of 70 mm is due at an hour an inch, 9921 s, and the picture ends at 10119.7 s; its top is 73.5 mm. An hour is 171
/// across, two 342, and the time that is due 471; 35 mm are 97.4 down, 69 mm 11.4, the wall 8.9.
#[test]
fn the_pool_grows_towards_the_wall() {
    let of = trial("A1", "C 10");
    let look = |at: u64, pool: f64| BurnEvent::Looked(Box::new(good(MORNING + at * MINUTE, pool)));
    let first = [lit(MORNING, 400.0), look(60, 35.0), look(120, 69.0), out(MORNING + 130 * MINUTE, 390.0)];
    let second = [lit(MORNING + 1440 * MINUTE, 390.0), look(1500, 35.0)];
    let chart = pool_picture(&of, &course(&[&first[..], &second].concat()), Voice::default()).unwrap();
    assert_eq!(chart.dots, [(171, 127, false), (342, 41, false), (171, 127, false)]);
    // Each burn has a line of its own.
    assert_eq!(chart.curve, "M171 127L342 41M171 127");
    assert_eq!(chart.strips, [(39, 2)]);
    assert_eq!(chart.at, "M471 30V216");
    let said = words(&chart);
    // No room for the end of the picture beside the hour an inch.
    let wanted = [(0, 235, "start", "light"), (400, 235, "middle", "an hour an inch")];
    assert_eq!(said[1..], wanted);
    assert!(said[0].3.starts_with("wall, ") && (said[0].0, said[0].1) == (0, 18), "{said:?}");
    assert_eq!(
        chart.said,
        "Picture of the melt pool across against time, 3 looks. Full pool between 60 min and 2 h 0 min."
    );
    assert_eq!(pool_picture(&of, &course(&[lit(MORNING, 400.0)]), Voice::default()), None);
}

/// ¼ in: common practice, no source.
#[test]
fn a_wick_is_trimmed_to_a_quarter_of_an_inch() {
    let limits = Limits::default();
    let quarter = super::candle::read::<potside::quantity::Length>("0.25 in");
    assert_eq!(limits.trim, quarter);
    assert_eq!(
        trim_first(&limits, Voice::default()),
        "Trim the wick to 0.25 in before you light it, and take the snippet out of the wax."
    );
    let other = Limits { trim: super::candle::read("5 mm"), ..limits };
    assert!(trim_first(&other, Voice::default()).starts_with("Trim the wick to 5 mm before"));
}

/// By hand: burns of two hours that lose 11.9 g and 12.1 g are 6 g an hour; each of the four weighings is 0.05 g from the
/// line, squares 0.01, one degree of freedom, so ± 12.706 × √(0.01 ÷ 4) = 0.635: 180 g last 30 h, 27.1 to 33.6. With 10 g and
/// 14 g it is ± 12.7, more than the rate: only the least, 180 ÷ 18.706 = 9.6 h, is told.
#[test]
fn a_life_has_its_range_or_only_its_least() {
    let voice = Voice::default();
    let of = |lost: &[f64]| life(&trial("A1", "C 10"), &rate(&burned(lost), voice).unwrap()).unwrap();
    let near = |got: f64, wanted: f64| assert!((got - wanted).abs() < 1e-3, "{got}, not {wanted}");
    let told = of(&[11.9, 12.1]);
    let (least, most) = told.range.unwrap();
    near(told.hours, 30.0);
    near(least, 27.1276);
    near(most.unwrap(), 33.5527);
    assert_eq!(told.say(voice), "It lasts about 30 h, 27 to 34.");
    let vague = of(&[10.0, 14.0]);
    let (least, most) = vague.range.unwrap();
    near(least, 9.6225);
    assert_eq!(most, None);
    assert_eq!(vague.say(voice), "It lasts about 30 h, at least 10.");
}
