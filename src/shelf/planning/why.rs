//! A plan with its reasons: what each pour is for, and why a line is missed.

use super::choice::{Choice, used_of};
use super::model::Model;
use super::serve::{MOST, Outcome, day};
use super::{Gap, Line, Loss, Met, Miss, Plan, Pour};
use crate::sort;

/// Candles of one good that are, or are going to be, there.
struct Pool {
    ready: u32,
    number: u32,
    /// The pour they come from.
    pour: Option<usize>,
}

impl Model {
    pub(super) fn plan(&self, picks: &[&Choice], gap: Option<Gap>) -> Plan {
        let mut plan = Plan {
            lines: self.problem.lines.iter().map(|l| Met { unmet: l.number, ..Met::default() }).collect(),
            score: self.score(picks),
            gap,
            lacks: self.lacks.clone(),
            ..Plan::default()
        };
        for (good, pick) in picks.iter().enumerate() {
            self.pour(good, pick, &mut plan);
        }
        let left = self.left_over(picks);
        for (line, met) in self.problem.lines.iter().zip(&mut plan.lines) {
            if met.on_time < line.number {
                met.miss = Some(self.miss(line, met, &plan.pours, &left));
            }
        }
        let kind = |pour: &Pour| self.problem.goods.get(pour.good).map_or(0, |good| good.kind);
        let depths: Vec<(u32, u32)> =
            plan.pours.iter().map(|pour| (kind(pour), self.depth(pour.good))).collect();
        let depth =
            |pour: &Pour| depths.iter().filter(|(of, _)| *of == kind(pour)).map(|(_, depth)| *depth).min();
        sort::by(&mut plan.pours, |a, b| {
            (depth(a), kind(a), a.good, b.number).cmp(&(depth(b), kind(b), b.good, a.number))
        });
        plan
    }

    fn depth(&self, good: usize) -> u32 {
        self.problem.goods.get(good).map_or(0, |good| good.depth)
    }

    /// The pours of one good, and its lines.
    fn pour(&self, place: usize, pick: &Choice, plan: &mut Plan) {
        let (Some(good), Some(serving)) = (self.problem.goods.get(place), self.servings.get(place)) else {
            return;
        };
        let first = plan.pours.len();
        let new = |number, pinned| Pour { good: place, number, pinned, ..Pour::default() };
        let pins = self.problem.pinned.iter().filter(|pin| pin.good == place);
        plan.pours.extend(pins.map(|pin| new(pin.size.number, true)));
        for (size, count) in good.sizes.iter().zip(&pick.counts) {
            plan.pours.extend((0..*count).map(|_| new(size.number, false)));
        }
        let pours = plan.pours.get_mut(first..).unwrap_or_default();
        sort::by(pours, |a, b| b.number.cmp(&a.number));
        let poured = pours.iter().fold(0, |sum: u32, pour| sum.saturating_add(pour.number));
        let outcome = serving.outcome(poured, &self.order);

        let mut pools: Vec<Pool> = good
            .stock
            .iter()
            .map(|(ready, number)| Pool { ready: *ready, number: *number, pour: None })
            .collect();
        let poured_pools = pours.iter().enumerate();
        pools.extend(poured_pools.map(|(at, p)| Pool {
            ready: good.takes,
            number: p.number,
            pour: Some(at),
        }));
        sort::by(&mut pools, |a, b| a.ready.cmp(&b.ready));
        let shares = serving.shares(poured, &outcome);
        let lines = &mut plan.lines;
        for (line, on_time, _) in &shares {
            give(&mut pools, pours, lines.get_mut(*line), *line, *on_time);
        }
        for (line, on_time, late) in &shares {
            let met = lines.get_mut(*line);
            give(&mut pools, pours, met, *line, *late);
            if let Some(met) = lines.get_mut(*line) {
                (met.on_time, met.late) = (*on_time, *late);
                met.unmet = met.unmet.saturating_sub(on_time + late);
            }
        }
        let on_shelf = pools.iter().filter(|pool| pool.pour.is_none()).map(|pool| pool.number);
        let mut wish = good.spare.saturating_sub(on_shelf.fold(0, u32::saturating_add));
        for pool in &pools {
            if let Some(pour) = pool.pour.and_then(|at| pours.get_mut(at)) {
                pour.spare = pool.number.min(wish);
                pour.surplus = pool.number - pour.spare;
                wish -= pour.spare;
            }
        }
        for pour in pours {
            pour.without = loss(&outcome, &serving.outcome(poured - pour.number, &self.order));
        }
    }

