//! The Shelf room: what was poured, and when it has cured.

use super::parts::live;
use super::workshop::Workshop;
use crate::book::{Batch, Cure};
use crate::keep;
use leptos::prelude::*;

/// The clock of the Shelf ticks once an hour: nothing on it changes sooner.
const TICK: u64 = 60 * 60 * 1000;

pub(super) fn room() -> AnyView {
    let shop = Workshop::here();
    let hour = Memo::new(move |_| shop.now().get() / TICK);
    let shelf = move || {
        hour.track();
        let now = keep::now();
        shop.state(|s| match s.finished() {
            none if none.is_empty() => empty(),
            finished => {
                let rows = finished.into_iter().filter_map(|b| row(b, now)).collect_view();
                view! { <ul class="list shelf">{rows}</ul> }.into_any()
            }
        })
    };
    view! { <h1>"Shelf"</h1> {live(shelf)} }.into_any()
}

fn empty() -> AnyView {
    view! {
        <div class="empty">
            <p>"Poured candles stand here while they cure, each batch with the day it is ready. Nothing is poured yet."</p>
            <a class="button main" href="#pot">"Pour a batch"</a>
        </div>
    }
    .into_any()
}

fn row(batch: &Batch, now: u64) -> Option<AnyView> {
    let (poured, ready) = (batch.poured_at()?, batch.ready_at()?);
    let plan = &batch.run.plan;
    let vessels = match batch.filled_vessels() {
        1 => "1 vessel".to_owned(),
        n => format!("{n} vessels"),
    };
    let state = match batch.cure(now)? {
        Cure::Ready => view! { <span class="state ready">"Ready since "{keep::weekday(ready)}</span> }.into_any(),
        Cure::Curing { days } => view! {
            <span class="state">
                "Curing, ready "{keep::weekday(ready)}
                <span class="detail">{if days == 1 { " in a day".to_owned() } else { format!(" in {days} days") }}</span>
            </span>
        }
        .into_any(),
    };
    let wick =
        if plan.wick.is_empty() { String::new() } else { ["wick ", plan.wick.as_str(), ", "].concat() };
    Some(
        view! {
            <li>
                <a href=format!("#pot/record/{}", batch.id)>
                    <span class="what">
                        <span class="title">{plan.formula.clone()}</span>
                        <span class="detail">{vessels}" “"{plan.vessel.clone()}"”, "{wick}"poured "{keep::weekday(poured)}</span>
                    </span>
                    {state}
                </a>
            </li>
        }
        .into_any(),
    )
}
