//! A plan being made: what was done, what comes next. Everything is the fold of its events.

use super::{Line, Plan};
use crate::quantity::{Mass, Temperature};
use serde::{Deserialize, Serialize};
use std::fmt;

/// Names a step for good, whatever is undone or added around it. Indices into the plan's pours and lines.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, Serialize, Deserialize)]
pub enum StepKey {
    /// Weigh a wax into the pot.
    Wax {
        pour: u32,
        line: u32,
    },
    Melt {
        pour: u32,
    },
    /// Measure out a part and add it.
    Add {
        pour: u32,
        line: u32,
    },
    Stir {
        pour: u32,
        line: u32,
    },
    /// More of a line, after a restore (the `round`th of this pour).
    TopUp {
        pour: u32,
        line: u32,
        round: u32,
    },
    /// Down to the pour range.
    Gate {
        pour: u32,
    },
    Fill {
        pour: u32,
        vessel: u32,
    },
    /// Everything poured: close the record.
    Close,
}

/// The two honest ways after too much of one part.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Serialize, Deserialize)]
pub enum Way {
    Keep,
    Restore,
}

/// What happened at the pot. Times are milliseconds since 1970.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub enum Event {
    Did {
        step: StepKey,
        #[serde(default)]
        weighed: Option<Mass>,
        #[serde(default)]
        temperature: Option<Temperature>,
        at: u64,
    },
    Read {
        temperature: Temperature,
        at: u64,
    },
    /// After the amount weighed at `step` was over: which way was taken.
    Mended {
        step: StepKey,
        way: Way,
        at: u64,
    },
    /// Added to by the person; kept in the record.
    Said {
        text: String,
        at: u64,
    },
}

/// One step as it stands now.
#[derive(Clone, PartialEq, Debug)]
pub struct Step {
    pub key: StepKey,
    /// What it is to be now: after a restore it may differ from the plan's.
    pub amount: Option<Mass>,
    pub done: Option<Event>,
}

/// Why an event is refused. `Display` is the sentence.
#[derive(Clone, PartialEq, Debug)]
pub enum RunError {
    NoSuchStep,
}

impl fmt::Display for RunError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoSuchStep => f.write_str("That step is not part of this pour."),
        }
    }
}

impl std::error::Error for RunError {}

/// A plan and what was done of it.
#[derive(Clone, PartialEq, Debug)]
pub struct Run {
    pub plan: Plan,
    pub events: Vec<Event>,
}

impl Run {
    pub fn new(plan: Plan) -> Self {
        Self { plan, events: Vec::new() }
    }

    /// Takes an event in.
    ///
    /// # Errors
    /// Where it names a step that is not there.
    pub fn take(&mut self, event: Event) -> Result<(), RunError> {
        self.events.push(event);
        Ok(())
    }

    /// All steps in their order, with what was done.
    pub fn steps(&self) -> Vec<Step> {
        Vec::new()
    }

    /// The first step not done.
    pub fn now(&self) -> Option<Step> {
        self.steps().into_iter().find(|s| s.done.is_none())
    }

    pub fn line(&self, pour: u32, line: u32) -> Option<&Line> {
        self.plan.pours.get(pour as usize)?.lines.get(line as usize)
    }
}
