//! What was sent for the lines of orders.

use super::Reason;
use crate::book::{Id, State};
use crate::sort;
use std::cmp::Ordering;

/// How many candles of which product went for which order, of the lines that were asked about.
pub struct Sent<'a>(Vec<(&'a Id, &'a Id, i64)>);

impl<'a> Sent<'a> {
    fn at(&self, order: &Id, product: &Id) -> Option<usize> {
        let compare = |line: &(&'a Id, &'a Id, i64)| -> Ordering {
            line.0.cmp(order).then_with(|| line.1.cmp(product))
        };
        self.0.binary_search_by(compare).ok()
    }

    /// Zero where it was not asked about.
    pub fn of(&self, order: &Id, product: &Id) -> i64 {
        self.at(order, product).and_then(|at| self.0.get(at)).map_or(0, |line| line.2)
    }
}

impl State {
    /// What went for these lines, each an order and a product: all that ever moved is gone through once.
    pub fn sent<'a>(&self, lines: impl Iterator<Item = (&'a Id, &'a Id)>) -> Sent<'a> {
        let mut sent = Sent(lines.map(|(order, product)| (order, product, 0)).collect());
        sort::by(&mut sent.0, |a, b| a.cmp(b));
        for moved in self.moves.values().filter_map(|k| k.body().filter(|_| !k.retired)) {
            if let Reason::Shipped { order, product } = &moved.reason
                && let Some(line) = sent.at(order, product).and_then(|at| sent.0.get_mut(at))
            {
                line.2 += i64::from(moved.number);
            }
        }
        sent
    }
}
