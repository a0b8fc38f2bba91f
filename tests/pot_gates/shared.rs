//! A run before its fragrance, and what is told of it.

use crate::common::run::{FIG, go_on, run};
use potside::pot::{Air, Event, Foretold, Run, StepKey};
use potside::quantity::{Exact, MassUnit, Quantity, Temperature, TemperatureUnit, Voice};

pub(crate) const ADD_FIG: StepKey = StepKey::Add { pour: 0, line: FIG };
pub(crate) const MINUTE: u64 = 60_000;
/// When the first reading is taken.
pub(crate) const START: u64 = 1_000_000;

pub(crate) fn us() -> Voice {
    Voice { mass: MassUnit::Ounce, temperature: TemperatureUnit::Fahrenheit, ..Voice::default() }
}

pub(crate) fn fahrenheit(tenths: i128) -> Temperature {
    Temperature::of(Exact::ratio(tenths, 10), TemperatureUnit::Fahrenheit)
}

/// Minutes after the first reading, as the tests say them.
pub(crate) fn clock(at: u64) -> String {
    format!("{} min", at.saturating_sub(START) / MINUTE)
}

pub(crate) fn read(run: &mut Run, seconds: u64, tenths: i128) {
    run.take(Event::Read { temperature: fahrenheit(tenths), at: START + seconds * 1000, pour: None })
        .unwrap();
}

/// Where the fragrance (175–180 °F) is next and then the pour (168–175 °F), with readings in minutes and tenths of °F.
pub(crate) fn before_fig(readings: &[(u64, i128)]) -> Run {
    let mut run = run(4);
    go_on(&mut run, Some(ADD_FIG));
    readings.iter().for_each(|(minutes, tenths)| read(&mut run, minutes * 60, *tenths));
    run
}

pub(crate) fn at(run: &Run, seconds: u64) -> Option<Foretold> {
    run.foretold(0, START + seconds * 1000, Air::of(None, us()), us(), clock)
}

pub(crate) fn notes(told: &Foretold) -> Vec<&str> {
    told.notes.iter().map(|n| n.text.as_str()).collect()
}

/// The points of a path.
pub(crate) fn points(path: &str) -> Vec<(i32, i32)> {
    let pairs = path.split(['M', 'L', 'Z']).filter(|p| !p.is_empty());
    let point = |p: &str| p.split_once(' ').map(|(x, y)| (x.parse().unwrap(), y.parse().unwrap())).unwrap();
    pairs.map(point).collect()
}
