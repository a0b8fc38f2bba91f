//! Pictures of trials: the wax going down, the pool growing, wicks side by side.

use super::compare::{counts, mean, rates};
use super::rate::{CONFIDENCE, per_hour};
use super::{Course, Full, Pool, Rate, Trial, last_full, life, pool, usual_full};
use crate::bench::duration;
use crate::bench::freezing::decimal_of;
use crate::pot::{Chart, HIGH, WIDE, Words, to};
use crate::quantity::{Length, Mass, Voice};
use crate::student::student;

/// What the words below take, and those on top.
const BELOW: i32 = 24;
const ABOVE: i32 = 30;
/// Across, for a few words, as large as on a phone.
const ROOM: i32 = 160;
/// More wicks than this are not shown beside each other.
const WICKS: usize = 5;

/// Of the picture: from left to right and from the foot up, in their own units.
struct Frame {
    right: f64,
    top: f64,
}

impl Frame {
    fn at(&self, x: f64, y: f64) -> (i32, i32) {
        let (wide, high) = (f64::from(WIDE), f64::from(HIGH - BELOW - ABOVE));
        let x = (x / self.right * wide).clamp(0.0, wide);
        let down = ((1.0 - y / self.top) * high).clamp(0.0, high);
        (x.round() as i32, down.round() as i32 + ABOVE)
    }

    /// The words at the ends: on top, and below at both sides.
    fn words(&self, top: String, left: &str, right: String) -> Vec<Words> {
        let word = |x, y, anchor, text| Words { x, y, anchor, text };
        vec![
            word(0, ABOVE - 12, "start", top),
            word(0, HIGH - 5, "start", left.to_owned()),
            word(WIDE, HIGH - 5, "end", right),
        ]
    }
}

fn blank(said: String, words: Vec<Words>) -> Chart {
    Chart {
        dots: Vec::new(),
        curve: String::new(),
        band: String::new(),
        strips: Vec::new(),
        words,
        at: String::new(),
        said,
    }
}

/// The wax left against hours burned, each weighing a dot, with the way down to nothing at this rate. None before a burn was
/// weighed at both ends.
pub fn burn_curve(trial: &Trial, course: &Course, rate: &Rate, voice: Voice) -> Option<Chart> {
    let (start, fill) = (grams(trial.start.value), grams(trial.fill.value));
    let life = life(trial, rate)?;
    let mut points = Vec::new();
    let mut before = 0.0;
    for session in &course.sessions {
        let weighings = session.weighings();
        points.extend(weighings.iter().map(|(hours, mass)| (before + hours, fill - (start - mass))));
        before += weighings.last().map_or(0.0, |(hours, _)| *hours);
    }
    let frame = Frame { right: life.hours.max(before) * 1.02, top: fill };
    let mut curve = String::new();
    let mut dots = Vec::new();
    for (hours, left) in &points {
        let (x, y) = frame.at(*hours, *left);
        to(&mut curve, x, y);
        dots.push((x, y, false));
    }
    let mut ahead = String::new();
    if let Some((hours, left)) = points.last() {
        let (x, y) = frame.at(*hours, *left);
        to(&mut ahead, x, y);
        let (x, y) = frame.at(hours + left / rate.grams, 0.0);
        to(&mut ahead, x, y);
    }
    let wax = voice.amount(trial.fill.value, voice.mass);
    let hours = [&decimal_of(frame.right, 0, voice), " h"].concat();
    let said = [
        "Picture of the wax left against hours burned: ",
        &points.len().to_string(),
        " weighings, and the way down at ",
        &rate.say(voice),
        ".",
    ]
    .concat();
    let words = frame.words([&wax, " of wax"].concat(), "first light", hours);
    Some(Chart { dots, curve, at: ahead, ..blank(said, words) })
}

fn grams(mass: Mass) -> f64 {
    mass.in_base().to_f64()
}

