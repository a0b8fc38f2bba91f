//! A vessel as it is read: one version of it, with what it holds.

use super::missing;
use super::versions::{self, History};
use super::vessel_form::holds;
use crate::book::Id;
use crate::rooms::parts::page_head;
use crate::rooms::workshop::Workshop;
use crate::vessel::{FillRule, Vessel};
use leptos::prelude::*;

pub(super) fn room(shop: Workshop, id: Id, version: &str) -> AnyView {
    let version = version.to_owned();
    let shown = Memo::new(move |_| shop.state(|s| s.vessels.get(&id).map(|k| History::of(k, &version))));
    (move || match shown.get() {
        Some((history, Some(body))) => page(shop, &history, &body),
        _ => missing("No vessel of this address is in this book."),
    })
    .into_any()
}

fn page(shop: Workshop, history: &History, vessel: &Vessel) -> AnyView {
    let voice = shop.voice();
    let mut facts = vec![match &vessel.fill {
        FillRule::Weight(mass) => ("Filled by weight", voice.typed(*mass)),
        FillRule::Share(share) => ("Filled to a share of what it holds", voice.typed(*share)),
        FillRule::Headspace(space) => ("Filled to below the rim", voice.typed(*space)),
    }];
    if let Some(water) = &vessel.water {
        facts.push((
            "Water to the brim",
            [voice.typed(water.mass), " at ".into(), voice.typed(water.at)].concat(),
        ));
    }
    if let Some(inside) = &vessel.inside {
        facts.push(("Inside, across the top", voice.typed(inside.top)));
        facts.push(("Inside, across the bottom", voice.typed(inside.bottom)));
        facts.push(("Inside, height", voice.typed(inside.height)));
    }
    facts.extend(vessel.wall.map(|w| ("Wall", voice.typed(w))));
    let fact = |(name, value): (&'static str, String)| view! { <div><dt>{name}</dt><dd>{value}</dd></div> };
    let body = vessel.clone();
    let shown = Signal::derive(move || body.clone());
    view! {
        {page_head("#book", "Book", vessel.name.clone())}
        {versions::standing(history, "vessel")}
        {versions::actions(shop, history, "vessel", ().into_any())}
        <dl class="particulars">{facts.into_iter().map(fact).collect_view()}</dl>
        {holds(shop, shown)}
        {(!vessel.note.is_empty()).then(|| view! { <section><h2>"Note"</h2><p class="prose">{vessel.note.clone()}</p></section> })}
        {versions::list(history, "vessel")}
    }
    .into_any()
}
