//! The picture of the pot cooling: where everything stands in it, in its own units.

use super::chill::{celsius, step};
use super::curve::Curve;
use super::gates::{Clock, Gate};
use crate::formula::TemperatureRange;
use crate::heat::Until;
use crate::quantity::{Exact, Quantity, Temperature, TemperatureUnit, Voice, show};
use crate::sort;

/// Its whole size, and what the words below it take.
pub const WIDE: i32 = 480;
pub const HIGH: i32 = 240;
const BELOW: i32 = 24;
/// Between the lines of words that would lie on each other.
const LINE: i32 = 18;
/// What a time of day takes, with "now" beside it.
const ROOM: i32 = 110;
/// Points of the curve.
const POINTS: u32 = 32;
/// From the first reading, the least and the most time that is shown, s; and of it the share past the last gate.
const LEAST: f64 = 10.0 * 60.0;
const MOST: f64 = 3.0 * 3600.0;
const PAST: f64 = 1.1;

/// In units of which it is [`WIDE`] across and [`HIGH`] down, from the top left.
#[derive(Clone, PartialEq, Debug)]
pub struct Chart {
    /// The readings; true of the one that is left out of the curve.
    pub dots: Vec<(i32, i32, bool)>,
    /// The curve, and the band that holds it 19 times out of 20, as paths.
    pub curve: String,
    pub band: String,
    /// From the top down so many units, and how high: the gates.
    pub strips: Vec<(i32, i32)>,
    pub words: Vec<Words>,
    /// A line for now, as a path.
    pub at: String,
    /// The picture in a sentence.
    pub said: String,
}

/// Words at a place, which is their "start", "middle" or "end".
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Words {
    pub x: i32,
    pub y: i32,
    pub anchor: &'static str,
    pub text: String,
}

/// What is shown: times from the first reading in s, temperatures in °C.
struct Frame {
    end: f64,
    cold: f64,
    hot: f64,
}

impl Frame {
    fn x(&self, seconds: f64) -> i32 {
        (seconds / self.end * f64::from(WIDE)).clamp(0.0, f64::from(WIDE)).round() as i32
    }

    fn y(&self, celsius: f64) -> i32 {
        let down = f64::from(HIGH - BELOW);
        ((self.hot - celsius) / (self.hot - self.cold) * down).clamp(0.0, down).round() as i32
    }
}

impl Chart {
    /// None where there is nothing to see.
    pub(super) fn of(
        curve: &Curve,
        now: u64,
        ahead: &[(String, TemperatureRange)],
        gates: &[Gate],
        voice: Voice,
        clock: Clock,
    ) -> Option<Self> {
        let here = curve.seconds(now).max(0.0);
        let frame = frame(curve, here, ahead)?;
        let seen = curve.readings.iter().map(|(at, t)| (curve.seconds(*at), t.in_celsius().to_f64()));
        let dots = seen
            .enumerate()
            .map(|(index, (s, t))| (frame.x(s), frame.y(t), curve.odd == Some(index)))
            .collect();
        let (line, band) = paths(curve, &frame);
        let strips: Vec<(i32, i32)> = ahead
            .iter()
            .map(|(_, range)| {
                let (top, foot) = (frame.y(of(range.high.value)), frame.y(of(range.low.value)));
                (top, (foot - top).max(1))
            })
            .collect();
        let first = curve.readings.first().map_or(now, |(at, _)| *at);
        let last = first.saturating_add((frame.end * 1000.0) as u64);
        let now = frame.x(here);
        let mut words = names(&strips, gates);
        let mut foot = |x, anchor, text| words.push(Words { x, y: HIGH - 5, anchor, text });
        foot(now.clamp(ROOM / 4, WIDE - ROOM / 4), "middle", "now".to_owned());
        if now > ROOM {
            foot(0, "start", clock(first));
        }
        if now < WIDE - ROOM {
            foot(WIDE, "end", clock(last));
        }
        Some(Self {
            dots,
            curve: line,
            band,
            strips,
            words,
            at: ["M", &now.to_string(), " 0V", &(HIGH - BELOW).to_string()].concat(),
            said: said(curve, gates, here, voice),
        })
    }
}

