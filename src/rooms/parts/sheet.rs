//! A sheet over the room, closed back to where one was. The browser's own dialog keeps the focus in it.

use super::{live, press, words};
use crate::dom::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlDialogElement;

/// Shows `body` over the room while `open` is true. Escape, the button and `open` itself close it.
pub fn sheet(
    title: impl Fn() -> String + 'static,
    open: Value<bool>,
    body: impl Fn() -> View + 'static,
) -> View {
    over(words(title), open, live(move || if open.get() { body() } else { ().view() }))
}

fn over(title: View, open: Value<bool>, body: View) -> View {
    let id = crate::rooms::workshop::Workshop::here().fresh_dom_id();
    let (dialog, heading) = (format!("{id}-sheet"), id.clone());
    let named = dialog.clone();
    watch(move || {
        let open = open.get();
        let Some(dialog) = crate::keep::element(&named).and_then(|d| d.dyn_into::<HtmlDialogElement>().ok())
        else {
            return;
        };
        if open {
            if !dialog.open() && dialog.show_modal().is_err() {
                dialog.set_open(true);
            }
        } else if dialog.open() {
            dialog.close();
        }
    });
    el("dialog")
        .class("sheet")
        .attr("id", dialog)
        .attr("aria-labelledby", heading)
        .on("close", move |_| open.set(false))
        .child(
            el("header").child(el("h2").attr("id", id).child(title)).child(
                el("button")
                    .attr("type", "button")
                    .class("quiet")
                    .on("click", move |_| open.set(false))
                    .child("Close"),
            ),
        )
        .child(body)
        .view()
}

/// Asks before something that takes effect widely.
pub fn confirm_sheet(
    title: &'static str,
    says: &'static str,
    yes: &'static str,
    open: Value<bool>,
    then: impl Fn() + Clone + 'static,
) -> View {
    sheet(
        move || title.to_owned(),
        open,
        move || {
            let then = then.clone();
            group![
                el("p").child(says),
                el("div")
                    .class("actions")
                    .child(press("main", yes, move || {
                        open.set(false);
                        then();
                    }))
                    .child(
                        el("button")
                            .attr("type", "button")
                            .on("click", move |_| open.set(false))
                            .child("No, go back"),
                    )
            ]
        },
    )
}
