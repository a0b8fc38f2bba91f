//! The search among units that have nothing to do with others: measure by measure, and round by round.

use super::bound::{Bound, hope, is_worse};
use super::round::Round;
use super::unit::Picks;
use super::units::Units;

/// Each further round keeps so many times more sums; none keeps more than the last.
const TIMES: usize = 16;
const LAST: usize = 1 << 18;

/// How much is listed and kept. Whatever it is, the plan that is proven in the end is as good.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Limits {
    /// Ways listed for units together at first.
    pub listed: usize,
    /// The same, most having been left out.
    pub more: usize,
    /// Sums kept of each unit in the first round.
    pub width: usize,
    /// Sums compared with each other at once, whatever is kept.
    pub spare: usize,
}

impl Default for Limits {
    fn default() -> Self {
        Self { listed: 2_000, more: 20_000, width: 64, spare: 4_096 }
    }
}

/// Some units, and how far the search among them has come.
pub(super) struct Part {
    pub(super) units: Units,
    pub(super) picks: Picks,
    /// Its changes are the kinds poured.
    pub(super) rank: [u32; 6],
    /// The measure gone into: in those before it no plan is better, in this one none goes below.
    pub(super) measure: usize,
    least: u32,
    pub(super) width: usize,
    round: Option<Round>,
    /// Where something is to be poured, whatever it is.
    pub(super) busy: bool,
    limits: Limits,
}

impl Part {
    pub(super) fn new(mut units: Units, busy: bool, limits: Limits) -> Self {
        let ways = units.greedy();
        let picks = units.picks(&ways);
        units.pick(&picks);
        let rank = units.rank(&ways);
        let width = limits.width;
        let mut part = Self { units, picks, rank, measure: 0, least: 0, width, round: None, busy, limits };
        if busy && !ways.iter().any(|way| way.poured) {
            // Nothing poured has no change, as one kind has none.
            if let Some(cell) = part.rank.get_mut(part.units.changes) {
                *cell += 1;
            }
        }
        part
    }

    fn is_closed(&self) -> bool {
        self.measure > 5
    }

    pub(super) fn is_over(&self) -> bool {
        self.is_closed() || (self.width > LAST && self.round.is_none())
    }

    /// A rank that no plan's is less than.
    pub(super) fn least(&self) -> [u32; 6] {
        let mut least = self.rank;
        least.iter_mut().skip(self.measure).for_each(|later| *later = 0);
        if let Some(cell) = least.get_mut(self.measure) {
            *cell = self.least;
        }
        least
    }

    /// One unit more; gives how many sums were looked at.
    pub(super) fn step(&mut self) -> usize {
        let mut round = match self.round.take() {
            Some(round) => round,
            None => self.begin(),
        };
        if !round.sums.is_empty() && round.at < round.stages.len() {
            let made = round.stage(self.width, self.busy, self.measure);
            self.round = Some(round);
            return made;
        }
        self.end(&round);
        0
    }

    fn begin(&mut self) -> Round {
        let measure = self.measure;
        let bound = Bound::new(&self.units, &self.rank, measure);
        self.units.narrow(&bound, |regret| !is_worse(regret, &bound.slack, measure));
        let mut units = self.units.up_to(measure);
        let mut bound = Bound::new(&units, &self.rank, measure);
        if !self.busy {
            // What is left makes shorter lists, and lists of more together.
            units.narrow(&bound, |regret| hope(regret, &bound.slack, measure).is_some());
            units.join(self.limits.more, &|regret| hope(regret, &bound.slack, measure).is_some());
            bound = Bound::new(&units, &self.rank, measure);
        }
        units.narrow(&bound, |regret| hope(regret, &bound.slack, measure).is_some());
        let bound = Bound::new(&units, &self.rank, measure);
        units.charge(&bound);
        Round::new(units, bound, measure, self.limits.spare)
    }

    fn end(&mut self, round: &Round) {
        let cell = |rank: &[u32; 6]| rank.get(self.measure).copied().unwrap_or(0);
        let least = cell(&self.rank).saturating_sub(round.left_out);
        let up_to = |rank: &[u32; 6]| {
            let mut rank = *rank;
            rank.iter_mut().skip(self.measure + 1).for_each(|later| *later = 0);
            rank
        };
        let sums = round.sums.iter().enumerate().filter(|(_, sum)| !(self.busy && sum.idle));
        if let Some((at, sum)) = sums.min_by_key(|(_, sum)| sum.rank)
            && sum.rank < up_to(&self.rank)
            && let Some(ways) = round.picks(at)
        {
            self.picks = round.units.picks(&ways);
            self.units.pick(&self.picks);
            self.rank = self.units.rank(&self.units.picked());
        }
        self.least = self.least.max(least);
        if round.left_out == 0 || self.least >= cell(&self.rank) {
            (self.measure, self.least, self.width) = (self.measure + 1, 0, self.limits.width);
        } else {
            self.width *= TIMES;
        }
    }
}
