//! Orders out of a list: a row a candle, and the rows of one order put together.

use super::take::{Body, Found};
use crate::book::{Act, Id, Kept, State};
use crate::quantity::{Voice, read_count};
use crate::shelf::{Order, OrderDraft};
use crate::text::{key, same};

/// One row of an order. Rows that name the same order are put together afterwards by [`joined`].
pub(super) fn read_order(
    cell: &dyn Fn(usize) -> String,
    state: &State,
    voice: Voice,
) -> Result<Body, Vec<String>> {
    let mut wrong = Vec::new();
    let candle = cell(0);
    let product =
        state.products_shown().into_iter().find(|k| k.body().is_some_and(|p| same(&p.name, &candle)));
    if product.is_none() {
        wrong.push(["No candle called “", &candle, "” is sold. Name it on the Shelf first."].concat());
    }
    let customer = match cell(3).as_str() {
        "" => String::new(),
        name => {
            let known =
                state.customers_shown().into_iter().find(|k| k.body().is_some_and(|c| same(&c.name, name)));
            if known.is_none() {
                wrong.push(
                    ["“", name, "” is not among your customers. Add them on the Shelf first."].concat(),
                );
            }
            known.map(|k| k.id.0.clone()).unwrap_or_default()
        }
    };
    let is_yes = |at: usize| matches!(key(&cell(at)).as_str(), "yes" | "y" | "true" | "1" | "x");
    let draft = OrderDraft {
        customer,
        lines: product.iter().map(|p| (p.id.0.clone(), cell(1))).collect(),
        wanted: cell(4),
        in_parts: is_yes(5),
        note: cell(6),
    };
    if is_yes(8) {
        wrong.push("It was closed: nothing more of it is to be sent, so it is not taken in.".to_owned());
    }
    match draft.read(state, voice.locale) {
        Ok(order) if wrong.is_empty() => went(&cell(7), &order, voice).map_or(Ok(Body::Order(order)), Err),
        Ok(_) => Err(wrong),
        Err(more) => {
            if product.is_some() {
                wrong.extend(more);
            }
            Err(wrong)
        }
    }
}

/// Why a row is not taken in of which some is sent: what would be taken in is what is to be sent.
fn went(sent: &str, order: &Order, voice: Voice) -> Option<Vec<String>> {
    let number = order.lines.first().map_or(0, |line| line.number);
    let said = match sent {
        "" | "0" => return None,
        sent => match read_count(sent, voice.locale) {
            Err(why) => ["Sent: ", &why.to_string()].concat(),
            Ok(sent) if sent >= number => "All of it was sent already, so it is not taken in.".to_owned(),
            Ok(sent) => [
                &sent.to_string(),
                " of these were sent already. Type in “Number” what is still to be sent, and leave “Sent” empty.",
            ]
            .concat(),
        },
    };
    Some(vec![said])
}

/// Rows of one order as one; `names` are what stands in the column "Order" at each row.
pub(super) fn joined(found: Vec<Found>, names: &[String]) -> Vec<Found> {
    let mut all: Vec<(String, Found)> = Vec::new();
    for (row, name) in found.into_iter().zip(names) {
        let first = all.iter_mut().find(|(known, _)| !name.is_empty() && known == name);
        match (first, &row.body) {
            (Some((_, Found { body: Ok(Body::Order(order)), name, .. })), Ok(Body::Order(more)))
                if is_one(order, more) =>
            {
                name.extend([", ", &row.name]);
                add(order, more);
            }
            (Some((_, Found { body: Ok(_), .. })), Ok(_)) => {
                let why = [
                    "The order “",
                    name,
                    "” stands further up for another customer or day. Give this one another name in “Order”.",
                ];
                all.push((name.clone(), Found { body: Err(vec![why.concat()]), ..row }));
            }
            _ => all.push((name.clone(), row)),
        }
    }
    all.into_iter().map(|(_, found)| found).collect()
}

/// True of two rows that can be of one order: what is left empty in one is as in the other.
fn is_one(order: &Order, more: &Order) -> bool {
    fn agree<T: PartialEq>(a: Option<&T>, b: Option<&T>) -> bool {
        a.is_none() || b.is_none() || a == b
    }
    agree(order.customer.as_ref(), more.customer.as_ref())
        && agree(order.wanted.as_ref(), more.wanted.as_ref())
}

fn add(order: &mut Order, more: &Order) {
    order.customer = order.customer.take().or_else(|| more.customer.clone());
    order.wanted = order.wanted.or(more.wanted);
    if order.note.is_empty() {
        order.note.clone_from(&more.note);
    } else if !more.note.is_empty() && more.note != order.note {
        order.note.extend(["; ", &more.note]);
    }
    for line in &more.lines {
        match order.lines.iter_mut().find(|l| l.product == line.product) {
            Some(known) => known.number = known.number.saturating_add(line.number),
            None => order.lines.push(line.clone()),
        }
    }
}

/// True where an order in the book is of the same candles, for the same customer and day, with the same note.
pub(super) fn is_here(order: &Order, state: &State) -> bool {
    let same = |known: &Order| {
        known.wanted == order.wanted
            && known.customer == order.customer
            && known.note == order.note
            && known.lines.len() == order.lines.len()
            && order.lines.iter().all(|line| known.lines.contains(line))
    };
    state.orders.values().filter(|k| !k.retired).filter_map(Kept::body).any(same)
}

/// What would be done to keep an order under this id.
pub(super) fn act(id: Id, body: Order) -> Act {
    Act::Order { id, over: None, body }
}
