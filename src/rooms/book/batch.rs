//! A past pour: its record, and the formula and vessel it was made with, as they were then.

use super::missing;
use crate::book::{Batch, Ending, Id};
use crate::rooms::pot::record;
use crate::rooms::workshop::Workshop;
use leptos::prelude::*;

pub(super) fn room(shop: Workshop, id: Id) -> AnyView {
    let batch = Memo::new(move |_| shop.state(|s| s.batches.get(&id).cloned()));
    (move || {
        batch.with(|b| b.as_ref().map_or_else(|| missing("No pour of this address is in this book."), page))
    })
    .into_any()
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

fn page(batch: &Batch) -> AnyView {
    let formula = format!("#book/formula/{}/{}", batch.formula, batch.version);
    let vessel = format!("#book/vessel/{}", batch.vessel);
    view! {
        <p class="back"><a href="#book">"← Book"</a></p>
        {record(batch)}
        <div class="actions">
            <a class="button" href=formula>"The formula as it was then"</a>
            <a class="button" href=vessel>"The vessel"</a>
        </div>
    }
    .into_any()
}
