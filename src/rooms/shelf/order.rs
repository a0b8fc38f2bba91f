//! One order: line by line what is there, and sending it.

use super::list::{going, who};
use super::{HERE, candles, done};
use crate::book::{Act, Batch, Id, State};
use crate::dom::*;
use crate::keep;
use crate::rooms::parts::{caution, confirm_sheet, live, page_head, past, press, sentence, sheet};
use crate::rooms::workshop::Workshop;
use crate::shelf::{Fit, Move, Open, OpenLine, Order, batch_number};

pub(super) fn page(shop: Workshop, id: Id) -> View {
    let (closing, sending) = (Value::new(false), Value::new(false));
    let (order, whole) = (id.clone(), id.clone());
    let close = move || {
        let kept = shop.state_untracked(|s| s.orders.get(&order).and_then(|k| k.latest()).cloned());
        if let Some(version) = kept {
            let body = Order { closed: true, ..version.body };
            shop.act(Act::Order { id: order.clone(), over: Some(version.entry), body });
        }
        closing.set(false);
    };
    group![
        live(move || shop.state(|s| one(shop, s, &id, (closing, sending)))),
        sheet(
            || "Send them although they are not finished?".to_owned(),
            sending,
            move || shop.state(|s| although(shop, s, &whole, sending))
        ),
        confirm_sheet(
            "Send nothing more for this order?",
            "What was sent stays sent; what is kept for it becomes free.",
            "Close the order",
            closing,
            close
        )
    ]
}

fn one(shop: Workshop, state: &State, id: &Id, (closing, sending): (Value<bool>, Value<bool>)) -> View {
    let shelf = state.shelf(keep::today(), keep::ZONE);
    let Some(open) = shelf.orders.iter().find(|o| o.kept.id == *id) else {
        return done::order(shop, state, id);
    };
    let (now, words) = going(open);
    let send = open.shipment(keep::today(), Fit::Finished);
    let number = sum(&send);
    let more = sum(&open.shipment(keep::today(), Fit::Unfinished)) > number;
    let ship = move || {
        ship(shop, &send);
    };
    let wanted = open.order.wanted.map(|d| ["Wanted ", &keep::weekday(d), "."].concat());
    let late =
        open.is_late().then(|| sentence("It cannot be there on that day. Say so before it is waited for."));
    group![
        page_head(HERE, "Shelf", who(state, open)),
        el("p").class("makes said").flag("ready", now).child(words),
        el("p").child(wanted),
        done::to_whom(state, open.order),
        state.say_beyond(id).map(caution),
        late,
        el("ul").class("list shelf").child(open.lines.iter().map(|l| line(open, l)).views()),
        (!open.order.note.is_empty()).then(|| el("p").class("note").child(open.order.note.clone())),
        open.lines.iter().filter(|l| !l.held.is_empty()).map(|l| on_hold(state, l)).views(),
        more.then(|| unfinished(open)),
        el("div")
            .class("actions")
            .child((number > 0).then(|| press("main big", ["Send ", &candles(number)].concat(), ship)))
            .child(more.then(|| press("", "Send although unfinished", move || sending.set(true))))
            .child(
                el("a")
                    .class("button")
                    .attr("href", [HERE, "/order/", &id.0, "/change"].concat())
                    .child("Change it")
            )
            .child(press("quiet", "Close the order", move || closing.set(true))),
        done::sent(state, id),
        past(shop, id)
    ]
}

fn sum(moves: &[Move]) -> i64 {
    moves.iter().map(|m| -m.adds()).sum()
}

/// False where one of them is not done.
fn ship(shop: Workshop, moves: &[Move]) -> bool {
    moves.iter().all(|body| shop.act(Act::Moved { id: shop.new_id(), over: None, body: body.clone() }))
}

/// What is missing to the candles kept for it, batch by batch.
fn unfinished(open: &Open) -> View {
    let row = |batch: &Batch| {
        el("li").child(
            el("a")
                .attr("href", [HERE, "/batch/", &batch.id.0].concat())
                .child([&batch_number(batch), ", not done: ", &batch.ticked.missing().join(", ")].concat()),
        )
    };
    group![
        sentence(
            "Candles that are not finished wait here. Tick what is done at their batch, then they can go."
        ),
        el("ul").class("list").child(open.unfinished().into_iter().map(row).views())
    ]
}

/// Asked before what is not finished is sent all the same.
fn although(shop: Workshop, state: &State, id: &Id, asking: Value<bool>) -> View {
    let shelf = state.shelf(keep::today(), keep::ZONE);
    let Some(open) = shelf.orders.iter().find(|o| o.kept.id == *id) else { return ().view() };
    let send = open.shipment(keep::today(), Fit::Unfinished);
    let words = ["Send ", &candles(sum(&send)), " as they are"].concat();
    let go = move || {
        if ship(shop, &send) {
            asking.set(false);
        }
    };
    group![
        unfinished(open),
        caution("A candle without its caution label, or with an untrimmed wick, can hurt whoever burns it."),
        el("div").class("actions").child(press("danger", words, go)).child(press(
            "",
            "No, go back",
            move || asking.set(false)
        ))
    ]
}

/// Why candles that stand there are not kept for this line.
fn on_hold(state: &State, line: &OpenLine) -> View {
    let row = |(batch, lots): &(&Batch, Vec<Id>)| {
        let lot = |id: &Id| {
            let lot = state.lots.get(id)?.body()?;
            let words = ["lot ", &lot.number, " of “", &lot.ingredient, "”"].concat();
            Some(el("a").attr("href", ["#stores/lot/", &id.0].concat()).child(words))
        };
        let mut all = Vec::new();
        for lot in lots.iter().filter_map(lot) {
            all.push(el("span").child(if all.is_empty() { ": " } else { ", " }).child(lot));
        }
        el("p")
            .child([&candles(state.left_of(batch)), " of ", &batch_number(batch)].concat())
            .child(all.into_iter().views())
    };
    group![
        caution(
            [
                "Candles of “",
                &line.product.name,
                "” stand there that are not sent: a lot that is in them is on hold. Release the lot in the Stores if it \
is good, or pour anew."
            ]
            .concat()
        ),
        line.held.iter().map(row).views()
    ]
}

fn line(open: &Open, line: &OpenLine) -> View {
    let mut said = Vec::new();
    for share in &line.kept {
        said.push([&share.number.to_string(), " of ", &batch_number(share.batch)].concat());
    }
    if line.sent > 0 {
        said.push([&line.sent.to_string(), " sent"].concat());
    }
    let go = line.may_go(open.order.in_parts, Fit::Finished);
    let cured = line.may_go(open.order.in_parts, Fit::Unfinished);
    let poured: i64 = line.coming.iter().map(|s| s.number).sum();
    if poured > 0 {
        said.push([&poured.to_string(), " being poured"].concat());
    }
    if line.short > poured {
        said.push(line.lead.say());
    }
    let there = line.short == 0 && (go > 0 || line.sent >= line.number);
    let state = if poured > 0 && poured == line.short {
        "Being poured".to_owned()
    } else if line.short > 0 {
        ["Short ", &line.short.to_string()].concat()
    } else if there {
        "There".to_owned()
    } else if cured > 0 {
        "Not finished".to_owned()
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
        .child(el("span").class("state").flag("ready", there).child(state))
        .view()
}
