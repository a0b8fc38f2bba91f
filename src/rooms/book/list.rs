//! Everything in the book, and finding it.

use super::batch::{counted, standing};
use super::{drafts, when};
use crate::book::{Batch, Found, Kept, State};
use crate::formula::Formula;
use crate::rooms::parts::{Field, Typed, field};
use crate::rooms::workshop::Workshop;
use crate::vessel::Vessel;
use leptos::prelude::*;

/// One line: where it leads, its title, a word on it, a mark.
#[derive(Clone, PartialEq)]
struct Line {
    to: String,
    title: String,
    detail: String,
    mark: &'static str,
}

/// What is shown: each heading with its lines.
#[derive(Clone, PartialEq, Default)]
struct Lists {
    formulas: Vec<Line>,
    vessels: Vec<Line>,
    batches: Vec<Line>,
    away: Vec<Line>,
}

pub(super) fn room(shop: Workshop) -> AnyView {
    let words = Typed::new("");
    let empty = Memo::new(move |_| {
        shop.state(|s| s.formulas.is_empty() && s.vessels.is_empty() && s.batches.is_empty())
    });
    let lists = Memo::new(move |_| words.text.with(|w| shop.state(|s| lists(s, w))));
    let asked = Memo::new(move |_| !words.is_empty());
    let shown = move || {
        if empty.get() {
            return nothing_yet();
        }
        view! {
            <div role="search">{field(Field::text("Find").placeholder("A name, a part, a wick"), words, || Ok(String::new()))}</div>
            <div aria-live="polite">{move || lists.with(|l| found(l, asked.get()))}</div>
        }
        .into_any()
    };
    view! {
        <div class="head">
            <h1>"Book"</h1>
            <div class="actions">
                <a class="button" class:main=move || empty.get() href="#book/formula/new">"New formula"</a>
                <a class="button" href="#book/vessel/new">"New vessel"</a>
            </div>
        </div>
        {unfinished(shop)}
        {shown}
    }
    .into_any()
}

fn nothing_yet() -> AnyView {
    view! {
        <div class="empty">
            <p>
                "The book keeps your formulas with every version, your vessels, and each pour as it was made. Begin with a
                formula: the wax, what goes into it, and at which temperatures."
            </p>
        </div>
    }
    .into_any()
}

/// Forms left with something typed in them.
fn unfinished(shop: Workshop) -> AnyView {
    let line = |(address, name): (String, String)| {
        let name = if name.is_empty() { "without a name yet".to_owned() } else { name };
        list_line(&Line {
            to: format!("#book/{address}"),
            title: name,
            detail: String::new(),
            mark: "Not saved",
        })
    };
    let all = drafts::all(shop);
    (!all.is_empty())
        .then(|| {
            view! {
                <section>
                    <h2>"Being written"</h2>
                    <ul class="list">{all.into_iter().map(line).collect_view()}</ul>
                </section>
            }
        })
        .into_any()
}

fn lists(state: &State, words: &str) -> Lists {
    let mut lists = Lists::default();
    for found in state.find(words) {
        match found {
            Found::Formula(kept) => {
                into(&mut lists.away, &mut lists.formulas, kept.retired, formula_line(kept))
            }
            Found::Vessel(kept) => into(&mut lists.away, &mut lists.vessels, kept.retired, vessel_line(kept)),
            Found::Batch(batch) => lists.batches.push(batch_line(batch)),
        }
    }
    lists
}

fn into(away: &mut Vec<Line>, own: &mut Vec<Line>, retired: bool, line: Option<Line>) {
    if retired { away.extend(line) } else { own.extend(line) }
}

fn formula_line(kept: &Kept<Formula>) -> Option<Line> {
    let body = kept.body()?;
    let wax = body.wax.iter().map(|w| &w.name);
    let names: Vec<&str> = wax.chain(body.parts.iter().map(|p| &p.name)).map(String::as_str).collect();
    Some(Line {
        to: format!("#book/formula/{}", kept.id),
        title: body.name.clone(),
        detail: names.join(", "),
        mark: "",
    })
}

fn vessel_line(kept: &Kept<Vessel>) -> Option<Line> {
    let body = kept.body()?;
    Some(Line {
        to: format!("#book/vessel/{}", kept.id),
        title: body.name.clone(),
        detail: body.note.clone(),
        mark: "",
    })
}

fn batch_line(batch: &Batch) -> Line {
    let plan = &batch.run.plan;
    Line {
        to: format!("#book/batch/{}", batch.id),
        title: plan.formula.clone(),
        detail: format!("{}, {}", counted(plan.vessels, &plan.vessel), when(batch.began)),
        mark: standing(batch),
    }
}

fn found(lists: &Lists, asked: bool) -> AnyView {
    let Lists { formulas, vessels, batches, away } = lists;
    if asked && [formulas, vessels, batches, away].iter().all(|l| l.is_empty()) {
        return view! { <p class="empty">"Nothing in the book has all of these words. Try fewer of them."</p> }
            .into_any();
    }
    let list = |lines: &[Line]| view! { <ul class="list">{lines.iter().map(list_line).collect_view()}</ul> };
    let section = |title: &'static str, none: &'static str, lines: &Vec<Line>| {
        if asked && lines.is_empty() {
            return ().into_any();
        }
        view! {
            <section>
                <h2>{title}</h2>
                {lines.is_empty().then(|| view! { <p class="muted">{none}</p> })}
                {(!lines.is_empty()).then(|| list(lines))}
            </section>
        }
        .into_any()
    };
    view! {
        {section("Formulas", "No formula yet.", formulas)}
        {section("Vessels", "No vessel yet: add one, and the Pot knows how much to pour.", vessels)}
        {section("Past pours", "Nothing poured yet.", batches)}
        {(!away.is_empty()).then(|| view! {
            <section>
                <details class="away" open=asked>
                    <summary>{format!("Put away ({})", away.len())}</summary>
                    {list(away)}
                </details>
            </section>
        })}
    }
    .into_any()
}

fn list_line(line: &Line) -> AnyView {
    let Line { to, title, detail, mark } = line.clone();
    view! {
        <li>
            <a href=to>
                <span class="title">{title}</span>
                <span class="detail">{detail}</span>
                {(!mark.is_empty()).then(|| view! { <span class="tag">{mark}</span> })}
            </a>
        </li>
    }
    .into_any()
}
