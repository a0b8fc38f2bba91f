//! The converter, over any room and closed back to it.

use super::parts::sheet;
use leptos::prelude::*;

#[component]
pub fn Converter(open: RwSignal<bool>) -> impl IntoView {
    sheet(|| "Convert".to_owned(), open, || view! { <p></p> }.into_any())
}
