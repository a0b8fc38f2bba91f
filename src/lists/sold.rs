//! The lists of the Shelf and of the burn trials.

use super::give::{Row, yes};
use crate::book::{Kept, State};
use crate::day::Zone;
use crate::quantity::{Voice, show_exact};
use crate::shelf::{Reason, batch_number};

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
    let (finished, held) = (state.finished(), state.held());
    let left = finished.iter().zip(state.left_of_each(&finished));
    for (batch, left) in left.filter(|(_, left)| *left != 0) {
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
            yes(held.iter().any(|(of, _)| *of == batch.id)),
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
