//! "Why?" beside a number: the relation, the values put in, the rounding, the source.

use super::sheet::sheet;
use crate::dom::*;
use crate::quantity::Why;
use crate::rooms::workshop::Workshop;

/// The button that asks.
pub fn why_button(why: Why) -> View {
    why_asked(&why.what.clone(), move || Some(why.clone()))
}

/// The same where how `what` came about is found only once it is asked.
pub fn why_asked(what: &str, why: impl Fn() -> Option<Why> + 'static) -> View {
    el("button")
        .attr("type", "button")
        .class("why")
        .attr("aria-label", ["Why? ", what].concat())
        .on("click", move |_| {
            if let Some(why) = why() {
                Workshop::here().ask_why(why);
            }
        })
        .child("why?")
        .view()
}

/// The one sheet that answers, mounted once.
pub fn why_sheet() -> View {
    let shop = Workshop::here();
    let open = Value::new(false);
    let asked = shop.why();
    watch(move || {
        if asked.with(Option::is_some) {
            open.set(true);
        }
    });
    watch(move || {
        if !open.get() {
            asked.set(None);
        }
    });
    sheet(|| "How this came about".to_owned(), open, move || asked.with(|w| w.as_ref().map(answer)).view())
}

fn answer(why: &Why) -> View {
    let values = why
        .values
        .iter()
        .map(|v| {
            let deeper = v.why.as_deref().map(|w| {
                el("details").child(el("summary").child(format!("why {}?", v.name))).child(answer(w))
            });
            el("li")
                .child(el("span").class("name").child(v.name.clone()))
                .child(" ")
                .child(el("span").class("value").child(v.shown.clone()))
                .child(deeper)
        })
        .views();
    let line = |label: &'static str, text: &str| {
        (!text.is_empty())
            .then(|| el("p").class("detail").child(el("strong").child(label)).child(text.to_owned()))
    };
    el("section")
        .class("answer")
        .child(el("h3").child(why.what.clone()))
        .child(el("p").class("relation").child(why.relation.clone()))
        .child(el("ul").child(values))
        .child(el("p").class("result").child("= ").child(why.result.clone()))
        .child(line("Rounded: ", &why.rounding))
        .child(line("From: ", &why.source))
        .view()
}
