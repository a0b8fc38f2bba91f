//! The Pot room: ask for a pour, make it one step at a time, and read what was made.

mod answer;
mod ask;
mod card;
mod dose;
mod first;
mod form;
mod hand;
mod list;
mod over;
mod pouring;
mod record;
mod screen;
mod thermometer;
mod weighed;

pub(super) use record::record;

use super::workshop::Workshop;
use crate::book::Id;
use crate::keep::Which;
use leptos::prelude::*;

/// What the room shows.
#[derive(Clone, PartialEq)]
enum Shown {
    Record(Id),
    Screen,
    First,
    Ask,
}

pub(super) fn room() -> AnyView {
    let shop = Workshop::here();
    let shown = Memo::new(move |_| {
        let batch = shop.route().with(|r| match (r.at(0), r.at(1)) {
            (Some("record"), Some(batch)) => Some(Id(batch.to_owned())),
            _ => None,
        });
        if let Some(batch) = batch {
            Shown::Record(batch)
        } else if shop.state(|s| s.running().is_some()) {
            Shown::Screen
        } else if shop.state(|s| s.formulas_shown().is_empty()) {
            Shown::First
        } else {
            Shown::Ask
        }
    });
    (move || match shown.get() {
        Shown::Record(batch) => kept(shop, batch),
        Shown::Screen => screen::screen(shop),
        Shown::First => first::first(shop),
        Shown::Ask => view! { {demo(shop)} {form::form(shop)} }.into_any(),
    })
    .into_any()
}

/// In the demo: what it is, and the way out.
fn demo(shop: Workshop) -> AnyView {
    let leave = move || {
        (shop.which() == Which::Demo).then(|| {
            view! {
                <p class="note leave">
                    <span>"This is the demo workshop. Try anything: it is kept apart from your own book."</span>
                    <button type="button" on:click=move |_| shop.leave_demo()>"Leave the demo"</button>
                </p>
            }
        })
    };
    leave.into_any()
}

/// The record of a batch, as long as the book has it.
fn kept(shop: Workshop, batch: Id) -> AnyView {
    let found = Memo::new(move |_| shop.state(|s| s.batches.get(&batch).cloned()));
    (move || match found.get() {
        Some(batch) => record(&batch),
        None => view! {
            <div class="empty">
                <h1>"No such record"</h1>
                <p>"There is no batch of this name in the book."</p>
                <a class="button" href="#pot">"Back to the pot"</a>
            </div>
        }
        .into_any(),
    })
    .into_any()
}
