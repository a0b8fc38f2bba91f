//! Cost and price: what a formula costs at any size and what it must sell for; what a batch cost; the workshop's rates.

mod batch;
mod formula;
mod price;
mod rates;

use crate::book::Id;
use crate::desk::Cost;
use crate::dom::*;
use crate::rooms::parts::coins;
use crate::rooms::workshop::Workshop;

/// From one bar to the next.
const ROW: i32 = 34;

pub(super) const HERE: &str = "#desk";

/// On the Desk itself: the two ways in.
pub(super) fn body() -> View {
    group![
        el("p")
            .child("What a candle costs, and what it must sell for. Say first what work and overhead cost."),
        el("div")
            .class("actions")
            .child(el("a").class("button main").attr("href", "#desk/cost").child("Cost and price"))
            .child(el("a").class("button").attr("href", "#desk/rates").child("Rates"))
    ]
}

/// `#desk/rates`, `#desk/cost`, `#desk/cost/BATCH`.
pub(super) fn page(shop: Workshop, place: &[String]) -> View {
    match place {
        [first, ..] if first == "rates" => rates::page(shop),
        [_, batch, ..] => batch::page(shop, Id(batch.clone())),
        _ => formula::page(shop),
    }
}

/// The parts of a candle as bars. Lines, since the width of a rectangle is a matter of style to the browser: all of them
/// would be styled anew at each key.
pub(super) fn bars(shop: Workshop, cost: &Cost) -> View {
    let (bars, said) = shop.state(|s| cost.bars(&s.rates.currency, shop.voice()));
    let high = ROW * i32::try_from(bars.len()).unwrap_or_default();
    let rows = bars.into_iter().enumerate().map(|(n, bar)| {
        let y = ROW * i32::try_from(n).unwrap_or_default();
        let across = (y + 24).to_string();
        group![
            svg("text").attr("x", "0").attr("y", (y + 16).to_string()).child(bar.words),
            svg("line")
                .class("bar")
                .attr("y1", across.clone())
                .attr("x2", [&bar.length.to_string(), "%"].concat())
                .attr("y2", across)
        ]
    });
    svg("svg")
        .class("bars")
        .attr("width", "100%")
        .attr("height", high.to_string())
        .attr("role", "img")
        .attr("aria-label", said)
        .child(rows.views())
        .view()
}

/// The parts of a batch in a table, by the lots and by the average, with their sums.
pub(super) fn table(cost: &Cost, both: bool) -> View {
    let row = |name: String, by_lot, average| {
        el("tr")
            .child(el("td").child(name))
            .child(el("td").class("number").child(coins(by_lot)))
            .child(both.then(|| el("td").class("number").child(coins(average))))
    };
    let head = |name: &'static str| el("th").attr("scope", "col").class("number").child(name);
    let rows = cost.items.iter().map(|i| row(i.name.clone(), i.cost, i.average));
    el("table")
        .class("costs")
        .child(
            el("thead").child(
                el("tr")
                    .child(el("th").attr("scope", "col").child("Part"))
                    .child(head(if both { "By the lots used" } else { "Cost" }))
                    .child(both.then(|| head("By the average"))),
            ),
        )
        .child(el("tbody").child(rows.views()))
        .child(el("tfoot").child(row(
            ["In all, ", &cost.candles.to_string(), " candles"].concat(),
            cost.total(),
            cost.average(),
        )))
        .view()
}

/// What is not in the sum, and why.
pub(super) fn unpriced(cost: &Cost, why: &str) -> View {
    let names = cost.unpriced.join(", ");
    (!names.is_empty())
        .then(|| crate::rooms::parts::sentence(["Not in the sum, since ", why, ": ", &names, "."].concat()))
        .view()
}

/// What one costs, in words: `$5.12; 2 of the 12 cost a cent more` is `$5.12 to $5.13`.
pub(super) fn each(cost: &Cost) -> String {
    let (least, more) = cost.candle();
    if more == 0 { coins(least) } else { [&coins(least), " to ", &coins(cost.dearest())].concat() }
}
