//! A problem made ready for the search: which supplies are scarce, and the ways to pour each good.

use super::choice::{Choice, Room, used_of};
use super::serve::{MOST, Serving};
use super::{Measure, Problem, Score, order};

/// A sum or difference of ranks, place by place.
pub(super) fn plus(a: &[u32; 6], b: &[u32; 6]) -> [u32; 6] {
    let mut sum = *a;
    for (sum, b) in sum.iter_mut().zip(b) {
        *sum = sum.saturating_add(*b);
    }
    sum
}

pub(super) struct Model {
    pub(super) problem: Problem,
    pub(super) order: [Measure; 6],
    pub(super) servings: Vec<Serving>,
    /// Supplies that the pins lack.
    pub(super) lacks: Vec<(usize, u64)>,
    /// What is left of the scarce supplies when the pins are poured.
    pub(super) left: Vec<u64>,
    pub(super) choices: Vec<Vec<Choice>>,
    /// The kind of each good, by the place of its first good, and whether a good of it is pinned.
    pub(super) kinds: Vec<(usize, bool)>,
}

impl Model {
    pub(super) fn new(problem: Problem) -> Self {
        let order = order(&problem.goals);
        let mut left = problem.supplies.clone();
        let mut lacks = Vec::new();
        for (supply, left) in left.iter_mut().enumerate() {
            let pinned = problem.pinned.iter().map(|pin| used_of(&pin.size, supply));
            let used = pinned.fold(0, u64::saturating_add);
            if used > *left {
                lacks.push((supply, used - *left));
            }
            *left = left.saturating_sub(used);
        }
        let (mut servings, mut rooms) = (Vec::new(), Vec::new());
        for (place, good) in problem.goods.iter().enumerate() {
            let pins = problem.pinned.iter().filter(|pin| pin.good == place);
            let pins =
                pins.fold((0_u32, 0), |(sum, pours), pin| (sum.saturating_add(pin.size.number), pours + 1));
            let most = pins.0.saturating_add(Self::reach(&problem, place, &left)).min(MOST);
            let serving = Serving::new(place, good, &problem.lines, most);
            rooms.push(Room { good, pinned: pins, enough: serving.enough(&order, most) });
            servings.push(serving);
        }
        let kinds = Self::kinds(&problem);
        let used: Vec<Vec<u64>> =
            rooms.iter().map(|room| (0..left.len()).map(|supply| room.most_used(supply)).collect()).collect();
        let is_scarce = |supply: &usize| {
            let most = used.iter().filter_map(|of| of.get(*supply)).copied().fold(0, u64::saturating_add);
            left.get(*supply).is_some_and(|left| most > *left)
        };
        let scarce: Vec<usize> = (0..left.len()).filter(is_scarce).collect();
        let left: Vec<u64> = scarce.iter().filter_map(|s| left.get(*s)).copied().collect();
        let mut choices: Vec<Vec<Choice>> = Vec::new();
        for (room, serving) in rooms.iter().zip(&servings) {
            choices.push(room.choices(serving, &order, &scarce, &left));
        }
        Self { order, servings, lacks, left, choices, kinds, problem }
    }

    /// The most candles of a good that the supplies reach for.
    fn reach(problem: &Problem, place: usize, left: &[u64]) -> u32 {
        let Some(good) = problem.goods.get(place) else { return 0 };
        let sizes: Vec<_> = good.sizes.iter().filter(|size| size.number > 0).collect();
        if sizes.is_empty() {
            return 0;
        }
        let mut reach = u64::from(MOST);
        for (supply, left) in left.iter().enumerate() {
            // By the size that makes the most of it; one that needs none of it makes any number.
            let by = sizes.iter().map(|size| {
                let made = u128::from(*left) * u128::from(size.number);
                made.checked_div(used_of(size, supply).into()).unwrap_or(u128::MAX)
            });
            let by = by.max().unwrap_or(u128::MAX);
            reach = reach.min(u64::try_from(by).unwrap_or(u64::MAX));
        }
        reach as u32
    }

    fn kinds(problem: &Problem) -> Vec<(usize, bool)> {
        // A kind goes by the place of its first good.
        let of = |kind: u32| problem.goods.iter().position(|good| good.kind == kind).unwrap_or(0);
        let pinned = |kind: u32| {
            let mut goods = problem.pinned.iter().filter_map(|pin| problem.goods.get(pin.good));
            goods.any(|good| good.kind == kind)
        };
        problem.goods.iter().map(|good| (of(good.kind), pinned(good.kind))).collect()
    }

    /// Kinds poured, but for the first: the changes.
    fn changed(&self, picks: &[&Choice]) -> u32 {
        let mut kinds: Vec<usize> = Vec::new();
        for (pick, (kind, pinned)) in picks.iter().zip(&self.kinds) {
            if (*pinned || pick.is_poured()) && !kinds.contains(kind) {
                kinds.push(*kind);
            }
        }
        (kinds.len() as u32).saturating_sub(1)
    }

    /// Kinds that are poured whatever is chosen.
    pub(super) fn pinned_kinds(&self) -> u32 {
        let first = |(place, (kind, pinned)): (usize, &(usize, bool))| *pinned && *kind == place;
        self.kinds.iter().enumerate().filter(|kind| first(*kind)).count() as u32
    }

    pub(super) fn score(&self, picks: &[&Choice]) -> Score {
        let mut sum = Score { changes: self.changed(picks), ..Score::default() };
        for score in picks.iter().map(|pick| &pick.score) {
            sum.late = sum.late.saturating_add(score.late);
            sum.unmet = sum.unmet.saturating_add(score.unmet);
            sum.short = sum.short.saturating_add(score.short);
            sum.pours = sum.pours.saturating_add(score.pours);
            sum.surplus = sum.surplus.saturating_add(score.surplus);
        }
        sum
    }
}
