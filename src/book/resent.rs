//! What a copy brings of orders that were sent here as well: both count, and the shelf has fewer than stand there.

use super::{Act, Copy, Entry, Id, Kept, Map, State};
use crate::shelf::{Order, Reason};

/// The orders of which more stands as sent with what is `fresh` than without it, each in words.
pub(super) fn resent<'a>(
    before: &State,
    after: &State,
    fresh: impl Iterator<Item = &'a Entry>,
) -> Vec<String> {
    let mut orders: Map<()> = Map::default();
    for entry in fresh {
        if let Act::Moved { body, .. } = &entry.act
            && let Reason::Shipped { order, .. } = &body.reason
        {
            orders.add(order, ());
        }
    }
    let of = |kept: &&Kept<Order>| orders.contains_key(&kept.id);
    let known: Vec<&Kept<Order>> = before.orders.values().filter(of).collect();
    let now: Vec<&Kept<Order>> = after.orders.values().filter(of).collect();
    let known = before.beyond(&known);
    let new = after.beyond(&now).into_iter().filter(|beyond| !known.contains(beyond));
    new.map(|beyond| [&who(after, beyond.order), ": ", &beyond.said].concat()).collect()
}

fn who(state: &State, order: &Id) -> String {
    let customer = state.orders.get(order).and_then(Kept::body).and_then(|o| o.customer.as_ref());
    let customer = customer.and_then(|id| state.customers.get(id)?.body()).filter(|c| !c.removed);
    customer.map_or_else(|| "an order".to_owned(), |c| c.name.clone())
}

impl Copy {
    /// Of which orders more would stand as sent than is ordered, in words that follow "Caution: "; none where there is none.
    pub fn say_resent(&self) -> Option<String> {
        const SAID: usize = 20;
        let first = self.resent.get(..SAID).unwrap_or(&self.resent).join("; ");
        let more = match self.resent.len().saturating_sub(SAID) {
            0 => String::new(),
            n => format!("; and {n} more"),
        };
        let then = "If they went once and were written down on both devices, take one of the two back afterwards, on the page \
                    of its batch: the order leads there.";
        (!self.resent.is_empty()).then(|| {
            ["with this copy more stands as sent than is ordered. ", &first, &more, ". ", then].concat()
        })
    }
}
