//! Orders that wait: what of each is there, what is short, and when it can ship at the earliest.

use super::stock::by_ready;
use super::{Move, Order, Product, Reason, Stand, Stock};
use crate::book::{Id, Kept, State};
use crate::day::Day;
use crate::sort;

/// When something can ship.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum When {
    /// Everything is on the shelf, and cured by this day.
    On(Day),
    /// If what is short is poured today.
    IfPoured(Day),
}

impl When {
    pub const fn day(self) -> Day {
        match self {
            Self::On(day) | Self::IfPoured(day) => day,
        }
    }
}

#[derive(Clone, PartialEq, Debug)]
pub struct OpenLine<'a> {
    pub product: &'a Product,
    pub id: &'a Id,
    pub number: i64,
    pub sent: i64,
    /// Kept for it: batches and how many of each, the first ready first.
    pub kept: Vec<(&'a Id, i64)>,
    /// Of them cured today.
    pub ready: i64,
    pub short: i64,
    pub when: When,
}

impl OpenLine<'_> {
    /// What may go now: all that is missing, or where parts may go what is ready.
    pub fn may_go(&self, in_parts: bool) -> i64 {
        let missing = self.number - self.sent;
        if self.ready >= missing || in_parts { self.ready.min(missing) } else { 0 }
    }
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
        for kept in state.orders.values().filter(|k| !k.retired) {
            let Some(order) = kept.body().filter(|o| !o.closed) else { continue };
            let mut lines = Vec::new();
            for line in &order.lines {
                let stock = stocks.iter().find(|s| s.kept.id == line.product);
                let product = stock.map(|s| s.product).or_else(|| state.products.get(&line.product)?.body());
                let Some(product) = product else { continue };
                let (number, sent) = (i64::from(line.number), state.sent(&kept.id, &line.product));
                let when = When::On(Day(0));
                lines.push(OpenLine {
                    product,
                    id: &line.product,
                    number,
                    sent,
                    kept: Vec::new(),
                    ready: 0,
                    short: 0,
                    when,
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
    pub(super) fn reserve(&mut self, pool: &mut [Stand<'a>], stocks: &mut [Stock<'a>], today: Day) {
        for line in &mut self.lines {
            let mut missing = (line.number - line.sent).max(0);
            let mut ready_by = today;
            let ready = |s: &Stand| s.batch.ready_on(line.product.cure_days).unwrap_or(s.ready);
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
                let on = ready(stand);
                ready_by = ready_by.max(on);
                line.kept.push((&stand.batch.id, taken));
                if on <= today {
                    line.ready += taken;
                }
            }
            line.short = missing;
            let stock = stocks.iter_mut().find(|s| s.kept.id == *line.id);
            let cure = stock.as_ref().map_or(0, |s| s.cure);
            // Poured today, solid tomorrow at the latest, then cured.
            let poured = Day(today.0.saturating_add(cure.max(1)));
            line.when = if missing > 0 { When::IfPoured(poured.max(ready_by)) } else { When::On(ready_by) };
            if let Some(stock) = stock {
                stock.ordered += ordered;
                stock.short += missing;
            }
        }
    }

    /// When all of it can ship.
    pub fn when(&self) -> When {
        let last = self.lines.iter().map(|l| l.when).max_by_key(|w| w.day());
        let poured = self.lines.iter().any(|l| matches!(l.when, When::IfPoured(_)));
        match last.unwrap_or(When::On(Day(0))).day() {
            day if poured => When::IfPoured(day),
            day => When::On(day),
        }
    }

    /// For each line what may go now, as moves off the shelf: batches whose candles have cured, the first ready first.
    pub fn shipment(&self, today: Day) -> Vec<Move> {
        let mut moves = Vec::new();
        for line in &self.lines {
            let mut may = line.may_go(self.order.in_parts);
            for (batch, number) in &line.kept {
                let number = may.min(*number);
                if number > 0 {
                    may -= number;
                    moves.push(Move {
                        batch: (*batch).clone(),
                        number: u32::try_from(number).unwrap_or(u32::MAX),
                        reason: Reason::Shipped { order: self.kept.id.clone(), product: line.id.clone() },
                        on: today,
                        note: String::new(),
                    });
                }
            }
        }
        moves
    }

    pub fn short(&self) -> i64 {
        self.lines.iter().map(|l| l.short).sum()
    }

    /// True where it cannot be there on the day it is wanted.
    pub fn is_late(&self) -> bool {
        self.order.wanted.is_some_and(|wanted| self.when().day() > wanted)
    }
}
