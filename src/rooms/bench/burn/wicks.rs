//! A series of wicks: its sizes typed from the smallest to the largest.

use super::HERE;
use crate::bench::burn::WickSeries;
use crate::book::{Act, Id};
use crate::dom::*;
use crate::rooms::bench::scale::put_away;
use crate::rooms::parts::{Typed, finish, page_head, text_field};
use crate::rooms::workshop::Workshop;

pub(super) fn list(shop: Workshop) -> View {
    let row = |id: &Id, series: &WickSeries| {
        el("li")
            .child(
                el("a")
                    .attr("href", ["#bench/burn/wicks/", &id.0].concat())
                    .child(el("span").class("title").child(series.name.clone()))
                    .child(el("span").class("detail").child(series.sizes.join(", "))),
            )
            .view()
    };
    let all: Vec<View> =
        shop.state(|s| s.wicks_shown().into_iter().filter_map(|k| Some(row(&k.id, k.body()?))).collect());
    let none = all.is_empty().then(|| {
        el("p")
            .class("muted")
            .child("No series yet. With your wicks in order of size, the trials tell which to try next.")
    });
    group![
        none,
        el("ul").class("list").child(all),
        el("p")
            .class("actions")
            .child(el("a").class("button").attr("href", "#bench/burn/wicks/new").child("A new wick series"))
    ]
}

pub(super) fn page(shop: Workshop, id: &Id) -> View {
    let kept = shop.state(|s| s.wicks.get(id).cloned());
    let known = kept.as_ref().and_then(|k| k.body());
    let name = Typed::new(known.map_or("", |w| w.name.as_str()));
    let sizes = Typed::new(known.map(|w| w.sizes.join("\n")).unwrap_or_default());
    let over = kept.as_ref().and_then(|k| k.latest()).map(|v| v.entry.clone());
    let old = kept.as_ref().map(|k| k.id.clone());
    let away = old.clone();
    let save = move || {
        let body = WickSeries { name: name.get(), sizes: sizes.text.with(|t| WickSeries::read_sizes(t)) };
        let wrong = shop.state_untracked(|s| s.check_series(old.as_ref(), &body)).err().unwrap_or_default();
        if wrong.is_empty() {
            let id = old.clone().unwrap_or_else(|| shop.new_id());
            if shop.act(Act::Wicks { id, over: over.clone(), body }) {
                shop.go(HERE);
            }
        }
        wrong.iter().map(|e| e.say(shop.voice())).collect()
    };
    let field = shop.fresh_dom_id();
    group![
        page_head(HERE, "Burn trials", "Wick series".to_owned()),
        el("p")
            .class("lead")
            .child("One family of wicks, in the order of its sizes. Name it as you know it."),
        text_field("Name of the series", name, Vec::new()),
        el("div")
            .class("field")
            .child(el("label").attr("for", field.clone()).child("Sizes, the smallest first"))
            .child(
                el("textarea")
                    .attr("id", field)
                    .attr("rows", "7")
                    .attr("placeholder", "one on each line")
                    .prop("value", sizes.text)
                    .on("input", move |e| sizes.text.set(text_of(&e))),
            ),
        finish("Keep this series", Some(HERE), save),
        away.map(|id| put_away(shop, id, "Put this series away"))
    ]
}
