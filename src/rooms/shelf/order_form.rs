//! An order, new or changed.

use super::HERE;
use crate::book::{Act, Id};
use crate::dom::*;
use crate::rooms::parts::{
    Field, Typed, area, choice, date_field, field, finish, missing_page, page_head, pick,
};
use crate::rooms::workshop::Workshop;
use crate::shelf::OrderDraft;

pub(super) fn page(shop: Workshop, changed: Option<Id>) -> View {
    let before = changed
        .as_ref()
        .map(|id| shop.state_untracked(|s| s.orders.get(id).and_then(|k| k.latest()).cloned()));
    let (draft, over) = match before {
        Some(None) => return missing_page(HERE, "Shelf", "There is no order of this address in this book."),
        Some(Some(version)) => (OrderDraft::of(&version.body), Some(version.entry)),
        None => (OrderDraft::default(), None),
    };
    let title = if changed.is_some() { "Change the order" } else { "New order" };
    let products = shop.state_untracked(|s| draft.rows(s));
    if products.is_empty() {
        return group![
            page_head(HERE, "Shelf", title.to_owned()),
            el("p").child("An order is of candles that you sell, and none is named yet."),
            el("a").class("button main").attr("href", "#shelf/product/new").child("Name a candle to sell")
        ];
    }
    let customer = Value::new(draft.customer);
    let wanted = Typed::new(draft.wanted);
    let in_parts = Value::new(draft.in_parts);
    let note = Typed::new(draft.note);
    let mut numbers: Vec<(String, Typed)> = Vec::new();
    for (id, _, number) in &products {
        numbers.push((id.clone(), Typed::new(number.clone())));
    }
    let rows = products.iter().zip(&numbers).map(|((_, name, _), (_, typed))| {
        let typed = *typed;
        let of = Field { keys: "numeric", ..Field::new(name.clone()).placeholder("0").optional() };
        field(of, typed, move || match typed.get().as_str() {
            "0" => Ok(String::new()),
            _ => typed.count().map(|_| String::new()).map_err(|e| e.to_string()),
        })
    });
    let rows = rows.collect::<Vec<_>>().into_iter().views();
    let customers = move || {
        let nobody = (String::new(), "Nobody named".to_owned());
        let named =
            |k: &crate::book::Kept<crate::shelf::Customer>| Some((k.id.0.clone(), k.body()?.name.clone()));
        let all = shop.state(|s| s.customers_shown().into_iter().filter_map(named).collect::<Vec<_>>());
        std::iter::once(nobody).chain(all).collect()
    };
    let save = move || {
        let draft = OrderDraft {
            customer: customer.get(),
            lines: numbers.iter().map(|(id, typed)| (id.clone(), typed.get())).collect(),
            wanted: wanted.get(),
            in_parts: in_parts.get(),
            note: note.get(),
        };
        match shop.state(|s| draft.read(s, shop.locale())) {
            Ok(body) => {
                let id = changed.clone().unwrap_or_else(|| shop.new_id());
                let address = [HERE, "/order/", &id.0].concat();
                if shop.act(Act::Order { id, over: over.clone(), body }) {
                    shop.go(&address);
                }
                Vec::new()
            }
            Err(wrong) => wrong,
        }
    };
    group![
        page_head(HERE, "Shelf", title.to_owned()),
        el("fieldset").class("fields").child(el("legend").child("How many of each")).child(rows),
        el("div").class("fields").child(pick("For", customer, customers)).child(date_field(
            "Wanted on",
            wanted,
            true
        )),
        el("p")
            .class("detail")
            .child("Somebody new? ")
            .child(el("a").attr("href", "#shelf/customer/new").child("Write them down first")),
        choice("It goes", in_parts, &[(false, "Whole"), (true, "In parts, if need be")]),
        area("Note", note),
        finish("Keep this order", Some(HERE), save)
    ]
}
