//! The converter, over any room and closed back to it.

use super::fetch::convert;
use super::parts::{Field, Typed, field, pick, sheet, why_button};
use super::workshop::Workshop;
use crate::bench::measures;
use crate::dom::*;
use crate::formula::conventions;
use crate::quantity::{Any, Converted, Why, read_any, symbols};

pub(super) fn converter(open: Value<bool>) -> View {
    let typed = Typed::new("");
    let of = Value::new(String::new());
    sheet(|| "Convert".to_owned(), open, move || convert(Workshop::here(), typed, of))
}

pub(super) fn body(shop: Workshop, typed: Typed, of: Value<String>) -> View {
    let read = Derived::new(move || typed.text.with(|t| read_any(t, shop.locale())));
    let measured = Derived::new(move || shop.state(crate::book::State::measured_names));
    let entry = Field { keys: "text", ..Field::new("Amount with its unit") };
    group![
        field(entry.placeholder("2 1/4 oz, 86.4 °C, ¾ tbsp, 8 %, 6 drops"), typed, move || {
            read.with(|r| match r {
                Ok(amount) => Ok(amount.remark().unwrap_or_default().to_owned()),
                Err(e) => Err(e.to_string()),
            })
        }),
        el("div")
            .attr("aria-live", "polite")
            .child(move || read.with(|r| r.as_ref().ok().map(|amount| answer(shop, amount, typed, of)))),
        move || {
            (!measured.with(Vec::is_empty)).then(|| {
                let names = move || {
                    let none = (String::new(), "nothing in particular".to_owned());
                    std::iter::once(none).chain(measured.get().into_iter().map(|n| (n.clone(), n))).collect()
                };
                group![
                    pick("Drops and spoons of", of, names),
                    el("div").attr("aria-live", "polite").child(move || {
                        read.with(|r| r.as_ref().ok().map(|amount| of_one(shop, amount, &of.get())))
                    })
                ]
            })
        }
    ]
}

fn answer(shop: Workshop, amount: &Any, typed: Typed, of: Value<String>) -> View {
    match amount {
        Any::Bare(_) => which_unit(typed),
        Any::Drops(_) if of.with(String::is_empty) => el("p")
            .class("muted")
            .child("What a drop weighs depends on what is dropped. Weigh some at the Bench, then choose it here.")
            .view(),
        Any::Drops(_) => ().view(),
        _ => {
            let locale = shop.locale();
            let both = match amount {
                Any::Share(share) => conventions(share.value, shop.voice()),
                _ => Vec::new(),
            };
            group![
                el("ul")
                    .class("list converted")
                    .child(amount.everywhere(locale).into_iter().map(one).views()),
                said(both)
            ]
        }
    }
}

fn one(converted: Converted) -> View {
    let Converted { shown, exact, why } = converted;
    el("li")
        .class("row")
        .child(
            el("span")
                .class("amount")
                .child(el("span").class("figure").child(shown.number))
                .child(el("span").class("unit").child(shown.unit)),
        )
        .child(
            el("span")
                .class("detail")
                .child(if exact { "exactly " } else { "rounded " })
                .child(why_button(why)),
        )
        .view()
}

/// A bare number: its unit is tapped, for a keyboard that has only digits.
fn which_unit(typed: Typed) -> View {
    let button = move |symbol: &'static str| {
        let add = move |_| typed.text.update(|t| *t = [t.trim(), " ", symbol].concat());
        el("button").attr("type", "button").on("click", add).child(symbol)
    };
    let units = symbols().into_iter().chain(std::iter::once("drops"));
    group![el("p").child("Of which unit?"), el("div").class("units").child(units.map(button).views())]
}

/// The amount of one ingredient, through what its trials told.
fn of_one(shop: Workshop, amount: &Any, name: &str) -> View {
    if name.is_empty() {
        return ().view();
    }
    let found = shop.state(|s| s.ingredient(name).map(|i| measures(i, amount, shop.voice())));
    match found {
        Some(found) if !found.is_empty() => said(found),
        _ => el("p")
            .class("muted")
            .child(
                "Type a weight, drops or spoons. What has not been weighed of it can be weighed \
at the Bench.",
            )
            .view(),
    }
}

fn said(lines: Vec<(String, Why)>) -> View {
    let line = |(said, why): (String, Why)| {
        el("li").class("row").child(el("span").child(said)).child(why_button(why))
    };
    el("ul").class("list said-lines").child(lines.into_iter().map(line).views()).view()
}
