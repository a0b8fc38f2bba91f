//! A vessel as it is read: one version of it, with what it holds.

use super::fork::fork;
use super::missing;
use super::versions::{self, History};
use super::vessel_form::holds;
use crate::book::Id;
use crate::dom::*;
use crate::rooms::parts::page_head;
use crate::rooms::workshop::Workshop;
use crate::vessel::{FillRule, Vessel};

pub(super) fn room(shop: Workshop, id: Id, version: &str) -> View {
    let version = version.to_owned();
    let shown = Derived::new(move || shop.state(|s| s.vessels.get(&id).map(|k| History::of(k, &version))));
    (move || match shown.get() {
        Some((history, Some(body))) => page(shop, &history, &body),
        _ => missing("No vessel of this address is in this book."),
    })
    .view()
}

fn page(shop: Workshop, history: &History, vessel: &Vessel) -> View {
    let voice = shop.voice();
    let mut facts = vec![match &vessel.fill {
        FillRule::Weight(mass) => ("Filled by weight", voice.typed(*mass)),
        FillRule::Share(share) => ("Filled to a share of what it holds", voice.typed(*share)),
        FillRule::Headspace(space) => ("Filled to below the rim", voice.typed(*space)),
    }];
    if let Some(water) = &vessel.water {
        facts
            .push(("Water to the brim", [water.held(voice), ", at ".into(), voice.typed(water.at)].concat()));
    }
    if let Some(inside) = &vessel.inside {
        facts.push(("Inside, across the top", voice.typed(inside.top)));
        facts.push(("Inside, across the bottom", voice.typed(inside.bottom)));
        facts.push(("Inside, height", voice.typed(inside.height)));
    }
    facts.extend(vessel.wall.map(|w| ("Wall", voice.typed(w))));
    let fact = |(name, value): (&'static str, String)| {
        el("div").child(el("dt").child(name)).child(el("dd").child(value))
    };
    let body = vessel.clone();
    let shown = Derived::new(move || body.clone());
    group![
        page_head("#book", "Book", vessel.name.clone()),
        versions::standing(history, "vessel"),
        fork(shop, &history.id),
        versions::actions(shop, history, "vessel", ().view()),
        el("dl").class("particulars").child(facts.into_iter().map(fact).views()),
        holds(shop, shown),
        (!vessel.note.is_empty()).then(|| {
            el("section")
                .child(el("h2").child("Note"))
                .child(el("p").class("prose").child(vessel.note.clone()))
        }),
        versions::list(shop, history, "vessel")
    ]
}
