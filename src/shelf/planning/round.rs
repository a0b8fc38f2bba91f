//! One round of the search: all units in turn, with room for so many sums.

use super::ahead::Ahead;
use super::bound::{Bound, ONE, hope};
use super::made::Made;
use super::model::plus;
use super::sum::{Sum, undominated};
use super::unit::Way;
use super::units::Units;
use crate::sort;

/// For each sum that is kept so many are compared; of twice as many the less hopeful go at once.
const TIMES: usize = 4;

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
    spare: usize,
}

impl Round {
    /// What there is to regret of each way stands with it.
    pub(super) fn new(mut units: Units, bound: Bound, measure: usize, spare: usize) -> Self {
        for unit in &mut units.units {
            sort::by(&mut unit.ways, |a, b| a.regret.get(measure).cmp(&b.regret.get(measure)));
        }
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
            spare,
        }
    }

    /// One unit more; gives how many sums were looked at.
    pub(super) fn stage(&mut self, width: usize, busy: bool, measure: usize) -> usize {
        let Some(stage) = self.stages.get(self.at) else { return 0 };
        let Some(unit) = self.units.units.get(stage.unit) else { return 0 };
        let sharing = self.bound.sharing.get(stage.unit).copied().unwrap_or(1);
        let slack = &self.bound.slack;
        let wide = self.units.left.len();
        let mut made = Made { sums: Vec::new(), uses: Vec::new(), wide, measure };
        let many = self.spare + TIMES * width;
        let (mut tried, mut left_out) = (0, 0);
        for (from, sum) in self.sums.iter().enumerate() {
            let used = self.uses.get(from * wide..(from + 1) * wide).unwrap_or_default();
            for (at, way) in (0..).zip(&unit.ways) {
                tried += 1;
                let mut total = sum.regret;
                total.iter_mut().zip(&way.regret).for_each(|(total, more)| *total += more);
                if hope(&total, slack, measure).is_none() {
                    // Those after it have more to regret in the measure.
                    if total
                        .get(measure)
                        .zip(slack.get(measure))
                        .is_some_and(|(has, slack)| slack - has < ONE)
                    {
                        break;
                    }
                    continue;
                }
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
                let fits = used.iter().zip(&way.uses).zip(&self.units.left);
                if fits.clone().any(|((used, more), left)| used + more > *left) {
                    continue;
                }
                let left =
                    |supply| fits.clone().nth(supply).map_or(0, |((used, more), left)| left - used - more);
                new.ahead = self.ahead.with(&new.regret, self.at, left);
                if hope(&new.ahead, slack, measure).is_none() {
                    continue;
                }
                made.uses.extend(fits.map(|((used, more), _)| used + more));
                new.rank = plus(&sum.rank, &way.rank);
                if let Some(cell) = new.rank.get_mut(self.units.changes) {
                    *cell += u32::from(poured && sum.poured == 0);
                }
                if stage.ends {
                    new.poured = 0;
                }
                made.sums.push(new);
            }
            // So many need not be held until it is known which of them are beaten.
            if made.sums.len() > 2 * many {
                let order = made.by_hope();
                let (best, out) = order.split_at(many);
                left_out = left_out.max(made.hope(out.first(), slack));
                made = made.only(best);
            }
        }
        let order = made.by_hope();
        // What beats another is mostly no worse by hope, so that the first are enough where there are too many.
        let mut first = many.min(order.len());
        let kept = loop {
            let (best, out) = order.split_at(first);
            let mut kept = undominated(&self.units, stage, &made.sums, &made.uses, busy, best);
            if out.is_empty() || kept.len() >= width {
                left_out = left_out.max(made.hope(out.first(), slack)).max(made.hope(kept.get(width), slack));
                kept.truncate(width);
                break kept;
            }
            first = (4 * first).min(order.len());
        };
        self.left_out = self.left_out.max(left_out);
        let made = made.only(&kept);
        (self.sums, self.uses) = (made.sums, made.uses);
        self.paths.push(self.sums.iter().map(|sum| sum.from).collect());
        self.at += 1;
        tried
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
