//! Which page of a room is shown, its head, and the parts of one.

use crate::dom::*;
use crate::rooms::workshop::Workshop;

/// The page of a room that the rest of the address names: made when one comes to it, and anew where that changes.
pub fn paged(page: fn(Workshop, &[String]) -> View) -> View {
    let shop = Workshop::here();
    let rest = Derived::new(move || shop.route().with(|r| r.rest.clone()));
    let shown = move || {
        let rest = rest.get();
        untrack(|| page(shop, &rest))
    };
    shown.view()
}

/// `to` is the address of the room, `room` its name.
pub fn page_head(to: &'static str, room: &'static str, title: String) -> View {
    group![
        el("p").class("back").child(el("a").attr("href", to).child(format!("← {room}"))),
        el("h1").child(title)
    ]
}

/// A part of a room, under its own heading. `id` is that of the heading.
pub fn page_part(id: &'static str, title: &'static str, body: View) -> View {
    el("section")
        .class("part")
        .attr("aria-labelledby", id)
        .child(el("h2").attr("id", id).attr("tabindex", "-1").child(title))
        .child(el("div").child(body))
        .view()
}