impl Chart {
    /// A log as it was read, with what is reckoned for the same times as a curve: pairs of s and °C, the first ones from
    /// the top. `said` is the picture in a sentence. None where there is nothing to see.
    pub fn over(read: &[(f64, f64)], reckoned: &[(f64, f64)], said: String, voice: Voice) -> Option<Self> {
        let all = || read.iter().chain(reckoned);
        let end = all().map(|(s, _)| *s).fold(0.0, f64::max);
        let (cold, hot) = all().fold((f64::MAX, f64::MIN), |(a, b), (_, t)| (a.min(*t), b.max(*t)));
        if end <= 0.0 || cold >= hot {
            return None;
        }
        let frame = Frame { end, cold: cold - 1.0, hot: hot + 1.0 };
        let mut curve = String::new();
        for (s, t) in reckoned {
            to(&mut curve, frame.x(*s), frame.y(*t));
        }
        let degrees = |c: f64| {
            let t = Temperature::of(Exact::near(c)?, TemperatureUnit::Celsius);
            Some(show(t, voice.temperature, Some(Exact::ONE), voice.locale).to_string())
        };
        let mut words = Vec::new();
        for (t, y) in [(hot, LINE), (cold, HIGH - BELOW - 6)] {
            let text = degrees(t)?;
            words.push(Words {
                x: if t == hot { WIDE } else { 0 },
                y,
                anchor: if t == hot { "end" } else { "start" },
                text,
            });
        }
        let minutes = [&((end / 60.0).round() as u64).to_string(), " min"].concat();
        words.push(Words { x: 0, y: HIGH - 5, anchor: "start", text: "the pour".to_owned() });
        words.push(Words { x: WIDE, y: HIGH - 5, anchor: "end", text: minutes });
        Some(Self {
            dots: read.iter().map(|(s, t)| (frame.x(*s), frame.y(*t), false)).collect(),
            curve,
            band: String::new(),
            strips: Vec::new(),
            words,
            at: String::new(),
            said,
        })
    }
}

fn of(t: Temperature) -> f64 {
    t.in_celsius().to_f64()
}

/// All readings, all gates that are not too far off, and now.
fn frame(curve: &Curve, here: f64, ahead: &[(String, TemperatureRange)]) -> Option<Frame> {
    let reach = |range: &TemperatureRange| match curve.cooling.until(of(range.low.value), here) {
        Until::Within { likely, .. } => here + likely,
        Until::Past | Until::Never => here,
    };
    let last = ahead.iter().map(|(_, range)| reach(range)).fold(here, f64::max);
    let ends = ahead.iter().flat_map(|(_, range)| [range.low.value, range.high.value]);
    let all: Vec<f64> = curve.readings.iter().map(|(_, t)| *t).chain(ends).map(of).collect();
    let (cold, hot) = all.iter().fold((f64::MAX, f64::MIN), |(a, b), t| (a.min(*t), b.max(*t)));
    let end = (last * PAST).clamp(LEAST, MOST.max(here));
    (end.is_finite() && cold < hot).then_some(Frame { end, cold: cold - 1.0, hot: hot + 1.0 })
}

/// The curve until it leaves at the bottom, and its band.
fn paths(curve: &Curve, frame: &Frame) -> (String, String) {
    let (mut line, mut upper, mut lower) = (String::new(), String::new(), Vec::new());
    for point in 0..=POINTS {
        let seconds = frame.end * f64::from(point) / f64::from(POINTS);
        let band = curve.cooling.at(seconds);
        let x = frame.x(seconds);
        if band.likely >= frame.cold {
            to(&mut line, x, frame.y(band.likely));
        }
        if band.high >= frame.cold {
            to(&mut upper, x, frame.y(band.high));
            lower.push((x, frame.y(band.low)));
        }
    }
    for (x, y) in lower.into_iter().rev() {
        to(&mut upper, x, y);
    }
    upper.push('Z');
    (line, upper)
}

pub(crate) fn to(path: &mut String, x: i32, y: i32) {
    path.push(if path.is_empty() { 'M' } else { 'L' });
    path.push_str(&x.to_string());
    path.push(' ');
    path.push_str(&y.to_string());
}

/// The names of the gates in their strips, on the side that the curve is not on, none on another.
fn names(strips: &[(i32, i32)], gates: &[Gate]) -> Vec<Words> {
    let mut words: Vec<Words> = strips
        .iter()
        .zip(gates)
        .map(|((top, height), gate)| {
            let (x, anchor) = if 2 * top + height < HIGH { (WIDE - 6, "end") } else { (6, "start") };
            let text = [&gate.name, ", ", &gate.range].concat();
            Words { x, y: (top + height / 2 + 6).max(LINE), anchor, text }
        })
        .collect();
    sort::by(&mut words, |a, b| a.y.cmp(&b.y));
    let mut foot = i32::MIN / 2;
    for word in &mut words {
        word.y = word.y.max(foot + LINE);
        foot = word.y;
    }
    words
}

fn said(curve: &Curve, gates: &[Gate], here: f64, voice: Voice) -> String {
    let degrees = celsius(curve.cooling.at(here).likely)
        .map(|t| show(t, voice.temperature, Some(step(voice)), voice.locale).to_string())
        .unwrap_or_default();
    let mut said =
        format!("Picture of {} readings and the curve through them, now at {degrees}.", curve.readings.len());
    for gate in gates {
        said.push_str(&[" ", &gate.name, ", ", &gate.range, ": ", &gate.when, "."].concat());
    }
    said
}
