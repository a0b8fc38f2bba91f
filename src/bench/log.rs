//! A cooling log as it is written down: a reading on each line, minutes since the pour and the temperature.

use crate::heat::{Reading, Setup};
use crate::pot::Chart;
use crate::quantity::Quantity;
use crate::quantity::{Exact, Temperature, TemperatureUnit, Unit, Voice, decimal, read, read_count};

/// More readings than one vessel gives in a day.
const MOST: usize = 500;

/// Reads it. Empty lines are passed over; a temperature without a unit is in the person's own.
///
/// # Errors
/// A sentence for the first line that cannot be read, and where there are too few lines or too many.
pub fn read_log(text: &str, voice: Voice) -> Result<Vec<Reading>, String> {
    let mut log: Vec<Reading> = Vec::new();
    for (at, line) in text.lines().enumerate().filter(|(_, l)| !l.trim().is_empty()) {
        let says = |why: String| ["Line ", &(at + 1).to_string(), ": ", &why].concat();
        let Some((minutes, temperature)) = line.trim().split_once([' ', '\t', ';']) else {
            return Err(says("type the minutes, a space, and the temperature, like 20 150.".to_owned()));
        };
        // At the pour itself: no count, but a time.
        let minutes = if minutes == "0" { Ok(0) } else { read_count(minutes, voice.locale) };
        let minutes = minutes.map_err(|e| says(e.to_string()))?;
        let at = read::<Temperature>(temperature.trim(), voice.temperature, voice.locale);
        let at = at.map_err(|e| says(e.to_string()))?.value;
        let reading =
            Reading { seconds: 60.0 * f64::from(minutes), celsius: at.to(TemperatureUnit::Celsius).to_f64() };
        if log.last().is_some_and(|last| last.seconds >= reading.seconds) {
            return Err(says("the minutes have to go up from line to line.".to_owned()));
        }
        log.push(reading);
    }
    match log.len() {
        0..3 => Err("Type at least three readings, one on each line.".to_owned()),
        n if n > MOST => Err("That is more than one vessel gives in a day. Type every tenth.".to_owned()),
        _ => Ok(log),
    }
}

/// Writes it as [`read_log`] reads it, whatever is the unit of the one who reads: to a tenth of a degree of this voice.
pub fn write_log(log: &[Reading], voice: Voice) -> String {
    lines(log, voice, Exact::ratio(1, 10))
}

/// The first line of a kept log whose thermometer hung by the wall.
const BY_WALL: &str = "wall\n";

/// As it is kept: in °C with a point, so fine that it comes back in °F as it was read there to a tenth.
pub fn keep_log(log: &[Reading], hung: Hung) -> String {
    let head = if hung == Hung::Wall { BY_WALL } else { "" };
    [head, &lines(log, Voice::default(), Exact::ratio(1, 1000))].concat()
}

/// What [`keep_log`] kept; none where it is no such log.
pub fn kept_log(text: &str) -> Option<(Vec<Reading>, Hung)> {
    let (text, hung) = text.strip_prefix(BY_WALL).map_or((text, Hung::Middle), |rest| (rest, Hung::Wall));
    Some((read_log(text, Voice::default()).ok()?, hung))
}

fn lines(log: &[Reading], voice: Voice, step: Exact) -> String {
    let mut out = String::new();
    for r in log {
        let t = Temperature::of(Exact::near(r.celsius).unwrap_or_default(), TemperatureUnit::Celsius);
        let degrees = decimal(t.to(voice.temperature).round_to(step), step, voice.locale);
        let minutes = ((r.seconds / 60.0).round().max(0.0) as u32).to_string();
        out.push_str(&[&minutes, " ", &degrees, " ", voice.temperature.symbol(), "\n"].concat());
    }
    out
}

/// The readings over the curve that is reckoned: °C at the same times.
pub fn log_chart(log: &[Reading], reckoned: &[f32], voice: Voice) -> Option<Chart> {
    let read: Vec<_> = log.iter().map(|r| (r.seconds, r.celsius)).collect();
    let curve: Vec<_> = log.iter().zip(reckoned).map(|(r, t)| (r.seconds, f64::from(*t))).collect();
    let said = ["Picture of ", &log.len().to_string(), " readings over the curve that is reckoned."].concat();
    Chart::over(&read, &curve, said, voice)
}

/// Where the thermometer hung.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Hung {
    /// In the middle, half way down.
    Middle,
    /// A finger's breadth from the wall, half way down.
    Wall,
}

impl Hung {
    /// m from the axis and m above the inside of the base.
    pub fn at(self, setup: &Setup) -> (f64, f64) {
        let r = match self {
            Self::Middle => 0.0,
            Self::Wall => (setup.shape.radius - 0.010).max(0.0),
        };
        (r, 0.5 * setup.shape.fill)
    }
}
