//! What was sent for the lines of orders.

use super::{Order, Reason};
use crate::book::{Id, Kept, State};
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

/// A line of an order of which more stands as sent than is ordered, such as where it was written down on two devices.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Beyond<'a> {
    pub order: &'a Id,
    /// What it is, in words: `8 × Fig jar sent, 4 ordered`.
    pub said: String,
}

impl State {
    /// Every such line of these orders.
    pub fn beyond<'a>(&'a self, orders: &[&'a Kept<Order>]) -> Vec<Beyond<'a>> {
        let mut lines: Vec<(&Id, &Id, i64)> = Vec::new();
        for (kept, order) in orders.iter().filter_map(|kept| Some((kept, kept.body()?))) {
            let first = lines.len();
            for line in &order.lines {
                let number = i64::from(line.number);
                match lines.iter_mut().skip(first).find(|(_, product, _)| **product == line.product) {
                    Some((.., ordered)) => *ordered += number,
                    None => lines.push((&kept.id, &line.product, number)),
                }
            }
        }
        let sent = self.sent(lines.iter().map(|(order, product, _)| (*order, *product)));
        let mut beyond = Vec::new();
        for (order, product, ordered) in lines {
            let went = sent.of(order, product);
            if went > ordered {
                let name = self.products.get(product).and_then(Kept::body).map_or("candles", |p| &p.name);
                let said = [&went.to_string(), " × ", name, " sent, ", &ordered.to_string(), " ordered"];
                beyond.push(Beyond { order, said: said.concat() });
            }
        }
        beyond
    }

    /// The same of one order, with what to do, in words that follow "Caution: "; none where no more stands as sent.
    pub fn say_beyond(&self, order: &Id) -> Option<String> {
        let beyond = self.beyond(&[self.orders.get(order)?]);
        let said: Vec<&str> = beyond.iter().map(|b| b.said.as_str()).collect();
        (!said.is_empty()).then(|| {
            let advice = ". If they went once and were written down twice, as on two devices, take one of the two back on \
                          the page of its batch. Until then the shelf counts them as gone twice.";
            ["more stands as sent than is ordered: ", &said.join("; "), advice].concat()
        })
    }
}
