//! The ways to pour one good: sums of batches, less those that another beats.

use super::serve::{Outcome, Serving};
use super::{Good, Measure, Score, Size};

/// So many candles of a good in such batches, beside those that are pinned.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(super) struct Choice {
    /// How many batches of each size.
    pub(super) counts: Vec<u32>,
    pub(super) score: Score,
    pub(super) rank: [u32; 6],
    /// Of each scarce supply.
    pub(super) uses: Vec<u64>,
}

impl Choice {
    pub(super) fn is_poured(&self) -> bool {
        self.counts.iter().any(|count| *count > 0)
    }
}

/// Batches of a good together.
#[derive(Clone)]
struct Sum {
    pours: u32,
    counts: Vec<u32>,
    uses: Vec<u64>,
}

/// What one good's batches may be, and when they are enough.
pub(super) struct Room<'a> {
    pub(super) good: &'a Good,
    /// Pinned candles and pours.
    pub(super) pinned: (u32, u32),
    /// More poured is only surplus.
    pub(super) enough: u32,
}

pub(super) fn fits(uses: &[u64], left: &[u64]) -> bool {
    uses.iter().zip(left).all(|(use_, left)| use_ <= left)
}

impl Room<'_> {
    fn sizes(&self) -> impl Iterator<Item = (usize, &Size)> {
        self.good.sizes.iter().enumerate().filter(|(_, size)| size.number > 0)
    }

    /// The most that any sum worth pouring takes of a supply, beside what is pinned.
    pub(super) fn most_used(&self, supply: usize) -> u64 {
        let mut most: Vec<Option<u64>> = vec![Some(0)];
        let mut top = 0;
        for poured in 0..self.enough.saturating_sub(self.pinned.0) as usize {
            let Some(used) = most.get(poured).copied().flatten() else { continue };
            for (_, size) in self.sizes() {
                let sum = poured + size.number as usize;
                if most.len() <= sum {
                    most.resize(sum + 1, None);
                }
                let used = used.saturating_add(used_of(size, supply));
                top = top.max(used);
                if let Some(cell) = most.get_mut(sum) {
                    *cell = (*cell).max(Some(used));
                }
            }
        }
        top
    }

    /// Every way that no other beats in rank and scarce supplies alike.
    pub(super) fn choices(
        &self,
        serving: &Serving,
        order: &[Measure; 6],
        scarce: &[usize],
        left: &[u64],
    ) -> Vec<Choice> {
        let (base, pours) = self.pinned;
        let none = Sum { pours: 0, counts: vec![0; self.good.sizes.len()], uses: vec![0; scarce.len()] };
        let mut sums: Vec<Vec<Sum>> = vec![vec![none]];
        let mut at = 0;
        let mut choices = Vec::new();
        while let Some(here) = sums.get_mut(at).map(std::mem::take) {
            let poured = base.saturating_add(at as u32);
            let outcome = if here.is_empty() { Outcome::default() } else { serving.outcome(poured, order) };
            for sum in here {
                if poured < self.enough {
                    self.extend(&sum, at, scarce, left, &mut sums);
                }
                let score = Score { pours: pours + sum.pours, ..outcome.score };
                choices.push(Choice { rank: score.rank(order), counts: sum.counts, score, uses: sum.uses });
            }
            at += 1;
        }
        choices
    }

    fn extend(&self, sum: &Sum, at: usize, scarce: &[usize], left: &[u64], sums: &mut Vec<Vec<Sum>>) {
        for (place, size) in self.sizes() {
            let mut more = sum.clone();
            more.pours += 1;
            if let Some(count) = more.counts.get_mut(place) {
                *count += 1;
            }
            for (used, supply) in more.uses.iter_mut().zip(scarce) {
                *used = used.saturating_add(used_of(size, *supply));
            }
            if !fits(&more.uses, left) {
                continue;
            }
            let at = at + size.number as usize;
            if sums.len() <= at {
                sums.resize(at + 1, Vec::new());
            }
            let Some(there) = sums.get_mut(at) else { continue };
            // Of as many candles, fewer pours of less are always better.
            if !there.iter().any(|s| s.pours <= more.pours && fits(&s.uses, &more.uses)) {
                there.retain(|s| !(more.pours <= s.pours && fits(&more.uses, &s.uses)));
                there.push(more);
            }
        }
    }
}

pub(super) fn used_of(size: &Size, supply: usize) -> u64 {
    let of = size.uses.iter().filter(|(s, _)| *s == supply);
    of.fold(0, |sum: u64, (_, number)| sum.saturating_add(*number))
}
