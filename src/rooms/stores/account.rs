//! One ingredient: its lots, the picture of its stock, its pace, when to order and how much.

use super::{HERE, taken, with_ledger};
use crate::book::{Id, State};
use crate::dom::*;
use crate::keep;
use crate::pot::{HIGH, WIDE};
use crate::rooms::parts::{captions, coins, missing_page, page_head, page_part, why_button};
use crate::rooms::workshop::Workshop;
use crate::stores::{Chart, Holding, Measure, Standing};

pub(super) fn page(shop: Workshop, id: Id) -> View {
    with_ledger(shop, move |ledger| match ledger.lot(&id) {
        None => missing_page(HERE, "Stores", "There is no lot of this address in this book."),
        Some((account, _)) => {
            shop.state(|s| one(shop, s, &id, &ledger.standing(account, s, keep::today(), shop.voice())))
        }
    })
}

fn one(shop: Workshop, state: &State, id: &Id, standing: &Standing) -> View {
    let (account, voice) = (standing.account, shop.voice());
    let chart = Chart::of(standing, keep::now(), voice, |at| keep::day(keep::ZONE.day(at)))
        .map(|chart| picture(&chart));
    let lots = account.lots.iter().map(|h| row(shop, account.measure, h)).views();
    let new = ["#stores/lot/new/", &id.0].concat();
    group![
        page_head(HERE, "Stores", account.name.clone()),
        el("p").class("makes").child(account.measure.say(standing.left, voice)),
        el("p").child(standing.say()).child("."),
        taken(account, shop).map(|taken| el("p").child(taken).child(".")),
        chart,
        el("div")
            .class("actions")
            .child(el("a").class("button main").attr("href", new).child("More of it came")),
        page_part("of-lots", "Lots, the first to be used first", el("ul").class("list").child(lots).view()),
        page_part("of-buying", "Buying", buying(shop, state, id, standing))
    ]
}

fn row(shop: Workshop, measure: Measure, holding: &Holding) -> View {
    let until = match holding.lot.best_before {
        Some(day) if day < keep::today() => ["was best before ", &keep::day(day)].concat(),
        Some(day) => ["best before ", &keep::day(day)].concat(),
        None => ["got on ", &keep::day(holding.lot.got_on)].concat(),
    };
    el("li")
        .child(
            el("a")
                .attr("href", ["#stores/lot/", &holding.id.0].concat())
                .child(
                    el("span")
                        .class("what")
                        .child(el("span").class("title").child("Lot ").child(holding.lot.number.clone()))
                        .child(el("span").class("detail").child(until)),
                )
                .child(holding.held.then(|| el("span").class("tag").child("On hold")))
                .child(el("span").class("state").child(measure.say(holding.left, shop.voice()))),
        )
        .view()
}

fn buying(shop: Workshop, state: &State, id: &Id, standing: &Standing) -> View {
    let address = ["#stores/of/", &id.0, "/supply"].concat();
    let say = |amount| standing.account.measure.say(amount, shop.voice());
    let reorder = standing.reorder.as_ref().map(|reorder| {
        el("p")
            .child("Order when no more than ")
            .child(el("strong").child(say(reorder.at)))
            .child(" is left.")
            .child(why_button(reorder.why.clone()))
    });
    let buy = standing.buy.as_ref().zip(standing.supply).map(|(buy, supply)| {
        el("p")
            .child("Cheapest over a year: ")
            .child(
                el("strong").child([&buy.packs.to_string(), " × ", &supply.pack.say(shop.voice())].concat()),
            )
            .child(" at a time, ")
            .child(coins(buy.price))
            .child(" each. A year then costs ")
            .child(coins(buy.yearly))
            .child(", with the orders and the keeping; one order at a time as small as can be, ")
            .child(coins(buy.one_by_one))
            .child(".")
    });
    // From far below the line one of them would not lift it above.
    let now = standing
        .order(state)
        .filter(|(packs, _)| standing.due && standing.buy.as_ref().is_some_and(|buy| buy.packs != *packs));
    let now = now.zip(standing.supply).map(|((packs, price), supply)| {
        let packs = [&packs.to_string(), " × ", &supply.pack.say(shop.voice())].concat();
        el("p")
            .child("It is far below that now: ")
            .child(el("strong").child(packs))
            .child(" bring it above, at ")
            .child(coins(price))
            .child(" each.")
    });
    let unknown = standing.supply.is_none().then(|| {
        el("p").child("Say how long it takes to come and what it costs: then the Stores tell when to order, and how much.")
    });
    let early = (standing.supply.is_some() && standing.pace.is_none())
        .then(|| el("p").child("It is too new here to tell how fast it goes."));
    group![
        reorder,
        buy,
        now,
        unknown,
        early,
        el("div")
            .class("actions")
            .child(el("a").class("button").attr("href", address).child("How it is bought"))
    ]
}

fn picture(chart: &Chart) -> View {
    let order = chart.reorder.map(|y| ["M0 ", &y.to_string(), "H", &WIDE.to_string()].concat());
    svg("svg")
        .class("chart stock")
        .attr("viewBox", format!("-8 0 {} {HIGH}", WIDE + 16))
        .attr("role", "img")
        .attr("aria-label", chart.said.clone())
        .child(order.map(|d| svg("path").class("order").attr("d", d)))
        .child(svg("path").class("curve").attr("d", chart.stock.clone()))
        .child(svg("path").class("ahead").attr("d", chart.ahead.clone()))
        .child(svg("path").class("at").attr("d", chart.today.clone()))
        .child(captions(&chart.words))
        .view()
}
