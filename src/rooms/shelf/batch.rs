//! A batch on the shelf: finishing it, and what left it.

use super::{HERE, candles};
use crate::book::{Act, Batch, Id, State};
use crate::dom::*;
use crate::keep;
use crate::rooms::parts::{
    Field, Typed, caution, choice, field, finish, live, missing_page, notes, page_head, page_part, press,
    sentence, sheet,
};
use crate::rooms::workshop::Workshop;
use crate::shelf::{FINISHES, Finish, Move, Reason, batch_number};

pub(super) fn page(shop: Workshop, id: Id) -> View {
    let open = Value::new(false);
    let of = id.clone();
    group![
        live(move || shop.state(|s| match s.batches.get(&id) {
            None => missing_page(HERE, "Shelf", "There is no batch of this address in this book."),
            Some(batch) => one(shop, s, batch, open),
        })),
        sheet(|| "Candles went, or came back".to_owned(), open, move || went(shop, of.clone(), open))
    ]
}

fn one(shop: Workshop, state: &State, batch: &Batch, open: Value<bool>) -> View {
    let plan = &batch.run.plan;
    let sold = state.product_of(batch).is_some();
    let ready = state.sells_on(batch, keep::ZONE).map(|day| {
        let words = if day <= keep::today() { "Ready since " } else { "Curing, ready " };
        [words, &keep::weekday(day), "."].concat()
    });
    let sell = (!sold).then(|| {
        el("a")
            .class("button main")
            .attr("href", [HERE, "/product/new/", &batch.id.0].concat())
            .child("Sell these")
    });
    group![
        page_head(HERE, "Shelf", [&plan.formula, ", ", &plan.vessel].concat()),
        el("p").class("number").child("Batch ").child(el("strong").child(batch_number(batch))),
        el("p").class("makes").child(candles(state.left_of(batch))),
        el("p").child(ready),
        state.held().iter().any(|(held, _)| *held == batch.id).then(|| caution(
            "A lot that is in these candles is on hold. Do not sell, give or send them until it is released; its record says which."
        )),
        el("div")
            .class("actions")
            .child(sell)
            .child(press("", "Candles went, or came back", move || open.set(true)))
            .child(
                el("a")
                    .class("button")
                    .attr("href", ["#pot/record/", &batch.id.0].concat())
                    .child("Its record")
            ),
        page_part("batch-finish", "Finishing", group![ticks(shop, batch), takes(shop, state, batch)]),
        moves(shop, state, &batch.id)
    ]
}

/// One large button a step; the others wait for the wax.
fn ticks(shop: Workshop, batch: &Batch) -> View {
    let solid = batch.ticked.has(Finish::Solid);
    let one = |(step, words): &(Finish, &'static str)| {
        let (step, done, id) = (*step, batch.ticked.has(*step), batch.id.clone());
        let wait = !solid && step != Finish::Solid;
        let tick = move || {
            if step == Finish::Closed && !done {
                take(shop, &id);
            }
            shop.act(Act::Ticked { batch: id.clone(), step, done: !done });
        };
        let mark = if done { "✓ " } else { "" };
        el("li").child(
            el("button")
                .attr("type", "button")
                .class("tick")
                .attr("aria-pressed", if done { "true" } else { "false" })
                .attr("disabled", wait)
                .on("click", move |_| tick())
                .child([mark, words].concat()),
        )
    };
    group![
        (!solid).then(|| el("p").class("note").child(
            "Trim, wipe and label only when the wax is solid through: a soft top marks, and a label on a warm vessel lifts."
        )),
        el("ul").class("ticks").child(FINISHES.iter().map(one).views())
    ]
}

/// What closing it will take of the stores, and what is short of it.
fn takes(shop: Workshop, state: &State, batch: &Batch) -> View {
    if batch.closed.is_some() {
        return ().view();
    }
    let (sources, told) = shop.ledger().with(|l| l.finishing(state, batch, keep::today(), shop.voice()));
    let names: Vec<&str> = sources.iter().map(|s| s.part.as_str()).collect();
    let each = (!names.is_empty()).then(|| {
        sentence(
            ["With the last step the stores count out one of each to a candle: ", &names.join(", "), "."]
                .concat(),
        )
    });
    group![each, notes(&told)]
}

