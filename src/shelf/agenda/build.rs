//! From the book to what is asked of the planner.

use super::size::{Supplies, kind};
use super::{Agenda, Batches, Item, Picks, Want};
use crate::book::{Id, Kept, State};
use crate::day::Day;
use crate::quantity::Voice;
use crate::shelf::planning::{Good, Line, Pin, Problem};
use crate::shelf::{Product, Shelf};
use crate::stores::Ledger;

impl State {
    /// What is asked of the planner today: the candles sold, the orders that wait, what is there of either and in the
    /// stores, and what the person holds on to.
    pub fn agenda(&self, shelf: &Shelf, ledger: &Ledger, picks: &Picks, voice: Voice) -> Agenda {
        self.agenda_with(&Batches::default(), shelf, ledger, picks, voice)
    }

    /// The same where some batches are reckoned already, as [`State::reckon`] does.
    pub fn agenda_with(
        &self,
        reckoned: &Batches,
        shelf: &Shelf,
        ledger: &Ledger,
        picks: &Picks,
        voice: Voice,
    ) -> Agenda {
        let batch = |id: &Id, product: &Product, number| {
            reckoned.get(id, number).cloned().unwrap_or_else(|| self.takes(product, number, voice))
        };
        let mut supplies = Supplies::new(ledger, self.spoken_for(shelf));
        let mut problem = Problem { goals: picks.goals.clone(), ..Problem::default() };
        let (mut items, mut wants) = (Vec::new(), Vec::new());
        let mut kinds: Vec<String> = Vec::new();
        for stock in &shelf.stocks {
            let (mut good, mut item) = self.good(&stock.kept.id, stock.product, &mut kinds);
            item.dropped = picks.dropped.contains(&item.product);
            for number in self.settings.sizes() {
                match batch(&stock.kept.id, stock.product, *number) {
                    Ok(batch) => {
                        good.depth = batch.depth;
                        good.sizes.push(supplies.size(&batch));
                    }
                    Err(why) if item.without.contains(&why) => {}
                    Err(why) => item.without.push(why),
                }
            }
            item.unknown = std::mem::take(&mut supplies.unknown);
            if item.dropped {
                good.sizes.clear();
            }
            items.push(item);
            problem.goods.push(good);
        }
        for (at, open) in shelf.orders.iter().enumerate() {
            for line in open.lines.iter().filter(|l| l.number > l.sent) {
                let known = items.iter().position(|i| i.product == *line.id);
                // What is sold no more is not poured any more either.
                let good = known.unwrap_or_else(|| {
                    let (good, mut item) = self.good(line.id, line.product, &mut kinds);
                    item.without.push("It is sold no more.".to_owned());
                    items.push(item);
                    problem.goods.push(good);
                    items.len() - 1
                });
                problem.lines.push(Line {
                    order: at,
                    good,
                    number: count(line.number - line.sent),
                    wanted: open.order.wanted.map(|day| days(shelf.today, day)),
                    in_parts: open.order.in_parts,
                });
                let customer = open.order.customer.as_ref().and_then(|id| self.customers.get(id)?.body());
                wants.push(Want {
                    order: open.kept.id.clone(),
                    name: customer.map(|c| c.name.clone()),
                    wanted: open.order.wanted,
                });
                if let Some(good) = problem.goods.get_mut(good) {
                    for share in &line.kept {
                        let ready = self.ships_on(share.batch, share.ready, shelf.today);
                        add(&mut good.stock, days(shelf.today, ready), share.number);
                    }
                    for share in &line.coming {
                        add(&mut good.stock, days(shelf.today, share.ready), share.number);
                    }
                }
            }
        }
        self.free(shelf, &mut problem.goods);
        let mut refused = Vec::new();
        for pin in &picks.pinned {
            let Some(good) = items.iter().position(|i| i.product == pin.product) else { continue };
            let Some(stock) = shelf.stocks.iter().find(|s| s.kept.id == pin.product) else { continue };
            match batch(&pin.product, stock.product, pin.number) {
                Ok(batch) => problem.pinned.push(Pin { good, size: supplies.size(&batch) }),
                Err(why) => refused.push((pin.clone(), [&stock.product.name, ": ", &why].concat())),
            }
        }
        problem.supplies = supplies.there;
        Agenda { today: shelf.today, problem, items, wants, stuffs: supplies.stuffs, refused }
    }

    fn good(&self, id: &Id, product: &Product, kinds: &mut Vec<String>) -> (Good, Item) {
        let formula = self.formulas.get(&product.formula).and_then(Kept::body);
        let kind = formula.map(kind).unwrap_or_default();
        let at = kinds.iter().position(|k| *k == kind).unwrap_or_else(|| {
            kinds.push(kind);
            kinds.len() - 1
        });
        let good = Good {
            takes: self.lead(product).from(Day(0)).0,
            spare: product.spare,
            kind: u32::try_from(at).unwrap_or(u32::MAX),
            ..Good::default()
        };
        let item = Item {
            product: id.clone(),
            name: product.name.clone(),
            formula: product.formula.clone(),
            vessel: product.vessel.clone(),
            wick: product.wick.clone(),
            without: Vec::new(),
            unknown: Vec::new(),
            dropped: false,
        };
        (good, item)
    }

    /// What finishes the candles that stand there unfinished, and those that are being poured: each part by its name.
    /// It is spoken for, though the stores count it out with the last step only.
    fn spoken_for<'a>(&'a self, shelf: &'a Shelf) -> Vec<(&'a str, u64)> {
        let mut parts: Vec<(&str, u64)> = Vec::new();
        let mut seen: Vec<&Id> = Vec::new();
        for stock in &shelf.stocks {
            for stand in stock.stands.iter().chain(&stock.coming).filter(|s| s.batch.closed.is_none()) {
                if seen.contains(&&stand.batch.id) {
                    continue;
                }
                seen.push(&stand.batch.id);
                let number = u64::from(count(stand.left));
                let own = stock.product.finish(|part| stand.batch.run.takes(part));
                parts.extend(own.into_iter().map(|part| (part.as_str(), number)));
            }
        }
        parts
    }

    /// Candles kept for no order count for the first product they are good for, so that none counts twice.
    fn free(&self, shelf: &Shelf, goods: &mut [Good]) {
        let mut seen: Vec<&Id> = Vec::new();
        for (stock, good) in shelf.stocks.iter().zip(goods) {
            let there = stock.stands.iter().map(|s| (s, self.ships_on(s.batch, s.ready, shelf.today)));
            let coming = stock.coming.iter().map(|s| (s, s.ready));
            for (stand, ready) in there.chain(coming).filter(|(s, _)| s.free > 0) {
                if !seen.contains(&&stand.batch.id) {
                    seen.push(&stand.batch.id);
                    add(&mut good.stock, days(shelf.today, ready), stand.free);
                }
            }
        }
    }
}

fn count(n: i64) -> u32 {
    u32::try_from(n.max(0)).unwrap_or(u32::MAX)
}

/// Days from today; what is gone by is today.
fn days(today: Day, day: Day) -> u32 {
    day.0.saturating_sub(today.0)
}

fn add(stock: &mut Vec<(u32, u32)>, day: u32, number: i64) {
    match stock.iter_mut().find(|(known, _)| *known == day) {
        Some((_, sum)) => *sum = sum.saturating_add(count(number)),
        None => stock.push((day, count(number))),
    }
}
