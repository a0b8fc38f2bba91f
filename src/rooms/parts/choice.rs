//! One of a few: large buttons side by side, a radio group to the keyboard and the screen reader.

use crate::rooms::workshop::Workshop;
use leptos::prelude::*;

/// What can be chosen: a value and the words for it.
pub type Choice<T> = (T, &'static str);

pub fn choice<T>(label: &'static str, value: RwSignal<T>, options: &[Choice<T>]) -> AnyView
where
    T: Copy + PartialEq + Send + Sync + 'static,
{
    let name = Workshop::here().fresh_dom_id();
    let buttons = options
        .iter()
        .map(|&(this, words)| {
            let id = Workshop::here().fresh_dom_id();
            one(
                name.clone(),
                id,
                words,
                Signal::derive(move || value.get() == this),
                Callback::new(move |()| value.set(this)),
            )
        })
        .collect_view();
    view! {
        <fieldset class="choice">
            <legend>{label}</legend>
            <div class="options">{buttons}</div>
        </fieldset>
    }
    .into_any()
}

fn one(name: String, id: String, words: &'static str, on: Signal<bool>, pick: Callback<()>) -> AnyView {
    view! {
        <input type="radio" name=name id=id.clone() prop:checked=on on:change=move |_| pick.run(()) />
        <label for=id>{words}</label>
    }
    .into_any()
}
