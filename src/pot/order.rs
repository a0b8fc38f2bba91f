//! The order of the steps, and which of them has to come before which.

use super::{Dose, Event, Line, Run, StepKey};

impl Run {
    /// The steps of a pour up to the first vessel: wax, the pieces while it melts, melt, each part with its stirring,
    /// the pour range; top-ups right after the step they put right.
    pub(super) fn before_vessels(&self, pour: u32) -> Vec<StepKey> {
        let lines = self.plan.pours.get(pour as usize).map(|p| p.lines.as_slice()).unwrap_or_default();
        let numbered = || (0..).zip(lines);
        let pieces = |l: &Line| matches!(l.dose, Dose::Count { .. });
        let mut keys = Vec::new();
        for (line, _) in numbered().filter(|(_, l)| l.kind.is_none()) {
            self.with_top_ups(StepKey::Wax { pour, line }, &mut keys);
        }
        keys.extend(numbered().filter(|(_, l)| pieces(l)).map(|(line, _)| StepKey::Add { pour, line }));
        keys.push(StepKey::Melt { pour });
        for (line, l) in numbered().filter(|(_, l)| l.kind.is_some() && !pieces(l)) {
            self.with_top_ups(StepKey::Add { pour, line }, &mut keys);
            if stirred(l) {
                keys.push(StepKey::Stir { pour, line });
            }
        }
        keys.push(StepKey::Gate { pour });
        keys
    }

    fn with_top_ups(&self, step: StepKey, keys: &mut Vec<StepKey>) {
        keys.push(step);
        let Some(pour) = step.pour() else { return };
        let rounds = self.fold.stand(pour).map(|s| s.rounds.as_slice()).unwrap_or_default();
        for (round, more) in (1..).zip(rounds).filter(|(_, r)| r.after == step) {
            for more in &more.adds {
                // A top-up that was over itself brings its own.
                self.with_top_ups(StepKey::TopUp { pour, line: more.line, round }, keys);
            }
        }
    }

    /// All steps in their order.
    pub(super) fn keys(&self) -> Vec<StepKey> {
        let mut keys = Vec::new();
        for (pour, stand) in (0..).zip(&self.fold.pours) {
            keys.extend(self.before_vessels(pour));
            keys.extend((0..stand.vessels).map(|vessel| StepKey::Fill { pour, vessel }));
        }
        keys.push(StepKey::Close);
        keys
    }

    /// Still to be done: of a pot that is given up nothing is.
    pub(super) fn is_open(&self, step: StepKey) -> bool {
        !self.fold.is_done(step) && !step.pour().is_some_and(|pour| self.fold.given_up(pour))
    }

    /// All steps that are done or to be done, in their order.
    pub(super) fn course(&self) -> Vec<StepKey> {
        self.keys().into_iter().filter(|key| self.fold.is_done(*key) || self.is_open(*key)).collect()
    }

    /// Doing `then` before `first` would hurt, both of one pour.
    pub(super) fn comes_first(&self, first: StepKey, then: StepKey) -> bool {
        let (in_vessel, melted) = (self.counted(first), matches!(first, StepKey::Melt { .. }));
        match then {
            StepKey::Wax { .. } | StepKey::TopUp { .. } | StepKey::Close => false,
            StepKey::Melt { .. } => matches!(first, StepKey::Wax { .. }),
            StepKey::Add { .. } => melted && !self.counted(then),
            StepKey::Stir { line, .. } => matches!(first, StepKey::Add { line: l, .. } if l == line),
            StepKey::Gate { .. } => !in_vessel && first != then,
            StepKey::Fill { .. } => true,
        }
    }

    /// Pieces to be set in the vessels.
    pub(super) fn counted(&self, step: StepKey) -> bool {
        matches!(step, StepKey::Add { pour, line }
            if self.line(pour, line).is_some_and(|l| matches!(l.dose, Dose::Count { .. })))
    }

    /// Minutes of stirring left at `now`, in milliseconds, counted from the last thing that went in before it; zero
    /// when it is over. None where nothing is being stirred in yet.
    pub fn stir_left(&self, step: StepKey, now: u64) -> Option<u64> {
        let StepKey::Stir { pour, line } = step else { return None };
        let minutes = self.line(pour, line)?.stir_minutes;
        let mut before = Vec::new();
        self.with_top_ups(StepKey::Add { pour, line }, &mut before);
        let at = |key: &StepKey| match self.done(*key) {
            Some(Event::Did { at, .. }) => Some(*at),
            _ => None,
        };
        let began = before.iter().filter_map(at).max()?;
        let whole = u64::from(minutes) * 60_000;
        // A clock that ticks once a second may still be before the beginning.
        Some(began.saturating_add(whole).saturating_sub(now).min(whole))
    }
}

/// It has a stirring step of its own.
pub(super) fn stirred(line: &Line) -> bool {
    line.stir_minutes > 0 && !matches!(line.dose, Dose::Count { .. })
}
