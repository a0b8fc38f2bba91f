//! How an ingredient is bought: the wait, what an order costs, the prices by how many.

use super::HERE;
use crate::book::{Fact, Id, Kept};
use crate::dom::*;
use crate::rooms::parts::{
    Field, Typed, choice, field, finish, live, missing_page, money_field, page_head, percent_field,
};
use crate::rooms::workshop::Workshop;
use crate::stores::{OFFERS, SupplyDraft, Way};

#[derive(Clone, Copy)]
struct Form {
    lead_days: Typed,
    lead_spread: Typed,
    order_cost: Typed,
    keeping: Typed,
    way: Value<Way>,
    holds: Typed,
    offers: [(Typed, Typed); OFFERS],
}

impl Form {
    fn of(draft: SupplyDraft) -> Self {
        Self {
            lead_days: Typed::new(draft.lead_days),
            lead_spread: Typed::new(draft.lead_spread),
            order_cost: Typed::new(draft.order_cost),
            keeping: Typed::new(draft.keeping),
            way: Value::new(draft.way),
            holds: Typed::new(draft.holds),
            offers: draft.offers.map(|(from, price)| (Typed::new(from), Typed::new(price))),
        }
    }

    fn draft(self) -> SupplyDraft {
        SupplyDraft {
            lead_days: self.lead_days.get(),
            lead_spread: self.lead_spread.get(),
            order_cost: self.order_cost.get(),
            keeping: self.keeping.get(),
            way: self.way.get(),
            holds: self.holds.get(),
            offers: self.offers.map(|(from, price)| (from.get(), price.get())),
        }
    }
}

pub(super) fn page(shop: Workshop, id: &Id) -> View {
    let Some(lot) = shop.state(|s| s.lots.get(id).and_then(Kept::body).cloned()) else {
        return missing_page(HERE, "Stores", "There is no lot of this address in this book.");
    };
    let name = lot.ingredient.clone();
    let draft = shop.state(|s| {
        let (currency, voice) = (&s.rates.currency, shop.voice());
        s.supply(&name).map_or_else(
            || SupplyDraft::like(&lot, currency, voice),
            |supply| SupplyDraft::of(supply, currency, voice),
        )
    });
    let form = Form::of(draft);
    let count = |label: &'static str, hint: &'static str, typed: Typed| {
        let said = move || match typed.get().as_str() {
            "0" => Ok(String::new()),
            _ => typed.count().map(|_| String::new()).map_err(|e| e.to_string()),
        };
        field(Field { keys: "numeric", ..Field::new(label).hint(hint) }, typed, said)
    };
    let back = ["#stores/of/", &id.0].concat();
    let to = back.clone();
    let learnt = name.clone();
    let save = move || match shop.state(|s| form.draft().read(&s.rates.currency, shop.voice())) {
        Ok(supply) => {
            let fresh = shop.new_id();
            let act = shop.state(|s| s.learn(&learnt, Fact::Supply(supply), fresh));
            if shop.act(act) {
                shop.go(&to);
            }
            Vec::new()
        }
        Err(wrong) => wrong,
    };
    let offers = form.offers.into_iter().enumerate().map(|(n, (from, price))| {
        el("div")
            .class("fields two")
            .child(count(if n == 0 { "From so many packs" } else { "And from" }, "", from))
            .child(money_field(Field::new("Price of one"), price))
    });
    let holds = move || {
        let (example, keys) = match form.way.get() {
            Way::Weight => ("10 lb", "decimal"),
            Way::Volume => ("1 gal", "decimal"),
            Way::Pieces => ("12", "numeric"),
        };
        field(Field { keys, ..Field::new("One pack holds").placeholder(example) }, form.holds, || {
            Ok(String::new())
        })
    };
    group![
        page_head(HERE, "Stores", ["How it is bought: ", &name].concat()),
        el("p").class("back").child(el("a").attr("href", back).child(["← ", &name].concat())),
        el("div")
            .class("fields")
            .child(count("Days until it comes", "From the order to the door.", form.lead_days))
            .child(count("Sooner or later by", "Days, two times out of three.", form.lead_spread))
            .child(money_field(
                Field::new("What an order costs").hint("Delivery and your time, beside the goods."),
                form.order_cost
            ))
            .child(percent_field(
                Field::new("Keeping it for a year")
                    .hint("Of its price: room, spoilage, money tied up. 20 % is common."),
                form.keeping
            )),
        choice(
            "Bought by",
            form.way,
            &[(Way::Weight, "Weight"), (Way::Volume, "Volume"), (Way::Pieces, "Pieces")]
        ),
        live(holds),
        el("h2").child("Prices"),
        offers.views(),
        finish("Keep this", None, save)
    ]
}
