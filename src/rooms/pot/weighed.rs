//! What went in, where it is worth keeping: an overshoot is told from it.

use super::pouring::Pouring;
use crate::dom::*;
use crate::quantity::Mass;
use crate::rooms::parts::{Field, Typed, field, mass_field};

pub(super) fn weighed(p: Pouring, open: Value<bool>) -> View {
    let shop = p.shop;
    let Some(card) = p.card.with_untracked(Clone::clone) else { return ().view() };
    let (key, dose) = (card.step.key, card.step.dose);
    let asked = card.step.amount.map(|mass| match &dose {
        Some(dose) => dose.tell(mass, shop.voice()),
        None => shop.voice().both(mass),
    });
    let typed = Typed::new("");
    let of = dose.clone();
    let read = move || match &of {
        Some(dose) => typed.text.with(|text| dose.read(text, shop.voice())),
        None => typed.read::<Mass>(shop.mass_unit()).map(|amount| amount.value),
    };
    let (again, typed_in) = (read.clone(), read.clone());
    let short = move || {
        let mass = typed_in().ok()?;
        p.run(|run| run.short(key, mass, shop.voice())).flatten()
    };
    let save = move || match untrack(&again) {
        Ok(mass) => {
            open.set(false);
            p.did(key, Some(mass));
        }
        Err(_) => typed.touched.set(true),
    };
    let asks = match dose {
        Some(dose) if dose.is_counted() => {
            let (label, example) = dose.asks();
            let echo = move || read().map(|mass| dose.tell(mass, shop.voice())).map_err(|e| e.to_string());
            field(Field::new(label).placeholder(example), typed, echo)
        }
        _ => mass_field(Field::new("It weighed"), typed),
    };
    el("form")
        .attr("novalidate", true)
        .on("submit", move |e| {
            e.prevent_default();
            save();
        })
        .child(el("p").child(card.title).child(asked.map(|asked| [": ", &asked, " asked"].concat())))
        .child(asks)
        .child(
            el("div")
                .attr("aria-live", "polite")
                .child(move || short().map(|short| el("p").class("note").child(short))),
        )
        .child(
            el("div")
                .class("actions")
                .child(el("button").attr("type", "submit").class("main big").child("Done with this amount")),
        )
        .view()
}
