//! The head of a page within a room, and the parts of one.

use leptos::prelude::*;

/// `to` is the address of the room, `room` its name.
pub fn page_head(to: &'static str, room: &'static str, title: String) -> AnyView {
    view! {
        <p class="back"><a href=to>{format!("← {room}")}</a></p>
        <h1>{title}</h1>
    }
    .into_any()
}

/// A part of a room, under its own heading. `id` is that of the heading.
pub fn page_part(id: &'static str, title: &'static str, body: AnyView) -> AnyView {
    view! {
        <section class="part" aria-labelledby=id>
            <h2 id=id>{title}</h2>
            <div>{body}</div>
        </section>
    }
    .into_any()
}
