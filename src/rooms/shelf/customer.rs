//! Customers: who they are, and forgetting them.

use super::HERE;
use crate::book::{Act, Id, Kept};
use crate::dom::*;
use crate::rooms::parts::{
    Field, Typed, area, choice, confirm_sheet, field, finish, live, missing_page, page_head, past, press,
};
use crate::rooms::workshop::Workshop;
use crate::shelf::{Buys, Customer};

const BUYS: [(Buys, &str); 3] =
    [(Buys::Retail, "Retail"), (Buys::Wholesale, "Wholesale"), (Buys::PrivateLabel, "Private label")];

pub(super) fn list(shop: Workshop) -> View {
    let row = |kept: &Kept<Customer>| {
        let customer = kept.body()?;
        let buys = BUYS.iter().find(|(b, _)| *b == customer.buys).map(|(_, words)| *words);
        Some(
            el("li").child(
                el("a")
                    .attr("href", [HERE, "/customer/", &kept.id.0].concat())
                    .child(el("span").class("title").child(customer.name.clone()))
                    .child(el("span").class("detail").child(buys)),
            ),
        )
    };
    let shown = move || {
        shop.state(|s| {
            let rows: Vec<_> = s.customers_shown().into_iter().filter_map(row).collect();
            if rows.is_empty() {
                el("p").class("muted").child("Nobody is named yet. An order can do without.").view()
            } else {
                el("ul").class("list").child(rows.into_iter().views()).view()
            }
        })
    };
    group![
        page_head(HERE, "Shelf", "Customers".to_owned()),
        el("p").child(
            "Names and addresses stay on this device. They leave it only in a copy of the book or a list that you make."
        ),
        el("a").class("button main").attr("href", "#shelf/customer/new").child("New customer"),
        live(shown)
    ]
}

pub(super) fn form(shop: Workshop, changed: Option<Id>) -> View {
    let before = changed
        .as_ref()
        .map(|id| shop.state_untracked(|s| s.customers.get(id).and_then(|k| k.latest()).cloned()));
    let (customer, over) = match before {
        Some(None) => {
            return missing_page(HERE, "Shelf", "There is no customer of this address in this book.");
        }
        Some(Some(version)) => (version.body, Some(version.entry)),
        None => (Customer::default(), None),
    };
    let (name, contact, buys) =
        (Typed::new(customer.name), Typed::new(customer.contact), Value::new(customer.buys));
    let forgetting = Value::new(false);
    let (save_as, forget) = (changed.clone(), changed.clone());
    let save = move || {
        let body = Customer { name: name.get(), buys: buys.get(), contact: contact.get(), removed: false };
        if body.name.is_empty() {
            return vec!["A customer needs a name. Type one, or a word you know them by.".to_owned()];
        }
        let id = save_as.clone().unwrap_or_else(|| shop.new_id());
        if shop.act(Act::Customer { id, over: over.clone(), body }) {
            shop.go("#shelf/customers");
        }
        Vec::new()
    };
    let forget = move || {
        if let Some(customer) = forget.clone()
            && shop.act(Act::Forgotten { customer })
        {
            shop.go("#shelf/customers");
        }
    };
    group![
        page_head(HERE, "Shelf", "A customer".to_owned()),
        el("div").class("fields").child(field(Field::text("Name"), name, || Ok(String::new()))),
        choice("Buys", buys, &BUYS),
        area("Address and the like", contact),
        finish("Keep this customer", Some("#shelf/customers"), save),
        changed.map(|id| group![
            past(shop, &id),
            press("danger", "Remove this person", move || forgetting.set(true))
        ]),
        confirm_sheet(
            "Remove this person?",
            "Name and address are taken out of everything that is stored here, for good: this cannot be undone, and no older copy \
brings them back. The orders stay, with nobody named. Copies that you made before still hold them: delete those, \
and make a new one. What you typed into notes stays.",
            "Remove for good",
            forgetting,
            forget
        )
    ]
}
