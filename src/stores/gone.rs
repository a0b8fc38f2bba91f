//! Where the candles of some batches are: with whom, still here, or no more.

use super::Reach;
use crate::book::{Ending, Id, Kept, Map, State};
use crate::shelf::{Customer, Move, Order, Reason};
use crate::sort;

/// Candles that somebody has: of which batch, and where they were sent for an order, for which one and to whom. Who asked
/// to be removed is not told.
#[derive(Clone, PartialEq, Debug)]
pub struct Sent<'a> {
    pub moved: &'a Move,
    pub order: Option<(&'a Id, &'a Order)>,
    pub customer: Option<&'a Customer>,
}

/// All candles of some batches, each counted once: filled = apart + with somebody + here + broken or missing − came back. What
/// came back is here again, and with somebody still as far as the list of who got some goes.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct Whereabouts {
    pub filled: i64,
    /// Of pours that are on or were stopped, and not gone since: they are not on the shelf.
    pub apart: i64,
    /// Sent, given away or handed out as samples.
    pub out: i64,
    /// Of them came back; from whom is not known.
    pub back: i64,
    /// Broken, or missing when counted, less what was found when counted.
    pub gone: i64,
    /// On the shelf; below zero where more went than there were.
    pub here: i64,
}

impl State {
    /// Every candle of these batches that was sent, given away or handed out as a sample, in the order of the days.
    pub fn sent_of<'a>(&'a self, reached: &[Reach]) -> Vec<Sent<'a>> {
        let mut sent: Vec<Sent> = Vec::new();
        for moved in self.moved_of(reached) {
            let order = match &moved.reason {
                Reason::Shipped { order, .. } => {
                    self.orders.get(order).and_then(|k| Some((&k.id, k.body()?)))
                }
                Reason::Gift | Reason::Sample => None,
                Reason::Broken | Reason::Missing | Reason::Found | Reason::Returned => continue,
            };
            let customer = order.and_then(|(_, o)| self.customers.get(o.customer.as_ref()?)?.body());
            sent.push(Sent { moved, order, customer });
        }
        sort::by(&mut sent, |a, b| a.moved.on.cmp(&b.moved.on));
        sent
    }

    /// Where the candles of these batches are.
    pub fn whereabouts(&self, reached: &[Reach]) -> Whereabouts {
        let mut all = Whereabouts::default();
        for reach in reached {
            all.filled += reach.batch.filled_vessels() as i64;
            if !matches!(reach.batch.ended, Some((Ending::Poured, ..))) {
                // One that was over may be gone on with: what went of it before is not in it.
                all.apart += self.left_of(reach.batch).max(0);
            }
        }
        for moved in self.moved_of(reached) {
            let number = i64::from(moved.number);
            match moved.reason {
                Reason::Shipped { .. } | Reason::Gift | Reason::Sample => all.out += number,
                Reason::Returned => all.back += number,
                Reason::Broken | Reason::Missing => all.gone += number,
                Reason::Found => all.gone -= number,
            }
        }
        all.here = all.filled - all.apart - all.out + all.back - all.gone;
        all
    }

    fn moved_of<'a, 'b>(&'a self, reached: &'b [Reach<'b>]) -> impl Iterator<Item = &'a Move> + use<'a, 'b> {
        // Found by its id: after years a lot is in many batches, and much has moved.
        let mut batches: Map<()> = Map::default();
        reached.iter().for_each(|reach| batches.add(&reach.batch.id, ()));
        let kept = self.moves.values().filter(|k| !k.retired).filter_map(Kept::body);
        kept.filter(move |moved| batches.contains_key(&moved.batch))
    }
}
