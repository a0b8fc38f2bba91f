//! The sums that a stage makes, before those that others beat are left out.

use super::bound::{Regret, hope};
use super::sum::Sum;
use crate::sort;
use std::cmp::Ordering;

/// The sums of one stage.
pub(super) struct Made {
    pub(super) sums: Vec<Sum>,
    /// Of each sum, what it takes of each scarce supply, one after the other.
    pub(super) uses: Vec<u64>,
    pub(super) wide: usize,
    pub(super) measure: usize,
}

impl Made {
    /// The places of the sums, the most hopeful first.
    pub(super) fn by_hope(&self) -> Vec<usize> {
        sort::order(self.sums.len(), &|a, b| match (self.sums.get(a), self.sums.get(b)) {
            (Some(a), Some(b)) => {
                let most = |of: &Sum| of.ahead.get(self.measure).copied();
                most(a).cmp(&most(b)).then_with(|| a.ahead.cmp(&b.ahead))
            }
            _ => Ordering::Equal,
        })
    }

    /// How much better what becomes of a sum may be.
    pub(super) fn hope(&self, at: Option<&usize>, slack: &Regret) -> u32 {
        let sum = at.and_then(|at| self.sums.get(*at));
        sum.and_then(|sum| hope(&sum.ahead, slack, self.measure)).unwrap_or(0)
    }

    pub(super) fn only(&self, places: &[usize]) -> Self {
        let uses = |at: &usize| self.uses.get(at * self.wide..(at + 1) * self.wide);
        Self {
            sums: places.iter().filter_map(|at| self.sums.get(*at)).cloned().collect(),
            uses: places.iter().filter_map(uses).flatten().copied().collect(),
            ..*self
        }
    }
}
