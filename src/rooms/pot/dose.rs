//! A dose on the screen: number and unit large, what it also comes to beside.

use crate::pot::Said;
use leptos::prelude::*;

pub(super) fn dose(said: Said) -> AnyView {
    view! {
        <span class="amount">
            <span class="figure">{said.number}</span>
            <span class="unit">{said.unit}</span>
            <span class="other">{said.beside}</span>
        </span>
    }
    .into_any()
}
