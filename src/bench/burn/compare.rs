//! Two wicks at equal conditions: does one burn faster, or can it not be told yet?
//!
//! The burns of one candle are alike, and a wick does not change within a candle: what differs from candle to candle is
//! what two wicks are told apart by, and more burns of the same candle do not help. So each candle counts once, with the
//! mean of its burns. Where all were burned as often it is the mixed model with the candle as a random effect.

use super::rate::{CONFIDENCE, own_rate, per_hour};
use super::{Course, Trial, WickSeries};
use crate::bench::freezing::decimal_of;
use crate::quantity::{Voice, Why};
use crate::student::student;

/// A difference in burn rate smaller than this share of the mean is none that a candle would show (our own choice).
const MATTERS: f64 = 0.1;
/// More candles than this are not asked for (our own choice).
const MOST: u32 = 12;

/// What two sets of candles tell of each other.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Told {
    /// One is faster; the range does not reach zero.
    Differs,
    /// Within what matters of each other.
    Alike,
    /// So many more candles of each would tell. None where it would take very many.
    NotYet { more: Option<u32> },
}

/// The second wick's burn rate less the first's.
#[derive(Clone, PartialEq, Debug)]
pub struct Compared {
    /// g an hour, and so far to either side, 19 times out of 20; none with fewer than three candles in all.
    pub difference: f64,
    pub half: Option<f64>,
    pub told: Told,
    pub why: Why,
}

/// The candles' mean rates of each, compared by Student's test with one spread for both. None where one has no burn weighed
/// at both ends.
pub fn compare(a: &[(&Trial, &Course)], b: &[(&Trial, &Course)], voice: Voice) -> Option<Compared> {
    let [said_a, said_b] = [a, b].map(counts);
    let (a, b) = (rates(a), rates(b));
    let (first, second) = (mean(&a)?, mean(&b)?);
    let difference = second - first;
    let (m, n) = (a.len() as f64, b.len() as f64);
    let freedom = u32::try_from(a.len() + b.len() - 2).ok()?;
    let squares = off(&a, first) + off(&b, second);
    let spread = (freedom > 0).then(|| (squares / f64::from(freedom)).sqrt());
    let reach = |spread: f64, more: u32| {
        let each = f64::from(more);
        spread * (1.0 / (m + each) + 1.0 / (n + each)).sqrt() * student(CONFIDENCE, freedom + 2 * more)
    };
    let half = spread.map(|s| reach(s, 0));
    let matters = MATTERS * 0.5 * (first + second).abs();
    let told = match (spread, half) {
        (Some(_), Some(half)) if difference.abs() > half => Told::Differs,
        (Some(_), Some(half)) if difference.abs() + half <= matters => Told::Alike,
        (Some(spread), Some(_)) => {
            // Enough for a difference of this size, or one that matters, to be told from none.
            let wanted = difference.abs().max(0.5 * matters);
            Told::NotYet { more: (1..=MOST).find(|more| reach(spread, *more) < wanted) }
        }
        _ => Told::NotYet { more: Some(1) },
    };
    let mut why = Why::new(
        "Difference in burn rate",
        "mean of the second − mean of the first",
        per_hour(difference, voice),
    )
    .with("first", [&per_hour(first, voice), ", ", &said_a].concat())
    .with("second", [&per_hour(second, voice), ", ", &said_b].concat())
    .from("Student's test with one spread for both. Each candle counts once, with the mean of its burns: burn several of each.");
    if let (Some(spread), Some(half)) = (spread, half) {
        why = why
            .with("spread of a candle", per_hour(spread, voice))
            .with("range", ["± ", &per_hour(half, voice)].concat());
    }
    Some(Compared { difference, half, told, why })
}

/// Each wick's candles against those of the wick before it that was weighed, in words; `series` has the order of sizes.
pub fn side_by_side(
    wicks: &[(&str, Vec<(&Trial, &Course)>)],
    series: Option<&WickSeries>,
    voice: Voice,
) -> Vec<(String, Why)> {
    let weighed: Vec<_> = wicks.iter().filter(|(_, of)| !rates(of).is_empty()).collect();
    let mut told = Vec::new();
    for ((first, a), (second, b)) in weighed.iter().zip(weighed.iter().skip(1)) {
        let Some(found) = compare(a, b, voice) else { continue };
        let mut said = found.say(first, second, voice);
        let places = series.and_then(|s| s.place(first).zip(s.place(second)));
        if found.told == Told::Differs && found.difference < 0.0 && places.is_some_and(|(a, b)| a < b) {
            said.push_str(
                " A larger wick mostly burns faster: check the marks, the trims and the order of the series.",
            );
        }
        told.push((said, found.why));
    }
    told
}

/// The rate of each burn that is weighed at both ends.
fn burns(trial: &Trial, course: &Course) -> Vec<f64> {
    let start = trial.start.value.in_base().to_f64();
    course.sessions.iter().filter_map(|s| own_rate(s, start)).map(|(_, rate)| rate).collect()
}

/// The mean rate of each candle.
pub(super) fn rates(of: &[(&Trial, &Course)]) -> Vec<f64> {
    of.iter().filter_map(|(trial, course)| mean(&burns(trial, course))).collect()
}

/// `6 burns of 2 candles`.
pub(super) fn counts(of: &[(&Trial, &Course)]) -> String {
    let (all, candles): (usize, usize) =
        (of.iter().map(|(trial, course)| burns(trial, course).len()).sum(), rates(of).len());
    let burns = if all == 1 { " burn of " } else { " burns of " };
    let of = if candles == 1 { " candle" } else { " candles" };
    [&all.to_string(), burns, &candles.to_string(), of].concat()
}

pub(super) fn mean(of: &[f64]) -> Option<f64> {
    (!of.is_empty()).then(|| of.iter().sum::<f64>() / of.len() as f64)
}

fn off(of: &[f64], mean: f64) -> f64 {
    of.iter().map(|x| (x - mean) * (x - mean)).sum()
}

impl Compared {
    /// `first` and `second` are the wicks' names.
    pub fn say(&self, first: &str, second: &str, voice: Voice) -> String {
        let size = per_hour(self.difference.abs(), voice);
        let range = self.half.map(|h| [" (give or take ", &decimal_of(h, 2, voice), ")"].concat());
        let range = range.unwrap_or_default();
        match self.told {
            Told::Differs => {
                let word = if self.difference > 0.0 { " faster than " } else { " slower than " };
                [second, " burns ", &size, &range, word, first, "."].concat()
            }
            Told::Alike => [first, " and ", second, " burn alike."].concat(),
            Told::NotYet { more } => {
                let wanted = match more {
                    Some(1) => "one more candle of each may tell.".to_owned(),
                    Some(more) => ["about ", &more.to_string(), " more candles of each would tell."].concat(),
                    None => "it would take very many candles; they may well be alike.".to_owned(),
                };
                ["Whether ", second, " burns faster or slower than ", first, " cannot be told yet: ", &wanted]
                    .concat()
            }
        }
    }
}
