//! What is told of a temperature or a weight that is not as asked.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod common;

use common::run::{FIG, go_on, run};
use common::{Workshop, read};
use potside::formula::TemperatureRange;
use potside::pot::{Amiss, Event, Run, StepKey, Target};
use potside::quantity::{Exact, Quantity, Temperature, TemperatureUnit, Voice};

fn fahrenheit(n: i128) -> Temperature {
    Temperature::of(Exact::whole(n), TemperatureUnit::Fahrenheit)
}

/// Melted at 205 °F, above the flash point of the fragrance that went in after it: that was no danger then.
#[test]
fn what_goes_in_later_does_not_make_an_earlier_step_too_hot() {
    let mut run = run(1);
    let (melt, fig) = (StepKey::Melt { pour: 0 }, StepKey::Add { pour: 0, line: FIG });
    go_on(&mut run, Some(melt));
    let at = |step, f| Event::Did { step, weighed: None, temperature: Some(fahrenheit(f)), at: 5 };
    run.take(at(melt, 205)).unwrap();
    go_on(&mut run, Some(fig));
    run.take(at(fig, 200)).unwrap();
    assert_eq!(run.misses(melt, Voice::default()), None);
    assert_eq!(run.amiss(melt, fahrenheit(205)), None);
    assert!(run.misses(fig, Voice::default()).is_some_and(|m| m.contains("flash point of “Fig leaf”")));
    assert_eq!(run.amiss(fig, fahrenheit(200)), Some(Amiss::TooHot));
    // What is still to be done is judged with it in the pot: at its flash point, though the melt wants no less.
    let gate = StepKey::Gate { pour: 0 };
    assert_eq!(run.amiss(gate, fahrenheit(200)), Some(Amiss::TooHot));
    assert_eq!(run.amiss(gate, fahrenheit(160)), Some(Amiss::Outside));
    assert_eq!(run.amiss(gate, run.plan.pour.low.value), None);
}

/// One temperature is wanted, not from it to itself.
#[test]
fn a_range_of_one_temperature_is_one_number() {
    let mut w = Workshop::new();
    w.formula.parts[0].add = TemperatureRange { low: read("178 °F"), high: read("178 °F") };
    let run = Run::new(w.plan(Target::Vessels(4)).unwrap());
    let us = Voice { temperature: TemperatureUnit::Fahrenheit, ..Voice::default() };
    let fig = StepKey::Add { pour: 0, line: FIG };
    assert_eq!(run.wants(fig).unwrap().say(us), "178 °F");
    let gate = run.wants(StepKey::Gate { pour: 0 }).unwrap().say(us);
    assert!(gate.contains('–'), "{gate}");
}

/// Too little weighed in is told as long as it can still be added.
#[test]
fn too_little_is_told() {
    let run = run(4);
    let voice = Voice::default();
    let fig = StepKey::Add { pour: 0, line: FIG };
    let asked = run.steps().into_iter().find(|s| s.key == fig).unwrap().amount.unwrap();
    let tenth = asked.times(Exact::ratio(1, 10));
    let left = voice.both(asked.less(tenth));
    assert_eq!(
        run.short(fig, tenth, voice),
        Some(format!("{left} less than asked. Add it and type what is in by then, or go on with less."))
    );
    let division = run.line(0, FIG).unwrap().dose.division();
    for enough in [asked, asked.less(division), asked + division, asked + asked] {
        assert_eq!(run.short(fig, enough, voice), None, "{enough:?}");
    }
    assert_eq!(run.short(StepKey::Melt { pour: 0 }, tenth, voice), None);
}
