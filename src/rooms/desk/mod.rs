//! The Desk room: how amounts are said, the workshop's rules, where the book is kept and copies of it, the demo, about.

mod about;
mod clash;
mod copy;
mod cost;
mod damaged;
mod demo;
mod device;
mod earlier;
mod give;
mod hazard;
mod label;
mod lists;
mod rules;
mod storage;

use super::parts::{page_part, paged, press};
use super::workshop::Workshop;
use crate::book::Id;
use crate::dom::*;
use crate::keep;

/// `#desk/damaged` shows what was set aside; `#desk/safety/ID` and `#desk/label/ID` a form (`new` for a new one);
/// `#desk/hazards` the hazards of a candle; `#desk/print/ID` a label; all else is the Desk itself.
pub(super) fn room() -> View {
    paged(inside)
}

fn inside(shop: Workshop, rest: &[String]) -> View {
    let at = |n: usize| rest.get(n).map_or("", String::as_str);
    let id = || Id(at(1).to_owned());
    match at(0) {
        "damaged" => damaged::page(shop),
        "cost" | "rates" => cost::page(shop, rest),
        "safety" => hazard::form(shop, &id()),
        "hazards" => hazard::result(shop),
        "label" => label::form(shop, &id()),
        "print" => label::print(shop, &id()),
        _ => page(shop),
    }
}

fn page(shop: Workshop) -> View {
    let parts = [
        ("desk-cost", "Cost and price", cost::body()),
        ("desk-hazards", "Hazards of a fragrance", hazard::body(shop)),
        ("desk-labels", "Labels", label::body(shop)),
        ("desk-device", "This device", device::body(shop)),
        ("desk-rules", "The workshop", rules::body(shop)),
        ("desk-book", "Your book", group![storage::body(shop), copy::body(shop)]),
        ("desk-lists", "Lists", lists::body(shop)),
        ("desk-demo", "The demo", demo::body(shop)),
        ("desk-about", "About Potside", about::body()),
    ];
    // The page is long: one tap goes to what is wanted.
    let jump =
        |&(id, title, _): &(&'static str, &'static str, View)| press("quiet", title, move || keep::go_to(id));
    let jumps = parts.iter().skip(1).map(jump).views();
    group![
        el("h1").child("Desk"),
        el("nav").class("jumps").attr("aria-label", "On this page").child(jumps),
        parts.into_iter().map(|(id, title, body)| page_part(id, title, body)).views()
    ]
}
