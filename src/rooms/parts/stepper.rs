//! A whole number with a button to each side: counted up and down by tapping, or typed.

use super::field::Typed;
use crate::rooms::workshop::Workshop;
use leptos::prelude::*;

/// `noun` is what is counted, in the plural: the buttons are called "Fewer vessels" and "More vessels".
pub fn stepper(label: impl Into<String>, noun: &'static str, typed: Typed) -> AnyView {
    let id = Workshop::here().fresh_dom_id();
    let said = format!("{id}-said");
    let wrong = move || typed.count().err().map(|e| e.to_string());
    let step = move |up: bool| {
        let now = typed.count().unwrap_or(0);
        let next = if up { now.saturating_add(1) } else { now.saturating_sub(1).max(1) };
        typed.text.set(next.to_string());
    };
    view! {
        <div class="field stepper" class:wrong=move || wrong().is_some()>
            <label for=id.clone()>{label.into()}</label>
            <div class="stepped">
                <button type="button" aria-label=format!("Fewer {noun}") on:click=move |_| step(false)>"−"</button>
                <input
                    id=id
                    type="text"
                    inputmode="numeric"
                    autocomplete="off"
                    enterkeyhint="done"
                    aria-describedby=said.clone()
                    aria-invalid=move || wrong().is_some().then_some("true")
                    prop:value=typed.text
                    on:input=move |e| typed.text.set(event_target_value(&e))
                />
                <button type="button" aria-label=format!("More {noun}") on:click=move |_| step(true)>"+"</button>
            </div>
            <p class="said" id=said aria-live="polite">{wrong}</p>
        </div>
    }
    .into_any()
}
