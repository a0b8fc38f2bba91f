//! The search for the best plan.
//!
//! Good by good, the sums of one choice each are made, and of two sums the one that is no better in rank nor in any
//! scarce supply is left out, as is one whose bound shows no hope. A round keeps only so many sums of each good; the next
//! keeps more. A round that had to leave out none for room has proven its plan the best.

use super::choice::Choice;
use super::model::{Model, plus};
use super::part::{Limits, Part};
use super::units::Units;
use super::{Gap, Measure, Plan, Problem};

/// A search that goes on in steps, with a plan at any time.
pub struct Search {
    model: Model,
    parts: Vec<Part>,
    limits: Limits,
}

impl Search {
    pub fn new(problem: Problem) -> Self {
        Self::within(problem, Limits::default())
    }

    /// With other limits than the usual: slower, and by other ways to the same.
    pub fn within(problem: Problem, limits: Limits) -> Self {
        let model = Model::new(problem);
        let mut units = Units::new(&model);
        units.join(limits.listed, &|_| true);
        let parts = units.split().into_iter().map(|units| Part::new(units, false, limits)).collect();
        Self { model, parts, limits }
    }

    /// The best plan so far.
    pub fn plan(&self) -> Plan {
        let mut picks: Vec<Option<&Choice>> = vec![None; self.model.choices.len()];
        for (good, at) in self.parts.iter().flat_map(|part| &part.picks) {
            let choice = self.model.choices.get(*good).and_then(|of| of.get(*at as usize));
            if let Some(pick) = picks.get_mut(*good) {
                *pick = choice;
            }
        }
        let picks: Vec<&Choice> = picks.into_iter().flatten().collect();
        self.model.plan(&picks, self.gap())
    }

    /// How far the best so far may be from the best there is; none: it is that.
    pub fn gap(&self) -> Option<Gap> {
        let sum =
            |of: fn(&Part) -> [u32; 6]| self.parts.iter().fold([0; 6], |sum, part| plus(&sum, &of(part)));
        let (rank, least) = (sum(|part| part.rank), sum(Part::least));
        let mut open =
            self.model.order.iter().zip(rank).zip(least).filter(|((_, rank), least)| rank != least);
        let ((measure, _), least) = open.next()?;
        // The first kind is no change.
        let first = *measure == Measure::Changes && self.model.pinned_kinds() == 0;
        Some(Gap { measure: *measure, least: least.saturating_sub(first.into()) })
    }

    /// Goes on until so many sums are looked at or more; true when there is nothing more to find.
    pub fn step(&mut self, sums: usize) -> bool {
        let mut made = 0;
        while made < sums {
            let open = self.parts.iter_mut().filter(|part| !part.is_over());
            let Some(part) = open.min_by_key(|part| (part.measure, part.width)) else {
                return self.is_over();
            };
            // A part costs something even where it makes no sums.
            made += part.step().max(1);
        }
        false
    }

    /// Where the parts by themselves pour nothing at all, one kind may be poured without a change: then they are gone
    /// through once more together.
    fn is_over(&mut self) -> bool {
        let busy = self.parts.iter().any(|part| part.busy);
        let idle = self.parts.iter().all(|part| !part.units.picked().iter().any(|way| way.poured));
        if busy || !idle || !self.model.problem.pinned.is_empty() {
            return true;
        }
        self.parts = vec![Part::new(Units::new(&self.model), true, self.limits)];
        false
    }
}
