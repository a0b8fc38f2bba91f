//! The converter, over any room and closed back to it.

use super::parts::{Field, Typed, field, pick, sheet, why_button};
use super::workshop::Workshop;
use crate::bench::measures;
use crate::formula::conventions;
use crate::quantity::{Any, Converted, Why, read_any, symbols};
use leptos::prelude::*;

#[component]
pub(super) fn Converter(open: RwSignal<bool>) -> impl IntoView {
    let typed = Typed::new("");
    let of = RwSignal::new(String::new());
    sheet(|| "Convert".to_owned(), open, move || body(Workshop::here(), typed, of))
}

fn body(shop: Workshop, typed: Typed, of: RwSignal<String>) -> AnyView {
    let read = Memo::new(move |_| typed.text.with(|t| read_any(t, shop.locale())));
    let measured = Memo::new(move |_| shop.state(crate::book::State::measured_names));
    let entry = Field { keys: "text", ..Field::new("Amount with its unit") };
    view! {
        {field(entry.placeholder("2 1/4 oz, 86.4 °C, ¾ tbsp, 8 %, 6 drops"), typed, move || {
            read.with(|r| match r {
                Ok(amount) => Ok(amount.remark().unwrap_or_default().to_owned()),
                Err(e) => Err(e.to_string()),
            })
        })}
        <div aria-live="polite">
            {move || read.with(|r| r.as_ref().ok().map(|amount| answer(shop, amount, typed)))}
        </div>
        {move || (!measured.with(Vec::is_empty)).then(|| {
            let names = move || {
                let none = (String::new(), "nothing in particular".to_owned());
                std::iter::once(none).chain(measured.get().into_iter().map(|n| (n.clone(), n))).collect()
            };
            view! {
                {pick("Drops and spoons of", of, names)}
                <div aria-live="polite">{move || read.with(|r| r.as_ref().ok().map(|amount| of_one(shop, amount, &of.get())))}</div>
            }
        })}
    }
    .into_any()
}

fn answer(shop: Workshop, amount: &Any, typed: Typed) -> AnyView {
    match amount {
        Any::Bare(_) => which_unit(typed),
        Any::Drops(_) => ().into_any(),
        _ => {
            let locale = shop.locale();
            let both = match amount {
                Any::Share(share) => conventions(share.value, shop.voice()),
                _ => Vec::new(),
            };
            view! {
                <ul class="list converted">{amount.everywhere(locale).into_iter().map(one).collect_view()}</ul>
                {said(both)}
            }
            .into_any()
        }
    }
}

fn one(converted: Converted) -> AnyView {
    let Converted { shown, exact } = converted;
    view! {
        <li class="row">
            <span class="amount"><span class="figure">{shown.number}</span><span class="unit">{shown.unit}</span></span>
            <span class="detail">{if exact { "exactly" } else { "rounded" }}</span>
        </li>
    }
    .into_any()
}

/// A bare number: its unit is tapped, for a keyboard that has only digits.
fn which_unit(typed: Typed) -> AnyView {
    let button = move |symbol: &'static str| {
        let add = move |_| typed.text.update(|t| *t = [t.trim(), " ", symbol].concat());
        view! { <button type="button" on:click=add>{symbol}</button> }
    };
    let units = symbols().into_iter().chain(std::iter::once("drops"));
    view! {
        <p>"Of which unit?"</p>
        <div class="units">{units.map(button).collect_view()}</div>
    }
    .into_any()
}

/// The amount of one ingredient, through what its trials told.
fn of_one(shop: Workshop, amount: &Any, name: &str) -> AnyView {
    if name.is_empty() {
        return ().into_any();
    }
    let found = shop.state(|s| s.ingredient(name).map(|i| measures(i, amount, shop.voice())));
    match found {
        Some(found) if !found.is_empty() => said(found),
        _ => view! {
            <p class="muted">
                "Type a weight, drops or spoons. What has not been weighed of it can be weighed at the Bench."
            </p>
        }
        .into_any(),
    }
}

fn said(lines: Vec<(String, Why)>) -> AnyView {
    let line =
        |(said, why): (String, Why)| view! { <li class="row"><span>{said}</span>{why_button(why)}</li> };
    view! { <ul class="list said-lines">{lines.into_iter().map(line).collect_view()}</ul> }.into_any()
}
