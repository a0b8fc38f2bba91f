//! "Why?" beside a number: the relation, the values put in, the rounding, the source.

use super::sheet::sheet;
use crate::quantity::Why;
use crate::rooms::workshop::Workshop;
use leptos::prelude::*;

/// The button that asks.
pub fn why_button(why: Why) -> AnyView {
    let what = why.what.clone();
    view! {
        <button
            type="button"
            class="why"
            aria-label=format!("Why? {what}")
            on:click=move |_| Workshop::here().ask_why(why.clone())
        >
            "why?"
        </button>
    }
    .into_any()
}

/// The one sheet that answers, mounted once.
#[component]
pub fn WhySheet() -> impl IntoView {
    let shop = Workshop::here();
    let open = RwSignal::new(false);
    let asked = shop.why();
    Effect::new(move |_| {
        if asked.with(Option::is_some) {
            open.set(true);
        }
    });
    Effect::new(move |_| {
        if !open.get() {
            asked.set(None);
        }
    });
    sheet(
        || "How this came about".to_owned(),
        open,
        move || asked.with(|w| w.as_ref().map(answer)).into_any(),
    )
}

fn answer(why: &Why) -> AnyView {
    let values = why
        .values
        .iter()
        .map(|v| {
            let deeper = v.why.as_deref().map(|w| {
                view! { <details><summary>{format!("why {}?", v.name)}</summary>{answer(w)}</details> }
            });
            view! {
                <li><span class="name">{v.name.clone()}</span>" "<span class="value">{v.shown.clone()}</span>{deeper}</li>
            }
        })
        .collect_view();
    let line = |label: &'static str, text: &str| {
        (!text.is_empty()).then(|| view! { <p class="detail"><strong>{label}</strong>{text.to_owned()}</p> })
    };
    view! {
        <section class="answer">
            <h3>{why.what.clone()}</h3>
            <p class="relation">{why.relation.clone()}</p>
            <ul>{values}</ul>
            <p class="result">"= "{why.result.clone()}</p>
            {line("Rounded: ", &why.rounding)}
            {line("From: ", &why.source)}
        </section>
    }
    .into_any()
}
