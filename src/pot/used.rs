//! What a run has used up, for the stores.

use super::{Dose, Event, Run, StepKey};
use crate::quantity::{Exact, Mass};

/// One wax or part of one pour that is in, what was added of it later by itself; or the vessels or wicks that are filled.
#[derive(Clone, PartialEq, Debug)]
pub struct Used<'a> {
    pub name: &'a str,
    /// What was weighed, or else what was asked for; zero of what is counted.
    pub mass: Mass,
    pub pieces: Exact,
    /// When it went in, milliseconds since 1970.
    pub at: u64,
}

impl Run {
    /// Everything that is in, in the order of the sheet; then the vessels and their wicks.
    pub fn used(&self) -> Vec<Used<'_>> {
        let mut used = Vec::new();
        for (pour, of) in (0..).zip(&self.plan.pours) {
            for (index, line) in (0..).zip(&of.lines) {
                let wax = line.kind.is_none();
                let first =
                    if wax { StepKey::Wax { pour, line: index } } else { StepKey::Add { pour, line: index } };
                // What was added later may be of another lot.
                for step in std::iter::once(first).chain(self.fold.top_ups(pour, index)) {
                    let Some(Event::Did { at, .. }) = self.done(step) else { continue };
                    let mass = self.fold.went_in(step, self.events()).unwrap_or(Mass::ZERO);
                    let pieces = Exact::whole(self.pieces(pour, &line.dose).into());
                    used.push(Used { name: &line.name, mass, pieces, at: *at });
                }
            }
        }
        let fills = self.filled_at();
        if let Some(at) = fills.iter().max().copied() {
            for name in self.plan.own() {
                used.push(Used { name, mass: Mass::ZERO, pieces: Exact::whole(fills.len() as i128), at });
            }
        }
        used
    }

    /// What is taken at a step: what goes in at it; of a vessel that is filled, it and its wick.
    pub fn takes_at(&self, step: StepKey) -> Vec<&str> {
        let line = || self.line(step.pour()?, step.line()?);
        match step {
            StepKey::Fill { .. } => self.plan.own().into_iter().map(String::as_str).collect(),
            _ if step.goes_in() => line().into_iter().map(|line| line.name.as_str()).collect(),
            _ => Vec::new(),
        }
    }

    /// When each vessel was filled, in that order.
    pub fn filled_at(&self) -> Vec<u64> {
        self.events().iter().filter_map(Event::filled).collect()
    }

    /// What is counted for all vessels of a pour: a vessel more, after a restore, has its pieces too; one that was left
    /// empty has none.
    pub(super) fn pieces(&self, pour: u32, dose: &Dose) -> u32 {
        let planned = self.plan.pours.get(pour as usize).map_or(0, |p| p.vessels);
        match (dose, self.fold.stand(pour)) {
            (Dose::Count { pieces }, Some(stand)) => (pieces / planned.max(1))
                .saturating_mul(stand.vessels.max(planned).saturating_sub(stand.empty)),
            _ => 0,
        }
    }

    /// How many vessels it is to fill, those that are filled among them; not those that were left empty.
    pub fn vessels(&self) -> u32 {
        self.fold.pours.iter().fold(0, |sum: u32, stand| sum.saturating_add(stand.candles()))
    }

    /// How many it was to fill, those that were left empty among them.
    pub fn planned_vessels(&self) -> u32 {
        self.fold.pours.iter().fold(0, |sum: u32, stand| sum.saturating_add(stand.vessels))
    }

    /// What is still to go in, as [`Self::used`] tells what is in: each name with its mass and its pieces.
    pub fn rest(&self) -> Vec<(&str, Mass, Exact)> {
        let mut rest = Vec::new();
        for (pour, of) in (0..).zip(&self.plan.pours).filter(|(pour, _)| !self.fold.given_up(*pour)) {
            for (index, line) in (0..).zip(&of.lines) {
                let first = if line.kind.is_none() {
                    StepKey::Wax { pour, line: index }
                } else {
                    StepKey::Add { pour, line: index }
                };
                let steps = std::iter::once(first).chain(self.fold.top_ups(pour, index));
                for dose in steps.filter(|step| !self.fold.is_done(*step)).filter_map(|s| self.fold.dose(s)) {
                    let pieces = self.pieces(pour, dose);
                    rest.push((line.name.as_str(), dose.mass(), Exact::whole(pieces.into())));
                }
            }
        }
        let filled = self.fold.pours.iter().fold(0, |sum: u32, stand| sum.saturating_add(stand.filled));
        let empty = Exact::whole(self.vessels().saturating_sub(filled).into());
        if !empty.is_zero() {
            rest.extend(self.plan.own().into_iter().map(|name| (name.as_str(), Mass::ZERO, empty)));
        }
        rest
    }
}
