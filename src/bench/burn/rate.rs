//! How fast a candle burns, how long it will last, and whether it slows on the way down.

use super::{Course, Line, Session, Trial, least_squares};
use crate::bench::freezing::decimal_of;
use crate::quantity::{Voice, Why};
use crate::student::student;

/// Of every range.
pub(super) const CONFIDENCE: f64 = 0.975;
/// A shorter burn has no rate of its own: the scale's error is as large as what burned, h (our own choice).
const SHORT: f64 = 0.25;

/// Grams an hour.
#[derive(Clone, PartialEq, Debug)]
pub struct Rate {
    pub grams: f64,
    /// So far to either side, 19 times out of 20. None where two weighings a burn of one burn are all there is.
    pub half: Option<f64>,
    pub burns: usize,
    pub why: Why,
}

/// The common slope of grams on hours, each burn with a level of its own: what the candle loses between two burns, as at a
/// trim, is not counted. None before a burn was weighed at both ends, or where all of them together are too short to tell.
pub fn rate(course: &Course, voice: Voice) -> Option<Rate> {
    let weighed: Vec<Vec<(f64, f64)>> =
        course.sessions.iter().map(Session::weighings).filter(|w| w.len() > 1).collect();
    let hours: f64 = weighed.iter().filter_map(|w| w.last()).map(|(hours, _)| hours).sum();
    let line = slope(&weighed).filter(|_| hours >= SHORT)?;
    let (grams, error) = (*line.values.first()?, *line.errors.first()?);
    let half = (line.freedom > 0).then(|| error * student(CONFIDENCE, line.freedom));
    let count: usize = weighed.iter().map(Vec::len).sum();
    let mut why = Why::new(
        "Burn rate",
        "grams lost = rate × hours, fitted through all burns, each from its own start",
        per_hour(grams, voice),
    )
    .with("burns", weighed.len().to_string())
    .with("weighings", count.to_string())
    .from("Least squares with a level for each burn; the range is Student's, 19 times out of 20.");
    why = match half {
        Some(half) => {
            let spread = (line.squares / f64::from(line.freedom)).sqrt();
            why.with("what a weighing strays", [&decimal_of(spread, 2, voice), " g"].concat())
                .with("degrees of freedom", line.freedom.to_string())
                .with("range", ["± ", &per_hour(half, voice)].concat())
        }
        None => why.with("range", "one burn alone tells none"),
    };
    Some(Rate { grams, half, burns: weighed.len(), why })
}

/// Hours lost to grams: the first value is the rate, then follows the level of each burn.
fn slope(weighed: &[Vec<(f64, f64)>]) -> Option<Line> {
    let mut columns = vec![Vec::new(); weighed.len() + 1];
    let mut grams = Vec::new();
    for (burn, weighings) in weighed.iter().enumerate() {
        for (hours, mass) in weighings {
            for (place, column) in columns.iter_mut().enumerate() {
                column.push(match place.checked_sub(1) {
                    None => -hours,
                    Some(other) if other == burn => 1.0,
                    Some(_) => 0.0,
                });
            }
            grams.push(*mass);
        }
    }
    least_squares(&columns, &grams)
}

/// `5.4 g an hour`.
pub(super) fn per_hour(grams: f64, voice: Voice) -> String {
    [&decimal_of(grams, 2, voice), " g an hour"].concat()
}

impl Rate {
    pub fn say(&self, voice: Voice) -> String {
        let rate = per_hour(self.grams, voice);
        match self.half {
            Some(half) => [&rate, ", give or take ", &decimal_of(half, 2, voice)].concat(),
            None => [&rate, ", from one burn"].concat(),
        }
    }
}

