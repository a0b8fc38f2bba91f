//! The pot as it cools: the times before they come, and the picture of it.

use super::pouring::Pouring;
use crate::dom::*;
use crate::keep;
use crate::pot::{Air, Foretold};
use crate::quantity::Temperature;
use crate::rooms::parts::{Field, Typed, chart, field, notes, sheet, why_button};

pub(super) fn cooling(p: Pouring) -> View {
    let soon = Derived::new(move || soon(p));
    let mut before: Vec<(u32, String)> = Vec::new();
    watch(move || {
        let now = soon.get();
        // Of another pot it rings as well, but not once more when one turns to it.
        if now.iter().any(|new| !before.contains(new)) {
            p.ring();
        }
        before = now;
    });
    let words = move || {
        let here = p.here();
        let one = |(pour, words): &(u32, String)| match here {
            Some(here) if here != *pour => ["Pour ", &(pour + 1).to_string(), ": ", words, " "].concat(),
            _ => [words, " "].concat(),
        };
        soon.with(|soon| soon.iter().map(one).collect::<String>())
    };
    let asking = Value::new(false);
    let shown = move || {
        if p.pending.with(Option::is_some) {
            return ().view();
        }
        p.told.with(|told| told.as_ref().map(|told| one(told, asking))).view()
    };
    group![
        el("p").class("soon").attr("role", "status").child(words),
        shown,
        sheet(|| "The room".to_owned(), asking, move || room(p, asking))
    ]
}

/// What is nearly there, of this pot and of those beside it, in the order of the pours.
fn soon(p: Pouring) -> Vec<(u32, String)> {
    let of_told = |told: &Option<Foretold>| Some((p.here()?, told.as_ref()?.soon.clone()?));
    let mut all = p
        .beside
        .with(|pots| pots.iter().filter_map(|pot| Some((pot.pour, pot.soon.clone()?))).collect::<Vec<_>>());
    let place = all.partition_point(|(pour, _)| Some(*pour) < p.here());
    if let Some(here) = p.told.with(of_told) {
        all.insert(place, here);
    }
    all
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
