//! When the pot comes to each temperature that matters, told from its readings.

use super::chart::Chart;
use super::chill::step;
use super::curve::Curve;
use super::misses::span;
use super::{Air, Note, Run, StepKey, Wants};
use crate::formula::TemperatureRange;
use crate::heat::Until;
use crate::quantity::{Temperature, Voice, Why, show};

/// The sound comes this long before, s.
const SOON: f64 = 30.0;
/// What takes longer is not told by the minute, s.
const LONG: f64 = 10.0 * 3600.0;
/// Parts that are told ahead.
const AHEAD: usize = 2;

/// What the readings foretell.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Foretold {
    pub gates: Vec<Gate>,
    /// What to know of the readings, or why nothing is foretold.
    pub notes: Vec<Note>,
    /// `Room 72 °F, assumed`.
    pub room: String,
    /// What comes within half a minute: time for the sound.
    pub soon: Option<String>,
    pub chart: Option<Chart>,
    /// How the times came about.
    pub why: Option<Why>,
}

/// A range of temperature that something is to be done in.
#[derive(Clone, PartialEq, Debug)]
pub struct Gate {
    /// `Add Fig leaf`, `Pour`.
    pub name: String,
    /// `175–180 °F`.
    pub range: String,
    /// `in 4 to 7 min; too cool in 12 to 20 min`; where the readings do not tell it closer, `in about 5 min (2 to 14)`.
    pub when: String,
}

/// How a time of day is said, from milliseconds since 1970: only the browser knows.
pub type Clock = fn(u64) -> String;

impl Run {
    /// What its readings tell of the gates of a pour still ahead, at a step after the melt. None where there is none of
    /// them or no reading.
    pub fn foretold(&self, pour: u32, now: u64, air: Air, voice: Voice, clock: Clock) -> Option<Foretold> {
        self.done(StepKey::Melt { pour })?;
        let ahead = self.ahead(pour);
        if ahead.is_empty() {
            return None;
        }
        let room = ["Room ", &air.say(voice)].concat();
        let curve = match Curve::of(self, pour, air, voice)? {
            Ok(curve) => curve,
            Err(why) => {
                return Some(Foretold { notes: vec![Note::remark(why)], room, ..Foretold::default() });
            }
        };
        let at = curve.seconds(now);
        let until = |t: Temperature| curve.cooling.until(t.in_celsius().to_f64(), at);
        let degrees =
            |t: Temperature| show(t, voice.temperature, Some(step(voice)), voice.locale).to_string();
        let mut soon = None;
        let gates: Vec<Gate> = ahead
            .iter()
            .map(|(name, range)| {
                let (high, low) = (until(range.high.value), until(range.low.value));
                soon = soon.take().or_else(|| match (high, low) {
                    (Until::Within { likely, .. }, _) if likely <= SOON => {
                        Some(format!("Nearly at {}: {}.", degrees(range.high.value), small(name)))
                    }
                    (Until::Past, Until::Within { likely, .. }) if likely <= SOON => {
                        Some(format!("Nearly down to {}: {} now.", degrees(range.low.value), small(name)))
                    }
                    _ => None,
                });
                Gate { name: name.clone(), range: span(range, voice), when: when(high, low) }
            })
            .collect();
        let mut notes = Vec::new();
        if let Some((at, t)) = curve.odd.and_then(|odd| curve.readings.get(odd)) {
            notes.push(Note::remark(format!(
                "The reading of {} at {} does not fit the others; it is left out.",
                voice.amount(*t, voice.temperature),
                clock(*at)
            )));
        }
        if !curve.fits {
            notes.push(Note::remark(
                "The readings do not follow one curve: was it stirred late, is the heater on, or was one misread? Do not \
                 rely on these times; stir and read again.",
            ));
        }
        let room = match curve.room().filter(|_| curve.found) {
            Some(room) => format!("Room {}, told by the readings", degrees(room)),
            None => room,
        };
        let chart = Chart::of(&curve, now, &ahead, &gates, voice, clock);
        let why = Some(curve.why(&gates, at, voice));
        Some(Foretold { gates, notes, room, soon, chart, why })
    }

    /// What is still to be done at a temperature, in its order: the next parts, those of one range together, and the pour.
    fn ahead(&self, pour: u32) -> Vec<(String, TemperatureRange)> {
        let mut parts: Vec<(String, TemperatureRange)> = Vec::new();
        for key in self.before_vessels(pour).into_iter().filter(|key| self.done(*key).is_none()) {
            let (StepKey::Add { line, .. } | StepKey::TopUp { line, .. }) = key else { continue };
            let (Some(Wants::Within(range)), Some(line)) = (self.wants(key), self.line(pour, line)) else {
                continue;
            };
            match parts.iter_mut().find(|(_, r)| same(r, &range)) {
                Some((name, _)) => {
                    name.push_str(", ");
                    name.push_str(&line.name);
                }
                None => parts.push((["Add ", &line.name].concat(), range)),
            }
        }
        parts.truncate(AHEAD);
        if !self.unfilled(pour).is_empty() {
            parts.push(("Pour".to_owned(), self.plan.pour.clone()));
        }
        parts
    }
}

fn same(a: &TemperatureRange, b: &TemperatureRange) -> bool {
    a.low.value == b.low.value && a.high.value == b.high.value
}

/// Within a sentence: `add Fig leaf`.
fn small(name: &str) -> String {
    match name.strip_prefix("Add ") {
        Some(what) => ["add ", what].concat(),
        None => "pour".to_owned(),
    }
}

/// Of a range that the pot comes down through.
fn when(high: Until, low: Until) -> String {
    match (high, low) {
        (Until::Never, _) => "not in a room this warm".to_owned(),
        (Until::Past, Until::Past) => "too cool: warm the pot".to_owned(),
        (high, low) => {
            let first = minutes(high).unwrap_or_else(|| "now".to_owned());
            minutes(low).map_or(first.clone(), |last| [&first, "; too cool ", &last].concat())
        }
    }
}

/// A time ahead in whole minutes that hold it; with the likeliest of them where they are far apart.
fn minutes(until: Until) -> Option<String> {
    let Until::Within { soonest, likely, latest } = until else { return None };
    let whole = |seconds: f64| seconds.max(0.0) as u32 / 60;
    let (low, about) = (whole(soonest), whole(likely + 30.0));
    let high = latest.filter(|latest| *latest < LONG).map(|latest| whole(latest + 59.0));
    Some(match high {
        _ if likely >= LONG => "in many hours".to_owned(),
        None => format!("in about {about} min ({low} or more)"),
        Some(high) if high <= 1 => "within a minute".to_owned(),
        Some(high) if low == 0 && high <= 4 => format!("within {high} min"),
        Some(high) if high > 2 * low + 4 => format!("in about {about} min ({low} to {high})"),
        Some(high) => format!("in {low} to {high} min"),
    })
}
