//! The Desk room: how amounts are said, the workshop's rules, where the book is kept and copies of it, the demo, about.

mod about;
mod copy;
mod cost;
mod damaged;
mod demo;
mod device;
mod hazard;
mod label;
mod lists;
mod rules;
mod storage;

use super::parts::{live, page_part};
use super::workshop::Workshop;
use crate::book::Id;
use crate::dom::*;

/// `#desk/damaged` shows what was set aside; `#desk/safety/ID` and `#desk/label/ID` a form (`new` for a new one);
/// `#desk/hazards` the hazards of a candle; `#desk/print/ID` a label; all else is the Desk itself.
pub(super) fn room() -> View {
    let shop = Workshop::here();
    let rest = Derived::new(move || shop.route().with(|r| r.rest.clone()));
    live(move || rest.with(|rest| inside(shop, rest)))
}

fn inside(shop: Workshop, rest: &[String]) -> View {
    let at = |n: usize| rest.get(n).map_or("", String::as_str);
    let id = || Id(at(1).to_owned());
    untrack(|| match at(0) {
        "damaged" => damaged::page(shop),
        "cost" | "rates" => cost::page(shop, rest),
        "safety" => hazard::form(shop, &id()),
        "hazards" => hazard::result(shop),
        "label" => label::form(shop, &id()),
        "print" => label::print(shop, &id()),
        _ => page(shop),
    })
}

fn page(shop: Workshop) -> View {
    group![
        el("h1").child("Desk"),
        page_part("desk-cost", "Cost and price", cost::body()),
        page_part("desk-hazards", "Hazards of a fragrance", hazard::body(shop)),
        page_part("desk-labels", "Labels", label::body(shop)),
        page_part("desk-device", "This device", device::body(shop)),
        page_part("desk-rules", "The workshop", rules::body(shop)),
        page_part("desk-book", "Your book", group![storage::body(shop), copy::body(shop)]),
        page_part("desk-lists", "Lists", lists::body(shop)),
        page_part("desk-demo", "The demo", demo::body(shop)),
        page_part("desk-about", "About Potside", about::body())
    ]
}
