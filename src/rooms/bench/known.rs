//! What is known of each ingredient, and since when.

use crate::bench::{Ingredient, bulk_density, drop_mass};
use crate::book::Kept;
use crate::dom::*;
use crate::keep;
use crate::rooms::parts::{past, why_button};
use crate::rooms::workshop::Workshop;

/// One ingredient: its name, then a line for each fact. None where none is known.
pub(super) fn ingredient(shop: Workshop, kept: &Kept<Ingredient>) -> Option<View> {
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
    Some(
        el("li")
            .class("known")
            .child(el("h3").child(name))
            .child(drops)
            .child(spoons)
            .child(density)
            .child(past(shop, id))
            .view(),
    )
}

fn fact(said: String, since: Option<u64>, again: String, words: &'static str, why: Option<View>) -> View {
    el("div")
        .class("fact")
        .child(
            el("p")
                .child(said)
                .child(" ")
                .child(el("span").class("detail").child(since.map(|at| keep::day(keep::ZONE.day(at))))),
        )
        .child(el("p").class("more").child(why).child(el("a").attr("href", again).child(words)))
        .view()
}
