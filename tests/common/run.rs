//! A run of the workshop's plan, and doing its steps.

use super::Workshop;
use potside::pot::{Event, Run, RunError, StepKey, Target};
use potside::quantity::Mass;

pub fn run(vessels: u32) -> Run {
    Run::new(Workshop::new().plan(Target::Vessels(vessels)).unwrap())
}

pub fn did(step: StepKey, weighed: Option<Mass>, at: u64) -> Event {
    Event::Did { step, weighed, temperature: None, at }
}

/// Line numbers of the workshop's plan.
pub const SOY: u32 = 1;
pub const HARDENER: u32 = 3;
pub const FIG: u32 = 6;
pub const TAB: u32 = 7;

/// Does the steps in their order as asked, until `stop` is next or nothing is left.
pub fn go_on(run: &mut Run, stop: Option<StepKey>) {
    while let Some(step) = run.now().filter(|s| Some(s.key) != stop) {
        run.take(did(step.key, step.amount, 1000)).unwrap();
    }
}

pub fn keys(run: &Run) -> Vec<StepKey> {
    run.steps().into_iter().map(|s| s.key).collect()
}

#[track_caller]
pub fn refuses(run: &mut Run, event: Event, expected: &str) {
    let before = run.clone();
    let error: RunError = run.take(event).unwrap_err();
    assert_eq!(error.to_string(), expected);
    assert_eq!(*run, before);
}
