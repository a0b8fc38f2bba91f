//! The pot as it cools: the times before they come, and the picture of it.

use super::pouring::Pouring;
use crate::dom::*;
use crate::keep;
use crate::pot::{Air, Foretold};
use crate::quantity::Temperature;
use crate::rooms::parts::{Field, Typed, chart, field, notes, sheet, why_button};

pub(super) fn cooling(p: Pouring) -> View {
    let soon = Derived::new(move || p.told.with(|told| told.as_ref().and_then(|told| told.soon.clone())));
    watch(move || {
        if soon.with(Option::is_some) {
            p.ring();
        }
    });
    let asking = Value::new(false);
    let shown = move || {
        if p.pending.with(Option::is_some) {
            return ().view();
        }
        p.told.with(|told| told.as_ref().map(|told| one(told, asking))).view()
    };
    group![
        el("p").class("soon").attr("role", "status").child(move || soon.get()),
        shown,
        sheet(|| "The room".to_owned(), asking, move || room(p, asking))
    ]
}

fn one(told: &Foretold, asking: Value<bool>) -> View {
    let gate = |gate: &crate::pot::Gate| {
        el("li")
            .child(el("strong").child(gate.name.clone()))
            .child(el("span").class("detail").child(gate.range.clone()))
            .child(el("span").class("when").child(gate.when.clone()))
    };
    let gates = (!told.gates.is_empty()).then(|| {
        group![
            el("ul").class("list gates").child(told.gates.iter().map(gate).views()),
            told.chart.as_ref().map(chart),
            el("p")
                .class("detail")
                .child("As long as the heat is off and nothing more goes in. ")
                .child(told.why.clone().map(why_button))
        ]
    });
    el("section")
        .class("foretold")
        .attr("aria-labelledby", "foretold-title")
        .child(
            el("header").child(el("h2").attr("id", "foretold-title").child("As it cools")).child(
                el("button")
                    .attr("type", "button")
                    .class("quiet")
                    .on("click", move |_| asking.set(true))
                    .child(told.room.clone()),
            ),
        )
        .child(notes(&told.notes))
        .child(gates)
        .view()
}

/// How warm the room is, for today.
fn room(p: Pouring, asking: Value<bool>) -> View {
    let shop = p.shop;
    let typed = Typed::new("");
    let value = move || {
        let read = typed.read::<Temperature>(shop.temperature_unit()).map_err(|e| e.to_string())?;
        Air::typed(read.value, shop.voice())
    };
    let keep = move |_| match untrack(value) {
        Ok(at) => {
            shop.change_prefs(|prefs| {
                prefs.room = Some(at);
                prefs.room_at = keep::now();
            });
            asking.set(false);
        }
        Err(_) => typed.touched.set(true),
    };
    group![
        field(
            Field::new("How warm the room is").hint("For today. The pot cools towards it."),
            typed,
            move || value().map(|at| shop.voice().amount(at, shop.temperature_unit())),
        ),
        el("div").class("actions").child(
            el("button").attr("type", "button").class("main").on("click", keep).child("Keep it for today"),
        )
    ]
}
