//! Which lines of one good get which candles.
//!
//! A candle is on time for a line when it is ready by the day wanted, so lines are on time together when, for each day,
//! no more is wanted by it than is ready by it. Going through the lines by the day wanted, all that matters of those
//! before is how many candles went on time and how many late; for each such pair the fewest candles poured are kept.

use super::{Good, Line, Measure, Score};
use crate::sort;

/// Candles of one good beyond this are not planned for: the tables would grow too large for a tablet.
pub const MOST: u32 = 2048;

/// No number of candles poured is enough.
const NEVER: u16 = u16::MAX;

/// A line that goes whole, or one candle of a line that goes in parts.
struct Item {
    line: usize,
    number: usize,
    wanted: Option<u32>,
}

/// The lines of one good, and how many candles go on time for so many that go at all and so many poured.
pub(super) struct Serving {
    takes: u32,
    spare: u32,
    stock: Vec<(u32, u32)>,
    items: Vec<Item>,
    pub(super) ordered: u32,
    /// Rows by candles that go, columns by candles poured: one more than the most on time; 0: it cannot be.
    on_time: Vec<Vec<u16>>,
}

/// What is done with the candles of a good.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub(super) struct Outcome {
    pub(super) on_time: u32,
    pub(super) served: u32,
    /// Late, unmet, short and surplus.
    pub(super) score: Score,
}

impl Serving {
    /// `most` candles can be poured at all.
    pub(super) fn new(place: usize, good: &Good, lines: &[Line], most: u32) -> Self {
        let mut stock = good.stock.clone();
        sort::by(&mut stock, |a, b| a.0.cmp(&b.0));
        let held = stock.iter().fold(0, |sum: u32, (_, number)| sum.saturating_add(*number));
        let most_served = held.saturating_add(most).min(MOST) as usize;
        let (mut items, mut ordered) = (Vec::new(), 0_u32);
        for (at, line) in lines.iter().enumerate().filter(|(_, line)| line.good == place) {
            ordered = ordered.saturating_add(line.number);
            let number = line.number as usize;
            let (times, number) = if line.in_parts { (number.min(most_served), 1) } else { (1, number) };
            if number > 0 && number <= most_served {
                items.extend((0..times).map(|_| Item { line: at, number, wanted: line.wanted }));
            }
        }
        sort::by(&mut items, |a, b| day(a.wanted).cmp(&day(b.wanted)));
        let mut serving =
            Self { takes: good.takes, spare: good.spare, stock, items, ordered, on_time: Vec::new() };
        serving.tabulate(held, most.min(MOST) as usize, most_served);
        serving
    }

    fn tabulate(&mut self, held: u32, most: usize, most_served: usize) {
        let sum = |dated: bool| {
            let all = self.items.iter().filter(|i| !dated || i.wanted.is_some());
            all.fold(0, |sum: usize, item| sum.saturating_add(item.number)).min(most_served)
        };
        let (served, late) = (sum(false), sum(true));
        let mut cells = start(served, late);
        for item in &self.items {
            self.take(item, &mut cells);
        }
        let held = held as usize;
        self.on_time = vec![vec![0; most + 1]; served + 1];
        for (on, row) in cells.iter().enumerate() {
            for (late, poured) in row.iter().enumerate().filter(|(_, poured)| **poured != NEVER) {
                let poured = usize::from(*poured).max((on + late).saturating_sub(held));
                if let Some(best) = self.on_time.get_mut(on + late).and_then(|row| row.get_mut(poured)) {
                    *best = (*best).max(on as u16 + 1);
                }
            }
        }
        // Who can do it with fewer candles can with more.
        for row in &mut self.on_time {
            let mut best = 0;
            for cell in row {
                best = best.max(*cell);
                *cell = best;
            }
        }
    }

    /// Candles on the shelf that are ready by then.
    fn ready_by(&self, wanted: Option<u32>) -> u32 {
        let ready = self.stock.iter().filter(|(ready, _)| *ready <= day(wanted));
        ready.fold(0, |sum: u32, (_, number)| sum.saturating_add(*number))
    }

