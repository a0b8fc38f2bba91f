//! Temperature ranges that were missed.

use super::fahrenheit;
use crate::common::run::{FIG, TAB, go_on, run};
use potside::pot::{Event, Run, StepKey};
use potside::quantity::{TemperatureUnit, Voice};

/// A step done at a temperature in °F, and what is said about it.
#[track_caller]
fn missed(run: &Run, step: StepKey, at: i128, expected: Option<&str>) {
    let voice = Voice { temperature: TemperatureUnit::Fahrenheit, ..Voice::default() };
    let said = run.miss(step, fahrenheit(at), voice);
    assert_eq!(said.is_some(), expected.is_some(), "{said:?}");
    if let (Some(said), Some(expected)) = (said, expected) {
        assert!(said.contains(expected), "{said}");
    }
}

#[test]
fn a_missed_range_says_what_it_means() {
    // What it means: common practice, no source. Ranges: common practice, no source.
    let run = run(4);
    let fig = StepKey::Add { pour: 0, line: FIG };
    missed(&run, fig, 175, None);
    missed(&run, fig, 180, None);
    missed(&run, fig, 174, Some("174 °F is cooler than the 175–180 °F wanted. Fragrance added too cool"));
    missed(&run, fig, 181, Some("loses more to the air, and comes nearer its flash point"));
    missed(&run, fig, 200, Some("at or above the flash point of “Fig leaf”"));
    missed(&run, StepKey::Melt { pour: 0 }, 199, Some("go on heating"));
    missed(&run, StepKey::Melt { pour: 0 }, 205, None);
    missed(&run, StepKey::Melt { pour: 0 }, 270, Some("above 130 °C (266 °F)"));
    missed(&run, StepKey::Gate { pour: 0 }, 160, Some("rough tops and lines"));
    missed(&run, StepKey::Gate { pour: 0 }, 176, Some("sinkholes and wet spots"));
    missed(&run, StepKey::Add { pour: 0, line: TAB }, 40, None);
    // Nothing goes in while it is stirred.
    missed(&run, StepKey::Stir { pour: 0, line: FIG }, 200, None);
}

#[test]
fn a_missed_step_can_still_be_done() {
    let mut run = run(1);
    let melt = StepKey::Melt { pour: 0 };
    go_on(&mut run, Some(melt));
    run.take(Event::Did { step: melt, weighed: None, temperature: Some(fahrenheit(150)), at: 5 }).unwrap();
    assert_eq!(run.misses(melt, Voice::default()), run.miss(melt, fahrenheit(150), Voice::default()));
    let fig = StepKey::Add { pour: 0, line: FIG };
    go_on(&mut run, Some(fig));
    run.take(Event::Did { step: fig, weighed: None, temperature: Some(fahrenheit(178)), at: 6 }).unwrap();
    assert_eq!(run.misses(fig, Voice::default()), None);
    go_on(&mut run, None);
    let record = run.record(Voice::default());
    let step = record.steps.iter().find(|s| s.key == melt).unwrap();
    assert_eq!((step.at, step.temperature), (5, Some(fahrenheit(150))));
    assert!(step.missed.is_some());
}
