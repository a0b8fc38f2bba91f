//! What is known of each ingredient, and since when.

use crate::bench::{Ingredient, bulk_density, drop_mass};
use crate::book::Kept;
use crate::keep;
use crate::rooms::parts::why_button;
use crate::rooms::workshop::Workshop;
use leptos::prelude::*;

/// One ingredient: its name, then a line for each fact. None where none is known.
pub(super) fn ingredient(shop: Workshop, kept: &Kept<Ingredient>) -> Option<AnyView> {
    let known = kept.body()?;
    let voice = shop.voice();
    let id = &kept.id;
    let drops = known.drops.as_ref().and_then(|t| drop_mass(t, voice)).map(|d| {
        let address = format!("#bench/drops/{id}");
        fact(d.say(voice), kept.since(|i| i.drops.clone()), address, "Weigh again", Some(why_button(d.why)))
    });
    let spoons = known.spoons.as_ref().and_then(|t| {
        let (said, why) = (t.say(voice)?, bulk_density(t, voice)?.1);
        let address = format!("#bench/spoons/{id}");
        Some(fact(said, kept.since(|i| i.spoons.clone()), address, "Weigh again", Some(why_button(why))))
    });
    let density = known.density.map(|density| {
        let said = ["As poured it has ", &voice.density(density), "."].concat();
        fact(said, kept.since(|i| i.density), format!("#bench/density/{id}"), "Change", None)
    });
    if drops.is_none() && spoons.is_none() && density.is_none() {
        return None;
    }
    let name = known.name.clone();
    Some(view! { <li class="known"><h3>{name}</h3>{drops}{spoons}{density}</li> }.into_any())
}

fn fact(
    said: String,
    since: Option<u64>,
    again: String,
    words: &'static str,
    why: Option<AnyView>,
) -> AnyView {
    view! {
        <div class="fact">
            <p>{said}" "<span class="detail">{since.map(keep::day)}</span></p>
            <p class="more">{why}<a href=again>{words}</a></p>
        </div>
    }
    .into_any()
}
