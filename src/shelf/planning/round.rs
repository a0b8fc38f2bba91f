//! One round of the search: all units in turn, with room for so many sums.

use super::ahead::Ahead;
use super::bound::{Bound, hope};
use super::model::plus;
use super::sum::{Sum, undominated};
use super::unit::Way;
use super::units::Units;
use crate::sort;
use std::cmp::Ordering;

/// A unit in its turn.
pub(super) struct Stage {
    pub(super) unit: usize,
    /// The last of its kind.
    ends: bool,
    /// What of each supply all later units can use at most.
    pub(super) later: Vec<u64>,
}

/// A round: all units, with room for so many sums.
pub(super) struct Round {
    pub(super) units: Units,
    pub(super) bound: Bound,
    ahead: Ahead,
    pub(super) stages: Vec<Stage>,
    pub(super) at: usize,
    pub(super) sums: Vec<Sum>,
    /// Of each sum, what it takes of each scarce supply, one after the other.
    uses: Vec<u64>,
    /// For each unit gone through, where its sums came from.
    paths: Vec<Vec<(u32, u32)>>,
    /// How much better the sums left out for room might have been.
    pub(super) left_out: u32,
}

impl Round {
    pub(super) fn new(units: Units, bound: Bound, measure: usize) -> Self {
        let start = Sum { rank: [0; 6], regret: [0; 6], ahead: [0; 6], poured: 0, idle: true, from: (0, 0) };
        let any = hope(&[0; 6], &bound.slack, measure).is_some();
        let uses = vec![0; units.left.len()];
        let stages = stages(&units);
        Self {
            ahead: Ahead::new(&units, &bound, &stages, measure),
            stages,
            sums: any.then_some(start).into_iter().collect(),
            uses: if any { uses } else { Vec::new() },
            units,
            bound,
            at: 0,
            paths: Vec::new(),
            left_out: 0,
        }
    }

    /// One unit more; gives how many sums were made.
    pub(super) fn stage(&mut self, width: usize, busy: bool, measure: usize) -> usize {
        let Some(stage) = self.stages.get(self.at) else { return 0 };
        let Some(unit) = self.units.units.get(stage.unit) else { return 0 };
        let Some(regrets) = self.bound.regrets.get(stage.unit) else { return 0 };
        let sharing = self.bound.sharing.get(stage.unit).copied().unwrap_or(1);
        let wide = self.units.left.len();
        let (mut sums, mut uses) = (Vec::new(), Vec::new());
        for (from, sum) in self.sums.iter().enumerate() {
            let used = self.uses.get(from * wide..(from + 1) * wide).unwrap_or_default();
            for (at, (way, regret)) in (0..).zip(unit.ways.iter().zip(regrets)) {
                let mut total = sum.regret;
                total.iter_mut().zip(regret).for_each(|(total, more)| *total += more);
                let poured = way.poured && unit.kind.is_some();
                let mut new = Sum {
                    rank: sum.rank,
                    regret: total,
                    ahead: total,
                    poured: sum.poured + u8::from(poured && sum.poured < u8::MAX),
                    idle: sum.idle && !way.poured,
                    from: (from as u32, at),
                };
                if stage.ends {
                    let rest = self.bound.rest(new.poured, sharing);
                    new.regret.iter_mut().zip(&rest).for_each(|(total, more)| *total += more);
                }
                if hope(&new.regret, &self.bound.slack, measure).is_none() {
                    continue;
                }
                let fits = used.iter().zip(&way.uses).zip(&self.units.left);
                if fits.clone().any(|((used, more), left)| used + more > *left) {
                    continue;
                }
                let left =
                    |supply| fits.clone().nth(supply).map_or(0, |((used, more), left)| left - used - more);
                new.ahead = self.ahead.with(&new.regret, self.at, left);
                if hope(&new.ahead, &self.bound.slack, measure).is_none() {
                    continue;
                }
                uses.extend(fits.map(|((used, more), _)| used + more));
                new.rank = plus(&sum.rank, &way.rank);
                if let Some(cell) = new.rank.get_mut(self.units.changes) {
                    *cell += u32::from(poured && sum.poured == 0);
                }
                if stage.ends {
                    new.poured = 0;
                }
                sums.push(new);
            }
        }
        let made = sums.len();
        let mut kept = undominated(&self.units, stage, &sums, &uses, busy);
        if kept.len() > width {
            let bound = &self.bound;
            let place = |at: usize| kept.get(at).and_then(|at| sums.get(*at));
            let by_hope = sort::order(kept.len(), &|a, b| match (place(a), place(b)) {
                (Some(a), Some(b)) => {
                    let most = |of: &Sum| of.ahead.get(measure).copied();
                    most(a).cmp(&most(b)).then_with(|| a.ahead.cmp(&b.ahead))
                }
                _ => Ordering::Equal,
            });
            for out in by_hope.iter().skip(width).filter_map(|at| place(*at)) {
                let hope = hope(&out.ahead, &bound.slack, measure).unwrap_or(0);
                self.left_out = self.left_out.max(hope);
            }
            kept = by_hope.iter().take(width).filter_map(|at| kept.get(*at).copied()).collect();
        }
        self.sums = kept.iter().filter_map(|at| sums.get(*at)).cloned().collect();
        self.uses =
            kept.iter().filter_map(|at| uses.get(at * wide..(at + 1) * wide)).flatten().copied().collect();
        self.paths.push(self.sums.iter().map(|sum| sum.from).collect());
        self.at += 1;
        made
    }

