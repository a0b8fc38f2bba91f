//! Where one stands in a run: places, readings, what is left to fill, the countdown.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod common;

use common::Workshop;
use potside::pot::{Event, Run, StepKey, Target, countdown};
use potside::quantity::{Exact, Temperature};

fn run(vessels: u32) -> Run {
    Run::new(Workshop::new().plan(Target::Vessels(vessels)).unwrap())
}

fn read(run: &mut Run, celsius: i128, at: u64) {
    run.take(Event::Read { temperature: Temperature::celsius(Exact::whole(celsius)), at, pour: None })
        .unwrap();
}

#[test]
fn every_step_has_its_place() {
    let run = run(3);
    let steps = run.steps();
    for (index, step) in steps.iter().enumerate() {
        assert_eq!(run.place(step.key), Some((index + 1, steps.len())));
    }
    assert_eq!(run.place(StepKey::Melt { pour: 9 }), None);
}

/// Five minutes: common practice, no source.
#[test]
fn a_reading_stands_for_five_minutes() {
    let mut run = run(3);
    assert_eq!(run.last_reading(0), None);
    assert_eq!(run.pot_at(0, 0), None);
    read(&mut run, 90, 1_000);
    read(&mut run, 88, 61_000);
    let last = Temperature::celsius(Exact::whole(88));
    assert_eq!(run.last_reading(0), Some((61_000, last)));
    assert_eq!(run.pot_at(0, 61_000), Some(last));
    assert_eq!(run.pot_at(0, 361_000), Some(last));
    assert_eq!(run.pot_at(0, 361_001), None);
    // A clock that was set back does not make it old.
    assert_eq!(run.pot_at(0, 0), Some(last));
}

/// Fragrance cools the pot: what was read before it went in is no reading of what is poured.
#[test]
fn a_reading_from_before_something_went_in_tells_nothing() {
    let mut run = run(3);
    let is_fig = |key: StepKey, run: &Run| {
        key.pour().zip(key.line()).and_then(|(p, l)| run.line(p, l)).is_some_and(|l| l.name == "Fig leaf")
    };
    while let Some(step) = run.now().filter(|s| !is_fig(s.key, &run)) {
        run.take(Event::Did { step: step.key, weighed: None, temperature: None, at: 0 }).unwrap();
    }
    let fig = run.now().unwrap().key;
    read(&mut run, 80, 1_000);
    let read_at = Temperature::celsius(Exact::whole(80));
    assert_eq!((run.pot_at(0, 2_000), run.last_reading(0)), (Some(read_at), Some((1_000, read_at))));
    run.take(Event::Did { step: fig, weighed: None, temperature: None, at: 2_000 }).unwrap();
    assert_eq!((run.pot_at(0, 3_000), run.last_reading(0)), (None, Some((1_000, read_at))));
    read(&mut run, 76, 4_000);
    assert_eq!(run.pot_at(0, 5_000), Some(Temperature::celsius(Exact::whole(76))));
}

#[test]
fn what_is_left_to_fill() {
    let mut run = run(3);
    while let Some(step) = run.now().filter(|s| s.key != StepKey::Fill { pour: 0, vessel: 1 }) {
        run.take(Event::Did { step: step.key, weighed: None, temperature: None, at: 0 }).unwrap();
    }
    let fill = |vessel| StepKey::Fill { pour: 0, vessel };
    assert_eq!(run.unfilled(0), [fill(1), fill(2)]);
    assert_eq!(run.unfilled(1), []);
}

#[test]
fn time_is_counted_down_to_zero() {
    for (milliseconds, expected) in
        [(0, "0:00"), (1, "0:01"), (1_000, "0:01"), (1_001, "0:02"), (65_000, "1:05"), (600_000, "10:00")]
    {
        assert_eq!(countdown(milliseconds), expected);
    }
}

#[test]
fn stirring_never_takes_longer_than_asked() {
    let mut run = run(3);
    let stir = run.steps().iter().map(|s| s.key).find(|k| matches!(k, StepKey::Stir { .. })).unwrap();
    while let Some(step) = run.now().filter(|s| s.key != stir) {
        run.take(Event::Did { step: step.key, weighed: None, temperature: None, at: 100_000 }).unwrap();
    }
    let whole = run.stir_left(stir, 100_000).unwrap();
    assert!(whole > 0);
    assert_eq!(run.stir_left(stir, 99_000), Some(whole));
    assert_eq!(run.stir_left(stir, 100_000 + whole), Some(0));
}
