//! Orders that wait: what of each is there, what is short, and when it can ship at the earliest.

use super::stock::by_ready;
use super::{Lead, Order, Product, Stand, Stock};
use crate::book::{Batch, Id, Kept, State};
use crate::day::Day;
use crate::sort;

/// When something can ship.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum When {
    /// Everything is on the shelf, and cured by this day.
    On(Day),
    /// What is short is being poured.
    Coming(Day),
    /// If what is short and not being poured is poured today.
    IfPoured(Day),
}

impl When {
    pub const fn day(self) -> Day {
        match self {
            Self::On(day) | Self::Coming(day) | Self::IfPoured(day) => day,
        }
    }
}

/// Candles of a batch that are kept for a line.
#[derive(Clone, PartialEq, Debug)]
pub struct Share<'a> {
    pub batch: &'a Batch,
    pub number: i64,
    /// The first day they may ship.
    pub ready: Day,
}

#[derive(Clone, PartialEq, Debug)]
pub struct OpenLine<'a> {
    pub product: &'a Product,
    pub id: &'a Id,
    pub number: i64,
    pub sent: i64,
    /// Kept for it, the first ready first.
    pub kept: Vec<Share<'a>>,
    /// Of them cured today.
    pub ready: i64,
    /// Of those trimmed, wiped, labelled, closed.
    pub finished: i64,
    pub short: i64,
    /// Of those short being poured, the first ready first.
    pub coming: Vec<Share<'a>>,
    /// Where it is short: candles that would do, if a lot that is in them were not on hold.
    pub held: Vec<(&'a Batch, Vec<Id>)>,
    pub when: When,
    /// From a pour until it can ship.
    pub lead: Lead,
}

/// An order that is not sent whole.
#[derive(Clone, PartialEq, Debug)]
pub struct Open<'a> {
    pub kept: &'a Kept<Order>,
    pub order: &'a Order,
    pub lines: Vec<OpenLine<'a>>,
}

