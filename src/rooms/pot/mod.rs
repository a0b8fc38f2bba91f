//! The Pot room: ask for a pour, make it one step at a time, and read what was made.

mod answer;
mod ask;
mod card;
mod cooling;
mod course;
mod dose;
mod fewer;
mod first;
mod form;
mod hand;
mod list;
mod lots;
mod over;
mod pouring;
mod record;
mod screen;
mod thermometer;
mod weighed;

pub(super) use record::record;

use super::fetch::{Part, inside};
use super::workshop::Workshop;
use crate::book::Id;
use crate::dom::*;
use crate::keep::Which;
use crate::shelf::agenda::Item;

/// What the room shows.
#[derive(Clone, PartialEq)]
enum Shown {
    Record,
    Screen,
    First,
    Ask,
}

pub(super) fn room() -> View {
    let shop = Workshop::here();
    let shown = Derived::new(move || {
        if shop.route().with(|r| r.at(0) == Some("record") && r.at(1).is_some()) {
            Shown::Record
        } else if shop.state(|s| s.running().is_some()) {
            Shown::Screen
        } else if shop.state(|s| s.formulas_shown().is_empty()) {
            Shown::First
        } else {
            Shown::Ask
        }
    });
    (move || match shown.get() {
        Shown::Record => inside(Part::Record),
        Shown::Screen => inside(Part::Pour),
        Shown::First => first::first(shop),
        Shown::Ask => inside(Part::Ask),
    })
    .view()
}

/// The form that asks for a pour.
pub(super) fn ask() -> View {
    let shop = Workshop::here();
    group![demo(shop), form::form(shop)]
}

/// The pour that is on.
pub(super) fn pour() -> View {
    screen::screen(Workshop::here())
}

/// The record that the address names.
pub(super) fn named() -> View {
    let shop = Workshop::here();
    let batch = Derived::new(move || shop.route().with(|r| r.at(1).map(str::to_owned)));
    (move || kept(shop, Id(batch.get().unwrap_or_default()))).view()
}

/// Fills in what is asked for, so many of a product; a pour that is on goes on first.
pub(super) fn ask_for(shop: Workshop, item: &Item, number: u32) {
    ask::Asked::kept(shop).of(shop, item, number);
}

/// In the demo: what it is, and the way out.
fn demo(shop: Workshop) -> View {
    let leave =
        move || {
            (shop.which() == Which::Demo).then(|| {
                el("p")
                    .class("note leave")
                    .child(el("span").child(
                        "This is the demo workshop. Try anything: it is kept apart from your own book.",
                    ))
                    .child(
                        el("button")
                            .attr("type", "button")
                            .on("click", move |_| shop.leave_demo())
                            .child("Leave the demo"),
                    )
            })
        };
    leave.view()
}

/// The record of a batch, as long as the book has it.
fn kept(shop: Workshop, batch: Id) -> View {
    let found = Derived::new(move || shop.state(|s| s.batches.get(&batch).cloned()));
    (move || match found.get() {
        Some(batch) => record(&batch),
        None => el("div")
            .class("empty")
            .child(el("h1").child("No such record"))
            .child(el("p").child("There is no batch of this name in the book."))
            .child(el("a").class("button").attr("href", "#pot").child("Back to the pot"))
            .view(),
    })
    .view()
}
