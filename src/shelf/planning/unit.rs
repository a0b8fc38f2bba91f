//! What is chosen for at once: a good, or several that are brought together.

use super::choice::fits;
use super::model::plus;

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

impl Unit {
    pub(super) fn most(&self, supply: usize) -> u64 {
        self.ways.iter().filter_map(|way| way.uses.get(supply)).max().copied().unwrap_or(0)
    }

    /// One way more, unless another beats it; what it beats goes, but not what is picked.
    pub(super) fn add(&mut self, way: Way, changes: usize) {
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

    pub(super) fn join(&mut self, other: &Self, changes: usize, left: &[u64]) {
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
