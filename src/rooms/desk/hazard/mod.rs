//! Hazards: what the safety data of each fragrance says, and what it makes of a candle.

mod form;
mod result;

pub(super) use form::page as form;
pub(super) use result::page as result;

use crate::book::Kept;
use crate::desk::hazard::SafetySheet;
use crate::dom::*;
use crate::rooms::parts::{away, live, retired};
use crate::rooms::workshop::Workshop;

/// The part of the Desk: what is typed in, and the ways on.
pub(super) fn body(shop: Workshop) -> View {
    group![
        el("p").class("lead").child(
            "Type or paste section 3 of each fragrance's safety data sheet once. It is carried through the share in your \
formula to the candle: which pictograms, which words, and why.",
        ),
        live(move || list(shop)),
        live(move || away(shop, shop.state(|s| retired(&s.safety, |s| &s.ingredient)))),
        el("p")
            .class("actions")
            .child(el("a").class("button").attr("href", "#desk/safety/new").child("Type in a sheet"))
            .child(el("a").class("button").attr("href", "#desk/hazards").child("Hazards of a candle"))
    ]
}

fn list(shop: Workshop) -> View {
    let one = |kept: &Kept<SafetySheet>| {
        let sheet = kept.body()?;
        let (read, errors) = sheet.read();
        let mut detail = [&read.len().to_string(), " substances"].concat();
        if !errors.is_empty() {
            detail = [&detail, ", ", &errors.len().to_string(), " lines not read"].concat();
        }
        if !sheet.dated.is_empty() {
            detail = [&detail, ", sheet of ", &sheet.dated].concat();
        }
        let title = sheet.ingredient.clone();
        let link = el("a")
            .attr("href", ["#desk/safety/", &kept.id.0].concat())
            .child(el("span").class("title").child(title))
            .child(el("span").class("detail").child(detail));
        Some(el("li").child(link).view())
    };
    let all: Vec<View> = shop.state(|s| s.safety_shown().into_iter().filter_map(one).collect());
    if all.is_empty() {
        return el("p").class("muted").child("No safety data sheet yet.").view();
    }
    el("ul").class("list").child(all).view()
}
