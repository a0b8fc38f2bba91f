//! What stands at the bench: scales, pots, and what weighing has told.

use super::known::ingredient;
use crate::bench::{MeltingPot, Scale};
use crate::book::{Burns, Kept};
use crate::dom::*;
use crate::rooms::parts::{away, live, page_part, retired};
use crate::rooms::workshop::Workshop;
use crate::vessel::Vessel;

pub(super) fn page(shop: Workshop) -> View {
    group![
        el("h1").child("Bench"),
        el("p")
            .class("lead")
            .child("What you measure with, and what a drop, a spoon or a vessel comes to in grams."),
        section("bench-scales", "Scales", move || scales(shop), &[("#bench/scale/new", "Add a scale")]),
        section("bench-pots", "Pots", move || pots(shop), &[("#bench/pot/new", "Add a pot")]),
        section(
            "bench-known",
            "Drops, spoons, wax",
            move || known(shop),
            &[
                ("#bench/drops", "Weigh drops"),
                ("#bench/spoons", "Weigh spoons"),
                ("#bench/density", "Density of a wax"),
            ],
        ),
        section("bench-burns", "Burn trials", move || burns(shop), &[("#bench/burn", "Burn trials")]),
        section(
            "bench-vessels",
            "Vessels",
            move || vessels(shop),
            &[("#bench/freeze", "See a vessel freeze"), ("#book/vessel/new", "A new vessel, by water")],
        )
    ]
}

fn section(
    id: &'static str,
    title: &'static str,
    body: impl Fn() -> View + 'static,
    ways: &'static [(&'static str, &'static str)],
) -> View {
    let links = ways.iter().map(|&(to, words)| el("a").class("button").attr("href", to).child(words)).views();
    page_part(id, title, group![live(body), el("p").class("actions").child(links)])
}

/// A thing of the list, with the way to change it.
fn row(to: String, title: String, detail: String) -> View {
    el("li")
        .child(
            el("a")
                .attr("href", to)
                .child(el("span").class("title").child(title))
                .child(el("span").class("detail").child(detail)),
        )
        .view()
}

/// The rows as a list, or what stands where there are none.
fn rows(rows: Vec<View>, none: &'static str) -> View {
    if rows.is_empty() {
        el("p").class("muted").child(none).view()
    } else {
        el("ul").class("list").child(rows).view()
    }
}

fn scales(shop: Workshop) -> View {
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
    let none = "No scale yet. With your scales known, every weight is rounded to what the \
scale can show.";
    group![rows(all, none), away(shop, gone)]
}

fn pots(shop: Workshop) -> View {
    let voice = shop.voice();
    let one = |k: &Kept<MeltingPot>| {
        let pot = k.body()?;
        let detail = ["holds ", &voice.typed(pot.capacity)].concat();
        Some(row(format!("#bench/pot/{}", k.id), pot.name.clone(), detail))
    };
    let (all, gone) =
        shop.state(|s| (s.pots_shown().into_iter().filter_map(one).collect(), retired(&s.pots, |p| &p.name)));
    let none = "No pot yet. With your pots known, a batch too large for one is split into equal pours.";
    group![rows(all, none), away(shop, gone)]
}

fn known(shop: Workshop) -> View {
    let all: Vec<View> =
        shop.state(|s| s.ingredients_shown().into_iter().filter_map(|k| ingredient(shop, k)).collect());
    rows(
        all,
        "Nothing weighed yet. A formula that counts drops or spoons needs to know what \
one weighs.",
    )
}

/// How many candles burn and wait; the trials have pages of their own.
fn burns(shop: Workshop) -> View {
    let (burning, all) = shop.state(|s| {
        let trials = s.trials_shown();
        (trials.iter().filter(|k| s.burns.get(&k.id).is_some_and(Burns::burning)).count(), trials.len())
    });
    let said = match (burning, all) {
        (_, 0) => "Burn a candle down before you sell its like: that tells whether its wick fits.".to_owned(),
        (0, _) => [&all.to_string(), " on trial, none burning now."].concat(),
        _ => [&burning.to_string(), " of ", &all.to_string(), " on trial burning now."].concat(),
    };
    el("p").class(if burning > 0 { "found" } else { "muted" }).child(said).view()
}

/// Vessels live in the Book; by water is how they are measured best, and that is bench work.
fn vessels(shop: Workshop) -> View {
    let voice = shop.voice();
    let one = |k: &Kept<Vessel>| {
        let vessel = k.body()?;
        let detail = match &vessel.water {
            Some(water) => ["water to the brim: ", &water.held(voice)].concat(),
            None => "not measured with water".to_owned(),
        };
        Some(row(format!("#bench/water/{}", k.id), vessel.name.clone(), detail))
    };
    let all = shop.state(|s| s.vessels_shown().into_iter().filter_map(one).collect());
    group![
        el("p").class("why-line").child(
            "Tare the empty vessel, fill it to the brim with water, and weigh: grams of \
water and their temperature give the volume closer than any rule. Tap the vessel that you weigh.",
        ),
        rows(all, "No vessel yet.")
    ]
}
