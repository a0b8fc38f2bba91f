//! All that is to be chosen for, and what there is of the scarce supplies.

use super::Measure;
use super::bound::{Bound, Regret};
use super::choice::fits;
use super::model::{Model, plus};
use super::unit::{Picks, Unit, Way};

/// Units, and what there is for them of the scarce supplies.
#[derive(Clone)]
pub(super) struct Units {
    pub(super) units: Vec<Unit>,
    pub(super) left: Vec<u64>,
    /// The place of the changes in a rank.
    pub(super) changes: usize,
}

impl Units {
    /// One unit for each good.
    pub(super) fn new(model: &Model) -> Self {
        let changes = model.order.iter().position(|m| *m == Measure::Changes).unwrap_or(5);
        let mut units = Vec::new();
        for (good, (choices, (kind, pinned))) in model.choices.iter().zip(&model.kinds).enumerate() {
            let ways = (0..).zip(choices).map(|(at, choice)| Way {
                from: vec![at],
                poured: choice.is_poured(),
                rank: choice.rank,
                uses: choice.uses.clone(),
                regret: [0; 6],
                picked: false,
            });
            let kind = (!pinned).then_some(*kind);
            let mut unit = Unit { goods: vec![good], kind, ways: Vec::new() };
            unit.set(ways.collect(), changes);
            units.push(unit);
        }
        let mut all = Self { units, left: model.left.clone(), changes };
        all.thin();
        all
    }

    /// A first plan: from nothing poured, again and again the one unit poured otherwise that betters the plan most.
    pub(super) fn greedy(&self) -> Vec<Way> {
        let idle = |unit: &Unit| {
            let ways = unit.ways.iter().filter(|way| way.uses.iter().all(|used| *used == 0));
            ways.min_by_key(|way| way.rank).cloned()
        };
        let mut picks: Vec<Way> = self.units.iter().filter_map(idle).collect();
        let mut best = self.rank(&picks);
        loop {
            let mut step: Option<(usize, &Way)> = None;
            for (place, unit) in self.units.iter().enumerate() {
                let others = || picks.iter().enumerate().filter(|(at, _)| *at != place).map(|(_, way)| way);
                let mut left = self.left.clone();
                for way in others() {
                    left.iter_mut().zip(&way.uses).for_each(|(left, used)| *left -= used);
                }
                let sum = others().fold([0; 6], |sum, way| plus(&sum, &way.rank));
                let kinds = self.kinds(&picks, Some(place));
                for way in unit.ways.iter().filter(|way| fits(&way.uses, &left)) {
                    let mut rank = plus(&sum, &way.rank);
                    if let Some(cell) = rank.get_mut(self.changes) {
                        let new = way.poured && unit.kind.is_some_and(|kind| !kinds.contains(&kind));
                        *cell += kinds.len() as u32 + u32::from(new);
                    }
                    if rank < best {
                        (best, step) = (rank, Some((place, way)));
                    }
                }
            }
            let Some((place, way)) = step else { return picks };
            if let Some(pick) = picks.get_mut(place) {
                pick.clone_from(way);
            }
        }
    }

    /// Marks the ways of a plan, so that they are not left out: the best so far.
    pub(super) fn pick(&mut self, picks: &Picks) {
        for unit in &mut self.units {
            let goods = &unit.goods;
            for way in &mut unit.ways {
                way.picked = goods.iter().zip(&way.from).all(|pick| picks.contains(&(*pick.0, *pick.1)));
            }
        }
    }

    /// The ways that are marked.
    pub(super) fn picked(&self) -> Vec<Way> {
        self.units.iter().filter_map(|unit| unit.ways.iter().find(|way| way.picked)).cloned().collect()
    }

    /// The choices of goods that ways of these units are.
    pub(super) fn picks(&self, ways: &[Way]) -> Picks {
        let each = self.units.iter().zip(ways).flat_map(|(unit, way)| unit.goods.iter().zip(&way.from));
        each.map(|(good, at)| (*good, *at)).collect()
    }

    /// Notes what there is to regret of each way by a bound that was reckoned of these units.
    pub(super) fn charge(&mut self, bound: &Bound) {
        for (unit, regrets) in self.units.iter_mut().zip(&bound.regrets) {
            for (way, regret) in unit.ways.iter_mut().zip(regrets) {
                way.regret = *regret;
            }
        }
    }

    /// Leaves out the ways whose regret is not good; but not what is picked.
    pub(super) fn narrow(&mut self, bound: &Bound, good: impl Fn(&Regret) -> bool) {
        self.charge(bound);
        for unit in &mut self.units {
            unit.ways.retain(|way| good(&way.regret) || way.picked);
        }
    }

    /// The same for those who look at one measure and those before it: with fewer ways, as more are beaten.
    pub(super) fn up_to(&self, measure: usize) -> Self {
        let mut units = self.clone();
        for unit in &mut units.units {
            // Changes that do not count yet are nothing that units share.
            unit.kind = unit.kind.filter(|_| self.changes <= measure);
            let mut ways = std::mem::take(&mut unit.ways);
            for way in &mut ways {
                way.rank.iter_mut().skip(measure + 1).for_each(|later| *later = 0);
            }
            unit.set(ways, self.changes);
        }
        units
    }

    /// The kinds poured that units share; but for one unit.
    fn kinds(&self, picks: &[Way], but: Option<usize>) -> Vec<usize> {
        let mut kinds = Vec::new();
        for (place, (unit, pick)) in self.units.iter().zip(picks).enumerate() {
            if let Some(kind) =
                unit.kind.filter(|kind| pick.poured && but != Some(place) && !kinds.contains(kind))
            {
                kinds.push(kind);
            }
        }
        kinds
    }

    /// What the ways of all units come to; in the place of the changes, the kinds that are poured.
    pub(super) fn rank(&self, picks: &[Way]) -> [u32; 6] {
        let mut rank = picks.iter().fold([0; 6], |sum, way| plus(&sum, &way.rank));
        if let Some(cell) = rank.get_mut(self.changes) {
            *cell += self.kinds(picks, None).len() as u32;
        }
        rank
    }
}