impl<'a> Open<'a> {
    /// All of them, the first wanted first, those without a day last.
    pub(super) fn all(state: &'a State, stocks: &[Stock<'a>]) -> Vec<Self> {
        let mut all: Vec<Self> = Vec::new();
        let mut open: Vec<(&'a Kept<Order>, &'a Order)> = Vec::new();
        for kept in state.orders.values().filter(|k| !k.retired) {
            open.extend(kept.body().filter(|o| !o.closed).map(|order| (kept, order)));
        }
        let lines = open.iter().flat_map(|(kept, order)| order.lines.iter().map(|l| (&kept.id, &l.product)));
        let went = state.sent(lines);
        for (kept, order) in open {
            let mut lines = Vec::new();
            for line in &order.lines {
                let stock = stocks.iter().find(|s| s.kept.id == line.product);
                let product = stock.map(|s| s.product).or_else(|| state.products.get(&line.product)?.body());
                let Some(product) = product else { continue };
                let (number, sent) = (i64::from(line.number), went.of(&kept.id, &line.product));
                let when = When::On(Day(0));
                lines.push(OpenLine {
                    product,
                    id: &line.product,
                    number,
                    sent,
                    kept: Vec::new(),
                    ready: 0,
                    finished: 0,
                    short: 0,
                    coming: Vec::new(),
                    held: Vec::new(),
                    when,
                    lead: stock.map_or_else(|| state.lead(product), |s| s.lead),
                });
            }
            if lines.iter().any(|l| l.sent < l.number) {
                all.push(Self { kept, order, lines });
            }
        }
        let wanted = |o: &Self| o.order.wanted.unwrap_or(Day(u32::MAX));
        let clock = |o: &Self| o.kept.versions.first().map_or(0, |v| v.clock);
        sort::by(&mut all, |a, b| {
            wanted(a)
                .cmp(&wanted(b))
                .then_with(|| clock(a).cmp(&clock(b)))
                .then_with(|| a.kept.id.cmp(&b.kept.id))
        });
        all
    }

    /// Keeps for each line what is ready first.
    pub(super) fn reserve(
        &mut self,
        state: &State,
        pool: &mut [Stand<'a>],
        stocks: &mut [Stock<'a>],
        today: Day,
    ) {
        for line in &mut self.lines {
            let mut missing = (line.number - line.sent).max(0);
            let mut ready_by = today;
            let ready = |s: &Stand| state.ready_on(s.batch, s.poured, line.product.cure_days);
            let mut good: Vec<&mut Stand> =
                pool.iter_mut().filter(|s| s.free > 0 && line.product.is_of(s.batch)).collect();
            sort::by(&mut good, |a, b| ready(a).cmp(&ready(b)).then_with(|| by_ready(a, b)));
            let ordered = missing;
            for stand in good {
                let taken = missing.min(stand.free);
                if taken == 0 {
                    break;
                }
                stand.free -= taken;
                missing -= taken;
                let (on, whole) = (ready(stand), stand.batch.ticked.is_whole());
                ready_by = ready_by.max(state.ships_on(stand.batch, on, today));
                line.kept.push(Share { batch: stand.batch, number: taken, ready: on });
                if on <= today {
                    line.ready += taken;
                    line.finished += if whole { taken } else { 0 };
                }
            }
            line.short = missing;
            if missing > 0 {
                let held = pool.iter().filter(|s| s.left > 0 && !s.held.is_empty());
                line.held =
                    held.filter(|s| line.product.is_of(s.batch)).map(|s| (s.batch, s.held.clone())).collect();
            }
            let stock = stocks.iter_mut().find(|s| s.kept.id == *line.id);
            let poured = line.lead.from(today);
            line.when = if missing > 0 { When::IfPoured(poured.max(ready_by)) } else { When::On(ready_by) };
            if let Some(stock) = stock {
                stock.ordered += ordered;
                stock.short += missing;
            }
        }
    }

    /// Expects for what is short what is being poured: the first ready first.
    pub(super) fn expect(
        &mut self,
        state: &State,
        coming: &mut [Stand<'a>],
        stocks: &mut [Stock<'a>],
        today: Day,
    ) {
        for line in self.lines.iter_mut().filter(|l| l.short > 0) {
            let mut missing = line.short;
            for stand in coming.iter_mut().filter(|s| s.free > 0 && line.product.is_of(s.batch)) {
                let number = missing.min(stand.free);
                if number == 0 {
                    break;
                }
                stand.free -= number;
                missing -= number;
                let ready = state.comes(stand.batch, line.product.cure_days, today);
                line.coming.push(Share { batch: stand.batch, number, ready });
            }
            if missing == 0 {
                let there = line.kept.iter().map(|s| state.ships_on(s.batch, s.ready, today));
                let last = there.chain(line.coming.iter().map(|s| s.ready)).max();
                line.when = When::Coming(last.unwrap_or(line.when.day()));
            }
            if let Some(stock) = stocks.iter_mut().find(|s| s.kept.id == *line.id) {
                stock.poured += line.short - missing;
            }
        }
    }

    /// When all of it can ship.
    pub fn when(&self) -> When {
        let last = self.lines.iter().map(|l| l.when).max_by_key(|w| w.day());
        let day = last.unwrap_or(When::On(Day(0))).day();
        if self.lines.iter().any(|l| matches!(l.when, When::IfPoured(_))) {
            When::IfPoured(day)
        } else if self.lines.iter().any(|l| matches!(l.when, When::Coming(_))) {
            When::Coming(day)
        } else {
            When::On(day)
        }
    }

    pub fn short(&self) -> i64 {
        self.lines.iter().map(|l| l.short).sum()
    }

    /// Of those short being poured.
    pub fn poured(&self) -> i64 {
        self.lines.iter().flat_map(|l| &l.coming).map(|s| s.number).sum()
    }

    /// True where it cannot be there on the day it is wanted.
    pub fn is_late(&self) -> bool {
        self.order.wanted.is_some_and(|wanted| self.when().day() > wanted)
    }
}
