//! The views: one module a room, shared parts in `parts`.

use leptos::prelude::*;
use wasm_bindgen::{JsCast, prelude::wasm_bindgen};

/// Called once by the page: puts the app in the place of the shell.
#[wasm_bindgen(start)]
pub fn start() {
    let Some(place) = document().get_element_by_id("app") else { return };
    place.set_text_content(None);
    mount_to(place.unchecked_into(), || view! { <main><h1>"Potside"</h1></main> }).forget();
}
