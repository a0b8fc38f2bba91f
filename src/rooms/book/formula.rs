//! A formula as it is read: one version of it, with what to do with it.

use super::missing;
use super::versions::{self, History};
use crate::book::Id;
use crate::formula::{Formula, Part, PartShare, check, sample};
use crate::rooms::parts::{caution, page_head, temperature, temperature_range, why_button};
use crate::rooms::workshop::Workshop;
use leptos::prelude::*;

pub(super) fn room(shop: Workshop, id: Id, version: &str) -> AnyView {
    let version = version.to_owned();
    let shown = Memo::new(move |_| shop.state(|s| s.formulas.get(&id).map(|k| History::of(k, &version))));
    (move || match shown.get() {
        Some((history, Some(body))) => page(shop, &history, &body),
        _ => missing("No formula of this address is in this book."),
    })
    .into_any()
}

fn page(shop: Workshop, history: &History, formula: &Formula) -> AnyView {
    let voice = shop.voice();
    let (solved, found) = shop.state(|s| {
        let found = match check(formula, s) {
            Ok(cautions) => cautions.iter().map(|c| c.say(voice)).collect::<Vec<_>>(),
            Err(refusals) => refusals.iter().map(ToString::to_string).collect(),
        };
        (sample(formula, s, voice).ok(), found)
    });
    let parts = solved.as_ref().map(|s| s.parts.as_slice()).unwrap_or_default();
    let rows = formula.parts.iter().enumerate().map(|(at, part)| row(shop, part, parts.get(at)));
    let wax = formula.wax.iter().map(|w| {
        let flash = w.flash.map(|f| format!("flash point {}", temperature(f.value)));
        view! {
            <li class="row">
                <span class="title">{w.name.clone()}</span>
                <span>{voice.typed(w.share)}</span>
                <span class="detail">{flash}</span>
            </li>
        }
    });
    let pour = (history.is_latest() && !history.retired).then(|| {
        view! { <a class="button main" href=format!("#pot/pour/{}", history.id)>"Pour this"</a> }
    });
    view! {
        {page_head("#book", "Book", formula.name.clone())}
        {versions::standing(history, "formula")}
        {versions::actions(shop, history, "formula", pour.into_any())}
        {found.into_iter().map(caution).collect_view()}
        <section><h2>"Wax"</h2><ul class="list">{wax.collect_view()}</ul></section>
        <section>
            <h2>"Parts"</h2>
            {formula.parts.is_empty().then(|| view! { <p class="muted">"Nothing but wax."</p> })}
            <ol class="list">{rows.collect_view()}</ol>
        </section>
        {facts(shop, formula)}
        {vessels(shop, formula)}
        {(!formula.note.is_empty()).then(|| view! { <section><h2>"Note"</h2><p class="prose">{formula.note.clone()}</p></section> })}
        {versions::list(history, "formula")}
    }
    .into_any()
}

fn row(shop: Workshop, part: &Part, solved: Option<&PartShare>) -> AnyView {
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
    view! {
        <li class="row">
            <span class="title">{part.name.clone()}</span>
            <span class="tag">{part.kind.name()}</span>
            <span class="made-of">{part.basis.tell(solved, voice)}{why}</span>
            <span class="detail">{facts.join(" · ")}</span>
        </li>
    }
    .into_any()
}

fn facts(shop: Workshop, formula: &Formula) -> AnyView {
    let voice = shop.voice();
    let usual = formula
        .usual
        .as_ref()
        .map(|u| ("Usual batch", format!("{} vessels of {}", u.vessels, voice.typed(u.fill))));
    let cure = (formula.cure_days > 0).then(|| ("Cure", format!("{} days", formula.cure_days)));
    let facts = [
        Some(("Melt to", temperature(formula.melt_to.value))),
        Some(("Pour into warmed vessels", temperature_range(&formula.pour.warmed))),
        Some(("Pour into vessels not warmed", temperature_range(&formula.pour.unwarmed))),
        usual,
        cure,
    ];
    let fact = |(name, value): (&'static str, String)| view! { <div><dt>{name}</dt><dd>{value}</dd></div> };
    view! { <dl class="particulars">{facts.into_iter().flatten().map(fact).collect_view()}</dl> }.into_any()
}

fn vessels(shop: Workshop, formula: &Formula) -> AnyView {
    if formula.vessels.is_empty() {
        return ().into_any();
    }
    let line = |v: &crate::formula::VesselWick| {
        let name = shop.state(|s| s.vessels.get(&v.vessel).and_then(|k| k.body()).map(|b| b.name.clone()));
        let to = format!("#book/vessel/{}", v.vessel);
        let wick = if v.wick.is_empty() { "no wick named".to_owned() } else { ["wick ", &v.wick].concat() };
        view! {
            <li><a href=to>
                <span class="title">{name.unwrap_or_else(|| "A vessel not in this book".to_owned())}</span>
                <span class="detail">{wick}</span>
            </a></li>
        }
    };
    view! {
        <section>
            <h2>"Poured into"</h2>
            <ul class="list">{formula.vessels.iter().map(line).collect_view()}</ul>
        </section>
    }
    .into_any()
}
