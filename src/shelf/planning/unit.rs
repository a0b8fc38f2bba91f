//! Goods that are chosen for together.
//!
//! Where few goods share a supply or a kind, all the ways to pour them together are listed once, and the supply or the
//! kind is no more a matter between units. What is left between them is little, and bounds on it are tight.

use super::Measure;
use super::bound::{Bound, Regret};
use super::choice::fits;
use super::model::{Model, plus};
use crate::sort;

/// A choice of each good of a unit.
#[derive(Clone, PartialEq, Eq)]
pub(super) struct Way {
    /// The places of the choices, good by good.
    pub(super) from: Vec<u32>,
    pub(super) poured: bool,
    pub(super) rank: [u32; 6],
    pub(super) uses: Vec<u64>,
    /// It is part of the best plan so far.
    pub(super) picked: bool,
}

/// Goods, and the place of the choice of each.
pub(super) type Picks = Vec<(usize, u32)>;

#[derive(Clone)]
pub(super) struct Unit {
    pub(super) goods: Vec<usize>,
    /// The kind that other units have too; none: what the unit costs in changes is in its ranks.
    pub(super) kind: Option<usize>,
    pub(super) ways: Vec<Way>,
}

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
                picked: false,
            });
            let kind = (!pinned).then_some(*kind);
            let mut unit = Unit { goods: vec![good], kind, ways: Vec::new() };
            ways.for_each(|way| unit.add(way, changes));
            units.push(unit);
        }
        let mut all = Self { units, left: model.left.clone(), changes };
        all.thin();
        all
    }

    /// Brings units together where that takes listing no more than so many ways.
    pub(super) fn join(&mut self, most: usize) {
        let mut kinds: Vec<usize> = self.units.iter().filter_map(|unit| unit.kind).collect();
        kinds.sort_unstable();
        kinds.dedup();
        for kind in kinds {
            let of_kind = |unit: &Unit| unit.kind == Some(kind);
            while self.join_two(of_kind, most) {}
            self.settle(kind);
        }
        self.thin();
        // The supplies that fewest ways have to be listed for go first.
        loop {
            let mut best: Option<(usize, usize)> = None;
            for supply in 0..self.left.len() {
                let of = || self.units.iter().filter(|unit| unit.most(supply) > 0);
                let ways = of().fold(1, |ways: usize, unit| ways.saturating_mul(unit.ways.len()));
                if ways <= most && of().all(|unit| unit.kind.is_none()) && best.is_none_or(|(w, _)| ways < w)
                {
                    best = Some((ways, supply));
                }
            }
            let Some((_, supply)) = best else { break };
            while self.join_two(|unit: &Unit| unit.most(supply) > 0, most) {}
            if !self.thin() {
                break;
            }
        }
    }

    /// Joins the two shortest of these units, if there are two and it is worth it.
    fn join_two(&mut self, of: impl Fn(&Unit) -> bool, most: usize) -> bool {
        let mut places: Vec<(usize, usize)> = Vec::new();
        for (at, unit) in self.units.iter().enumerate().filter(|(_, unit)| of(unit)) {
            places.push((unit.ways.len(), at));
        }
        sort::by(&mut places, |a, b| a.cmp(b));
        let [(some, a), (more, b), ..] = places.as_slice() else { return false };
        if some.saturating_mul(*more) > most {
            return false;
        }
        let other = self.units.remove(*a.max(b));
        let Some(unit) = self.units.get_mut(*a.min(b)) else { return false };
        unit.join(&other, self.changes, &self.left);
        true
    }

    /// Counts the change that a kind costs among the ranks of its unit, where that is one.
    fn settle(&mut self, kind: usize) {
        let mut of_kind = self.units.iter_mut().filter(|unit| unit.kind == Some(kind));
        let (Some(unit), None) = (of_kind.next(), of_kind.next()) else { return };
        unit.kind = None;
        for mut way in std::mem::take(&mut unit.ways) {
            if let Some(cell) = way.rank.get_mut(self.changes) {
                *cell += u32::from(way.poured);
            }
            unit.add(way, self.changes);
        }
    }

    /// Leaves out the supplies that cannot run out, or not before another does; true when there were any.
    fn thin(&mut self) -> bool {
        let mut any = false;
        while let Some(out) =
            (0..self.left.len()).find(|supply| self.is_plenty(*supply) || self.is_implied(*supply))
        {
            any = true;
            self.left.remove(out);
            for unit in &mut self.units {
                for mut way in std::mem::take(&mut unit.ways) {
                    way.uses.remove(out);
                    unit.add(way, self.changes);
                }
            }
        }
        any
    }

    fn is_plenty(&self, supply: usize) -> bool {
        let most = self.units.iter().map(|unit| unit.most(supply)).fold(0, u64::saturating_add);
        self.left.get(supply).is_some_and(|left| most <= *left)
    }

    /// Another supply lets no more be poured than there is of this one.
    fn is_implied(&self, supply: usize) -> bool {
        let ways = || self.units.iter().flat_map(|unit| &unit.ways);
        let all = |of: usize| self.left.get(of).map_or(0, |left| u128::from(*left));
        let used = |way: &Way, of: usize| way.uses.get(of).map_or(0, |used| u128::from(*used));
        let by = |other: usize| {
            ways().all(|way| {
                let (this, that) = (used(way, supply), used(way, other));
                this == 0 || this.saturating_mul(all(other)) <= that.saturating_mul(all(supply))
            })
        };
        (0..self.left.len()).any(|other| other != supply && all(other) > 0 && by(other))
    }

    /// Units that have neither a supply nor a kind in common with the others, by themselves.
    pub(super) fn split(self) -> Vec<Self> {
        let mut parts: Vec<Self> = Vec::new();
        let wide = self.left.len();
        for unit in self.units {
            let meets = |other: &Unit| {
                other.kind.is_some() && other.kind == unit.kind
                    || (0..wide).any(|supply| other.most(supply) > 0 && unit.most(supply) > 0)
            };
            let mut part = Self { units: Vec::new(), left: self.left.clone(), changes: self.changes };
            let (met, apart): (Vec<Self>, Vec<Self>) =
                parts.into_iter().partition(|other| other.units.iter().any(meets));
            part.units.extend(met.into_iter().flat_map(|other| other.units));
            part.units.push(unit);
            parts = apart;
            parts.push(part);
        }
        parts.iter_mut().for_each(|part| {
            part.thin();
        });
        parts
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

    /// Leaves out the ways whose regret is not good; but not what is picked.
    pub(super) fn narrow(&mut self, bound: &Bound, good: impl Fn(&Regret) -> bool) {
        for (unit, regrets) in self.units.iter_mut().zip(&bound.regrets) {
            let mut regrets = regrets.iter();
            unit.ways.retain(|way| regrets.next().is_some_and(&good) || way.picked);
        }
    }

    /// The same for those who look at one measure and those before it: with fewer ways, as more are beaten.
    pub(super) fn up_to(&self, measure: usize) -> Self {
        let mut units = self.clone();
        for unit in &mut units.units {
            for mut way in std::mem::take(&mut unit.ways) {
                way.rank.iter_mut().skip(measure + 1).for_each(|later| *later = 0);
                unit.add(way, self.changes);
            }
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

impl Unit {
    pub(super) fn most(&self, supply: usize) -> u64 {
        self.ways.iter().filter_map(|way| way.uses.get(supply)).max().copied().unwrap_or(0)
    }

    /// One way more, unless another beats it; what it beats goes, but not what is picked.
    fn add(&mut self, way: Way, changes: usize) {
        let shared = self.kind.is_some();
        let beats = |a: &Way, b: &Way| {
            let mut rank = a.rank;
            // To pour may cost a change more.
            if let Some(cell) = rank.get_mut(changes) {
                *cell += u32::from(shared && a.poured && !b.poured);
            }
            rank <= b.rank && fits(&a.uses, &b.uses)
        };
        if way.picked || !self.ways.iter().any(|kept| beats(kept, &way)) {
            self.ways.retain(|kept| kept.picked || !beats(&way, kept));
            self.ways.push(way);
        }
    }

    fn join(&mut self, other: &Self, changes: usize, left: &[u64]) {
        self.goods.extend(&other.goods);
        for a in std::mem::take(&mut self.ways) {
            for b in &other.ways {
                let uses: Vec<u64> = a.uses.iter().zip(&b.uses).map(|(a, b)| a.saturating_add(*b)).collect();
                if fits(&uses, left) {
                    let from = a.from.iter().chain(&b.from).copied().collect();
                    let poured = a.poured || b.poured;
                    let (rank, picked) = (plus(&a.rank, &b.rank), a.picked && b.picked);
                    self.add(Way { from, poured, rank, uses, picked }, changes);
                }
            }
        }
    }
}
