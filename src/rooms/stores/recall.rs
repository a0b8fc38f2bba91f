//! The recall sheet of a lot, on paper: what it is, every batch it is in, and that all of it is accounted for.

use super::{lot, with_ledger};
use crate::book::{Id, State};
use crate::dom::*;
use crate::keep;
use crate::rooms::parts::{missing_page, press};
use crate::rooms::workshop::Workshop;
use crate::shelf::{Reason, batch_number};
use crate::stores::{Account, Holding, Ledger, Reach, Sent};

pub(super) fn page(shop: Workshop, id: Id) -> View {
    with_ledger(shop, move |ledger| match ledger.lot(&id) {
        None => missing_page(super::HERE, "Stores", "There is no lot of this address in this book."),
        Some(found) => shop.state(|s| sheet(shop, s, ledger, found)),
    })
}

fn sheet(shop: Workshop, state: &State, ledger: &Ledger, (account, holding): (&Account, &Holding)) -> View {
    let back = ["#stores/lot/", &holding.id.0].concat();
    let reached = ledger.forward(state, &holding.id);
    let candles: usize = reached.iter().map(|r| r.batch.filled_vessels()).sum();
    let sum = match (reached.len(), candles) {
        (0, _) => "Nothing was poured with it.".to_owned(),
        (1, candles) => format!("Candles with it in them: {candles}, of 1 batch."),
        (batches, candles) => format!("Candles with it in them: {candles}, of {batches} batches."),
    };
    let rows = reached.iter().map(|reach| {
        let plan = &reach.batch.run.plan;
        el("tr")
            .child(
                el("td")
                    .child(batch_number(reach.batch))
                    .child(" ")
                    .child(el("span").class("detail").child(keep::day(reach.batch.begun_on(keep::ZONE)))),
            )
            .child(el("td").child(plan.formula.clone()).child(", ").child(plan.vessel.clone()))
            .child(el("td").class("number").child(reach.batch.filled_vessels().to_string()))
            .child(el("td").class("number").child(account.measure.say(reach.amount, shop.voice())))
    });
    let head = |name: &'static str, number: bool| {
        el("th").attr("scope", "col").class(if number { "number" } else { "" }).child(name)
    };
    el("article")
        .class("record recall")
        .child(el("p").class("back").child(el("a").attr("href", back).child("← The lot")))
        .child(el("h1").child("Recall sheet, lot ").child(holding.lot.number.clone()))
        .child(
            el("p")
                .class("when")
                .child("As of ")
                .child(keep::when(keep::now()))
                .child(holding.held.then_some(". On hold"))
                .child("."),
        )
        .child(lot::facts(shop, account, holding))
        .child(el("div").class("actions").child(press("main", "Print", keep::print)))
        .child(el("h2").child("Where it went"))
        .child(el("p").child(el("strong").child(sum)))
        .child((!reached.is_empty()).then(|| {
            el("div")
                .class("scroll")
                .attr("tabindex", "0")
                .attr("role", "region")
                .attr("aria-label", "Batches")
                .child(
                    el("table")
                        .child(
                            el("thead").child(
                                el("tr")
                                    .child(head("Batch", false))
                                    .child(head("What", false))
                                    .child(head("Candles", true))
                                    .child(head("Of the lot", true)),
                            ),
                        )
                        .child(el("tbody").child(rows.views())),
                )
        }))
        .child(who(state, &reached))
        .child(el("h2").child("All of it"))
        .child(lot::balance(shop, account.measure, holding))
        .view()
}

/// Who has some of the candles, and where all the others are.
fn who(state: &State, reached: &[Reach]) -> View {
    if reached.is_empty() {
        return ().view();
    }
    let sent = state.sent_of(reached);
    let row = |sent: &Sent| {
        let batch = state.batches.get(&sent.moved.batch).map(batch_number).unwrap_or_default();
        let (name, contact) = match (sent.customer, &sent.moved.reason) {
            (Some(customer), _) => (customer.name.clone(), customer.contact.clone()),
            (None, Reason::Gift) => ("Given away".to_owned(), sent.moved.note.clone()),
            (None, Reason::Sample) => ("A sample".to_owned(), sent.moved.note.clone()),
            (None, _) => ("Nobody is named".to_owned(), String::new()),
        };
        let order = sent
            .order
            .map(|(id, _)| el("a").attr("href", ["#shelf/order/", &id.0].concat()).child("The order"));
        el("li").child(
            el("p")
                .child(el("strong").child(sent.moved.number.to_string()))
                .child(" of ")
                .child(batch)
                .child(" on ")
                .child(keep::day(sent.moved.on))
                .child(": ")
                .child(el("strong").child(name))
                .child(el("span").class("detail prose").child(" ").child(contact))
                .child(el("span").class("no-print").child(" ").child(order)),
        )
    };
    let who = if sent.is_empty() {
        el("p").child("None were sent.")
    } else {
        el("ul").class("list").attr("id", "who").child(sent.iter().map(row).views())
    };
    let all = state.whereabouts(reached);
    let line = |words: &'static str, number: i64| {
        el("p").child(words).child(el("strong").child(number.to_string())).child(".")
    };
    group![
        el("h2").child("Who has them"),
        who,
        line("On the shelf: ", all.here),
        (all.apart != 0)
            .then(|| line("Filled in a pour that is on or was stopped, so not on the shelf: ", all.apart)),
        (all.back != 0).then(|| line("Of those that went came back: ", all.back)),
        (all.gone != 0).then(|| line("Broken or missing: ", all.gone))
    ]
}
