//! The first screen of an empty book: what Potside is for, and the two ways in.

use crate::keep::Which;
use crate::rooms::workshop::Workshop;
use leptos::prelude::*;

pub(super) fn first(shop: Workshop) -> AnyView {
    let demo = move || {
        (shop.which() == Which::Own).then(|| {
            view! {
                <button type="button" class="big" on:click=move |_| shop.change_workshop(Which::Demo)>
                    "Look around the demo workshop"
                </button>
            }
        })
    };
    view! {
        <div class="empty first">
            <h1>"From the formula to the poured candle"</h1>
            <p>
                "Potside leads you through a pour: what to weigh and on which scale, when to add it, when to pour, how much
                into each vessel. It works beside the pot with no connection, and what you write stays on this device."
            </p>
            <div class="ways">
                <a class="button main big" href="#book/formula/new">"Start your own workshop"</a>
                {demo}
            </div>
            <p class="muted">"The demo has made-up formulas, vessels and scales. It is kept apart from your own book."</p>
        </div>
    }
    .into_any()
}
