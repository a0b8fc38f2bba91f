//! What stands on the shelf: the candles of every batch less what went, and how they are shared among the orders.

use super::{Lead, Open, Product};
use crate::book::{Batch, Ending, Id, Kept, Map, State};
use crate::day::{Day, Zone};
use crate::{sort, text};

/// Candles of one batch that can be one product.
#[derive(Clone, PartialEq, Debug)]
pub struct Stand<'a> {
    pub batch: &'a Batch,
    /// The day it was poured; today where it is being poured.
    pub poured: Day,
    /// The first day it may ship.
    pub ready: Day,
    /// On the shelf; below zero where more went than there were.
    pub left: i64,
    /// Of them not kept for an order; none while something in them is on hold.
    pub free: i64,
    /// Lots on hold that are in them.
    pub held: Vec<Id>,
}

/// A product and what is there of it.
#[derive(Clone, PartialEq, Debug)]
pub struct Stock<'a> {
    pub kept: &'a Kept<Product>,
    pub product: &'a Product,
    /// The first ready ones first. A batch that is good for several products stands at each of them.
    pub stands: Vec<Stand<'a>>,
    /// The same of the pours that are on.
    pub coming: Vec<Stand<'a>>,
    /// Ordered and not sent.
    pub ordered: i64,
    /// Of them not on the shelf.
    pub short: i64,
    /// Of those short being poured.
    pub poured: i64,
    /// From a pour until it can ship, with its own days of cure, or those of its formula today.
    pub lead: Lead,
}

/// The whole shelf on a day.
#[derive(Clone, PartialEq, Debug)]
pub struct Shelf<'a> {
    pub today: Day,
    pub stocks: Vec<Stock<'a>>,
    /// Orders that wait, the first wanted first.
    pub orders: Vec<Open<'a>>,
    /// Batches with candles that are no product yet.
    pub loose: Vec<Stand<'a>>,
}

impl Product {
    /// True where a batch made this.
    pub fn is_of(&self, batch: &Batch) -> bool {
        self.formula == batch.formula
            && self.vessel == batch.vessel
            && text::same(&self.wick, batch.run.wick())
    }
}

impl Product {
    /// What finishes each candle, one of each, beside what its pour `takes` by itself.
    pub fn finish(&self, takes: impl Fn(&str) -> bool) -> Vec<&String> {
        let mut parts: Vec<&String> = Vec::new();
        for part in &self.parts {
            if !takes(part) && parts.iter().all(|known| !text::same(known, part)) {
                parts.push(part);
            }
        }
        parts
    }
}

impl State {
    /// Candles of a batch on the shelf: those filled, less those that went.
    pub fn left_of(&self, batch: &Batch) -> i64 {
        let moved =
            self.moves.values().filter_map(|k| k.body().filter(|m| !k.retired && m.batch == batch.id));
        batch.filled_vessels() as i64 + moved.map(super::Move::adds).sum::<i64>()
    }

    /// The same of many batches: all that ever moved is gone through once.
    pub fn left_of_each(&self, batches: &[&Batch]) -> Vec<i64> {
        let mut left: Map<i64> = Map::default();
        batches.iter().for_each(|b| left.add(&b.id, b.filled_vessels() as i64));
        for moved in self.moves.values().filter_map(|k| k.body().filter(|_| !k.retired)) {
            if let Some(left) = left.get_mut(&moved.batch) {
                *left += moved.adds();
            }
        }
        batches.iter().map(|b| left.get(&b.id).copied().unwrap_or_default()).collect()
    }

    /// What a batch is sold as; of several the first by name.
    pub fn product_of(&self, batch: &Batch) -> Option<&Product> {
        self.products_shown().into_iter().filter_map(Kept::body).find(|p| p.is_of(batch))
    }

    /// What a formula in a vessel is sold as, with whichever wick; of several the first by name.
    pub fn product_with(&self, formula: &Id, vessel: &Id) -> Option<&Product> {
        let mut products = self.products_shown().into_iter().filter_map(Kept::body);
        products.find(|p| p.formula == *formula && p.vessel == *vessel)
    }