/// Grams an hour of a paraffin taper: 0.1 g a minute, at some 80 W ("Characterization of Candle Flames", J. Fire Prot. Eng. 15
/// (2005) 265–285, as it is quoted by others); five kinds of pillar candle burned 4.4 to 7.3 ("Emissions of ultrafine particles
/// from five types of candles during steady burn conditions", Indoor Air 2021). A wick is slower than a quarter of that, or
/// faster than four times, where something was weighed or timed wrongly, or there are several (our own choice).
const USUAL: f64 = 6.0;
const APART: f64 = 4.0;

/// The sentence where a burn was such as hardly any candle burns.
pub fn odd(trial: &Trial, course: &Course, voice: Voice) -> Option<String> {
    let start = trial.start.value.in_base().to_f64();
    let mut rates = course.sessions.iter().filter_map(|s| own_rate(s, start)).map(|(_, rate)| rate);
    let odd = rates.find(|rate| *rate < USUAL / APART || *rate > USUAL * APART)?;
    let usual =
        [" is far from the ", &per_hour(USUAL, voice), " that were measured of a paraffin taper: "].concat();
    Some(["A burn of ", &per_hour(odd, voice), &usual, "check its weights and times."].concat())
}

/// Hours from the first light to the last of the wax.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Life {
    pub hours: f64,
    /// The least and the most; the most is none where the rate is not told so well.
    pub range: Option<(f64, Option<f64>)>,
}

/// The fill through the rate. None where it does not burn down.
pub fn life(trial: &Trial, rate: &Rate) -> Option<Life> {
    let fill = trial.fill.value.in_base().to_f64();
    let range =
        |half: f64| (fill / (rate.grams + half), (rate.grams > half).then(|| fill / (rate.grams - half)));
    (rate.grams > 0.0).then(|| Life { hours: fill / rate.grams, range: rate.half.map(range) })
}

impl Life {
    pub fn say(self, voice: Voice) -> String {
        let whole = |hours: f64| decimal_of(hours, 0, voice);
        let range = match self.range {
            Some((least, Some(most))) => [", ", &whole(least), " to ", &whole(most)].concat(),
            Some((least, None)) => [", at least ", &whole(least)].concat(),
            None => String::new(),
        };
        ["It lasts about ", &whole(self.hours), " h", &range, "."].concat()
    }
}

/// How the rate changes on the way down.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Trend {
    /// Grams an hour more for each 100 g burned; less where negative.
    pub change: f64,
    /// So far to either side, 19 times out of 20.
    pub half: f64,
}

/// The line through each burn's own rate against what had burned by its middle. None before the third burn.
pub fn trend(trial: &Trial, course: &Course) -> Option<Trend> {
    let start = trial.start.value.in_base().to_f64();
    let (mut burned, mut rates) = (Vec::new(), Vec::new());
    for (gone, rate) in course.sessions.iter().filter_map(|s| own_rate(s, start)) {
        burned.push(gone / 100.0);
        rates.push(rate);
    }
    let line = least_squares(&[vec![1.0; rates.len()], burned], &rates).filter(|l| l.freedom > 0)?;
    Some(Trend {
        change: *line.values.get(1)?,
        half: line.errors.get(1)? * student(CONFIDENCE, line.freedom),
    })
}

impl Trend {
    pub fn say(self, voice: Voice) -> String {
        let size = per_hour(self.change.abs(), voice);
        match (self.change.abs() > self.half, self.change > 0.0) {
            (false, _) => "No change told between the top and here.".to_owned(),
            (true, true) => ["It burns faster on the way down: ", &size, " more for each 100 g."].concat(),
            (true, false) => ["It burns slower on the way down: ", &size, " less for each 100 g."].concat(),
        }
    }
}

/// Grams burned by the middle of a burn, and its own rate. None where it was not weighed at both ends or was short.
pub(super) fn own_rate(session: &Session, start: f64) -> Option<(f64, f64)> {
    let (hours, after) = session.weighings().last().copied().filter(|(hours, _)| *hours >= SHORT)?;
    let before = session.mass.in_base().to_f64();
    Some((start - 0.5 * (before + after), (before - after) / hours))
}
