//! One of many: the browser's own list, which opens large on a tablet.

use crate::dom::*;
use crate::rooms::workshop::Workshop;

/// What can be picked: a key and the words for it.
pub type Pick = (String, String);

/// `value` is the key of what is picked. A key that is not offered shows as nothing picked.
pub fn pick(
    label: impl Into<String>,
    value: Value<String>,
    offers: impl Fn() -> Vec<Pick> + 'static,
) -> View {
    list(label.into(), value, Derived::new(offers))
}

fn list(label: String, value: Value<String>, offers: Derived<Vec<Pick>>) -> View {
    let id = Workshop::here().fresh_dom_id();
    let unknown = move || offers.with(|o| !value.with(|v| o.iter().any(|(key, _)| key == v)));
    let option = move |(key, words): Pick| {
        let this = key.clone();
        el("option").attr("value", key).prop("selected", move || value.with(|v| *v == this)).child(words)
    };
    el("div")
        .class("field")
        .child(el("label").attr("for", id.clone()).child(label))
        .child(
            el("select")
                .attr("id", id)
                .on("change", move |e| value.set(text_of(&e)))
                .child(move || {
                    unknown().then(|| {
                        el("option")
                            .attr("value", "")
                            .prop("selected", true)
                            .attr("disabled", true)
                            .child("Choose …")
                    })
                })
                .child(move || offers.get().into_iter().map(option).views()),
        )
        .view()
}
