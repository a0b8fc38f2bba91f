//! Everything on the Shelf: orders first, then what is there.

use super::{HERE, candles};
use crate::book::State;
use crate::dom::*;
use crate::keep;
use crate::rooms::parts::{caution, live, page_part};
use crate::rooms::workshop::Workshop;
use crate::shelf::{Open, Order, Stand, Stock, When, batch_number};

pub(super) fn page(shop: Workshop) -> View {
    // Nothing on it changes by the clock before the next day.
    let day = Derived::new(move || keep::ZONE.day(shop.now().get()));
    let shown = move || {
        day.track();
        shop.state(whole)
    };
    let link = |to: &'static str, class: &'static str, words: &'static str| {
        el("a").class(class).attr("href", [HERE, to].concat()).child(words)
    };
    group![
        el("div").class("head").child(el("h1").child("Shelf")).child(
            el("div")
                .class("actions")
                .child(link("/order/new", "button main", "New order"))
                .child(link("/plan", "button", "What to pour next"))
                .child(link("/product/new", "button", "New candle to sell"))
                .child(link("/customers", "button", "Customers"))
                .child(link("/done", "button", "Orders that are done")),
        ),
        live(shown)
    ]
}

fn whole(state: &State) -> View {
    let shelf = state.shelf(keep::today(), keep::ZONE);
    if shelf.stocks.is_empty() && shelf.loose.is_empty() && shelf.orders.is_empty() {
        return empty();
    }
    let none = |words: &'static str| el("p").class("muted").child(words).view();
    let orders = if shelf.orders.is_empty() {
        none("No order waits.")
    } else {
        el("ul").class("list shelf").child(shelf.orders.iter().map(|o| order(state, o)).views()).view()
    };
    let stocks = if shelf.stocks.is_empty() {
        none("Say which candles you sell: a formula in a vessel. Then what is poured of them stands here.")
    } else {
        shelf.stocks.iter().map(stock).views().view()
    };
    group![
        page_part("shelf-orders", "Orders", orders),
        page_part("shelf-there", "What is there", stocks),
        (!shelf.loose.is_empty()).then(|| {
            let rows = shelf.loose.iter().map(|s| stand(s, true)).views();
            page_part("shelf-loose", "Not for sale yet", el("ul").class("list shelf").child(rows).view())
        })
    ]
}

fn empty() -> View {
    el("div")
        .class("empty")
        .child(el("p").child(
            "Orders stand here with what is short, and every poured candle with the day it is ready. It begins \
with a candle to sell: a formula in a vessel.",
        ))
        .child(el("a").class("button main").attr("href", "#shelf/product/new").child("Name a candle to sell"))
        .view()
}

/// Who ordered, for a title.
pub(super) fn who(state: &State, open: &Open) -> String {
    named(state, open.order)
}

pub(super) fn named(state: &State, order: &Order) -> String {
    let customer = order.customer.as_ref().and_then(|id| state.customers.get(id)).and_then(|k| k.body());
    customer.map_or_else(|| "An order".to_owned(), |c| c.name.clone())
}

/// When it can go, in a few words.
pub(super) fn going(open: &Open) -> (bool, String) {
    let day = keep::weekday;
    match open.when() {
        When::On(on) if on <= keep::today() && open.unfinished().is_empty() => {
            (true, "Can go now".to_owned())
        }
        When::On(on) if on <= keep::today() => (false, "All there, not finished".to_owned()),
        When::On(on) => (false, ["All there, ready ", &day(on)].concat()),
        When::Coming(on) => {
            (false, ["Short ", &candles(open.short()), ", being poured; it goes ", &day(on)].concat())
        }
        When::IfPoured(on) => {
            let poured = if open.poured() > 0 {
                [", ", &open.poured().to_string(), " of them being poured; the rest poured today"].concat()
            } else {
                "; poured today".to_owned()
            };
            (false, ["Short ", &candles(open.short()), &poured, ", it goes ", &day(on)].concat())
        }
    }
}

