//! Money, shares and days: shown, and typed.

use super::field::label_of;
use super::field::{Field, Typed, field};
use super::page_head;
use crate::desk::{read_percent, say_percent};
use crate::dom::*;
use crate::quantity::Money;
use crate::rooms::workshop::Workshop;

/// An amount of money in the workshop's currency.
pub fn coins(money: Money) -> String {
    let shop = Workshop::here();
    shop.state(|s| s.rates.currency.show(money, shop.locale()))
}

pub fn money_field(of: Field, typed: Typed) -> View {
    let shop = Workshop::here();
    let read = move || shop.state(|s| s.rates.currency.read(&typed.get(), shop.locale()));
    field(of, typed, move || read().map(coins).map_err(|e| e.to_string()))
}

/// A share that may be more than all of it.
pub fn percent_field(of: Field, typed: Typed) -> View {
    let shop = Workshop::here();
    field(of, typed, move || read_percent(&typed.get(), shop.voice()).map(|s| say_percent(s, shop.voice())))
}

/// A day, by the browser's own calendar.
pub fn date_field(label: &'static str, typed: Typed, optional: bool) -> View {
    let id = Workshop::here().fresh_dom_id();
    el("div")
        .class("field")
        .child(label_of(&id, label.to_owned(), optional))
        .child(
            el("input")
                .attr("id", id)
                .attr("type", "date")
                .prop("value", typed.text)
                .on("input", move |e| typed.text.set(text_of(&e))),
        )
        .view()
}

/// What is said where an address leads nowhere.
pub fn missing_page(to: &'static str, room: &'static str, why: &'static str) -> View {
    group![page_head(to, room, "Not here".to_owned()), el("p").child(why)]
}
