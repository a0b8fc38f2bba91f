//! The Desk room.

use leptos::prelude::*;

pub fn room() -> AnyView {
    view! { <h1>"Desk"</h1> }.into_any()
}
