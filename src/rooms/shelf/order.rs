//! One order: line by line what is there, and sending it.

use super::list::{going, who};
use super::{HERE, candles};
use crate::book::{Act, Id, State};
use crate::dom::*;
use crate::keep;
use crate::rooms::parts::{confirm_sheet, live, missing_page, page_head, page_part, press, sentence};
use crate::rooms::workshop::Workshop;
use crate::shelf::{Open, OpenLine, Order, Reason, batch_number};

pub(super) fn page(shop: Workshop, id: Id) -> View {
    let closing = Value::new(false);
    let order = id.clone();
    let close = move || {
        let kept = shop.state_untracked(|s| s.orders.get(&order).and_then(|k| k.latest()).cloned());
        if let Some(version) = kept {
            let body = Order { closed: true, ..version.body };
            shop.act(Act::Order { id: order.clone(), over: Some(version.entry), body });
        }
        closing.set(false);
    };
    group![
        live(move || shop.state(|s| one(shop, s, &id, closing))),
        confirm_sheet(
            "Send nothing more for this order?",
            "What was sent stays sent; what is kept for it becomes free.",
            "Close the order",
            closing,
            close
        )
    ]
}

fn one(shop: Workshop, state: &State, id: &Id, closing: Value<bool>) -> View {
    let Some(kept) = state.orders.get(id) else {
        return missing_page(HERE, "Shelf", "There is no order of this address in this book.");
    };
    let shelf = state.shelf(keep::today());
    let Some(open) = shelf.orders.iter().find(|o| o.kept.id == *id) else {
        return done(state, kept.body(), id);
    };
    let (now, words) = going(open);
    let send = open.shipment(keep::today());
    let number: i64 = send.iter().map(|m| -m.adds()).sum();
    let unfinished = send.iter().any(|m| state.batches.get(&m.batch).is_some_and(|b| !b.ticked.is_whole()));
    let ship = move || {
        for body in send.clone() {
            if !shop.act(Act::Moved { id: shop.new_id(), over: None, body }) {
                return;
            }
        }
    };
    let wanted = open.order.wanted.map(|d| ["Wanted ", &keep::weekday(d.noon()), "."].concat());
    let late =
        open.is_late().then(|| sentence("It cannot be there on that day. Say so before it is waited for."));
    group![
        page_head(HERE, "Shelf", who(state, open)),
        el("p").class("makes").flag("ready", now).child(words),
        el("p").child(wanted),
        late,
        el("ul").class("list shelf").child(open.lines.iter().map(|l| line(state, open, l)).views()),
        (!open.order.note.is_empty()).then(|| el("p").class("note").child(open.order.note.clone())),
        (number > 0 && unfinished).then(|| sentence(
            "Some of these are not finished: trimmed, wiped, labelled, closed. Tick it at their batch first."
        )),
        el("div")
            .class("actions")
            .child((number > 0).then(|| press("main big", ["Send ", &candles(number)].concat(), ship)))
            .child(
                el("a")
                    .class("button")
                    .attr("href", [HERE, "/order/", &id.0, "/change"].concat())
                    .child("Change it")
            )
            .child(press("quiet", "Close the order", move || closing.set(true))),
        sent(state, id)
    ]
}

fn line(state: &State, open: &Open, line: &OpenLine) -> View {
    let mut said = Vec::new();
    for (batch, number) in &line.kept {
        let of = state.batches.get(batch).map(batch_number).unwrap_or_default();
        said.push([&number.to_string(), " of ", &of].concat());
    }
    if line.sent > 0 {
        said.push([&line.sent.to_string(), " sent"].concat());
    }
    let go = line.may_go(open.order.in_parts);
    let state = if line.short > 0 {
        ["Short ", &line.short.to_string()].concat()
    } else if go > 0 || line.sent >= line.number {
        "There".to_owned()
    } else {
        "Curing".to_owned()
    };
    el("li")
        .class("use")
        .child(
            el("span")
                .class("what")
                .child(
                    el("span")
                        .class("title")
                        .child([&line.number.to_string(), " × ", &line.product.name].concat()),
                )
                .child(el("span").class("detail").child(said.join(", "))),
        )
        .child(el("span").class("state").flag("ready", line.short == 0).child(state))
        .view()
}

/// What went for an order, the last first.
fn sent(state: &State, id: &Id) -> View {
    let mut rows = Vec::new();
    for kept in state.moves.values().filter(|k| !k.retired) {
        let Some(body) = kept.body() else { continue };
        if matches!(&body.reason, Reason::Shipped { order, .. } if order == id) {
            let of = state.batches.get(&body.batch).map(batch_number).unwrap_or_default();
            let words =
                [&candles(body.number.into()), " of ", &of, ", ", &keep::day(body.on.noon())].concat();
            rows.push(
                el("li").child(el("a").attr("href", [HERE, "/batch/", &body.batch.0].concat()).child(words)),
            );
        }
    }
    (!rows.is_empty())
        .then(|| {
            page_part(
                "order-sent",
                "Sent",
                el("ul").class("list").child(rows.into_iter().rev().views()).view(),
            )
        })
        .view()
}

fn done(state: &State, order: Option<&Order>, id: &Id) -> View {
    let words =
        if order.is_some_and(|o| o.closed) { "This order was closed." } else { "All of this order is sent." };
    group![
        page_head(HERE, "Shelf", "An order".to_owned()),
        el("p").class("makes").child(words),
        sent(state, id)
    ]
}
