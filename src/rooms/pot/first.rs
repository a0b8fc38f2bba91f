//! The first screen of an empty book: what Potside is for, and the two ways in.

use crate::dom::*;
use crate::keep::Which;
use crate::rooms::workshop::Workshop;

pub(super) fn first(shop: Workshop) -> View {
    let demo = move || {
        (shop.which() == Which::Own).then(|| {
            el("button")
                .attr("type", "button")
                .class("big")
                .on("click", move |_| shop.change_workshop(Which::Demo))
                .child("Look around the demo workshop")
        })
    };
    el("div")
        .class("empty first")
        .child(el("h1").child("From the formula to the poured candle"))
        .child(el("p").child(
            "Potside leads you through a pour: what to weigh and on which scale, when to \
add it, when to pour, how much into each vessel. It works beside the pot with \
no connection, and what you write stays on this device.",
        ))
        .child(
            el("div")
                .class("ways")
                .child(
                    el("a")
                        .class("button main big")
                        .attr("href", "#book/formula/new")
                        .child("Start your own workshop"),
                )
                .child(demo),
        )
        .child(
            el("p").class("muted").child(
                "The demo has made-up formulas, vessels and scales. It is kept apart from your own book.",
            ),
        )
        .view()
}
