//! A file the person chooses, read as text.

use crate::book::CopyError;
use crate::dom::*;
use crate::keep;
use crate::rooms::workshop::Workshop;
use leptos::task::spawn_local;
use web_sys::HtmlInputElement;

/// A button that opens the browser's own chooser; `accept` is what it offers. `then` gets the text, or why it cannot be
/// read.
pub fn chooser(
    accept: &'static str,
    words: &'static str,
    then: impl Fn(Result<String, CopyError>) + 'static,
) -> View {
    over(accept, words, Callback::new(then))
}

/// Not generic, so that the page carries it once.
fn over(accept: &'static str, words: &'static str, then: Callback<Result<String, CopyError>>) -> View {
    let read = move |input: HtmlInputElement| {
        spawn_local(async move {
            if let Some(text) = keep::chosen(&input).await {
                then.run(text);
            }
        });
    };
    file_input(accept, words, Callback::new(read))
}

/// A button that opens the browser's own chooser; `then` gets the field with what was chosen.
pub fn file_input(accept: &'static str, words: &'static str, then: Callback<HtmlInputElement>) -> View {
    let id = Workshop::here().fresh_dom_id();
    let choose = move |e| {
        if let Some(input) = target::<HtmlInputElement>(&e) {
            then.run(input);
        }
    };
    el("div")
        .class("actions")
        .child(
            el("input")
                .attr("type", "file")
                .class("file")
                .attr("id", id.clone())
                .attr("accept", accept)
                .on("change", choose),
        )
        .child(el("label").class("button").attr("for", id).child(words))
        .view()
}

/// What is said of a file that brings nothing.
pub fn refusal(how: &'static str, why: String) -> View {
    el("p").class("note caution").child(el("strong").child(how)).child(why).view()
}