fn order(state: &State, open: &Open) -> View {
    let (now, words) = going(open);
    let wanted = open.order.wanted.map(|d| ["wanted ", &keep::weekday(d)].concat()).unwrap_or_default();
    let mut lines = Vec::new();
    for line in &open.lines {
        lines.push([&(line.number - line.sent).to_string(), " × ", &line.product.name].concat());
    }
    let late = open.is_late().then(|| el("span").class("tag").child("Late"));
    el("li")
        .child(
            el("a")
                .attr("href", [HERE, "/order/", &open.kept.id.0].concat())
                .child(
                    el("span")
                        .class("what")
                        .child(el("span").class("title").child(who(state, open)))
                        .child(el("span").class("detail").child(lines.join(", ")))
                        .child(el("span").class("detail").child(wanted)),
                )
                .child(el("span").class("state").flag("ready", now).child(words).child(late)),
        )
        .view()
}

fn stock(stock: &Stock) -> View {
    let said = [&candles(stock.left()), ", ", &stock.free().to_string(), " of them free"].concat();
    let held = (stock.held() > 0).then(|| {
        caution([&candles(stock.held()), " on hold: not kept for orders, not to be sent."].concat())
    });
    let poured = match stock.poured {
        0 => String::new(),
        n if n == stock.short => ", being poured".to_owned(),
        n => [", ", &n.to_string(), " of them being poured"].concat(),
    };
    let short = (stock.short > 0).then(|| {
        el("p")
            .class("note caution")
            .child(["Short ", &candles(stock.short), " for what is ordered", &poured, "."].concat())
    });
    let spare = (stock.spare_missing() > 0).then(|| {
        el("p").class("note").child(
            [
                &candles(stock.spare_missing()),
                " fewer than you wish to have in store (",
                &stock.product.spare.to_string(),
                ").",
            ]
            .concat(),
        )
    });
    group![
        el("h3").child(
            el("a")
                .attr("href", [HERE, "/product/", &stock.kept.id.0].concat())
                .child(stock.product.name.clone())
        ),
        el("p").class("found").child(said),
        held,
        short,
        spare,
        (!stock.stands.is_empty() || !stock.coming.is_empty()).then(|| el("ul")
            .class("list shelf")
            .child(stock.coming.iter().map(coming).views())
            .child(stock.stands.iter().map(|s| stand(s, false)).views()))
    ]
}

/// A pour that is on: the way to the Pot.
fn coming(stand: &Stand) -> View {
    let state = ["Being poured, can ship ", &keep::weekday(stand.ready)].concat();
    el("li")
        .child(
            el("a")
                .attr("href", "#pot")
                .child(
                    el("span")
                        .class("what")
                        .child(el("span").class("title").child(batch_number(stand.batch)))
                        .child(el("span").class("detail").child(candles(stand.left))),
                )
                .child(el("span").class("state").child(state)),
        )
        .view()
}

/// One batch: its number, what is left, when it is ready.
fn stand(stand: &Stand, named: bool) -> View {
    let batch = stand.batch;
    let plan = &batch.run.plan;
    let ready = stand.ready <= keep::today();
    let day = keep::weekday(stand.ready);
    let held = !stand.held.is_empty();
    let state = if held {
        "On hold: not to be sent".to_owned()
    } else if stand.left < 0 {
        "More went than there were: count them".to_owned()
    } else if ready {
        ["Ready since ", &day].concat()
    } else {
        ["Curing, ready ", &day].concat()
    };
    let what = if named { [&plan.formula, ", ", &plan.vessel].concat() } else { batch_number(batch) };
    let mut detail = vec![candles(stand.left)];
    if named {
        detail.push(batch_number(batch));
    }
    if !batch.ticked.is_whole() {
        detail.push("not finished".to_owned());
    }
    el("li")
        .child(
            el("a")
                .attr("href", [HERE, "/batch/", &batch.id.0].concat())
                .child(
                    el("span")
                        .class("what")
                        .child(el("span").class("title").child(what))
                        .child(el("span").class("detail").child(detail.join(", "))),
                )
                .child(el("span").class("state").flag("ready", ready && !held).child(state)),
        )
        .view()
}
