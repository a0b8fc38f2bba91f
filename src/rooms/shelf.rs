//! The Shelf room.

use leptos::prelude::*;

pub fn room() -> AnyView {
    view! { <h1>"Shelf"</h1> }.into_any()
}
