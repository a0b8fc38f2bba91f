//! Everything in the book, and finding it.

use super::batch::{counted, standing};
use super::drafts;
use crate::book::{Batch, Finder, Found, Kept, State};
use crate::dom::*;
use crate::formula::Formula;
use crate::keep;
use crate::rooms::parts::{Field, Typed, field, press};
use crate::rooms::workshop::Workshop;
use crate::shelf::{as_batch_number, batch_number};
use crate::vessel::Vessel;

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
    /// The latest ones.
    batches: Vec<Line>,
    /// How many pours there are besides.
    earlier: usize,
    away: Vec<Line>,
    /// What was asked for is a batch number with a sign misread.
    slip: bool,
}

/// So many pours are listed at first, and as many more each time they are asked for.
const FEW: usize = 25;

pub(super) fn room(shop: Workshop) -> View {
    let words = Typed::new("");
    let empty = Derived::new(move || {
        shop.state(|s| s.formulas.is_empty() && s.vessels.is_empty() && s.batches.is_empty())
    });
    let most = Value::new(FEW);
    watch(move || {
        words.text.track();
        most.set(FEW);
    });
    let finder = Derived::new(move || shop.state(State::finder));
    let lists = Derived::new(move || {
        words.text.with(|w| finder.with(|f| shop.state(|s| lists(s, f, w, most.get()))))
    });
    let asked = Derived::new(move || !words.is_empty());
    let shown = move || {
        if empty.get() {
            return nothing_yet();
        }
        group![
            el("div").attr("role", "search").child(field(
                Field::text("Find").placeholder("A name, a part, a wick, a batch number"),
                words,
                || { Ok(String::new()) }
            )),
            el("div").attr("aria-live", "polite").child(move || lists.with(|l| found(l, asked.get(), most)))
        ]
    };
    group![
        el("div").class("head").child(el("h1").child("Book")).child(
            el("div")
                .class("actions")
                .child(
                    el("a")
                        .class("button")
                        .flag("main", move || empty.get())
                        .attr("href", "#book/formula/new")
                        .child("New formula"),
                )
                .child(el("a").class("button").attr("href", "#book/vessel/new").child("New vessel"))
                .child(el("a").class("button").attr("href", "#book/done").child("What was done")),
        ),
        unfinished(shop),
        forked(shop),
        shown
    ]
}

fn nothing_yet() -> View {
    el("div")
        .class("empty")
        .child(el("p").child(
            "The book keeps your formulas with every version, your vessels, and each pour \
as it was made. Begin with a formula: the wax, what goes into it, and at which \
temperatures.",
        ))
        .view()
}

/// Forms left with something typed in them.
fn unfinished(shop: Workshop) -> View {
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
            el("section")
                .child(el("h2").child("Being written"))
                .child(el("ul").class("list").child(all.into_iter().map(line).views()))
        })
        .view()
}

/// Things with versions made beside each other, for the person to choose.
fn forked(shop: Workshop) -> View {
    let all = Derived::new(move || {
        shop.journal(|j| {
            let line = |fork: crate::book::Fork| Line {
                to: format!("#book/history/{}", fork.thing),
                title: j.state().name(&fork.thing).unwrap_or_default().to_owned(),
                detail: "Both versions are kept. Choose the one that counts.".to_owned(),
                mark: "To choose",
            };
            j.forks().into_iter().map(line).collect::<Vec<_>>()
        })
    });
    (move || {
        all.with(|all| {
            (!all.is_empty()).then(|| {
                el("section")
                    .child(el("h2").child("Changed in two places"))
                    .child(el("ul").class("list").child(all.iter().map(list_line).views()))
            })
        })
    })
    .view()
}

fn lists(state: &State, finder: &Finder, words: &str, most: usize) -> Lists {
    let mut lists = Lists::default();
    let number = as_batch_number(words);
    lists.slip = number.as_ref().is_some_and(|(_, right)| !right);
    for found in state.find(finder, number.as_ref().map_or(words, |(number, _)| number)) {
        match found {
            Found::Formula(kept) => {
                into(&mut lists.away, &mut lists.formulas, kept.retired, formula_line(kept))
            }
            Found::Vessel(kept) => into(&mut lists.away, &mut lists.vessels, kept.retired, vessel_line(kept)),
            Found::Batch(batch) if lists.batches.len() < most => lists.batches.push(batch_line(batch)),
            Found::Batch(_) => lists.earlier += 1,
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
    let on = batch.begun_on(keep::ZONE);
    let mut detail = vec![counted(plan.vessels, &plan.vessel), keep::day(on)];
    detail.extend(keep::time_on(on, batch.began));
    detail.push(batch_number(batch));
    Line {
        to: format!("#book/batch/{}", batch.id),
        title: plan.formula.clone(),
        detail: detail.join(", "),
        mark: standing(batch),
    }
}

fn found(lists: &Lists, asked: bool, most: Value<usize>) -> View {
    let Lists { formulas, vessels, batches, earlier, away, slip } = lists;
    if asked && [formulas, vessels, batches, away].iter().all(|l| l.is_empty()) {
        let none = if *slip {
            "This is no batch number: its check sign does not fit, so a sign of it is misread. Compare it with the label."
        } else {
            "Nothing in the book has all of these words. Try fewer of them."
        };
        return el("p").class("empty").child(none).view();
    }
    let list = |lines: &[Line]| el("ul").class("list").child(lines.iter().map(list_line).views());
    let section = |title: &'static str, none: &'static str, lines: &Vec<Line>| {
        if asked && lines.is_empty() {
            return ().view();
        }
        el("section")
            .child(el("h2").child(title))
            .child(lines.is_empty().then(|| el("p").class("muted").child(none)))
            .child((!lines.is_empty()).then(|| list(lines)))
            .view()
    };
    group![
        section("Formulas", "No formula yet.", formulas),
        section("Vessels", "No vessel yet: add one, and the Pot knows how much to pour.", vessels),
        section("Past pours", "Nothing poured yet.", batches),
        (*earlier > 0).then(|| {
            let more = move || most.update(|m| *m += FEW);
            press("", format!("Show earlier pours ({earlier} more)"), more)
        }),
        (!away.is_empty()).then(|| {
            el("section").child(
                el("details")
                    .class("away")
                    .attr("open", asked)
                    .child(el("summary").child(format!("Put away ({})", away.len())))
                    .child(list(away)),
            )
        })
    ]
}

fn list_line(line: &Line) -> View {
    let Line { to, title, detail, mark } = line.clone();
    el("li")
        .child(
            el("a")
                .attr("href", to)
                .child(el("span").class("title").child(title))
                .child(el("span").class("detail").child(detail))
                .child((!mark.is_empty()).then(|| el("span").class("tag").child(mark))),
        )
        .view()
}
