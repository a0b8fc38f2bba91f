//! What becomes of the candles: named as what is sold, ordered, sent, broken, missing when counted, given away, come back.

use super::{DAY, Lines};
use potside::book::{Act, Id};
use potside::day::Day;
use potside::shelf::{Move, Order, OrderLine, Product, Reason};
use std::collections::HashMap;

/// What is sold, by formula, vessel and wick.
#[derive(Default)]
pub(crate) struct Sales {
    products: HashMap<(Id, Id, String), Id>,
    moves: u64,
}

impl Sales {
    /// A batch of so many candles, filled on a day: all but two are sent for an order three weeks later; of every fifth one
    /// breaks, of every seventh one is missing when they are counted, of every ninth one is given away, and of every eleventh
    /// one comes back.
    pub(crate) fn of(
        &mut self,
        lines: &mut Lines,
        batch: &Id,
        sold: (&Id, &Id, &str),
        number: u32,
        n: u64,
        at: u64,
    ) {
        let key = (sold.0.clone(), sold.1.clone(), sold.2.to_owned());
        let next = Id(format!("product-{}", self.products.len()));
        let product = self.products.get(&key).cloned().unwrap_or_else(|| {
            let body = Product {
                name: format!("{} {}", sold.0, next),
                formula: sold.0.clone(),
                vessel: sold.1.clone(),
                wick: sold.2.to_owned(),
                parts: Vec::new(),
                spare: 2,
                cure_days: None,
            };
            lines.put(at, Act::Product { id: next.clone(), over: None, body });
            self.products.insert(key, next.clone());
            next
        });
        let sends = number.saturating_sub(2).max(1);
        let order = Id(format!("order-{n:x}"));
        let body = Order {
            customer: None,
            lines: vec![OrderLine { product: product.clone(), number: sends }],
            wanted: Some(Day::of(at + 25 * DAY)),
            in_parts: n.is_multiple_of(2),
            note: String::new(),
            closed: false,
        };
        lines.put(at, Act::Order { id: order.clone(), over: None, body });
        let mut went = |days: u64, number: u32, reason: Reason| {
            self.moves += 1;
            let at = at + days * DAY;
            let body = Move { batch: batch.clone(), number, reason, on: Day::of(at), note: String::new() };
            lines.put(at, Act::Moved { id: Id(format!("move-{:x}", self.moves)), over: None, body });
        };
        went(21, sends, Reason::Shipped { order, product });
        for (every, reason) in
            [(5, Reason::Broken), (7, Reason::Missing), (9, Reason::Gift), (11, Reason::Returned)]
        {
            if n.is_multiple_of(every) {
                went(22 + every, 1, reason);
            }
        }
    }
}
