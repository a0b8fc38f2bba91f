//! Versions made beside each other: what differs, and the choice between them.

use super::when;
use crate::book::{Fork, Id, Tip};
use crate::dom::*;
use crate::keep;
use crate::rooms::parts::{live, press};
use crate::rooms::workshop::Workshop;

/// A device as it is called on this one.
pub(in crate::rooms) fn device(name: &str) -> String {
    if name == keep::device() { "this device".to_owned() } else { ["device ", name].concat() }
}

/// The choice, while there is one to be made.
pub(super) fn fork(shop: Workshop, id: &Id) -> View {
    let id = id.clone();
    let found = Derived::new(move || shop.journal(|j| j.fork(&id)));
    live(move || found.with(|f| f.as_ref().map_or_else(|| ().view(), |fork| choice(shop, fork))))
}

/// `Changed on two devices since 3 Dec 2025, 14:32`.
fn title(fork: &Fork) -> String {
    let one = fork.tips.iter().all(|tip| Some(&tip.device) == fork.tips.first().map(|t| &t.device));
    let since = fork.since.map(|at| [" since ", &when(at)].concat()).unwrap_or_default();
    let places = match (one, fork.tips.len()) {
        (true, _) => "Changed in two windows",
        (false, 2) => "Changed on two devices",
        (false, _) => "Changed on several devices",
    };
    [places, &since].concat()
}

fn choice(shop: Workshop, fork: &Fork) -> View {
    let last = fork.tips.len().saturating_sub(1);
    let one = |(at, tip): (usize, &Tip)| {
        let act = fork.choose(&tip.entry);
        let keep = move || {
            shop.act(act.clone());
        };
        let field = |d: &crate::book::Difference| {
            let value = d.values.get(at).cloned().flatten().unwrap_or_else(|| "nothing".to_owned());
            el("div").child(el("dt").child(d.of.clone())).child(el("dd").child(value))
        };
        el("li")
            .child(el("h3").child([&when(tip.at), " on ", &device(&tip.device)].concat()))
            .child((at == last).then(|| el("p").class("muted").child("Counts as today’s for now.")))
            .child(el("dl").class("particulars").child(fork.differs.iter().map(field).views()))
            .child(press("", "Keep this one", keep))
    };
    el("section")
        .class("fork")
        .attr("aria-labelledby", "fork-title")
        .child(el("h2").attr("id", "fork-title").child(title(fork)))
        .child(el("p").child(
            "Both versions are kept. This is what differs; choose the one that counts. The choice \
can be taken back under “What was done to it”.",
        ))
        .child(el("ul").class("tips").child(fork.tips.iter().enumerate().map(one).views()))
        .view()
}
