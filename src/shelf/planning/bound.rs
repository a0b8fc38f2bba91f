//! How good a plan could be at best, measure by measure.
//!
//! Each scarce supply gets a price (a Lagrange multiplier): where every unit chooses freely but pays for what it uses, no
//! plan costs less than the cheapest ways together less the price of all there is. For a later measure the earlier
//! ones are supplies too, of which there is as much as the best plan so far has. The prices come from a linear programme
//! in floating point; the bounds are then reckoned from them in whole numbers, and hold whatever the prices are.

use super::prices::{Part, Row, Tableau};
use super::units::Units;

/// Bounds are in parts of one candle, pour or change.
const BITS: u32 = 24;
pub(super) const ONE: i64 = 1 << BITS;
/// Higher prices than this are cut, so that no sum overflows.
const DEAREST: f64 = 65_536.0;

/// What a way costs beyond the cheapest of its unit, in each measure.
pub(super) type Regret = [i64; 6];

/// What a plan better than the best so far must keep to.
pub(super) struct Bound {
    /// For each unit and way.
    pub(super) regrets: Vec<Vec<Regret>>,
    /// How much regret there may be in all until a measure is worse than that of the best plan so far.
    pub(super) slack: Regret,
    /// What one kind more costs.
    pub(super) fee: Regret,
    /// Units of the same kind that may be poured: each way was charged its part of the fee only.
    pub(super) sharing: Vec<i64>,
    /// For each measure the price of all there is of each supply.
    prices: Vec<Vec<i64>>,
}

/// By how much a plan with so much regret may be better in this measure, the earlier ones being as good as can be. None:
/// it is no better.
pub(super) fn hope(regret: &Regret, slack: &Regret, measure: usize) -> Option<u32> {
    let left = slack.iter().zip(regret).nth(measure).map(|(slack, regret)| slack - regret)?;
    let better = left >= ONE && !is_worse(regret, slack, measure);
    better.then(|| u32::try_from(left / ONE).unwrap_or(u32::MAX))
}

/// Whether a plan with so much regret is worse in this measure or an earlier one.
pub(super) fn is_worse(regret: &Regret, slack: &Regret, measure: usize) -> bool {
    regret.iter().zip(slack).take(measure + 1).any(|(regret, slack)| regret > slack)
}

/// A way with its measures, each less the least of its unit.
struct Column<'a> {
    unit: usize,
    cost: Regret,
    uses: &'a [u64],
}

struct Prices {
    supplies: Vec<i64>,
    measures: Regret,
}

impl Bound {
    /// For plans better than the best so far, whose rank is `have`, in one measure and those before.
    pub(super) fn new(units: &Units, have: &[u32; 6], measure: usize) -> Self {
        let pourable = |kind: usize| {
            let units = units.units.iter().filter(|unit| unit.kind == Some(kind));
            units.filter(|unit| unit.ways.iter().any(|way| way.poured)).count()
        };
        let sharing = |kind: Option<usize>| kind.map_or(1, |kind| pourable(kind).max(1) as i64);
        let sharing: Vec<i64> = units.units.iter().map(|unit| sharing(unit.kind)).collect();
        let mut have = have.map(|have| i64::from(have) << BITS);
        let mut columns: Vec<Vec<Column>> = Vec::new();
        for (place, (unit, sharing)) in units.units.iter().zip(&sharing).enumerate() {
            let mut of: Vec<Column> = Vec::new();
            for way in &unit.ways {
                let mut cost = way.rank.map(|cost| i64::from(cost) << BITS);
                if let Some(cell) = cost.get_mut(units.changes)
                    && unit.kind.is_some()
                    && way.poured
                {
                    *cell += ONE / sharing;
                }
                of.push(Column { unit: place, cost, uses: &way.uses });
            }
            for (place, have) in have.iter_mut().enumerate() {
                let least = of.iter().filter_map(|c| c.cost.get(place)).min().copied().unwrap_or(0);
                of.iter_mut().filter_map(|c| c.cost.get_mut(place)).for_each(|cost| *cost -= least);
                *have -= least;
            }
            columns.push(of);
        }
        let regrets = columns.iter().map(|of| vec![[0; 6]; of.len()]).collect();
        let mut bound = Self { regrets, slack: [0; 6], fee: [0; 6], sharing, prices: Vec::new() };
        let mut tableau = tableau(units, &columns, &have);
        for place in 0..=measure {
            let prices = Prices::new(&tableau.solve(place), units.left.len());
            bound.reckon(place, &prices, &columns, units, &have);
            bound.prices.push(prices.supplies);
        }
        bound
    }

