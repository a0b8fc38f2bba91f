//! Labels: the sheets of the workshop, what stands on one, and printing them true to size.

mod draw;
mod form;
mod net;
mod print;
mod told;

pub(super) use draw::pictogram;
pub(super) use form::page as form;
pub(super) use print::page as print;

use crate::book::Kept;
use crate::desk::label::{Design, Part};
use crate::dom::*;
use crate::rooms::parts::{away, live, retired};
use crate::rooms::workshop::Workshop;

/// The part of the Desk: the labels there are.
pub(super) fn body(shop: Workshop) -> View {
    group![
        el("p").class("lead").child(
            "A label is a sheet you describe once, and what stands on it: a front with name and net contents, an underside \
with fire safety and hazards. It prints true to size.",
        ),
        live(move || list(shop)),
        live(move || away(shop, shop.state(|s| retired(&s.labels, |d| &d.name)))),
        el("p").class("actions").child(el("a").class("button").attr("href", "#desk/label/new").child("Add a label"))
    ]
}

fn list(shop: Workshop) -> View {
    let voice = shop.voice();
    let one = |kept: &Kept<Design>| {
        let design = kept.body()?;
        let sheet = &design.sheet;
        let size = [&voice.typed(sheet.width), " × ", &voice.typed(sheet.height)].concat();
        let parts: Vec<&str> =
            Part::ALL.into_iter().filter(|p| design.parts.contains(p)).map(Part::name).collect();
        let link = el("a")
            .attr("href", ["#desk/print/", &kept.id.0].concat())
            .child(el("span").class("title").child(design.name.clone()))
            .child(el("span").class("detail").child([&size, ": ", &parts.join(", ")].concat()));
        Some(el("li").child(link).view())
    };
    let all: Vec<View> = shop.state(|s| s.labels_shown().into_iter().filter_map(one).collect());
    if all.is_empty() {
        return el("p").class("muted").child("No label yet.").view();
    }
    el("ul").class("list").child(all).view()
}
