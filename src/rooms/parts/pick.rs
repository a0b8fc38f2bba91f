//! One of many: the browser's own list, which opens large on a tablet.

use crate::rooms::workshop::Workshop;
use leptos::prelude::*;

/// What can be picked: a key and the words for it.
pub type Pick = (String, String);

/// `value` is the key of what is picked. A key that is not offered shows as nothing picked.
pub fn pick(
    label: impl Into<String>,
    value: RwSignal<String>,
    offers: impl Fn() -> Vec<Pick> + Send + Sync + 'static,
) -> AnyView {
    list(label.into(), value, Memo::new(move |_| offers()))
}

fn list(label: String, value: RwSignal<String>, offers: Memo<Vec<Pick>>) -> AnyView {
    let id = Workshop::here().fresh_dom_id();
    let unknown = move || offers.with(|o| !value.with(|v| o.iter().any(|(key, _)| key == v)));
    let option = move |(key, words): Pick| {
        let this = key.clone();
        view! { <option value=key prop:selected=move || value.with(|v| *v == this)>{words}</option> }
    };
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            <select id=id on:change=move |e| value.set(event_target_value(&e))>
                {move || unknown().then(|| view! { <option value="" prop:selected=true disabled>"Choose …"</option> })}
                {move || offers.get().into_iter().map(option).collect_view()}
            </select>
        </div>
    }
    .into_any()
}
