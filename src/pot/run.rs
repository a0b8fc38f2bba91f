//! A plan being made: what was done, what comes next. Everything is the fold of its events.

use super::fold::Fold;
use super::order::stirred;
use super::{Dose, Event, Line, Named, Plan, RunError, Step, StepKey, Way};
use crate::quantity::Mass;
use std::rc::Rc;

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
            Event::Did { step, weighed, .. } => self.may_do(*step, *weighed)?,
            Event::Mended { step, way, .. } => self.may_mend(*step, *way)?,
            Event::Read { .. } | Event::Said { .. } => {}
        }
        self.events.push(event);
        self.fold.take(&self.plan, &self.events, self.events.len() - 1);
        Ok(())
    }

    fn may_do(&self, step: StepKey, weighed: Option<Mass>) -> Result<(), RunError> {
        if !self.holds(step) {
            return Err(RunError::NoSuchStep);
        }
        if self.fold.is_done(step) {
            return Err(RunError::AlreadyDone { step: self.named(step) });
        }
        let first = match step.pour() {
            // A vessel may be left empty whatever became of what was to go into it.
            Some(_) if weighed == Some(Mass::ZERO) && matches!(step, StepKey::Fill { .. }) => None,
            Some(pour) => self
                .before_vessels(pour)
                .into_iter()
                .find(|s| !self.fold.is_done(*s) && self.comes_first(*s, step)),
            None => self.keys().into_iter().find(|s| *s != StepKey::Close && self.is_open(*s)),
        };
        match first {
            Some(first) => Err(RunError::NotYet { step: self.named(step), first: self.named(first) }),
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
            return Err(RunError::MendedAlready { step: self.named(step) });
        }
        if self.fold.over(step, &self.events).is_none() {
            return Err(RunError::NotOver { step: self.named(step) });
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
        self.course().into_iter().map(|key| self.step(key)).collect()
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
        self.keys().into_iter().find(|key| self.is_open(*key)).map(|key| self.step(key))
    }

    /// The first step not done of a pour; where there is none of it left, of the whole.
    pub fn now_in(&self, pour: u32) -> Option<Step> {
        let of_it = |key: &StepKey| key.pour() == Some(pour) && self.is_open(*key);
        self.keys().into_iter().find(of_it).map(|key| self.step(key)).or_else(|| self.now())
    }

    /// The event that did a step, and when.
    pub fn done(&self, step: StepKey) -> Option<&Event> {
        self.fold.done(step, &self.events)
    }

    pub fn line(&self, pour: u32, line: u32) -> Option<&Line> {
        self.plan.pours.get(pour as usize)?.lines.get(line as usize)
    }

    /// A step with what it takes to name it.
    fn named(&self, step: StepKey) -> Named {
        let line = step.pour().zip(step.line()).and_then(|(pour, line)| self.line(pour, line));
        Named { step, line: line.map(|l| l.name.clone()).unwrap_or_default(), counted: self.counted(step) }
    }

    /// What a step is called where it has to be named: `Stir in Fig leaf`.
    pub(super) fn name(&self, step: StepKey) -> String {
        self.named(step).to_string()
    }
}
