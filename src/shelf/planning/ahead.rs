//! What is ahead of a sum of ways: the regret that the later units cannot do without.
//!
//! A [`Bound`] lets go for its price what of a supply is left over in the end. Here what is left of each supply is followed
//! to the end: what the later units together cannot use is lost, and of one supply at a time it is known what they can do
//! at best with so much of it, each in one of its ways and not in a mix of them. All else being charged for at its price as
//! before, both can be added to what a sum has to regret, of the latter the most.

use super::bound::{Bound, Regret};
use super::round::{Stage, divisor};
use super::unit::{Unit, Way};
use super::units::Units;

/// So many parts of a supply are told apart at most, or twice as many.
const PARTS: u64 = 2048;
/// Kept in coarser parts than regrets are, so that the tables take less room: rounded down.
const COARSE: u32 = 12;
/// More than any plan costs.
const NEVER: i64 = i64::MAX / 4;

pub(super) struct Ahead(Vec<Table>);

/// One supply, and its price in one measure.
struct Table {
    supply: usize,
    measure: usize,
    /// How much of it is one part, and what that costs.
    part: u64,
    price: i64,
    /// After each stage: so many parts are more than the later units can use, and for each number of parts left what is
    /// lost at least.
    stages: Vec<(u64, Vec<i32>)>,
}

impl Ahead {
    /// For the measures up to this one.
    pub(super) fn new(units: &Units, bound: &Bound, stages: &[Stage], measure: usize) -> Self {
        let mut tables = Vec::new();
        for measure in 0..=measure {
            for (supply, left) in units.left.iter().enumerate() {
                if *left > 0 && bound.price(measure, supply, *left, *left) > 0 {
                    tables.push(Table::new(units, bound, stages, (measure, supply), *left));
                }
            }
        }
        Self(tables)
    }

    /// The regret of a sum and of what is ahead of it after a stage, so much of each supply being left.
    pub(super) fn with(&self, regret: &Regret, stage: usize, left: impl Fn(usize) -> u64) -> Regret {
        let mut sum = *regret;
        let mut most = [0_i64; 6];
        for table in &self.0 {
            let Some((usable, lost)) = table.stages.get(stage) else { continue };
            let parts = left(table.supply).checked_div(table.part).unwrap_or(0);
            let over = parts.saturating_sub(*usable) as i64 * table.price;
            let lost = i64::from(lost.get(parts as usize).copied().unwrap_or(0)) << COARSE;
            if let (Some(sum), Some(most)) = (sum.get_mut(table.measure), most.get_mut(table.measure)) {
                *sum += over;
                *most = (*most).max(lost - over);
            }
        }
        sum.iter_mut().zip(most).for_each(|(sum, most)| *sum += most);
        sum
    }
}

impl Table {
    fn new(
        units: &Units,
        bound: &Bound,
        stages: &[Stage],
        (measure, supply): (usize, usize),
        left: u64,
    ) -> Self {
        let paid = |used: u64| bound.price(measure, supply, used, left);
        let ways = units.units.iter().flat_map(|unit| &unit.ways);
        let step = ways.filter_map(|way| way.uses.get(supply)).fold(0, |step, used| divisor(step, *used));
        let part = step.max(1) * (left / step.max(1)).div_ceil(PARTS).max(1);
        let mut best = vec![0_i64; (left / part) as usize + 1];
        let mut after = Vec::new();
        for stage in stages.iter().rev() {
            let later = stage.later.get(supply).copied().unwrap_or(0);
            let lost = (0..).zip(&best).map(|(parts, best)| {
                let lost = (paid(parts * part) + best).max(0) >> COARSE;
                i32::try_from(lost).unwrap_or(i32::MAX)
            });
            after.push((later.div_ceil(part), lost.collect()));
            if let Some(unit) = units.units.get(stage.unit) {
                best = before(unit, &best, |way| {
                    let used = way.uses.get(supply).copied().unwrap_or(0);
                    ((used / part) as usize, way.regret.get(measure).copied().unwrap_or(0) - paid(used))
                });
            }
        }
        after.reverse();
        Self { supply, measure, part, price: paid(part), stages: after }
    }
}

/// For each number of parts the least that a unit and those after it cost, what they pay for the supply not counted.
fn before(unit: &Unit, after: &[i64], costs: impl Fn(&Way) -> (usize, i64)) -> Vec<i64> {
    let mut ways: Vec<(usize, i64)> = unit.ways.iter().map(costs).collect();
    ways.sort_unstable();
    let mut best = vec![NEVER; after.len()];
    let mut least = NEVER;
    for (parts, cost) in ways {
        // One that takes more and costs no less is of no use.
        if cost >= least {
            continue;
        }
        least = cost;
        for (best, after) in best.iter_mut().skip(parts).zip(after) {
            *best = (*best).min(after.saturating_add(cost));
        }
    }
    best
}
