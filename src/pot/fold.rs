//! Where a run stands: the fold of its events.

use super::{Dose, Event, Plan, StepKey, Way};
use crate::quantity::{Exact, Mass, Voice};

/// Grown by one event after the other; nothing in it comes from anywhere else.
#[derive(Clone, PartialEq, Debug, Default)]
pub(super) struct Fold {
    pub(super) pours: Vec<Stand>,
    /// Steps in their order, each with the index of the event that did it.
    done: Vec<(StepKey, usize)>,
    mended: Vec<(StepKey, Way)>,
}

/// Where one pour stands.
#[derive(Clone, PartialEq, Debug)]
pub(super) struct Stand {
    /// How much of each line its first step asks for now.
    pub(super) doses: Vec<Dose>,
    pub(super) rounds: Vec<Round>,
    pub(super) vessels: u32,
    pub(super) filled: u32,
    /// Left empty.
    pub(super) empty: u32,
    /// The batch as made now against the plan.
    pub(super) factor: Exact,
}

/// What a restore asks to add, right after the step that was over.
#[derive(Clone, PartialEq, Debug)]
pub(super) struct Round {
    pub(super) after: StepKey,
    pub(super) factor: Exact,
    pub(super) adds: Vec<More>,
}

#[derive(Clone, PartialEq, Debug)]
pub(super) struct More {
    pub(super) line: u32,
    pub(super) dose: Dose,
    /// What was in of it before.
    pub(super) had: Mass,
}

impl Stand {
    /// Vessels that are filled or still to be.
    pub(super) const fn candles(&self) -> u32 {
        self.vessels.saturating_sub(self.empty)
    }
}

impl Fold {
    pub(super) fn new(plan: &Plan) -> Self {
        let pours = plan.pours.iter().map(|pour| Stand {
            doses: pour.lines.iter().map(|l| l.dose.clone()).collect(),
            rounds: Vec::new(),
            vessels: pour.vessels,
            filled: 0,
            empty: 0,
            factor: Exact::ONE,
        });
        Self { pours: pours.collect(), ..Self::default() }
    }

    pub(super) fn stand(&self, pour: u32) -> Option<&Stand> {
        self.pours.get(pour as usize)
    }

    /// All vessels of a pour were left empty: nothing more is asked of its pot.
    pub(super) fn given_up(&self, pour: u32) -> bool {
        self.stand(pour).is_some_and(|s| s.empty > 0 && s.candles() == 0)
    }

    pub(super) fn is_done(&self, step: StepKey) -> bool {
        self.place(step).is_ok()
    }

