//! The Bench room.

use leptos::prelude::*;

pub fn room() -> AnyView {
    view! { <h1>"Bench"</h1> }.into_any()
}
