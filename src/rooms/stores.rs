//! The Stores room.

use leptos::prelude::*;

pub fn room() -> AnyView {
    view! { <h1>"Stores"</h1> }.into_any()
}
