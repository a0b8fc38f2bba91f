//! A past pour: its record, and the formula and vessel it was made with, as they were then.

use super::missing;
use crate::book::{Batch, Ending, Id};
use crate::dom::*;
use crate::rooms::parts::past;
use crate::rooms::pot::record;
use crate::rooms::workshop::Workshop;

pub(super) fn room(shop: Workshop, id: Id) -> View {
    let batch = Derived::new(move || shop.state(|s| s.batches.get(&id).cloned()));
    (move || {
        batch.with(|b| {
            b.as_ref().map_or_else(|| missing("No pour of this address is in this book."), |b| page(shop, b))
        })
    })
    .view()
}

/// How it stands, in a word.
pub(super) fn standing(batch: &Batch) -> &'static str {
    match batch.ended {
        None => "Not finished",
        Some((Ending::Poured, ..)) => "Poured",
        Some((Ending::GivenUp, ..)) => "Given up",
    }
}

pub(super) fn counted(vessels: u32, vessel: &str) -> String {
    if vessels == 1 { format!("1 vessel, {vessel}") } else { format!("{vessels} vessels, {vessel}") }
}

fn page(shop: Workshop, batch: &Batch) -> View {
    let formula = format!("#book/formula/{}/{}", batch.formula, batch.version);
    let vessel = format!("#book/vessel/{}", batch.vessel);
    group![
        el("p").class("back").child(el("a").attr("href", "#book").child("← Book")),
        record(batch),
        el("div")
            .class("actions")
            .child(el("a").class("button").attr("href", formula).child("The formula as it was then"))
            .child(el("a").class("button").attr("href", vessel).child("The vessel")),
        past(shop, &batch.id)
    ]
}