    /// The ways of a sum, each in the place of its unit.
    pub(super) fn picks(&self, mut at: usize) -> Option<Vec<Way>> {
        let mut picks: Vec<Option<Way>> = vec![None; self.units.units.len()];
        for (stage, path) in self.stages.iter().zip(&self.paths).rev() {
            let (from, way) = *path.get(at)?;
            *picks.get_mut(stage.unit)? = self.units.units.get(stage.unit)?.ways.get(way as usize).cloned();
            at = from as usize;
        }
        picks.into_iter().collect()
    }
}

/// The units in the order to go through: those of a kind together, and first where the fewest supplies come into play.
fn stages(units: &Units) -> Vec<Stage> {
    let wide = units.left.len();
    let most = |unit: usize, supply: usize| units.units.get(unit).map_or(0, |unit| unit.most(supply));
    let mut groups: Vec<Vec<usize>> = Vec::new();
    for (place, unit) in units.units.iter().enumerate() {
        let kind = |group: &&mut Vec<usize>| {
            let first = group.first().and_then(|first| units.units.get(*first));
            unit.kind.is_some() && first.is_some_and(|first| first.kind == unit.kind)
        };
        match groups.iter_mut().find(kind) {
            Some(group) => group.push(place),
            None => groups.push(vec![place]),
        }
    }
    let mut open = vec![false; wide];
    let mut stages: Vec<Stage> = Vec::new();
    while let Some((place, _)) = groups.iter().enumerate().min_by_key(|(_, group)| {
        let opened = |supply: &usize| {
            !open.get(*supply).copied().unwrap_or(true) && group.iter().any(|unit| most(*unit, *supply) > 0)
        };
        let ways = group.iter().filter_map(|unit| units.units.get(*unit)).map(|unit| unit.ways.len() as u64);
        ((0..wide).filter(opened).count(), ways.fold(1, u64::saturating_mul))
    }) {
        for unit in groups.remove(place) {
            for (supply, open) in open.iter_mut().enumerate() {
                *open |= most(unit, supply) > 0;
            }
            stages.push(Stage { unit, ends: false, later: Vec::new() });
        }
        if let Some(last) = stages.last_mut() {
            last.ends = true;
        }
    }
    let mut later = vec![0_u64; wide];
    for stage in stages.iter_mut().rev() {
        stage.later.clone_from(&later);
        for (supply, later) in later.iter_mut().enumerate() {
            *later = later.saturating_add(most(stage.unit, supply));
        }
    }
    stages
}

/// The greatest common divisor.
pub(super) fn divisor(mut a: u64, mut b: u64) -> u64 {
    while b > 0 {
        (a, b) = (b, a % b);
    }
    a
}
