//! The head of a page within a room: the way back, and what it is.

use leptos::prelude::*;

/// `to` is the address of the room, `room` its name.
pub fn page_head(to: &'static str, room: &'static str, title: String) -> AnyView {
    view! {
        <p class="back"><a href=to>{format!("← {room}")}</a></p>
        <h1>{title}</h1>
    }
    .into_any()
}
