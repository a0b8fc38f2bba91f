//! The demo workshop: into it, and out of it.

use crate::dom::*;
use crate::keep::Which;
use crate::rooms::parts::press;
use crate::rooms::workshop::Workshop;

pub(super) fn body(shop: Workshop) -> View {
    if shop.which() == Which::Demo {
        group![
            el("p").child(
                "You are in the demo workshop. Leaving removes it with all that was done in it; \
your own book is untouched.",
            ),
            el("div")
                .class("actions")
                .child(press("", "Leave and remove the demo", move || shop.leave_demo()))
        ]
    } else {
        group![
            el("p").child(
                "A made-up workshop with formulas, vessels and scales to try everything on. It \
is kept apart from your own book.",
            ),
            el("div")
                .class("actions")
                .child(press("", "Open the demo workshop", move || shop.change_workshop(Which::Demo)))
        ]
    }
}
