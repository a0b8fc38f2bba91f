//! The Desk room: how amounts are said, the workshop's rules, where the book is kept and copies of it, the demo, about.

mod about;
mod copy;
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
    let damaged = Derived::new(move || shop.route().with(|r| r.at(0) == Some("damaged")));
    live(move || {
        let damaged = damaged.get();
        untrack(|| if damaged { damaged::page(shop) } else { page(shop) })
    })
}

fn page(shop: Workshop) -> View {
    group![
        el("h1").child("Desk"),
        page_part("desk-device", "This device", device::body(shop)),
        page_part("desk-rules", "The workshop", rules::body(shop)),
        page_part("desk-book", "Your book", group![storage::body(shop), copy::body(shop)]),
        page_part("desk-lists", "Lists", lists::body(shop)),
        page_part("desk-demo", "The demo", demo::body(shop)),
        page_part("desk-about", "About Potside", about::body())
    ]
}