/// From which lots its lids, labels and boxes are.
fn take(shop: Workshop, id: &Id) {
    let sources = untrack(|| {
        shop.state(|s| {
            let batch = s.batches.get(id)?;
            Some(shop.ledger().with(|l| l.finishing(s, batch, keep::today(), shop.voice()).0))
        })
    });
    if let Some(sources) = sources.filter(|s| !s.is_empty()) {
        shop.act(Act::TakenFrom { batch: id.clone(), sources });
    }
}

fn why(reason: &Reason) -> &'static str {
    match reason {
        Reason::Shipped { .. } => "sent",
        Reason::Broken => "broken",
        Reason::Sample => "as a sample",
        Reason::Gift => "given away",
        Reason::Missing => "missing when counted",
        Reason::Found => "more when counted",
        Reason::Returned => "came back",
    }
}

fn moves(shop: Workshop, state: &State, batch: &Id) -> View {
    let mut rows = Vec::new();
    for kept in state.moves.values().filter(|k| !k.retired) {
        let Some(body) = kept.body().filter(|m| m.batch == *batch) else { continue };
        let id = kept.id.clone();
        let back = move || {
            shop.act(Act::Retire { id: id.clone(), retired: true });
        };
        let order = match &body.reason {
            Reason::Shipped { order, .. } => {
                Some(el("a").attr("href", [HERE, "/order/", &order.0].concat()).child("its order"))
            }
            _ => None,
        };
        let words =
            [&candles(body.number.into()), " ", why(&body.reason), ", ", &keep::day(body.on)].concat();
        let note = (!body.note.is_empty()).then(|| [": ", &body.note].concat());
        rows.push(
            el("li")
                .class("use")
                .child(el("span").child(words).child(note).child(" ").child(order))
                .child(press("quiet", "Take it back", back)),
        );
    }
    (!rows.is_empty())
        .then(|| {
            page_part(
                "batch-moves",
                "What left it",
                el("ul").class("list").child(rows.into_iter().rev().views()).view(),
            )
        })
        .view()
}

#[derive(Clone, Copy, PartialEq)]
enum Why {
    Broken,
    Sample,
    Gift,
    Returned,
    Counted,
}

fn went(shop: Workshop, batch: Id, open: Value<bool>) -> View {
    let reason = Value::new(Why::Broken);
    let (number, note) = (Typed::new("1"), Typed::new(""));
    let save = move || {
        let zero = number.get() == "0" && reason.get() == Why::Counted;
        let typed = if zero { Ok(0) } else { number.count() };
        let number = match typed {
            Ok(number) => number,
            Err(e) => return vec![e.to_string()],
        };
        let left = shop.state(|s| s.batches.get(&batch).map_or(0, |b| s.left_of(b)));
        let Some((number, reason)) = (match reason.get() {
            Why::Broken => Some((number, Reason::Broken)),
            Why::Sample => Some((number, Reason::Sample)),
            Why::Gift => Some((number, Reason::Gift)),
            Why::Returned => Some((number, Reason::Returned)),
            Why::Counted => Move::counted(left, number),
        }) else {
            open.set(false);
            return Vec::new();
        };
        let body = Move { batch: batch.clone(), number, reason, on: keep::today(), note: note.get() };
        if let Some(why) = shop.state(|s| s.refuses_move(&body)) {
            return vec![why];
        }
        if shop.act(Act::Moved { id: shop.new_id(), over: None, body }) {
            open.set(false);
        }
        Vec::new()
    };
    let label = move || if reason.get() == Why::Counted { "So many are there" } else { "How many" };
    group![
        choice(
            "What happened",
            reason,
            &[
                (Why::Broken, "Broken"),
                (Why::Sample, "Sample"),
                (Why::Gift, "Given away"),
                (Why::Returned, "Came back"),
                (Why::Counted, "Counted"),
            ]
        ),
        live(move || field(Field { keys: "numeric", ..Field::new(label()) }, number, move || {
            if number.get() == "0" {
                Ok(String::new())
            } else {
                number.count().map(|_| String::new()).map_err(|e| e.to_string())
            }
        })),
        field(Field::text("Why").optional(), note, || Ok(String::new())),
        finish("Write it down", None, save)
    ]
}
