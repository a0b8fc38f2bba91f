//! The Pot room.

use leptos::prelude::*;

pub fn room() -> AnyView {
    view! { <h1>"Pot"</h1> }.into_any()
}
