//! What the scale said, where it is worth keeping: an overshoot is told from it.

use super::pouring::Pouring;
use crate::dom::*;
use crate::quantity::Mass;
use crate::rooms::parts::{Field, Typed, mass_field};

pub(super) fn weighed(p: Pouring, open: Value<bool>) -> View {
    let shop = p.shop;
    let Some((key, title, asked)) =
        p.card.with_untracked(|c| c.as_ref().map(|c| (c.step.key, c.title.clone(), c.step.amount)))
    else {
        return ().view();
    };
    let typed = Typed::new("");
    let read = move || typed.read::<Mass>(shop.mass_unit());
    let save = move || match read() {
        Ok(mass) => {
            open.set(false);
            p.did(key, Some(mass.value));
        }
        Err(_) => typed.touched.set(true),
    };
    el("form")
        .attr("novalidate", true)
        .on("submit", move |e| {
            e.prevent_default();
            save();
        })
        .child(el("p").child(title).child(asked.map(|mass| format!(": {} asked", shop.voice().both(mass)))))
        .child(mass_field(Field::new("It weighed"), typed))
        .child(
            el("div")
                .class("actions")
                .child(el("button").attr("type", "submit").class("main big").child("Done with this weight")),
        )
        .view()
}
