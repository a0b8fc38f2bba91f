//! Orders that wait no more: all of them sent, or closed.

use super::{Open, Order, Reason};
use crate::book::{Kept, Map, State};
use crate::day::Day;
use crate::sort;

/// An order of which nothing more is sent, and the day something went last; none where nothing did.
#[derive(Clone, PartialEq, Debug)]
pub struct Past<'a> {
    pub kept: &'a Kept<Order>,
    pub order: &'a Order,
    pub last: Option<Day>,
}

impl State {
    /// Every order that is not among the open ones, the one sent last first; those of which nothing went at the end.
    pub fn past_orders(&self, open: &[Open]) -> Vec<Past<'_>> {
        let mut waits: Map<()> = Map::default();
        open.iter().for_each(|o| waits.add(&o.kept.id, ()));
        // One walk over all that went: asking each order for it would be slow after years.
        let mut days: Map<Day> = Map::default();
        for moved in self.moves.values().filter(|k| !k.retired).filter_map(Kept::body) {
            if let Reason::Shipped { order, .. } = &moved.reason {
                days.add(order, moved.on);
                if let Some(last) = days.get_mut(order) {
                    *last = moved.on.max(*last);
                }
            }
        }
        let mut past = Vec::new();
        for kept in self.orders.values().filter(|k| !k.retired && !waits.contains_key(&k.id)) {
            let Some(order) = kept.body() else { continue };
            past.push(Past { kept, order, last: days.get(&kept.id).copied() });
        }
        sort::by(&mut past, |a, b| b.last.cmp(&a.last).then_with(|| a.kept.id.cmp(&b.kept.id)));
        past
    }
}
