//! What stands at the bench: scales, pots, and what weighing has told.

use super::known::ingredient;
use crate::bench::{MeltingPot, Scale};
use crate::book::{Act, Id, Kept};
use crate::rooms::parts::{live, page_part, press};
use crate::rooms::workshop::Workshop;
use crate::vessel::Vessel;
use leptos::prelude::*;
use std::collections::BTreeMap;

pub(super) fn page(shop: Workshop) -> AnyView {
    view! {
        <h1>"Bench"</h1>
        <p class="lead">"What you measure with, and what a drop, a spoon or a vessel comes to in grams."</p>
        {section("bench-scales", "Scales", move || scales(shop), &[("#bench/scale/new", "Add a scale")])}
        {section("bench-pots", "Pots", move || pots(shop), &[("#bench/pot/new", "Add a pot")])}
        {section("bench-known", "Drops, spoons, wax", move || known(shop), &[
            ("#bench/drops", "Weigh drops"),
            ("#bench/spoons", "Weigh spoons"),
            ("#bench/density", "Density of a wax"),
        ])}
        {section("bench-vessels", "Vessels", move || vessels(shop), &[("#book/vessel/new", "A new vessel, by water")])}
    }
    .into_any()
}

fn section(
    id: &'static str,
    title: &'static str,
    body: impl Fn() -> AnyView + Send + 'static,
    ways: &'static [(&'static str, &'static str)],
) -> AnyView {
    let links =
        ways.iter().map(|&(to, words)| view! { <a class="button" href=to>{words}</a> }).collect_view();
    page_part(id, title, view! { {live(body)} <p class="actions">{links}</p> }.into_any())
}

/// A thing of the list, with the way to change it.
fn row(to: String, title: String, detail: String) -> AnyView {
    view! {
        <li><a href=to><span class="title">{title}</span><span class="detail">{detail}</span></a></li>
    }
    .into_any()
}

/// The rows as a list, or what stands where there are none.
fn rows(rows: Vec<AnyView>, none: &'static str) -> AnyView {
    if rows.is_empty() {
        view! { <p class="muted">{none}</p> }.into_any()
    } else {
        view! { <ul class="list">{rows}</ul> }.into_any()
    }
}

/// Things put away, each with the button that takes it out again. Nothing where there are none.
fn away(shop: Workshop, away: Vec<(Id, String)>) -> AnyView {
    if away.is_empty() {
        return ().into_any();
    }
    let one = |(id, name): (Id, String)| {
        let words = format!("Use {name} again");
        let out = move || {
            shop.act(Act::Retire { id: id.clone(), retired: false });
        };
        view! {
            <li class="row"><span>{name}</span>{press("quiet", words, out)}</li>
        }
    };
    view! {
        <details class="put-away">
            <summary>{format!("Put away ({})", away.len())}</summary>
            <ul class="list">{away.into_iter().map(one).collect_view()}</ul>
        </details>
    }
    .into_any()
}

/// What is put away of these, by name.
fn retired<T>(things: &BTreeMap<Id, Kept<T>>, name: fn(&T) -> &String) -> Vec<(Id, String)> {
    let names =
        things.values().filter(|k| k.retired).filter_map(|k| Some((k.id.clone(), name(k.body()?).clone())));
    names.collect()
}

fn scales(shop: Workshop) -> AnyView {
    let voice = shop.voice();
    let one = |k: &Kept<Scale>| {
        let scale = k.body()?;
        let (capacity, division, least) = (scale.capacity, scale.division, scale.least);
        let detail = [
            "to ",
            &voice.typed(capacity),
            ", in steps of ",
            &voice.typed(division),
            ", from ",
            &voice.typed(least),
        ];
        Some(row(format!("#bench/scale/{}", k.id), scale.name.clone(), detail.concat()))
    };
    let (all, gone) = shop
        .state(|s| (s.scales_shown().into_iter().filter_map(one).collect(), retired(&s.scales, |s| &s.name)));
    let none = "No scale yet. With your scales known, every weight is rounded to what the scale can show.";
    view! { {rows(all, none)} {away(shop, gone)} }.into_any()
}

fn pots(shop: Workshop) -> AnyView {
    let voice = shop.voice();
    let one = |k: &Kept<MeltingPot>| {
        let pot = k.body()?;
        let detail = ["holds ", &voice.typed(pot.capacity)].concat();
        Some(row(format!("#bench/pot/{}", k.id), pot.name.clone(), detail))
    };
    let (all, gone) =
        shop.state(|s| (s.pots_shown().into_iter().filter_map(one).collect(), retired(&s.pots, |p| &p.name)));
    let none = "No pot yet. With your pots known, a batch too large for one is split into equal pours.";
    view! { {rows(all, none)} {away(shop, gone)} }.into_any()
}

fn known(shop: Workshop) -> AnyView {
    let all: Vec<AnyView> =
        shop.state(|s| s.ingredients_shown().into_iter().filter_map(|k| ingredient(shop, k)).collect());
    rows(all, "Nothing weighed yet. A formula that counts drops or spoons needs to know what one weighs.")
}

/// Vessels live in the Book; by water is how they are measured best, and that is bench work.
fn vessels(shop: Workshop) -> AnyView {
    let voice = shop.voice();
    let one = |k: &Kept<Vessel>| {
        let vessel = k.body()?;
        let detail = match &vessel.water {
            Some(water) => [&voice.typed(water.mass), " of water to the brim"].concat(),
            None => "not measured with water".to_owned(),
        };
        Some(row(format!("#book/vessel/{}", k.id), vessel.name.clone(), detail))
    };
    let all = shop.state(|s| s.vessels_shown().into_iter().filter_map(one).collect());
    view! {
        <p class="why-line">
            "Tare the empty vessel, fill it to the brim with water, and weigh: grams of water and their temperature give the
            volume closer than any rule."
        </p>
        {rows(all, "No vessel yet.")}
    }
    .into_any()
}
