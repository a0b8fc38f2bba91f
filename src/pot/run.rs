//! A plan being made: what was done, what comes next. Everything is the fold of its events.

use super::fold::Fold;
use super::order::stirred;
use super::{Dose, Event, Line, Plan, Step, StepKey, Way};
use std::fmt;
use std::rc::Rc;

/// Why an event is refused. `Display` is the sentence.
#[derive(Clone, PartialEq, Debug)]
pub enum RunError {
    NoSuchStep,
    AlreadyDone {
        step: String,
    },
    /// Something else has to come first.
    NotYet {
        step: String,
        first: String,
    },
    /// There is nothing to keep or restore.
    NotOver {
        step: String,
    },
    MendedAlready {
        step: String,
    },
    /// Vessels are filled already: what is added now would not reach them.
    Poured,
    Closed,
}

impl fmt::Display for RunError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoSuchStep => f.write_str("That step is not part of this pour."),
            Self::AlreadyDone { step } => {
                write!(f, "“{step}” is done already. To change it, undo back to it and do it again.")
            }
            Self::NotYet { step, first } => write!(f, "Not yet: “{first}” comes before “{step}”."),
            Self::NotOver { step } => {
                write!(f, "What was weighed at “{step}” is not over what was asked, so there is nothing to put right.")
            }
            Self::MendedAlready { step } => {
                write!(f, "It is settled already what to do about “{step}”. Undo that first to choose again.")
            }
            Self::Poured => f.write_str(
                "Vessels are filled from this pot already, so it cannot be restored: they would not get what is added. \
                 Keep it, and note it on the record.",
            ),
            Self::Closed => f.write_str("This pour is closed. Undo the close to change it."),
        }
    }
}

impl std::error::Error for RunError {}

/// A plan and what was done of it.
#[derive(Clone, PartialEq, Debug)]
pub struct Run {
    pub plan: Rc<Plan>,
    events: Vec<Event>,
    pub(super) fold: Fold,
}

impl Run {
    pub fn new(plan: impl Into<Rc<Plan>>) -> Self {
        let plan = plan.into();
        let fold = Fold::new(&plan);
        Self { plan, events: Vec::new(), fold }
    }

    /// What was taken in, in its order.
    pub fn events(&self) -> &[Event] {
        &self.events
    }

    /// Takes an event in. A step may be done out of order where that cannot hurt: waxes among themselves, parts among
    /// themselves, pours side by side. A temperature out of its range is no reason to refuse (see [`Run::misses`]).
    ///
    /// # Errors
    /// Where the step is not there or done already, where something has to come first, and where there is nothing to
    /// keep or restore; see [`RunError`].
    pub fn take(&mut self, event: Event) -> Result<(), RunError> {
        match &event {
            Event::Did { step, .. } => self.may_do(*step)?,
            Event::Mended { step, way, .. } => self.may_mend(*step, *way)?,
            Event::Read { .. } | Event::Said { .. } => {}
        }
        self.events.push(event);
        self.fold.take(&self.plan, &self.events, self.events.len() - 1);
        Ok(())
    }

    fn may_do(&self, step: StepKey) -> Result<(), RunError> {
        if !self.holds(step) {
            return Err(RunError::NoSuchStep);
        }
        if self.fold.is_done(step) {
            return Err(RunError::AlreadyDone { step: self.name(step) });
        }
        let first = match step.pour() {
            Some(pour) => self
                .before_vessels(pour)
                .into_iter()
                .find(|s| !self.fold.is_done(*s) && self.comes_first(*s, step)),
            None => self.keys().into_iter().find(|s| *s != StepKey::Close && !self.fold.is_done(*s)),
        };
        match first {
            Some(first) => Err(RunError::NotYet { step: self.name(step), first: self.name(first) }),
            None => Ok(()),
        }
    }

    fn may_mend(&self, step: StepKey, way: Way) -> Result<(), RunError> {
        if !self.holds(step) {
            return Err(RunError::NoSuchStep);
        }
        if self.fold.is_done(StepKey::Close) {
            return Err(RunError::Closed);
        }
        if self.fold.mended(step).is_some() {
            return Err(RunError::MendedAlready { step: self.name(step) });
        }
        if self.fold.over(step, &self.events).is_none() {
            return Err(RunError::NotOver { step: self.name(step) });
        }
        let filled = step.pour().and_then(|p| self.fold.stand(p)).is_some_and(|s| s.filled > 0);
        if filled && way == Way::Restore { Err(RunError::Poured) } else { Ok(()) }
    }

    pub(super) fn holds(&self, step: StepKey) -> bool {
        let line = |pour, line, wax: bool| self.line(pour, line).filter(|l| l.kind.is_none() == wax);
        match step {
            StepKey::Wax { pour, line: l } => line(pour, l, true).is_some(),
            StepKey::Add { pour, line: l } => line(pour, l, false).is_some(),
            StepKey::Stir { pour, line: l } => line(pour, l, false).is_some_and(stirred),
            StepKey::TopUp { .. } => self.fold.dose(step).is_some(),
            StepKey::Melt { pour } | StepKey::Gate { pour } => self.fold.stand(pour).is_some(),
            StepKey::Fill { pour, vessel } => self.fold.stand(pour).is_some_and(|s| vessel < s.vessels),
            StepKey::Close => true,
        }
    }

    /// All steps in their order, with what was done.
    pub fn steps(&self) -> Vec<Step> {
        self.keys().into_iter().map(|key| self.step(key)).collect()
    }

    /// One step as it stands; of a step that is not there, nothing asked and nothing done.
    pub(super) fn step(&self, key: StepKey) -> Step {
        let dose = self.fold.dose(key).cloned();
        let amount = match (&dose, key) {
            (None | Some(Dose::Count { .. }), StepKey::Fill { .. }) => Some(self.plan.fill),
            (Some(Dose::Count { .. }) | None, _) => None,
            (Some(dose), _) => Some(dose.mass()),
        };
        Step { key, amount, dose, done: self.fold.done(key, &self.events).cloned() }
    }

    /// The first step not done.
    pub fn now(&self) -> Option<Step> {
        self.keys().into_iter().find(|key| !self.fold.is_done(*key)).map(|key| self.step(key))
    }

    /// The event that did a step, and when.
    pub fn done(&self, step: StepKey) -> Option<&Event> {
        self.fold.done(step, &self.events)
    }

    pub fn line(&self, pour: u32, line: u32) -> Option<&Line> {
        self.plan.pours.get(pour as usize)?.lines.get(line as usize)
    }

    /// What a step is called where it has to be named: `Stir in Fig leaf`.
    pub(super) fn name(&self, step: StepKey) -> String {
        let line = |pour: u32, line: u32| self.line(pour, line).map_or("", |l| l.name.as_str());
        match step {
            StepKey::Wax { pour, line: l } => format!("Weigh {}", line(pour, l)),
            StepKey::Melt { .. } => "Melt the wax".to_owned(),
            StepKey::Add { pour, line: l } if self.counted(step) => format!("Set {}", line(pour, l)),
            StepKey::Add { pour, line: l } => format!("Add {}", line(pour, l)),
            StepKey::Stir { pour, line: l } => format!("Stir in {}", line(pour, l)),
            StepKey::TopUp { pour, line: l, .. } => format!("Add more {}", line(pour, l)),
            StepKey::Gate { .. } => "Bring it to the pour range".to_owned(),
            StepKey::Fill { vessel, .. } => format!("Fill vessel {}", vessel.saturating_add(1)),
            StepKey::Close => "Close the record".to_owned(),
        }
    }
}