    /// What is left of every supply when all is poured.
    fn left_over(&self, picks: &[&Choice]) -> Vec<u64> {
        let mut left = self.problem.supplies.clone();
        for (supply, left) in left.iter_mut().enumerate() {
            let pins = self.problem.pinned.iter().map(|pin| used_of(&pin.size, supply));
            *left = left.saturating_sub(pins.fold(0, u64::saturating_add));
            for (good, pick) in self.problem.goods.iter().zip(picks) {
                for (size, count) in good.sizes.iter().zip(&pick.counts) {
                    *left = left.saturating_sub(used_of(size, supply).saturating_mul(u64::from(*count)));
                }
            }
        }
        left
    }

    fn miss(&self, line: &Line, met: &Met, pours: &[Pour], left: &[u64]) -> Miss {
        let Some(good) = self.problem.goods.get(line.good) else { return Miss::Size };
        if met.unmet == 0 && good.takes > day(line.wanted) {
            return Miss::Date { ready: good.takes };
        }
        let of = pours.iter().filter(|pour| pour.good == line.good);
        let over = of.fold(0, |sum: u32, pour| sum.saturating_add(pour.spare.saturating_add(pour.surplus)));
        let missing = if line.in_parts { 1 } else { (met.late + met.unmet).saturating_sub(over).max(1) };
        let sizes = || good.sizes.iter().filter(|size| size.number > 0);
        let enough = sizes().filter(|size| size.number >= missing).min_by_key(|size| size.number);
        let Some(size) = enough.or_else(|| sizes().max_by_key(|size| size.number)) else { return Miss::Size };
        let times = missing.div_ceil(size.number);
        let lacks = left.iter().enumerate().filter_map(|(supply, left)| {
            let used = used_of(size, supply).saturating_mul(times.into());
            (used > *left).then(|| (supply, used - left))
        });
        let lacks: Vec<(usize, u64)> = lacks.collect();
        if !lacks.is_empty() {
            Miss::Supply { number: size.number.saturating_mul(times), lacks }
        } else if good.takes > day(line.wanted) {
            Miss::Date { ready: good.takes }
        } else if self.servings.get(line.good).is_some_and(|of| of.ordered > MOST) {
            Miss::Most
        } else {
            Miss::Goals
        }
    }
}

/// Takes so many candles for a line: the first ready first.
fn give(pools: &mut [Pool], pours: &mut [Pour], met: Option<&mut Met>, line: usize, mut number: u32) {
    let Some(met) = met else { return };
    for pool in pools {
        let taken = pool.number.min(number);
        if taken == 0 {
            continue;
        }
        pool.number -= taken;
        number -= taken;
        met.ready = met.ready.max(Some(pool.ready));
        let Some(pour) = pool.pour.and_then(|at| pours.get_mut(at)) else { continue };
        met.poured += taken;
        match pour.serves.last_mut().filter(|(of, _)| *of == line) {
            Some((_, number)) => *number += taken,
            None => pour.serves.push((line, taken)),
        }
    }
}

fn loss(with: &Outcome, without: &Outcome) -> Loss {
    Loss {
        late: without.score.late.saturating_sub(with.score.late),
        unmet: without.score.unmet.saturating_sub(with.score.unmet),
        short: without.score.short.saturating_sub(with.score.short),
    }
}
