//! What is chosen for at once: a good, or several that are brought together.

use super::bound::Regret;
use super::choice::fits;
use super::front::Points;
use super::model::plus;
use crate::sort;

/// A choice of each good of a unit.
#[derive(Clone, PartialEq, Eq)]
pub(super) struct Way {
    /// The places of the choices, good by good.
    pub(super) from: Vec<u32>,
    pub(super) poured: bool,
    pub(super) rank: [u32; 6],
    pub(super) uses: Vec<u64>,
    /// By the bound that was reckoned last.
    pub(super) regret: Regret,
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

impl Unit {
    pub(super) fn most(&self, supply: usize) -> u64 {
        self.ways.iter().filter_map(|way| way.uses.get(supply)).max().copied().unwrap_or(0)
    }

    /// Has these ways, but for those that another beats; what is picked stays.
    pub(super) fn set(&mut self, ways: Vec<Way>, changes: usize) {
        let key = |at: usize| ways.get(at).map(|way| (&way.rank, &way.uses));
        let by_rank = sort::order(ways.len(), &|a, b| key(a).cmp(&key(b)));
        let mut ways: Vec<Option<Way>> = ways.into_iter().map(Some).collect();
        let ways: Vec<Way> =
            by_rank.iter().filter_map(|at| ways.get_mut(*at).and_then(Option::take)).collect();
        let wide = ways.first().map_or(0, |way| way.uses.len()) + 1;
        let mut coordinates = Vec::with_capacity(wide * ways.len());
        for (place, way) in (0..).zip(&ways) {
            coordinates.extend(&way.uses);
            // None is beaten by one of worse rank.
            coordinates.push(place);
        }
        let shared = self.kind.is_some();
        let beats = |a: usize, b: usize| match (ways.get(a), ways.get(b)) {
            // To pour may cost a change more.
            (Some(a), Some(b)) if shared && a.poured && !b.poured => {
                let mut rank = a.rank;
                rank.iter_mut().skip(changes).take(1).for_each(|cell| *cell += 1);
                rank <= b.rank
            }
            _ => true,
        };
        let mut front = Points { coordinates: &coordinates, wide }.front(&beats).into_iter().peekable();
        let best = (0..ways.len()).map(|place| front.next_if_eq(&place).is_some()).collect::<Vec<bool>>();
        self.ways = ways;
        let mut best = best.into_iter();
        self.ways.retain(|way| best.next() == Some(true) || way.picked);
    }

    /// The ways of both together that are good, by what there is to regret of them.
    pub(super) fn join(
        &mut self,
        other: &Self,
        changes: usize,
        left: &[u64],
        good: &dyn Fn(&Regret) -> bool,
    ) {
        self.goods.extend(&other.goods);
        let mut ways = Vec::new();
        for a in &self.ways {
            for b in &other.ways {
                let picked = a.picked && b.picked;
                let mut regret = a.regret;
                regret.iter_mut().zip(&b.regret).for_each(|(sum, more)| *sum += more);
                if !picked && !good(&regret) {
                    continue;
                }
                let uses: Vec<u64> = a.uses.iter().zip(&b.uses).map(|(a, b)| a.saturating_add(*b)).collect();
                if fits(&uses, left) {
                    let from = a.from.iter().chain(&b.from).copied().collect();
                    let poured = a.poured || b.poured;
                    ways.push(Way { from, poured, rank: plus(&a.rank, &b.rank), uses, regret, picked });
                }
            }
        }
        self.set(ways, changes);
    }
}
