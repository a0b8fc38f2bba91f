//! The Desk room: how amounts are said, the workshop's rules, where the book is kept and copies of it, the demo, about.

mod about;
mod copy;
mod cost;
mod damaged;
mod demo;
mod device;
mod lists;
mod rules;
mod storage;

use super::parts::{live, page_part};
use super::workshop::Workshop;
use crate::dom::*;

/// `#desk/damaged` shows what was set aside; all else is the Desk itself.
pub(super) fn room() -> View {
    let shop = Workshop::here();
    let place = Derived::new(move || shop.route().with(|r| r.rest.clone()));
    live(move || {
        let place = place.get();
        untrack(|| match place.first().map_or("", String::as_str) {
            "damaged" => damaged::page(shop),
            "cost" | "rates" => cost::page(shop, &place),
            _ => page(shop),
        })
    })
}

fn page(shop: Workshop) -> View {
    group![
        el("h1").child("Desk"),
        page_part("desk-cost", "Cost and price", cost::body()),
        page_part("desk-device", "This device", device::body(shop)),
        page_part("desk-rules", "The workshop", rules::body(shop)),
        page_part("desk-book", "Your book", group![storage::body(shop), copy::body(shop)]),
        page_part("desk-lists", "Lists", lists::body(shop)),
        page_part("desk-demo", "The demo", demo::body(shop)),
        page_part("desk-about", "About Potside", about::body())
    ]
}
