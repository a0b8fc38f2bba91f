//! Orders that wait no more, and one of them: to whom, what was in it, what went and when.

use super::list::named;
use super::{HERE, candles};
use crate::book::{Id, State};
use crate::dom::*;
use crate::keep;
use crate::rooms::parts::{caution, live, missing_page, page_head, page_part, past, press};
use crate::rooms::workshop::Workshop;
use crate::shelf::{Beyond, Buys, Order, Past, Reason, batch_number};

/// So many are shown at first, and as many more each time.
const FEW: usize = 50;

/// `#shelf/done`.
pub(super) fn page(shop: Workshop) -> View {
    let most = Value::new(FEW);
    let rows = move || {
        shop.state(|s| {
            let all = s.past_orders(&s.shelf(keep::today(), keep::ZONE).orders);
            let shown = || all.iter().take(most.get());
            let beyond = s.beyond(&shown().map(|past| past.kept).collect::<Vec<_>>());
            let rows = shown().map(|p| row(s, p, &beyond)).views();
            if all.is_empty() {
                return el("p").class("muted").child("None is done yet.").view();
            }
            let more = move || most.update(|most| *most += FEW);
            group![
                el("ul").class("list shelf").child(rows),
                (all.len() > most.get()).then(|| press("", "Show earlier ones", more))
            ]
        })
    };
    group![page_head(HERE, "Shelf", "Orders that are done".to_owned()), live(rows)]
}

fn row(state: &State, past: &Past, beyond: &[Beyond]) -> View {
    let more = beyond.iter().any(|b| *b.order == past.kept.id);
    let more = more.then(|| el("span").class("tag").child("More sent than ordered"));
    let went = match past.last {
        Some(day) => ["sent ", &keep::day(day)].concat(),
        None => "nothing was sent".to_owned(),
    };
    el("li")
        .child(
            el("a")
                .attr("href", [HERE, "/order/", &past.kept.id.0].concat())
                .child(
                    el("span")
                        .class("what")
                        .child(el("span").class("title").child(named(state, past.order)))
                        .child(el("span").class("detail").child(lines(state, past.order).join(", "))),
                )
                .child(el("span").class("state").child(went).child(more)),
        )
        .view()
}

/// `4 × Fig jar`, for each line.
fn lines(state: &State, order: &Order) -> Vec<String> {
    let mut said = Vec::new();
    for line in &order.lines {
        let product = state.products.get(&line.product).and_then(|k| k.body());
        let name = product.map_or("a candle sold no more", |p| p.name.as_str());
        said.push([&line.number.to_string(), " × ", name].concat());
    }
    said
}

/// Who it is for, how they buy, and where it goes; nothing where nobody is named.
pub(super) fn to_whom(state: &State, order: &Order) -> View {
    let found = order.customer.as_ref().and_then(|id| Some((id, state.customers.get(id)?.body()?)));
    let Some((id, customer)) = found.filter(|(_, c)| !c.removed) else { return ().view() };
    let buys = match customer.buys {
        Buys::Retail => "Retail",
        Buys::Wholesale => "Wholesale",
        Buys::PrivateLabel => "Private label",
    };
    group![
        el("p")
            .child(buys)
            .child(". ")
            .child(el("a").attr("href", [HERE, "/customer/", &id.0].concat()).child("The customer")),
        (!customer.contact.is_empty()).then(|| el("p").class("prose").child(customer.contact.clone()))
    ]
}

/// One that is done, at the address it had before.
pub(super) fn order(shop: Workshop, state: &State, id: &Id) -> View {
    let Some(order) = state.orders.get(id).and_then(|k| k.body()) else {
        return missing_page(HERE, "Shelf", "There is no order of this address in this book.");
    };
    let words = if order.closed { "This order was closed." } else { "All of this order is sent." };
    let all = lines(state, order).into_iter().map(|line| el("li").child(line)).views();
    group![
        page_head(HERE, "Shelf", named(state, order)),
        el("p").class("makes").child(words),
        state.say_beyond(id).map(caution),
        to_whom(state, order),
        el("ul").class("list").child(all),
        (!order.note.is_empty()).then(|| el("p").class("note").child(order.note.clone())),
        sent(state, id),
        past(shop, id)
    ]
}

/// What went for an order, the last first.
pub(super) fn sent(state: &State, id: &Id) -> View {
    let mut rows = Vec::new();
    for kept in state.moves.values().filter(|k| !k.retired) {
        let Some(body) = kept.body() else { continue };
        if matches!(&body.reason, Reason::Shipped { order, .. } if order == id) {
            let of = state.batches.get(&body.batch).map(batch_number).unwrap_or_default();
            let words = [&candles(body.number.into()), " of ", &of, ", ", &keep::day(body.on)].concat();
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
