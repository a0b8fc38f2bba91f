//! What a batch cost.

use super::{HERE, bars, each, table, unpriced};
use crate::book::{Act, Id};
use crate::dom::*;
use crate::keep;
use crate::rooms::parts::{Field, Typed, field, finish, live, missing_page, page_head, page_part};
use crate::rooms::workshop::Workshop;

pub(super) fn page(shop: Workshop, id: Id) -> View {
    let Some((name, began, minutes)) = shop.state(|s| {
        let batch = s.batches.get(&id)?;
        Some((batch.run.plan.formula.clone(), batch.begun_on(keep::ZONE), batch.minutes))
    }) else {
        return missing_page(HERE, "Desk", "There is no batch of this address in this book.");
    };
    let record = ["#pot/record/", &id.0].concat();
    let typed = Typed::new(minutes.map(|m| m.to_string()).unwrap_or_default());
    let (of, batch) = (id.clone(), id);
    let cost = Derived::new(move || shop.ledger().with(|l| shop.state(|s| s.cost(l, &of))));
    let answer = move || {
        cost.with(|cost| match cost {
            None => el("p").child("Nothing was filled, so no candle bears a cost.").view(),
            Some(cost) => group![
                el("p").class("makes").child(each(cost)).child(el("span").class("detail").child(" a candle")),
                bars(shop, cost),
                table(cost, true),
                unpriced(cost, "nothing was counted out for it so far")
            ],
        })
    };
    let keep_minutes = move || match typed.count() {
        Ok(minutes) => {
            shop.act(Act::Worked { batch: batch.clone(), minutes });
            Vec::new()
        }
        Err(why) => vec![why.to_string()],
    };
    let count = move || typed.count().map(|_| String::new()).map_err(|e| e.to_string());
    group![
        page_head(HERE, "Desk", ["What it cost: ", &name].concat()),
        el("p").child(el("a").attr("href", record).child("The record of ").child(keep::day(began))),
        el("div").attr("aria-live", "polite").child(live(answer)),
        page_part(
            "cost-work",
            "Work",
            group![
                field(
                    Field { keys: "numeric", ..Field::new("Minutes it took the hands") }
                        .hint("Left as it is, the rates or the times of the steps count.")
                        .optional(),
                    typed,
                    count,
                ),
                finish("Keep the minutes", None, keep_minutes)
            ]
        )
    ]
}
