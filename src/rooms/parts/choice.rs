//! One of a few: large buttons side by side, a radio group to the keyboard and the screen reader.

use crate::dom::*;
use crate::rooms::workshop::Workshop;

/// What can be chosen: a value and the words for it.
pub type Choice<T> = (T, &'static str);

pub fn choice<T>(label: &'static str, value: Value<T>, options: &[Choice<T>]) -> View
where
    T: Copy + PartialEq + 'static,
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
                Derived::new(move || value.get() == this),
                Callback::new(move |()| value.set(this)),
            )
        })
        .views();
    el("fieldset")
        .class("choice")
        .child(el("legend").child(label))
        .child(el("div").class("options").child(buttons))
        .view()
}

fn one(name: String, id: String, words: &'static str, on: Derived<bool>, pick: Callback<()>) -> View {
    group![
        el("input")
            .attr("type", "radio")
            .attr("name", name)
            .attr("id", id.clone())
            .prop("checked", on)
            .on("change", move |_| pick.run(())),
        el("label").attr("for", id).child(words)
    ]
}