/// Every burn's pool against time since its light, with the wall on top. None before a pool was measured.
pub fn pool_picture(trial: &Trial, course: &Course, voice: Voice) -> Option<Chart> {
    let pools: Vec<Pool> = course.sessions.iter().map(|s| pool(trial, s)).collect();
    let last = pools.iter().flat_map(|p| &p.seen).map(|(t, _)| *t).fold(0.0, f64::max);
    if last <= 0.0 {
        return None;
    }
    let wall = trial.diameter.value.in_base().to_f64();
    let frame = Frame { right: last.max(usual_full(trial)) * 1.02, top: wall * 1.05 };
    let (mut curve, mut dots) = (String::new(), Vec::new());
    for burn in &pools {
        let mut line = String::new();
        for (seconds, across) in &burn.seen {
            let (x, y) = frame.at(*seconds, *across);
            to(&mut line, x, y);
            dots.push((x, y, false));
        }
        curve.push_str(&line);
    }
    let (_, down) = frame.at(0.0, wall);
    let due = frame.at(usual_full(trial), 0.0).0.to_string();
    let across = voice.amount::<Length>(trial.diameter.value, voice.length);
    let mut words = frame.words(["wall, ", &across].concat(), "light", duration(frame.right));
    let usual = frame.at(usual_full(trial), 0.0).0.clamp(ROOM / 2, WIDE - ROOM / 2);
    // No words on others: the end of the picture gives way.
    if usual > WIDE - ROOM - ROOM / 2 {
        words.truncate(2);
    }
    words.push(Words { x: usual, y: HIGH - 5, anchor: "middle", text: "an hour an inch".to_owned() });
    let full = last_full(trial, course).map(Full::say).unwrap_or_default();
    let said = ["Picture of the melt pool across against time, ", &dots.len().to_string(), " looks. ", &full]
        .concat();
    Some(Chart {
        dots,
        curve,
        strips: vec![(down, 2)],
        at: ["M", &due, " ", &ABOVE.to_string(), "V", &(HIGH - BELOW).to_string()].concat(),
        ..blank(said, words)
    })
}

/// The burn rate of each wick, a dot with its range 19 times out of 20 where it was burned in several candles, one below
/// the other. None with fewer than two.
pub fn wicks_picture(wicks: &[(&str, Vec<(&Trial, &Course)>)], voice: Voice) -> Option<Chart> {
    let mut rows = Vec::new();
    for (wick, candles) in wicks {
        let rates = rates(candles);
        let Some(mean) = mean(&rates) else { continue };
        let freedom = u32::try_from(rates.len()).unwrap_or(1).saturating_sub(1);
        let squares: f64 = rates.iter().map(|r| (r - mean) * (r - mean)).sum();
        let half = (freedom > 0).then(|| {
            let error = (squares / f64::from(freedom) / rates.len() as f64).sqrt();
            error * student(CONFIDENCE, freedom)
        });
        rows.push((*wick, mean, half, counts(candles), rates.len()));
    }
    rows.truncate(WICKS);
    if rows.len() < 2 {
        return None;
    }
    let most =
        rows.iter().map(|(_, mean, half, ..)| mean + half.unwrap_or(0.0).min(*mean)).fold(0.0, f64::max);
    let frame = Frame { right: most * 1.05, top: 1.0 };
    let mut words = frame.words(String::new(), "0", per_hour(frame.right, voice));
    let (mut curve, mut dots, mut said) = (String::new(), Vec::new(), String::from("Picture of burn rates."));
    // Each wick has its words, and below them its dot.
    let row = (HIGH - BELOW) / i32::try_from(rows.len()).unwrap_or(1);
    for (place, (wick, mean, half, counts, number)) in (0..).zip(rows) {
        let foot = row * place + row;
        let y = foot - row / 4;
        let (x, _) = frame.at(mean, 0.0);
        let half = half.unwrap_or(0.0);
        let ends = [frame.at(mean - half, 0.0).0, frame.at(mean + half, 0.0).0];
        let mut bar = String::new();
        ends.into_iter().for_each(|x| to(&mut bar, x, y));
        curve.push_str(&bar);
        dots.push((x, y, false));
        let rate = [wick, ", ", &per_hour(mean, voice)].concat();
        said.push_str(&[" ", &rate, " (", &counts, ")."].concat());
        let of = if number == 1 { " candle" } else { " candles" };
        let text = [rate.as_str(), ", ", &number.to_string(), of].concat();
        words.push(Words { x: 0, y: y - 14, anchor: "start", text });
    }
    Some(Chart { dots, curve, ..blank(said, words) })
}
