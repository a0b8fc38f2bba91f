//! The pot as it cools: the times before they come, and the picture of it.

use super::pouring::Pouring;
use crate::dom::*;
use crate::keep;
use crate::pot::{Air, Chart, Foretold, HIGH, WIDE, Words};
use crate::quantity::Temperature;
use crate::rooms::parts::{Field, Typed, field, notes, sheet};

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
            told.chart.as_ref().map(picture),
            el("p").class("detail").child("As long as the heat is off and nothing more goes in.")
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

fn picture(chart: &Chart) -> View {
    let strip = |(top, height): &(i32, i32)| {
        svg("rect")
            .class("strip")
            .attr("y", top.to_string())
            .attr("width", WIDE.to_string())
            .attr("height", height.to_string())
    };
    let dot = |(x, y, odd): &(i32, i32, bool)| {
        svg("circle")
            .class(if *odd { "dot odd" } else { "dot" })
            .attr("cx", x.to_string())
            .attr("cy", y.to_string())
            .attr("r", "5")
    };
    let words = |words: &Words| {
        svg("text")
            .attr("x", words.x.to_string())
            .attr("y", words.y.to_string())
            .attr("text-anchor", words.anchor)
            .child(words.text.clone())
    };
    svg("svg")
        .class("chart")
        .attr("viewBox", format!("-8 0 {} {HIGH}", WIDE + 16))
        .attr("role", "img")
        .attr("aria-label", chart.said.clone())
        .child(chart.strips.iter().map(strip).views())
        .child(svg("path").class("band").attr("d", chart.band.clone()))
        .child(svg("path").class("curve").attr("d", chart.curve.clone()))
        .child(svg("path").class("at").attr("d", chart.at.clone()))
        .child(chart.dots.iter().map(dot).views())
        .child(chart.words.iter().map(words).views())
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
