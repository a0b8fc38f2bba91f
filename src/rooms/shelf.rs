//! The Shelf room: what was poured, and when it has cured.

use super::parts::live;
use super::workshop::Workshop;
use crate::book::{Batch, Cure};
use crate::dom::*;
use crate::keep;

/// The clock of the Shelf ticks once an hour: nothing on it changes sooner.
const TICK: u64 = 60 * 60 * 1000;

pub(super) fn room() -> View {
    let shop = Workshop::here();
    let hour = Derived::new(move || shop.now().get() / TICK);
    let shelf = move || {
        hour.track();
        let now = keep::now();
        shop.state(|s| match s.finished() {
            none if none.is_empty() => empty(),
            finished => {
                let rows = finished.into_iter().filter_map(|b| row(b, now)).views();
                el("ul").class("list shelf").child(rows).view()
            }
        })
    };
    group![el("h1").child("Shelf"), live(shelf)]
}

fn empty() -> View {
    el("div")
        .class("empty")
        .child(el("p").child(
            "Poured candles stand here while they cure, each batch with the day it is \
ready. Nothing is poured yet.",
        ))
        .child(el("a").class("button main").attr("href", "#pot").child("Pour a batch"))
        .view()
}

fn row(batch: &Batch, now: u64) -> Option<View> {
    let (poured, ready) = (batch.poured_at()?, batch.ready_at()?);
    let plan = &batch.run.plan;
    let vessels = match batch.filled_vessels() {
        1 => "1 vessel".to_owned(),
        n => format!("{n} vessels"),
    };
    let state = match batch.cure(now)? {
        Cure::Ready => {
            el("span").class("state ready").child("Ready since ").child(keep::weekday(ready)).view()
        }
        Cure::Curing { days } => el("span")
            .class("state")
            .child("Curing, ready ")
            .child(keep::weekday(ready))
            .child(el("span").class("detail").child(if days == 1 {
                " in a day".to_owned()
            } else {
                format!(" in {days} days")
            }))
            .view(),
    };
    let wick =
        if plan.wick.is_empty() { String::new() } else { ["wick ", plan.wick.as_str(), ", "].concat() };
    Some(
        el("li")
            .child(
                el("a")
                    .attr("href", format!("#pot/record/{}", batch.id))
                    .child(
                        el("span")
                            .class("what")
                            .child(el("span").class("title").child(plan.formula.clone()))
                            .child(
                                el("span")
                                    .class("detail")
                                    .child(vessels)
                                    .child(" “")
                                    .child(plan.vessel.clone())
                                    .child("”, ")
                                    .child(wick)
                                    .child("poured ")
                                    .child(keep::weekday(poured)),
                            ),
                    )
                    .child(state),
            )
            .view(),
    )
}
