//! The hazards of one candle: pictograms, words, and every sum behind them.

use super::super::label::pictogram;
use crate::book::{Id, Kept};
use crate::desk::hazard::{
    Drop, Finding, Ingredient, Mixed, SOURCE, Signal, drops, findings, further, mix, remarks, statements,
};
use crate::dom::*;
use crate::quantity::{Exact, Share};
use crate::rooms::parts::{Pick, caution, live, page_head, page_part, pick, sentence, why_button};
use crate::rooms::workshop::Workshop;

const FURTHER: &str = "Acute toxicity 5, skin irritation 3 and aquatic acute 2 and 3 are categories of the GHS of the United \
Nations that the European Union does not have, and some countries do; their limits are from memory, so compare them with the text of \
your country. An estimate that is only known to be more than 2000 mg/kg counts as not toxic, eye irritation 2B as 2. EUH lines are the European \
Union's alone.";

const ALONE: &str =
    "Each ingredient is tried by itself: all else in the candle stays as it is, other fragrances too.";

const AID: &str = "This is an aid. Local law, the supplier's documents and a qualified person decide.";

pub(in super::super) fn page(shop: Workshop) -> View {
    let first = shop.state(|s| s.formulas_shown().first().map(|k| k.id.0.clone()).unwrap_or_default());
    let chosen = Value::new(first);
    let offers = move || {
        let one = |k: &&Kept<crate::formula::Formula>| Some((k.id.0.clone(), k.body()?.name.clone()));
        shop.state(|s| s.formulas_shown().iter().filter_map(one).collect::<Vec<Pick>>())
    };
    let inside = move || {
        let id = Id(chosen.get());
        let found = shop.state(|s| {
            let formula = s.formulas.get(&id)?.body()?;
            Some((s.hazards_of(formula, shop.voice()), s.limits_of(formula, shop.voice())))
        });
        match found {
            Some((ingredients, limits)) => told(shop, &ingredients, limits),
            None => el("p").class("empty").child("No formula yet. Write one in the Book first.").view(),
        }
    };
    group![
        page_head("#desk", "Desk", "Hazards of a candle".to_owned()),
        el("div").class("fields").child(pick("Formula", chosen, offers)),
        live(inside)
    ]
}

fn told(shop: Workshop, ingredients: &[Ingredient], limits: Vec<String>) -> View {
    let voice = shop.voice();
    let mixed = mix(ingredients, true);
    let why = findings(&mixed, voice);
    let without = ingredients.iter().enumerate().filter(|(_, i)| i.sheet.is_some());
    let without: Vec<View> =
        without.filter_map(|(at, i)| less(shop, i, drops(ingredients, at, true))).collect();
    group![
        el("div").attr("aria-live", "polite").child(shown(&mixed)),
        remarks(&mixed, voice).into_iter().map(sentence).views(),
        page_part("hazard-limits", "Suppliers' limits", suppliers(limits)),
        page_part("hazard-why", "Why", list(&why)),
        page_part("hazard-further", "Outside the European Union", elsewhere(shop, &mixed)),
        (!without.is_empty()).then(|| page_part(
            "hazard-less",
            "With less fragrance",
            group![without.view(), el("p").class("detail").child(ALONE)]
        )),
        el("p").class("detail").child([AID, " ", SOURCE, "."].concat())
    ]
}

/// Highest shares and flash points against this formula.
fn suppliers(limits: Vec<String>) -> View {
    if limits.is_empty() {
        return el("p")
            .child("No part is above its supplier's highest share, and no temperature of the formula reaches a flash point.")
            .view();
    }
    limits.into_iter().map(caution).views().view()
}

/// The hazard part of the label, large.
fn shown(mixed: &Mixed) -> View {
    let said = statements(mixed, false);
    if said.is_empty() {
        let words = if mixed.is_open() {
            "Nothing can be said yet."
        } else {
            "No hazard statement, by what is typed in."
        };
        return el("p").class("found").child(words).view();
    }
    let line = |code: &'static str, text: String| {
        el("li").child(el("span").class("code").child(code)).child(" ").child(text)
    };
    let hazards = said.hazards.iter().map(|(code, text)| line(code, text.clone())).views();
    let precautions = said.precautions.iter().map(|(code, text)| line(code, (*text).to_owned())).views();
    let further = said.further.iter().map(|line| el("li").child(line.clone())).views();
    el("section")
        .class("hazards")
        .attr("aria-label", "What the label must say")
        .child(el("div").class("pictograms").child(said.pictograms.iter().map(|n| pictogram(*n)).views()))
        .child(el("p").class("signal").child(said.signal.word()))
        .child(
            (!said.contains.is_empty())
                .then(|| el("p").child(["Contains: ", &said.contains.join(", "), "."].concat())),
        )
        .child(said.say_spare().map(|words| el("p").class("detail").child(words)))
        .child(el("ul").child(hazards).child(precautions).child(further))
        .view()
}

/// What is asked for beyond that where a country takes every category of the GHS.
fn elsewhere(shop: Workshop, mixed: &Mixed) -> View {
    let (signal, said) = mixed.further.statements();
    let why = further(mixed, shop.voice());
    let word = (signal > statements(mixed, false).signal && signal > Signal::None).then(|| signal.word());
    let lines = said
        .iter()
        .map(|(code, text)| el("li").child(el("span").class("code").child(*code)).child(" ").child(*text));
    let more = (!said.is_empty()).then(|| {
        group![
            el("p").child("A country that takes every category of the GHS asks for this as well:"),
            el("div")
                .class("hazards")
                .child(word.map(|word| el("p").class("signal").child(word)))
                .child(el("ul").child(lines.views()))
        ]
    });
    group![
        more,
        (said.is_empty() && !mixed.is_open()).then(|| el("p").child("Nothing more, by what is typed in.")),
        (!why.is_empty()).then(|| list(&why)),
        el("p").class("detail").child(FURTHER)
    ]
}

/// Every limit, reached or not.
fn list(found: &[Finding]) -> View {
    if found.is_empty() {
        return el("p").class("muted").child("Nothing in it counts against any limit.").view();
    }
    let one = |finding: &Finding| {
        let word = match (finding.exempt, finding.reached) {
            (true, _) => "Not for a solid",
            (_, true) => "Reached",
            (_, false) => "Not reached",
        };
        el("li")
            .class("row")
            .child(
                el("span")
                    .child(el("span").class("title").child(finding.title.clone()))
                    .child(" ")
                    .child(el("span").class("detail").child(finding.said.clone())),
            )
            .child(el("span").class("tag").child(word))
            .child(why_button(finding.why.clone()))
    };
    el("ul").class("list limits").child(found.iter().map(one).views()).view()
}

/// How little of an ingredient would drop each class.
fn less(shop: Workshop, ingredient: &Ingredient, drops: Vec<Drop>) -> Option<View> {
    let percent = |value: Exact| shop.voice().share(Share::base(value / Exact::whole(100)));
    let one =
        |drop: Drop| {
            let most = drop.most.filter(|most| !most.is_zero())?;
            Some(el("li").child(
                ["Up to ", &percent(most), " of the candle: without ", &drop.class.say(), "."].concat(),
            ))
        };
    let all: Vec<_> = drops.into_iter().filter_map(one).collect();
    (!all.is_empty()).then(|| {
        group![
            el("h3").child([&ingredient.name, ", now ", &percent(ingredient.percent)].concat()),
            el("ul").class("plain").child(all.into_iter().views())
        ]
    })
}
