//! The Book room.

use leptos::prelude::*;

pub fn room() -> AnyView {
    view! { <h1>"Book"</h1> }.into_any()
}