    /// The regrets and the slack of one measure, rounded so that the bound is never too high.
    fn reckon(
        &mut self,
        place: usize,
        prices: &Prices,
        columns: &[Vec<Column>],
        units: &Units,
        have: &Regret,
    ) {
        let at = |of: &Regret| of.get(place).copied().unwrap_or(0);
        let mut slack = at(have) + prices.supplies.iter().sum::<i64>();
        for (price, have) in prices.measures.iter().zip(have) {
            slack += part(*price, i128::from(*have), ONE.into()) + 1;
        }
        for (regrets, columns) in self.regrets.iter_mut().zip(columns) {
            let charged = columns.iter().map(|column| {
                let supplies = prices.supplies.iter().zip(column.uses).zip(&units.left);
                let supplies =
                    supplies.map(|((price, used), left)| part(*price, i128::from(*used), i128::from(*left)));
                let measures = prices.measures.iter().zip(&column.cost);
                at(&column.cost)
                    + supplies.sum::<i64>()
                    + measures.map(|(price, cost)| part(*price, i128::from(*cost), ONE.into())).sum::<i64>()
            });
            let charged: Vec<i64> = charged.collect();
            let least = charged.iter().min().copied().unwrap_or(0);
            slack -= least;
            for (regret, charged) in regrets.iter_mut().zip(charged) {
                if let Some(cell) = regret.get_mut(place) {
                    *cell = charged - least;
                }
            }
        }
        if let (Some(cell), Some(fee)) = (self.slack.get_mut(place), self.fee.get_mut(place)) {
            *cell = slack;
            *fee = if place == units.changes { ONE } else { 0 };
            *fee += prices.measures.get(units.changes).copied().unwrap_or(0);
        }
    }

    /// What so much of a supply, of which there is `left`, was charged in a measure.
    pub(super) fn price(&self, measure: usize, supply: usize, used: u64, left: u64) -> i64 {
        let price = self.prices.get(measure).and_then(|prices| prices.get(supply)).copied().unwrap_or(0);
        part(price, i128::from(used), i128::from(left))
    }

    /// What the units of a kind have not been charged, of which so many are poured.
    pub(super) fn rest(&self, poured: u8, sharing: i64) -> Regret {
        let poured = i64::from(poured);
        self.fee.map(|fee| if poured == 0 { 0 } else { fee - (poured * fee + sharing - 1) / sharing })
    }
}

/// So much of a price: `price` × `used` / `all`, rounded down.
fn part(price: i64, used: i128, all: i128) -> i64 {
    let whole = i128::from(price).saturating_mul(used);
    whole.checked_div_euclid(all).and_then(|part| i64::try_from(part).ok()).unwrap_or(0)
}

impl Prices {
    fn new(found: &[(Part, f64)], supplies: usize) -> Self {
        let mut prices = Self { supplies: vec![0; supplies], measures: [0; 6] };
        for (of, price) in found {
            let cell = match of {
                Part::Choice => None,
                Part::Supply(supply) => prices.supplies.get_mut(*supply),
                Part::Measure(measure) => prices.measures.get_mut(*measure),
            };
            if let Some(cell) = cell {
                *cell = (price.min(DEAREST) * ONE as f64) as i64;
            }
        }
        prices
    }
}

/// The programme at the plan so far: its columns are all other ways.
fn tableau(units: &Units, columns: &[Vec<Column>], have: &Regret) -> Tableau {
    let mut others: Vec<(&Column, &Column)> = Vec::new();
    let mut picked: Vec<&Column> = Vec::new();
    for (columns, unit) in columns.iter().zip(&units.units) {
        let Some(pick) = unit.ways.iter().position(|way| way.picked).and_then(|at| columns.get(at)) else {
            continue;
        };
        picked.push(pick);
        others.extend(columns.iter().filter(|c| !std::ptr::eq(*c, pick)).map(|c| (c, pick)));
    }
    let mut rows = Vec::new();
    // Rows that are even would leave it turning in a circle: each gets a little room of its own.
    let mut room = 0.0;
    let mut row = |part, constant: f64, terms: Vec<f64>| {
        room += 1e-7;
        rows.push(Row { part, constant: constant.max(0.0) + room, terms });
    };
    for pick in &picked {
        let of = others.iter().map(|(c, _)| if c.unit == pick.unit { -1.0 } else { 0.0 });
        row(Part::Choice, 1.0, of.collect());
    }
    for (supply, left) in units.left.iter().enumerate() {
        let of = |column: &Column| column.uses.get(supply).copied().unwrap_or(0) as f64 / *left as f64;
        let used: f64 = picked.iter().map(|pick| of(pick)).sum();
        row(Part::Supply(supply), 1.0 - used, others.iter().map(|(c, pick)| of(pick) - of(c)).collect());
    }
    for (measure, have) in have.iter().enumerate() {
        let of = |column: &Column| column.cost.get(measure).copied().unwrap_or(0) as f64 / ONE as f64;
        let used: f64 = picked.iter().map(|pick| of(pick)).sum();
        let constant = *have as f64 / ONE as f64 - used;
        row(Part::Measure(measure), constant, others.iter().map(|(c, pick)| of(pick) - of(c)).collect());
    }
    Tableau { rows, columns: vec![Part::Choice; others.len()] }
}
