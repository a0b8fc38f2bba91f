//! What the scale said, where it is worth keeping: an overshoot is told from it.

use super::pouring::Pouring;
use crate::quantity::Mass;
use crate::rooms::parts::{Field, Typed, mass_field};
use leptos::prelude::*;

pub(super) fn weighed(p: Pouring, open: RwSignal<bool>) -> AnyView {
    let shop = p.shop;
    let Some((key, title, asked)) =
        p.card.with_untracked(|c| c.as_ref().map(|c| (c.step.key, c.title.clone(), c.step.amount)))
    else {
        return ().into_any();
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
    view! {
        <form novalidate on:submit=move |e| { e.prevent_default(); save(); }>
            <p>{title}{asked.map(|mass| format!(": {} asked", shop.voice().both(mass)))}</p>
            {mass_field(Field::new("It weighed"), typed)}
            <div class="actions"><button type="submit" class="main big">"Done with this weight"</button></div>
        </form>
    }
    .into_any()
}
