//! All the steps of the pour: what is done and when, what is now, what comes.

use super::pouring::Pouring;
use crate::dom::*;
use crate::keep;
use crate::pot::{Amiss, Event, StepKey};

#[derive(Clone, PartialEq)]
struct Row {
    key: StepKey,
    title: String,
    done: Option<u64>,
    amiss: Option<Amiss>,
    /// A vessel in which there is nothing.
    empty: bool,
    /// Said above its first step, where there are several.
    pour: Option<u32>,
}

/// `id` is given to the step that is now.
pub(super) fn list(p: Pouring, id: Option<&'static str>) -> View {
    let rows = Derived::new(move || {
        let voice = p.shop.voice();
        let row = |run: &crate::pot::Run, key| {
            let card = run.shown_step(key, voice)?;
            let (done, at) = match card.step.done {
                Some(Event::Did { at, temperature, .. }) => (Some(at), temperature),
                _ => (None, None),
            };
            let amiss = at.and_then(|at| run.amiss(key, at));
            let filled = card.step.done.as_ref().and_then(Event::filled);
            let empty = done.is_some() && filled.is_none() && matches!(key, StepKey::Fill { .. });
            let pour = card.pour.filter(|(_, of)| *of > 1).map(|(pour, _)| pour);
            Some(Row { key, title: card.title, done, amiss, empty, pour })
        };
        let rows = |run: &crate::pot::Run| {
            let mut rows: Vec<Row> = run.steps().iter().filter_map(|s| row(run, s.key)).collect();
            let mut before = None;
            for row in &mut rows {
                let pour = std::mem::replace(&mut before, row.pour);
                row.pour = row.pour.filter(|own| Some(*own) != pour);
            }
            rows
        };
        p.run(rows).unwrap_or_default()
    });
    let now = Derived::new(move || p.card.with(|c| c.as_ref().map(|c| c.step.key)));
    el("ol")
        .class("steps")
        .child(move || rows.get().into_iter().map(|row| one(row, now.get(), id)).views())
        .view()
}

fn one(row: Row, now: Option<StepKey>, id: Option<&'static str>) -> View {
    let here = now == Some(row.key);
    let word = match row.done {
        Some(at) if row.empty => format!("left empty {}", keep::time(at)),
        Some(at) => {
            let amiss = match row.amiss {
                Some(Amiss::Outside) => ", outside its range",
                Some(Amiss::TooHot) => ", too hot",
                None => "",
            };
            ["done ", &keep::time(at), amiss].concat()
        }
        None if here => "now".to_owned(),
        None => String::new(),
    };
    let pour = row.pour.map(|pour| el("li").child(el("h3").child(format!("Pour {pour}"))));
    let step = el("li")
        .attr("id", id.filter(|_| here))
        .flag("done", row.done.is_some())
        .flag("here", here)
        .attr("aria-current", here.then_some("step"))
        .child(el("span").class("title").child(row.title))
        .child(el("span").class("detail").child(word));
    group![pour, step]
}