    /// What is there, what is short, what can ship when. Orders are served in the order in which they are wanted; each
    /// takes what is ready first. Candles with something of a lot on hold are kept for nobody.
    pub fn shelf(&self, today: Day, zone: Zone) -> Shelf<'_> {
        // One sum for all batches: asking each one for its moves would be slow after years.
        let mut pool: Vec<Stand> = Vec::new();
        for batch in self.batches.values().filter(|b| matches!(b.ended, Some((Ending::Poured, _, _)))) {
            // What was filled is counted event by event: once for each batch, and in no order by when it was.
            let (filled, Some(_)) = batch.run.fills() else { continue };
            let filled = filled as i64;
            pool.push(Stand {
                batch,
                poured: today,
                ready: today,
                left: filled,
                free: filled,
                held: Vec::new(),
            });
        }
        sort::by(&mut pool, |a, b| a.batch.id.cmp(&b.batch.id));
        let held = self.held();
        for (batch, lot) in &held {
            if let Ok(at) = pool.binary_search_by(|s| s.batch.id.cmp(batch))
                && let Some(stand) = pool.get_mut(at)
            {
                stand.held.push(lot.clone());
                stand.free = 0;
            }
        }
        for moved in self.moves.values().filter_map(|k| k.body().filter(|_| !k.retired)) {
            if let Ok(at) = pool.binary_search_by(|s| s.batch.id.cmp(&moved.batch))
                && let Some(stand) = pool.get_mut(at)
            {
                stand.left += moved.adds();
                stand.free = if stand.held.is_empty() { stand.left.max(0) } else { 0 };
            }
        }
        // Of those that are gone it is not asked: a calendar takes its time.
        pool.retain(|s| s.left != 0);
        for stand in &mut pool {
            stand.poured = stand.batch.poured_on(zone).unwrap_or(today);
            stand.ready = self.ready_on(stand.batch, stand.poured, None);
        }
        let mut stocks: Vec<Stock> = Vec::new();
        for kept in self.products_shown() {
            let Some(product) = kept.body() else { continue };
            let lead = self.lead(product);
            stocks.push(Stock {
                kept,
                product,
                stands: Vec::new(),
                coming: Vec::new(),
                ordered: 0,
                short: 0,
                poured: 0,
                lead,
            });
        }
        let mut orders = Open::all(self, &stocks);
        for order in &mut orders {
            order.reserve(self, &mut pool, &mut stocks, today);
        }
        // What stands there is shared out first, whoever waits longest.
        let mut coming = self.coming(today);
        for stand in &mut coming {
            stand.held.extend(
                held.iter().filter(|(batch, _)| *batch == stand.batch.id).map(|(_, lot)| lot.clone()),
            );
            stand.free = if stand.held.is_empty() { stand.free } else { 0 };
        }
        for order in &mut orders {
            order.expect(self, &mut coming, &mut stocks, today);
        }
        let mut loose = Vec::new();
        for stand in &pool {
            let mut known = false;
            for stock in stocks.iter_mut().filter(|s| s.product.is_of(stand.batch)) {
                let ready = self.ready_on(stand.batch, stand.poured, stock.product.cure_days);
                stock.stands.push(Stand { ready, ..stand.clone() });
                known = true;
            }
            if !known {
                loose.push(stand.clone());
            }
        }
        for stand in &coming {
            for stock in stocks.iter_mut().filter(|s| s.product.is_of(stand.batch)) {
                let ready = self.comes(stand.batch, stock.product.cure_days, today);
                stock.coming.push(Stand { ready, ..stand.clone() });
            }
        }
        for stock in &mut stocks {
            sort::by(&mut stock.stands, by_ready);
        }
        sort::by(&mut loose, by_ready);
        Shelf { today, stocks, orders, loose }
    }
}

pub(super) fn by_ready(a: &Stand, b: &Stand) -> std::cmp::Ordering {
    a.ready
        .cmp(&b.ready)
        .then_with(|| a.batch.began.cmp(&b.batch.began))
        .then_with(|| a.batch.id.cmp(&b.batch.id))
}

impl Stock<'_> {
    /// On the shelf, cured or not.
    pub fn left(&self) -> i64 {
        self.stands.iter().map(|s| s.left.max(0)).sum()
    }

    /// On the shelf, but with something of a lot on hold in them.
    pub fn held(&self) -> i64 {
        self.stands.iter().filter(|s| !s.held.is_empty()).map(|s| s.left.max(0)).sum()
    }

    /// Not kept for an order.
    pub fn free(&self) -> i64 {
        self.stands.iter().map(|s| s.free).sum()
    }

    /// So many are missing to the wished spare, what is short aside; what is being poured is not missing.
    pub fn spare_missing(&self) -> i64 {
        let coming: i64 = self.coming.iter().map(|s| s.free).sum();
        (i64::from(self.product.spare) - self.free() - coming).max(0)
    }
}
