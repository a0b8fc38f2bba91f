//! A whole number with a button to each side: counted up and down by tapping, or typed.

use super::field::Typed;
use super::unkept;
use crate::dom::*;
use crate::rooms::workshop::Workshop;
use web_sys::Event;

/// `noun` is what is counted, in the plural: the buttons are called "Fewer vessels" and "More vessels".
pub fn stepper(label: impl Into<String>, noun: &'static str, typed: Typed) -> View {
    let id = Workshop::here().fresh_dom_id();
    let said = format!("{id}-said");
    let wrong = Derived::new(move || typed.count().err().map(|e| e.to_string()));
    let step = move |up: bool, event: Event| {
        let now = typed.count().unwrap_or(0);
        let next = if up { now.saturating_add(1) } else { now.saturating_sub(1).max(1) };
        typed.text.set(next.to_string());
        unkept::changed(&event);
    };
    el("div")
        .class("field stepper")
        .flag("wrong", move || wrong.with(Option::is_some))
        .child(el("label").attr("for", id.clone()).child(label.into()))
        .child(
            el("div")
                .class("stepped")
                .child(
                    el("button")
                        .attr("type", "button")
                        .attr("aria-label", format!("Fewer {noun}"))
                        .on("click", move |e| step(false, e))
                        .child("−"),
                )
                .child(
                    el("div").child(
                        el("input")
                            .attr("id", id)
                            .attr("type", "text")
                            .attr("inputmode", "numeric")
                            .attr("autocomplete", "off")
                            .attr("enterkeyhint", "done")
                            .attr("aria-describedby", said.clone())
                            .attr("aria-invalid", move || wrong.with(Option::is_some).then_some("true"))
                            .prop("value", typed.text)
                            .on("input", move |e| typed.text.set(text_of(&e))),
                    ),
                )
                .child(
                    el("button")
                        .attr("type", "button")
                        .attr("aria-label", format!("More {noun}"))
                        .on("click", move |e| step(true, e))
                        .child("+"),
                ),
        )
        .child(el("p").class("said").attr("id", said).attr("aria-live", "polite").child(move || wrong.get()))
        .view()
}
