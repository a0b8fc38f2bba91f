//! The Shelf room: what is ordered, what is there of it and when it can go; and each batch until it does.

mod batch;
mod calendar;
mod customer;
mod done;
mod goals;
mod list;
mod look;
mod order;
mod order_form;
mod plan;
mod product_form;

pub(super) use look::{Looker, look};

use super::parts::paged;
use super::workshop::Workshop;
use crate::book::Id;
use crate::dom::*;

pub(super) const HERE: &str = "#shelf";

/// `#shelf/order/new`, `#shelf/order/ID`, `#shelf/order/ID/change`; products and customers alike; `#shelf/batch/ID`.
pub(super) fn room() -> View {
    paged(page)
}

fn page(shop: Workshop, place: &[String]) -> View {
    let word = |n: usize| place.get(n).map_or("", String::as_str);
    let id = || Id(word(1).to_owned());
    match (word(0), word(1), word(2)) {
        ("order", "new", _) => order_form::page(shop, None),
        ("order", _, "change") => order_form::page(shop, Some(id())),
        ("order", ..) => order::page(shop, id()),
        ("product", "new", batch) => product_form::page(shop, None, &Id(batch.to_owned())),
        ("product", ..) => product_form::page(shop, Some(id()), &Id(String::new())),
        ("customers", ..) => customer::list(shop),
        ("customer", "new", _) => customer::form(shop, None),
        ("customer", ..) => customer::form(shop, Some(id())),
        ("plan", ..) => plan::page(shop),
        ("done", ..) => done::page(shop),
        ("batch", ..) => batch::page(shop, id()),
        _ => list::page(shop),
    }
}

/// A number with its noun: `1 candle`, `3 candles`.
fn candles(number: i64) -> String {
    if number == 1 { "1 candle".to_owned() } else { format!("{number} candles") }
}
