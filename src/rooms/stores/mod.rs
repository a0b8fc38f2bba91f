//! The Stores room: what is on hand by lot, what to buy, what a lot went into, and how far what is left goes.

mod account;
mod buy;
mod form;
mod lot;
mod recall;
mod short;
mod supply;

use super::parts::{live, page_part, paged};
use super::workshop::Workshop;
use crate::book::{Id, Use};
use crate::dom::*;
use crate::keep;
use crate::stores::{Account, Ledger, Standing};

pub(super) const HERE: &str = "#stores";

pub(super) fn room() -> View {
    paged(page)
}

fn page(shop: Workshop, place: &[String]) -> View {
    let word = |n: usize| place.get(n).map_or("", String::as_str);
    let id = Id(word(1).to_owned());
    match (word(0), word(1), word(2)) {
        ("lot", "new", of) => form::page(shop, None, &Id(of.to_owned())),
        ("lot", _, "change") => form::page(shop, Some(id.clone()), &id),
        ("lot", _, "recall") => recall::page(shop, id),
        ("lot", ..) => lot::page(shop, id),
        ("of", _, "supply") => supply::page(shop, &id),
        ("of", ..) => account::page(shop, id),
        _ => whole(shop),
    }
}

/// What of the book's stores this shows; followed.
fn with_ledger(shop: Workshop, part: impl Fn(&Ledger) -> View + 'static) -> View {
    live(move || shop.ledger().with(&part))
}

fn whole(shop: Workshop) -> View {
    let any = Derived::new(move || shop.state(|s| !s.formulas_shown().is_empty()));
    let uses = Derived::new(move || shop.state(|s| s.uses()));
    let short = live(move || {
        let any = any.get();
        any.then(|| untrack(|| page_part("stores-short", "Running short?", short::short(shop)))).view()
    });
    let used = move || {
        uses.with(|uses| {
            let rows = uses.iter().map(row).views();
            (!uses.is_empty()).then(|| {
                page_part("stores-uses", "What goes in", el("ul").class("list stores").child(rows).view())
            })
        })
        .view()
    };
    let asked = buy::ask(shop);
    group![
        el("div")
            .class("head")
            .child(el("h1").child("Stores"))
            .child(el("a").class("button main").attr("href", "#stores/lot/new").child("Something came")),
        with_ledger(shop, move |ledger| stock(shop, ledger, asked)),
        short,
        live(used)
    ]
}

fn stock(shop: Workshop, ledger: &Ledger, asked: buy::Asked) -> View {
    if ledger.accounts.is_empty() {
        return el("div")
            .class("empty")
            .child(el("p").child(
                "What you bought stands here by its lot: how much is left, how long it lasts, what it cost, and which \
                 candles it went into. Begin with what is on your shelf: copy the lot number from the label.",
            ))
            .view();
    }
    shop.state(|s| {
        let (today, voice) = (keep::today(), shop.voice());
        let all = ledger.accounts.iter().map(|a| on_hand(shop, &ledger.standing(a, s, today, voice))).views();
        group![
            page_part("stores-buy", "To buy", buy::list(shop, asked)),
            page_part("stores-lots", "On hand", el("ul").class("list").child(all).view())
        ]
    })
}

/// Where an ingredient's page is: that of its first lot.
fn address(standing: &Standing) -> Option<String> {
    Some(["#stores/of/", &standing.account.lots.first()?.id.0].concat())
}

/// What of it the pour that is on has still to take.
fn taken(account: &Account, shop: Workshop) -> Option<String> {
    let taken = account.reserved();
    (!taken.is_zero())
        .then(|| [&account.measure.say(taken, shop.voice()), " of it for the pour that is on"].concat())
}

fn on_hand(shop: Workshop, standing: &Standing) -> View {
    let lots = standing.account.usable().count();
    let lots = if lots == 1 { "1 lot".to_owned() } else { [&lots.to_string(), " lots"].concat() };
    let held = standing.account.lots.iter().any(|h| h.held).then(|| "one on hold".to_owned());
    let taken = taken(standing.account, shop);
    let next = standing.account.usable().next().and_then(|h| h.lot.best_before);
    let until = next.map(|day| ["best before ", &keep::day(day)].concat());
    line(
        standing,
        vec![Some(lots), until, held, taken],
        standing.account.measure.say(standing.left, shop.voice()),
    )
}

fn line(of: &Standing, details: Vec<Option<String>>, amount: String) -> View {
    let details = details.into_iter().flatten().collect::<Vec<_>>().join(", ");
    el("li")
        .child(
            el("a")
                .attr("href", address(of))
                .child(
                    el("span")
                        .class("what")
                        .child(el("span").class("title").child(of.account.name.clone()))
                        .child(el("span").class("detail").child(details)),
                )
                .child(el("span").class("state").child(amount)),
        )
        .view()
}

/// An ingredient and the formulas that call for it.
fn row(of: &Use) -> View {
    let mut formulas = Vec::new();
    for (n, (id, name)) in of.formulas.iter().enumerate() {
        let comma = if n > 0 { ", " } else { "" };
        formulas.push(group![comma, el("a").attr("href", format!("#book/formula/{id}")).child(name.clone())]);
    }
    let none = formulas.is_empty().then_some("in no formula now");
    el("li")
        .class("use")
        .child(el("span").class("title").child(of.name.clone()))
        .child(el("span").class("uses").child(formulas).child(none))
        .view()
}
