//! What came, as it is written down; and a lot put right.

use super::HERE;
use crate::book::{Act, Id, Kept};
use crate::dom::*;
use crate::keep;
use crate::quantity::Density;
use crate::rooms::parts::{
    Field, Typed, choice, date_field, field, finish, live, mass_field, money_field, page_head, text_field,
};
use crate::rooms::workshop::Workshop;
use crate::stores::{Draft, Lot, Way};

#[derive(Clone, Copy)]
struct Form {
    /// The lot that is put right, as it was.
    before: Value<Option<Lot>>,
    ingredient: Typed,
    number: Typed,
    supplier: Typed,
    got_on: Typed,
    best_before: Typed,
    price: Typed,
    packs: Typed,
    way: Value<Way>,
    holds: Typed,
    weighs: Typed,
}

impl Form {
    fn of(draft: Draft, before: Option<Lot>) -> Self {
        Self {
            before: Value::new(before),
            ingredient: Typed::new(draft.ingredient),
            number: Typed::new(draft.number),
            supplier: Typed::new(draft.supplier),
            got_on: Typed::new(draft.got_on),
            best_before: Typed::new(draft.best_before),
            price: Typed::new(draft.price),
            packs: Typed::new(draft.packs),
            way: Value::new(draft.way),
            holds: Typed::new(draft.holds),
            weighs: Typed::new(draft.weighs),
        }
    }

    fn draft(self) -> Draft {
        Draft {
            ingredient: self.ingredient.get(),
            number: self.number.get(),
            supplier: self.supplier.get(),
            got_on: self.got_on.get(),
            best_before: self.best_before.get(),
            price: self.price.get(),
            packs: self.packs.get(),
            way: self.way.get(),
            holds: self.holds.get(),
            weighs: self.weighs.get(),
        }
    }

    fn density(self, shop: Workshop) -> Option<Density> {
        shop.state(|s| s.ingredient(&self.ingredient.get())?.density)
    }

    fn read(self, shop: Workshop) -> Result<Lot, Vec<String>> {
        let density = self.density(shop);
        self.before.with(|lot| {
            shop.state(|s| self.draft().read_over(lot.as_ref(), &s.rates.currency, density, shop.voice()))
        })
    }
}

/// `of` is the lot that is changed, or one of the same ingredient.
pub(super) fn page(shop: Workshop, changed: Option<Id>, of: &Id) -> View {
    let known = shop.state(|s| s.lots.get(of).cloned());
    let draft = match (known.as_ref().and_then(Kept::body), &changed) {
        (Some(lot), Some(_)) => shop.state(|s| Draft::of(lot, &s.rates.currency, shop.voice())),
        (like, _) => Draft {
            ingredient: like.map(|l| l.ingredient.clone()).unwrap_or_default(),
            supplier: like.map(|l| l.supplier.clone()).unwrap_or_default(),
            got_on: keep::today().to_string(),
            packs: "1".to_owned(),
            ..Draft::default()
        },
    };
    let before = known.as_ref().and_then(Kept::body).filter(|_| changed.is_some());
    let form = Form::of(draft, before.cloned());
    let title = if changed.is_some() { "Put the lot right" } else { "Something came" };
    let names = shop.state(|s| {
        let mut names: Vec<String> = s.uses().into_iter().map(|u| u.name).collect();
        names.extend(s.vessels_shown().iter().filter_map(|k| Some(k.body()?.name.clone())));
        names
    });
    let over = known.as_ref().and_then(Kept::latest).map(|v| v.entry.clone()).filter(|_| changed.is_some());
    let save = move || match form.read(shop).and_then(|lot| {
        shop.state(|s| s.mismeasured(&lot, changed.as_ref()).map_or(Ok(lot), |why| Err(vec![why])))
    }) {
        Ok(body) => {
            let id = changed.clone().unwrap_or_else(|| shop.new_id());
            let address = ["#stores/lot/", &id.0].concat();
            let same = form.before.with(|before| before.as_ref() == Some(&body));
            if same || shop.act(Act::Lot { id, over: over.clone(), body }) {
                shop.go(&address);
            }
            Vec::new()
        }
        Err(wrong) => wrong,
    };
    let in_all = move || match form.read(shop) {
        Ok(lot) => {
            let amount = lot.bought.pack.measure().say(lot.amount, shop.voice());
            ["In all: ", &amount, "."].concat()
        }
        Err(_) => String::new(),
    };
    let pack = move || {
        let weighs = || {
            let hint = "The net weight on the label. Left empty, the density that is known counts.";
            mass_field(Field::new("One pack weighs").hint(hint).optional(), form.weighs)
        };
        let (example, keys) = match form.way.get() {
            Way::Weight => ("10 lb", "decimal"),
            Way::Volume => ("1 gal", "decimal"),
            Way::Pieces => ("12", "numeric"),
        };
        let holds = Field { keys, ..Field::new("One pack holds").placeholder(example) };
        let said = move || form.draft().pack(shop.voice()).map(|p| p.say(shop.voice()));
        group![field(holds, form.holds, said), (form.way.get() == Way::Volume).then(weighs)]
    };
    let count = move || form.packs.count().map(|_| String::new()).map_err(|e| e.to_string());
    group![
        page_head(HERE, "Stores", title.to_owned()),
        text_field("What it is", form.ingredient, names),
        el("div")
            .class("fields")
            .child(text_field("Lot number", form.number, Vec::new()))
            .child(field(Field::text("Supplier").optional(), form.supplier, || Ok(String::new())))
            .child(date_field("Got on", form.got_on, false))
            .child(date_field("Best before", form.best_before, true)),
        choice(
            "Bought by",
            form.way,
            &[(Way::Weight, "Weight"), (Way::Volume, "Volume"), (Way::Pieces, "Pieces")],
        ),
        el("div")
            .class("fields")
            .child(field(Field { keys: "numeric", ..Field::new("How many packs") }, form.packs, count))
            .child(live(pack))
            .child(money_field(Field::new("Price of all of it"), form.price)),
        el("p").class("found").attr("role", "status").child(in_all),
        finish("Keep this lot", Some(HERE), save)
    ]
}
