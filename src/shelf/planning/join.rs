//! Goods that are chosen for together.
//!
//! Where few goods share a supply or a kind, all the ways to pour them together are listed once, and the supply or the
//! kind is no more a matter between units. What is left between them is little, and bounds on it are tight.

use super::bound::Regret;
use super::round::divisor;
use super::unit::{Unit, Way};
use super::units::Units;
use crate::sort;

impl Units {
    /// Brings units together where that takes listing no more than so many ways.
    pub(super) fn join(&mut self, most: usize, good: &dyn Fn(&Regret) -> bool) {
        let mut kinds: Vec<usize> = self.units.iter().filter_map(|unit| unit.kind).collect();
        kinds.sort_unstable();
        kinds.dedup();
        for kind in kinds {
            let of_kind = |unit: &Unit| unit.kind == Some(kind);
            while self.join_two(of_kind, most, good) {}
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
            while self.join_two(|unit: &Unit| unit.most(supply) > 0, most, good) {}
            if !self.thin() {
                break;
            }
        }
    }

    /// Joins the two shortest of these units, if there are two and it is worth it.
    fn join_two(&mut self, of: impl Fn(&Unit) -> bool, most: usize, good: &dyn Fn(&Regret) -> bool) -> bool {
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
        unit.join(&other, self.changes, &self.left, good);
        true
    }

    /// Counts the change that a kind costs among the ranks of its unit, where that is one.
    fn settle(&mut self, kind: usize) {
        let mut of_kind = self.units.iter_mut().filter(|unit| unit.kind == Some(kind));
        let (Some(unit), None) = (of_kind.next(), of_kind.next()) else { return };
        unit.kind = None;
        let mut ways = std::mem::take(&mut unit.ways);
        for way in &mut ways {
            if let Some(cell) = way.rank.get_mut(self.changes) {
                *cell += u32::from(way.poured);
            }
        }
        unit.set(ways, self.changes);
    }

    /// Leaves out the supplies that cannot run out, or not before another does; true when there were any.
    pub(super) fn thin(&mut self) -> bool {
        self.round();
        let mut any = false;
        loop {
            let had = self.left.len();
            while let Some(out) =
                (0..self.left.len()).find(|supply| self.is_plenty(*supply) || self.is_implied(*supply))
            {
                self.left.remove(out);
                for way in self.units.iter_mut().flat_map(|unit| &mut unit.ways) {
                    way.uses.remove(out);
                }
            }
            if self.left.len() == had {
                return any;
            }
            any = true;
            // With fewer supplies more ways are beaten, and then less can be used of the others.
            for unit in &mut self.units {
                let ways = std::mem::take(&mut unit.ways);
                unit.set(ways, self.changes);
            }
        }
    }

    /// What no ways together can use of a supply is as good as not there: of 173 vessels 172 where all come in fours.
    fn round(&mut self) {
        for (supply, left) in self.left.iter_mut().enumerate() {
            let ways = self.units.iter().flat_map(|unit| &unit.ways);
            let step = ways.filter_map(|way| way.uses.get(supply)).fold(0, |step, used| divisor(step, *used));
            *left -= left.checked_rem(step).unwrap_or(0);
        }
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
}