    pub(super) fn done<'a>(&self, step: StepKey, events: &'a [Event]) -> Option<&'a Event> {
        let (_, index) = self.done.get(self.place(step).ok()?)?;
        events.get(*index)
    }

    /// True where the one is done, and before the other.
    pub(super) fn before(&self, one: StepKey, other: StepKey) -> bool {
        let index = |step| self.done.iter().find(|(done, _)| *done == step).map(|(_, index)| *index);
        index(one).is_some_and(|one| index(other).is_none_or(|other| one < other))
    }

    fn place(&self, step: StepKey) -> Result<usize, usize> {
        self.done.binary_search_by(|(done, _)| done.cmp(&step))
    }

    pub(super) fn mended(&self, step: StepKey) -> Option<Way> {
        self.mended.iter().find(|(mended, _)| *mended == step).map(|(_, way)| *way)
    }

    /// How a step that something goes in at is measured now.
    pub(super) fn dose(&self, step: StepKey) -> Option<&Dose> {
        let stand = self.stand(step.pour()?)?;
        match step {
            StepKey::Wax { line, .. } | StepKey::Add { line, .. } => stand.doses.get(line as usize),
            StepKey::TopUp { line, round, .. } => {
                let round = stand.rounds.get((round as usize).checked_sub(1)?)?;
                round.adds.iter().find(|m| m.line == line).map(|m| &m.dose)
            }
            StepKey::Melt { .. }
            | StepKey::Stir { .. }
            | StepKey::Gate { .. }
            | StepKey::Fill { .. }
            | StepKey::Close => None,
        }
    }

    /// What went in at a step: what was weighed, or else what was asked for. None where it is not done.
    pub(super) fn went_in(&self, step: StepKey, events: &[Event]) -> Option<Mass> {
        let asked = self.dose(step)?.mass();
        match self.done(step, events)? {
            Event::Did { weighed, .. } => Some(weighed.unwrap_or(asked)),
            Event::Read { .. } | Event::Mended { .. } | Event::Said { .. } => None,
        }
    }

    /// By how much what was weighed at a step is over what was asked. None where it is not.
    pub(super) fn over(&self, step: StepKey, events: &[Event]) -> Option<Mass> {
        let over = self.went_in(step, events)?.less(self.dose(step)?.mass());
        (!over.is_zero()).then_some(over)
    }

    /// All of a line that is in, or none where its first step is not done.
    pub(super) fn is_in(&self, pour: u32, line: u32, wax: bool, events: &[Event]) -> Option<Mass> {
        let first = if wax { StepKey::Wax { pour, line } } else { StepKey::Add { pour, line } };
        let mut mass = self.went_in(first, events)?;
        for key in self.top_ups(pour, line) {
            mass = mass + self.went_in(key, events).unwrap_or(Mass::ZERO);
        }
        Some(mass)
    }

    /// The top-ups asked of a line, done or not.
    pub(super) fn top_ups(&self, pour: u32, line: u32) -> impl Iterator<Item = StepKey> {
        let rounds = self.stand(pour).map(|s| s.rounds.as_slice()).unwrap_or_default();
        let asked = (1..).zip(rounds).filter(move |(_, r)| r.adds.iter().any(|m| m.line == line));
        asked.map(move |(round, _)| StepKey::TopUp { pour, line, round })
    }

    /// Takes in the event at `index`; whether it may be taken is the run's to say.
    pub(super) fn take(&mut self, plan: &Plan, events: &[Event], index: usize) {
        match events.get(index) {
            Some(event @ Event::Did { step, .. }) => {
                if let Err(place) = self.place(*step) {
                    self.done.insert(place, (*step, index));
                }
                if let StepKey::Fill { pour, .. } = step
                    && let Some(stand) = self.pours.get_mut(*pour as usize)
                {
                    match event.filled() {
                        Some(_) => stand.filled += 1,
                        None => stand.empty += 1,
                    }
                }
            }
            Some(Event::Mended { step, way, .. }) => {
                self.mended.push((*step, *way));
                if *way == Way::Restore {
                    self.restore(plan, events, *step);
                }
            }
            Some(Event::Read { .. } | Event::Said { .. }) | None => {}
        }
    }

    fn restore(&mut self, plan: &Plan, events: &[Event], after: StepKey) {
        let Some(pour) = after.pour() else { return };
        let lines = self.lines(plan, pour, events);
        let Some(restored) = self.restored(plan, pour, events, Voice::default()) else { return };
        let factor = restored.factor;
        let mut adds = Vec::new();
        let mut doses = Vec::new();
        for ((line, mended), add) in lines.into_iter().zip(restored.add) {
            let Some(planned) = plan.pours.get(pour as usize).and_then(|p| p.lines.get(line as usize)) else {
                continue;
            };
            let first = if mended.wax { StepKey::Wax { pour, line } } else { StepKey::Add { pour, line } };
            let is_in = self.is_done(first);
            let dose = match unweighed(&planned.dose, factor) {
                Some(dose) if is_in => less(&dose, self.counted(pour, line)),
                Some(dose) => dose,
                None => planned.dose.of(add),
            };
            let nothing =
                dose.mass().is_zero() && unweighed(&dose, Exact::ONE).is_none_or(|d| count(&d) == 0);
            match is_in {
                true if nothing => {}
                true => adds.push(More { line, dose, had: mended.actual }),
                false => doses.push((line, dose)),
            }
        }
        let done: Vec<StepKey> = self.done.iter().map(|(step, _)| *step).collect();
        let Some(stand) = self.pours.get_mut(pour as usize) else { return };
        // Top-ups that an earlier round still asked for are in this one.
        for (number, round) in (1..).zip(&mut stand.rounds) {
            round.adds.retain(|m| done.contains(&StepKey::TopUp { pour, line: m.line, round: number }));
        }
        for (line, dose) in doses {
            if let Some(old) = stand.doses.get_mut(line as usize) {
                *old = dose;
            }
        }
        stand.vessels = plan.pours.get(pour as usize).map_or(0, |p| p.vessels) + restored.more_vessels;
        stand.factor = factor;
        stand.rounds.push(Round { after, factor, adds });
    }

    /// Drops or eighths of a line that are in and whose mass is not known.
    fn counted(&self, pour: u32, line: u32) -> u32 {
        let first = self.dose(StepKey::Add { pour, line }).map_or(0, count);
        let done = self.top_ups(pour, line).filter(|key| self.is_done(*key));
        first + done.filter_map(|key| self.dose(key)).map(count).sum::<u32>()
    }
}

fn count(dose: &Dose) -> u32 {
    match dose {
        Dose::Drops { drops, .. } => *drops,
        Dose::Spoon { eighths, .. } => *eighths,
        Dose::Weigh { .. } | Dose::Unweighable { .. } | Dose::Count { .. } => 0,
    }
}

/// Drops or spoons whose mass is not known, `factor` times as many; none of any other measure.
fn unweighed(dose: &Dose, factor: Exact) -> Option<Dose> {
    let times = |n: &u32| u32::try_from((Exact::whole((*n).into()) * factor).round()).unwrap_or(*n);
    match dose {
        Dose::Drops { drops, mass } if mass.is_zero() => {
            Some(Dose::Drops { drops: times(drops), mass: *mass })
        }
        Dose::Spoon { eighths, mass } if mass.is_zero() => {
            Some(Dose::Spoon { eighths: times(eighths), mass: *mass })
        }
        _ => None,
    }
}

fn less(dose: &Dose, by: u32) -> Dose {
    match dose.clone() {
        Dose::Drops { drops, mass } => Dose::Drops { drops: drops.saturating_sub(by), mass },
        Dose::Spoon { eighths, mass } => Dose::Spoon { eighths: eighths.saturating_sub(by), mass },
        other => other,
    }
}
