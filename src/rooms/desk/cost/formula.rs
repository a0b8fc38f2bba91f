//! What a formula costs at any size of batch, and its price.

use super::{HERE, bars, each, price, table, unpriced};
use crate::book::{Id, VesselOffer};
use crate::desk::{Cost, after_rise, read_percent};
use crate::dom::*;
use crate::rooms::parts::{
    Field, Pick, Typed, coins, field, live, page_head, page_part, percent_field, pick, sentence,
};
use crate::rooms::workshop::Workshop;
use crate::stores::Ledger;

/// Sizes that are held beside each other.
const SIZES: [u32; 4] = [4, 8, 12, 24];

#[derive(Clone, Copy)]
struct Form {
    formula: Value<String>,
    vessel: Value<String>,
    vessels: Typed,
    rise: Typed,
    dearer: Value<String>,
}

impl Form {
    fn offers(self, shop: Workshop) -> Vec<VesselOffer> {
        shop.state(|s| s.vessels_for(&Id(self.formula.get())))
    }

    fn cost(self, shop: Workshop, ledger: &Ledger, vessels: u32) -> Result<Cost, String> {
        let (formula, vessel) = (Id(self.formula.get()), Id(self.vessel.get()));
        let cost = shop.state(|s| s.expected(ledger, (&formula, &vessel), vessels, shop.voice()));
        cost.map_err(|e| e.say(shop.voice()))
    }
}

pub(super) fn page(shop: Workshop) -> View {
    let first = shop.state(|s| s.formulas_shown().first().map(|k| k.id.0.clone()));
    let Some(first) = first else {
        return group![
            page_head(HERE, "Desk", "Cost and price".to_owned()),
            el("p").child("What a candle costs begins with a formula."),
            el("a").class("button main").attr("href", "#book/formula/new").child("Write a formula")
        ];
    };
    let form = Form {
        formula: Value::new(first),
        vessel: Value::default(),
        vessels: Typed::new("12"),
        rise: Typed::new("10 %"),
        dearer: Value::default(),
    };
    watch(move || {
        form.formula.track();
        let first = untrack(|| form.offers(shop).into_iter().next());
        form.vessel.set(first.map(|o| o.vessel.0).unwrap_or_default());
    });
    let formulas = move || -> Vec<Pick> {
        shop.state(|s| {
            s.formulas_shown().iter().filter_map(|k| Some((k.id.0.clone(), k.body()?.name.clone()))).collect()
        })
    };
    let vessels =
        move || -> Vec<Pick> { form.offers(shop).into_iter().map(|o| (o.vessel.0, o.name)).collect() };
    let ledger = shop.ledger();
    let cost = Derived::new(move || match form.vessels.count() {
        Ok(vessels) => ledger.with(|l| form.cost(shop, l, vessels)),
        Err(why) => Err(why.to_string()),
    });
    let sizes = Derived::new(move || {
        let all = SIZES.map(|n| ledger.with(|l| form.cost(shop, l, n).ok()));
        all.into_iter().flatten().collect::<Vec<Cost>>()
    });
    let count = move || form.vessels.count().map(|_| String::new()).map_err(|e| e.to_string());
    group![
        page_head(HERE, "Desk", "Cost and price".to_owned()),
        el("div")
            .class("fields")
            .child(pick("Formula", form.formula, formulas))
            .child(pick("Vessel", form.vessel, vessels))
            .child(field(
                Field { keys: "numeric", ..Field::new("How many in a batch") },
                form.vessels,
                count
            )),
        el("div").attr("aria-live", "polite").child(live(move || {
            cost.with(|cost| match cost {
                Err(why) => sentence(why.clone()),
                Ok(cost) => group![
                    el("p")
                        .class("makes")
                        .attr("id", "each")
                        .child(each(cost))
                        .child(el("span").class("detail").child(" a candle")),
                    bars(shop, cost),
                    unpriced(cost, "no price is known")
                ],
            })
        })),
        el("div")
            .class("below")
            .child(page_part(
                "cost-size",
                "By the size of the batch",
                live(move || by_size(shop, &sizes.get()))
            ))
            .child(page_part(
                "cost-price",
                "Price",
                live(move || cost.with(|c| c.as_ref().ok().map(|c| price::prices(shop, c))).view())
            ))
            .child(page_part("cost-rise", "If something gets dearer", rise(shop, form, cost)))
            .child(page_part(
                "cost-parts",
                "The batch by its parts",
                live(move || cost.with(|c| c.as_ref().ok().map(|c| table(c, false))).view())
            ))
    ]
}

fn by_size(shop: Workshop, sizes: &[Cost]) -> View {
    let (Some(small), Some(large)) = (sizes.first(), sizes.last()) else { return ().view() };
    let rows = sizes.iter().map(|cost| {
        group![
            el("dt").child(["A batch of ", &cost.candles.to_string()].concat()),
            el("dd").child(each(cost)).child(" each")
        ]
    });
    let why = shop.state(|s| s.why_small(small, large, shop.voice()));
    group![el("dl").class("needs").child(rows.views()), el("p").child(why)]
}

fn rise(shop: Workshop, form: Form, cost: Derived<Result<Cost, String>>) -> View {
    let names = move || -> Vec<Pick> {
        let name = |c: &Cost| {
            let materials = c.items.iter().filter(|i| i.kind == crate::desk::Kind::Material);
            materials.map(|i| (i.name.clone(), i.name.clone())).collect()
        };
        cost.with(|c| c.as_ref().map(name).unwrap_or_default())
    };
    let told = move || {
        let by = read_percent(&form.rise.get(), shop.voice()).ok()?;
        let name = form.dearer.get();
        cost.with(|c| {
            let cost = c.as_ref().ok().filter(|_| !name.is_empty())?;
            let now = after_rise(cost, &name, by);
            Some(group![
                el("p")
                    .class("found")
                    .child("A candle then costs ")
                    .child(coins(now))
                    .child(", now ")
                    .child(coins(cost.dearest()))
                    .child("."),
                price::after(shop, now)
            ])
        })
    };
    group![
        el("div")
            .class("fields")
            .child(pick("What gets dearer", form.dearer, names))
            .child(percent_field(Field::new("By how much"), form.rise)),
        el("div").attr("aria-live", "polite").child(live(move || told().view()))
    ]
}
