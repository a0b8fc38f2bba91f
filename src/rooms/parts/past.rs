//! The way from a thing to what was done to it.

use super::live;
use crate::book::Id;
use crate::dom::*;
use crate::rooms::workshop::Workshop;

/// The link to a thing's history; where versions of it stand beside each other it says so.
pub fn past(shop: Workshop, id: &Id) -> View {
    let to = ["#book/history/", &id.0].concat();
    let (id, choose) = (id.clone(), to.clone());
    let forked = Derived::new(move || shop.journal(|j| j.fork(&id).is_some()));
    group![
        live(move || if forked.get() {
            el("p")
                .class("note")
                .child("This was changed in two places. ")
                .child(el("a").attr("href", choose.clone()).child("Choose which one counts"))
                .view()
        } else {
            ().view()
        }),
        el("p").class("more").child(el("a").attr("href", to).child("What was done to it"))
    ]
}