    /// One item more: on time, late, or left out, whichever needs the fewest poured.
    fn take(&self, item: &Item, cells: &mut [Vec<u16>]) {
        let number = item.number;
        let ready = self.ready_by(item.wanted) as usize;
        let in_time = self.takes <= day(item.wanted);
        let mut old = Vec::new();
        for on in (0..cells.len()).rev() {
            let (before, rest) = cells.split_at_mut(on);
            let Some(row) = rest.first_mut() else { continue };
            if item.wanted.is_some() {
                old.clone_from(row);
                for (cell, old) in row.iter_mut().skip(number).zip(&old) {
                    *cell = (*cell).min(*old);
                }
            }
            let Some(earlier) = on.checked_sub(number).and_then(|on| before.get(on)) else { continue };
            let need = on.saturating_sub(ready) as u16;
            if need == 0 || in_time {
                for (cell, earlier) in row.iter_mut().zip(earlier) {
                    *cell = (*cell).min((*earlier).max(need));
                }
            }
        }
    }

    pub(super) fn held(&self) -> u32 {
        self.ready_by(None)
    }

    /// The best that can be done with so many poured.
    pub(super) fn outcome(&self, poured: u32, order: &[Measure; 6]) -> Outcome {
        let all = self.held().saturating_add(poured);
        let mut best: Option<([u32; 6], Outcome)> = None;
        for (served, row) in (0_u32..).zip(&self.on_time) {
            let cell = row.get(poured as usize).or(row.last()).copied().unwrap_or(0);
            let Some(on_time) = cell.checked_sub(1).map(u32::from) else { continue };
            let left = all.saturating_sub(served);
            let score = Score {
                late: self.ordered - on_time,
                unmet: self.ordered - served,
                short: self.spare.saturating_sub(left),
                surplus: left.saturating_sub(self.spare),
                ..Score::default()
            };
            let rank = score.rank(order);
            if best.is_none_or(|(best, _)| rank < best) {
                best = Some((rank, Outcome { on_time, served, score }));
            }
        }
        best.map_or_else(Outcome::default, |(_, outcome)| outcome)
    }

    /// The fewest poured from which on more is only surplus.
    pub(super) fn enough(&self, order: &[Measure; 6], most: u32) -> u32 {
        let worth = |poured| {
            let score = self.outcome(poured, order).score;
            (score.late, score.unmet, score.short)
        };
        let mut enough = self.ordered.saturating_add(self.spare).min(most);
        let all = worth(enough);
        while enough > 0 && worth(enough - 1) == all {
            enough -= 1;
        }
        enough
    }

    /// Each line with candles on time and late, by the day wanted; where it is all the same, those wanted first go first.
    pub(super) fn shares(&self, poured: u32, outcome: &Outcome) -> Vec<(usize, u32, u32)> {
        let (mut on, mut late) = (outcome.on_time as usize, (outcome.served - outcome.on_time) as usize);
        let mut cells = start(on, late);
        let mut before = Vec::new();
        for item in &self.items {
            before.push(cells.clone());
            self.take(item, &mut cells);
        }
        let can = |cells: &Vec<Vec<u16>>, on: Option<usize>, late: Option<usize>| {
            let poured_at = on.zip(late).and_then(|(on, late)| cells.get(on)?.get(late));
            poured_at.is_some_and(|p| *p != NEVER && u32::from(*p) <= poured)
        };
        let mut shares: Vec<(usize, u32, u32)> = Vec::new();
        for (item, before) in self.items.iter().zip(&before).rev() {
            let number = item.number as u32;
            let (mut now, mut then) = (0, 0);
            if !can(before, Some(on), Some(late)) {
                if item.wanted.is_some() && can(before, Some(on), late.checked_sub(item.number)) {
                    (late, then) = (late.saturating_sub(item.number), number);
                } else {
                    (on, now) = (on.saturating_sub(item.number), number);
                }
            }
            match shares.last_mut().filter(|(line, ..)| *line == item.line) {
                Some((_, on_time, late)) => (*on_time, *late) = (*on_time + now, *late + then),
                None => shares.push((item.line, now, then)),
            }
        }
        shares.reverse();
        shares
    }
}

/// Whenever is after every day.
pub(super) fn day(wanted: Option<u32>) -> u32 {
    wanted.unwrap_or(u32::MAX)
}

/// Nothing gone yet, and nothing poured for it.
fn start(served: usize, late: usize) -> Vec<Vec<u16>> {
    let mut cells = vec![vec![NEVER; late + 1]; served + 1];
    if let Some(cell) = cells.first_mut().and_then(|row| row.first_mut()) {
        *cell = 0;
    }
    cells
}
