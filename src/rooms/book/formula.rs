//! A formula as it is read: one version of it, with what to do with it.

use super::fork::fork;
use super::missing;
use super::versions::{self, History};
use crate::book::Id;
use crate::dom::*;
use crate::formula::{Formula, Part, PartShare, check, sample};
use crate::rooms::parts::{caution, page_head, temperature, temperature_range, why_button};
use crate::rooms::workshop::Workshop;

pub(super) fn room(shop: Workshop, id: Id, version: &str) -> View {
    let version = version.to_owned();
    let shown = Derived::new(move || shop.state(|s| s.formulas.get(&id).map(|k| History::of(k, &version))));
    (move || match shown.get() {
        Some((history, Some(body))) => page(shop, &history, &body),
        _ => missing("No formula of this address is in this book."),
    })
    .view()
}

fn page(shop: Workshop, history: &History, formula: &Formula) -> View {
    let voice = shop.voice();
    let (solved, found) = shop.state(|s| {
        let found = match check(formula, s) {
            Ok(cautions) => cautions.iter().map(|c| c.say(voice)).collect::<Vec<_>>(),
            Err(refusals) => refusals.iter().map(|e| e.say(voice)).collect(),
        };
        (sample(formula, s, voice).ok(), found)
    });
    let parts = solved.as_ref().map(|s| s.parts.as_slice()).unwrap_or_default();
    let rows = formula.parts.iter().enumerate().map(|(at, part)| row(shop, part, parts.get(at)));
    let wax = formula.wax.iter().map(|w| {
        let flash = w.flash.map(|f| format!("flash point {}", temperature(f.value)));
        el("li")
            .class("row")
            .child(el("span").class("title").child(w.name.clone()))
            .child(el("span").child(voice.typed(w.share)))
            .child(el("span").class("detail").child(flash))
    });
    let pour = (history.is_latest() && !history.retired).then(|| {
        el("a").class("button main").attr("href", format!("#pot/pour/{}", history.id)).child("Pour this")
    });
    group![
        page_head("#book", "Book", formula.name.clone()),
        versions::standing(history, "formula"),
        fork(shop, &history.id),
        versions::actions(shop, history, "formula", pour.view()),
        found.into_iter().map(caution).views(),
        el("section").child(el("h2").child("Wax")).child(el("ul").class("list").child(wax.views())),
        el("section")
            .child(el("h2").child("Parts"))
            .child(formula.parts.is_empty().then(|| el("p").class("muted").child("Nothing but wax.")))
            .child(el("ol").class("list").child(rows.views())),
        facts(shop, formula),
        vessels(shop, formula),
        (!formula.note.is_empty()).then(|| {
            el("section")
                .child(el("h2").child("Note"))
                .child(el("p").class("prose").child(formula.note.clone()))
        }),
        versions::list(shop, history, "formula")
    ]
}

fn row(shop: Workshop, part: &Part, solved: Option<&PartShare>) -> View {
    let voice = shop.voice();
    let mut facts = Vec::new();
    if !part.is_counted() {
        facts.push(format!("add at {}", temperature_range(&part.add)));
    }
    match part.stir_minutes {
        0 => {}
        1 => facts.push("stir 1 minute".to_owned()),
        n => facts.push(format!("stir {n} minutes")),
    }
    facts.extend(part.highest.map(|h| format!("highest load {}", voice.typed(h))));
    facts.extend(part.flash.map(|f| format!("flash point {}", temperature(f.value))));
    facts.extend((!part.note.is_empty()).then(|| part.note.clone()));
    let why = solved.filter(|s| !s.mass.is_zero()).map(|s| why_button(s.why.clone()));
    el("li")
        .class("row")
        .child(el("span").class("title").child(part.name.clone()))
        .child(el("span").class("tag").child(part.kind.name()))
        .child(el("span").class("made-of").child(part.basis.tell(solved, voice)).child(why))
        .child(el("span").class("detail").child(facts.join(" · ")))
        .view()
}

fn facts(shop: Workshop, formula: &Formula) -> View {
    let voice = shop.voice();
    let usual = formula
        .usual
        .as_ref()
        .map(|u| ("Usual batch", format!("{} vessels of {}", u.vessels, voice.typed(u.fill))));
    let cure = (formula.cure_days > 0).then(|| {
        ("Cure", format!("{} {}", formula.cure_days, if formula.cure_days == 1 { "day" } else { "days" }))
    });
    let facts = [
        Some(("Melt to", temperature(formula.melt_to.value))),
        Some(("Pour into warmed vessels", temperature_range(&formula.pour.warmed))),
        Some(("Pour into vessels not warmed", temperature_range(&formula.pour.unwarmed))),
        usual,
        cure,
    ];
    let fact = |(name, value): (&'static str, String)| {
        el("div").child(el("dt").child(name)).child(el("dd").child(value))
    };
    el("dl").class("particulars").child(facts.into_iter().flatten().map(fact).views()).view()
}

fn vessels(shop: Workshop, formula: &Formula) -> View {
    if formula.vessels.is_empty() {
        return ().view();
    }
    let line = |v: &crate::formula::VesselWick| {
        let name = shop.state(|s| s.vessels.get(&v.vessel).and_then(|k| k.body()).map(|b| b.name.clone()));
        let to = format!("#book/vessel/{}", v.vessel);
        let wick = if v.wick.is_empty() { "no wick named".to_owned() } else { ["wick ", &v.wick].concat() };
        el("li").child(
            el("a")
                .attr("href", to)
                .child(
                    el("span")
                        .class("title")
                        .child(name.unwrap_or_else(|| "A vessel not in this book".to_owned())),
                )
                .child(el("span").class("detail").child(wick)),
        )
    };
    el("section")
        .child(el("h2").child("Poured into"))
        .child(el("ul").class("list").child(formula.vessels.iter().map(line).views()))
        .view()
}
