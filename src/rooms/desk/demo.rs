//! The demo workshop: into it, and out of it.

use crate::keep::Which;
use crate::rooms::parts::press;
use crate::rooms::workshop::Workshop;
use leptos::prelude::*;

pub(super) fn body(shop: Workshop) -> AnyView {
    if shop.which() == Which::Demo {
        view! {
            <p>"You are in the demo workshop. Leaving removes it with all that was done in it; your own book is untouched."</p>
            <div class="actions">
                {press("", "Leave and remove the demo", move || shop.leave_demo())}
            </div>
        }
        .into_any()
    } else {
        view! {
            <p>"A made-up workshop with formulas, vessels and scales to try everything on. It is kept apart from your own book."</p>
            <div class="actions">
                {press("", "Open the demo workshop", move || shop.change_workshop(Which::Demo))}
            </div>
        }
        .into_any()
    }
}
