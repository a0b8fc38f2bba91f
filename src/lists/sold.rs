//! The lists of the Shelf and of the burn trials; and orders out of a list.

use super::give::{Row, yes};
use super::take::{Body, Found, key};
use crate::book::{Id, Kept, State};
use crate::day::Zone;
use crate::quantity::{Voice, show_exact};
use crate::shelf::{Order, OrderDraft, Reason, batch_number};

/// The columns of orders, as they are given and taken: a row a candle of an order.
pub(super) const ORDER: &[&str] =
    &["Candle", "Number", "Order", "Customer", "Wanted on", "In parts", "Note", "Sent", "Closed"];

fn name_of<T>(kept: Option<&Kept<T>>, name: fn(&T) -> &String) -> String {
    kept.and_then(Kept::body).map(name).cloned().unwrap_or_default()
}

pub(super) fn products(state: &State, rows: &mut Vec<Row>) {
    for kept in state.products.values() {
        let Some(p) = kept.body() else { continue };
        rows.push(vec![
            p.name.clone(),
            name_of(state.formulas.get(&p.formula), |f| &f.name),
            name_of(state.vessels.get(&p.vessel), |v| &v.name),
            p.wick.clone(),
            p.parts.join(", "),
            p.spare.to_string(),
            p.cure_days.map(|d| d.to_string()).unwrap_or_default(),
            yes(kept.retired),
        ]);
    }
}

/// Those who were removed are in no list.
pub(super) fn customers(state: &State, rows: &mut Vec<Row>) {
    for customer in state.customers_shown().into_iter().filter_map(Kept::body) {
        let buys = crate::wire::write(&customer.buys);
        rows.push(vec![customer.name.clone(), buys.trim_matches('"').to_owned(), customer.contact.clone()]);
    }
}

pub(super) fn orders(state: &State, rows: &mut Vec<Row>) {
    let known = || state.orders.values().filter(|k| !k.retired).filter_map(|k| Some((&k.id, k.body()?)));
    let sent = state.sent(known().flat_map(|(id, order)| order.lines.iter().map(move |l| (id, &l.product))));
    for (number, kept) in (1..).zip(state.orders.values().filter(|k| !k.retired)) {
        let Some(order) = kept.body() else { continue };
        let customer = order.customer.as_ref().and_then(|c| state.customers.get(c));
        let customer = name_of(customer.filter(|k| !k.retired), |c| &c.name);
        for line in &order.lines {
            rows.push(vec![
                name_of(state.products.get(&line.product), |p| &p.name),
                line.number.to_string(),
                number.to_string(),
                customer.clone(),
                order.wanted.map(|d| d.to_string()).unwrap_or_default(),
                yes(order.in_parts),
                order.note.clone(),
                sent.of(&kept.id, &line.product).to_string(),
                yes(order.closed),
            ]);
        }
    }
}

/// Every batch with candles on the shelf.
pub(super) fn shelf(state: &State, zone: Zone, rows: &mut Vec<Row>) {
    let finished = state.finished();
    for (batch, left) in finished.iter().zip(state.left_of_each(&finished)) {
        let plan = &batch.run.plan;
        rows.push(vec![
            batch_number(batch),
            plan.formula.clone(),
            plan.vessel.clone(),
            plan.wick.clone(),
            batch.filled_vessels().to_string(),
            left.to_string(),
            state.sells_on(batch, zone).map(|day| day.to_string()).unwrap_or_default(),
            yes(batch.ticked.is_whole()),
        ]);
    }
}

/// What went from the shelf, and what came back.
pub(super) fn moves(state: &State, rows: &mut Vec<Row>) {
    for kept in state.moves.values().filter(|k| !k.retired) {
        let Some(body) = kept.body() else { continue };
        let batch = state.batches.get(&body.batch).map(batch_number).unwrap_or_default();
        let (why, product) = match &body.reason {
            Reason::Shipped { product, .. } => ("sent", name_of(state.products.get(product), |p| &p.name)),
            Reason::Broken => ("broken", String::new()),
            Reason::Sample => ("sample", String::new()),
            Reason::Gift => ("given away", String::new()),
            Reason::Missing => ("missing", String::new()),
            Reason::Found => ("found", String::new()),
            Reason::Returned => ("came back", String::new()),
        };
        rows.push(vec![
            body.on.to_string(),
            batch,
            product,
            body.adds().to_string(),
            why.to_owned(),
            body.note.clone(),
        ]);
    }
}

pub(super) fn trials(state: &State, voice: Voice, rows: &mut Vec<Row>) {
    for kept in state.trials.values() {
        let Some(t) = kept.body() else { continue };
        rows.push(vec![
            t.name.clone(),
            t.fragrance.clone(),
            t.load.map(|l| show_exact(l, voice.locale)).unwrap_or_default(),
            t.wax.clone(),
            t.vessel.clone(),
            show_exact(t.diameter, voice.locale),
            t.series.clone(),
            t.wick.clone(),
            t.replicate.to_string(),
            show_exact(t.start, voice.locale),
            show_exact(t.fill, voice.locale),
            yes(kept.retired),
        ]);
    }
}

/// One row of an order. Rows that name the same order are put together afterwards by [`joined`].
pub(super) fn read_order(
    cell: &dyn Fn(usize) -> String,
    state: &State,
    voice: Voice,
) -> Result<Body, Vec<String>> {
    let mut wrong = Vec::new();
    let named = |name: &str, other: &str| key(name) == key(other);
    let candle = cell(0);
    let product =
        state.products_shown().into_iter().find(|k| k.body().is_some_and(|p| named(&p.name, &candle)));
    if product.is_none() {
        wrong.push(["No candle called “", &candle, "” is sold. Name it on the Shelf first."].concat());
    }
    let customer = match cell(3).as_str() {
        "" => String::new(),
        name => {
            let known =
                state.customers_shown().into_iter().find(|k| k.body().is_some_and(|c| named(&c.name, name)));
            if known.is_none() {
                wrong.push(
                    ["“", name, "” is not among your customers. Add them on the Shelf first."].concat(),
                );
            }
            known.map(|k| k.id.0.clone()).unwrap_or_default()
        }
    };
    let draft = OrderDraft {
        customer,
        lines: product.iter().map(|p| (p.id.0.clone(), cell(1))).collect(),
        wanted: cell(4),
        in_parts: matches!(key(&cell(5)).as_str(), "yes" | "y" | "true" | "1" | "x"),
        note: cell(6),
    };
    match draft.read(state, voice.locale) {
        Ok(order) if wrong.is_empty() => Ok(Body::Order(order)),
        Ok(_) => Err(wrong),
        Err(more) => {
            if product.is_some() {
                wrong.extend(more);
            }
            Err(wrong)
        }
    }
}

/// Rows of one order as one; `names` are what stands in the column "Order" at each row.
pub(super) fn joined(found: Vec<Found>, names: &[String]) -> Vec<Found> {
    let mut all: Vec<(String, Found)> = Vec::new();
    for (row, name) in found.into_iter().zip(names) {
        let first = all.iter_mut().find(|(known, _)| !name.is_empty() && known == name);
        match (first, &row.body) {
            (Some((_, Found { body: Ok(Body::Order(order)), name, .. })), Ok(Body::Order(more))) => {
                name.extend([", ", &row.name]);
                add(order, more);
            }
            _ => all.push((name.clone(), row)),
        }
    }
    all.into_iter().map(|(_, found)| found).collect()
}

fn add(order: &mut Order, more: &Order) {
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
pub(super) fn act(id: Id, body: Order) -> crate::book::Act {
    crate::book::Act::Order { id, over: None, body }
}
