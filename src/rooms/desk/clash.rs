//! What was set here and in a copy, each without knowing of the other: both, and which one stands.

use crate::book::{Clash, Difference};
use crate::dom::*;
use crate::keep;
use crate::rooms::book::device;

/// More than these are counted only.
const MOST: usize = 50;

pub(super) fn clashes(all: &[Clash]) -> View {
    if all.is_empty() {
        return ().view();
    }
    let more = all.len().saturating_sub(MOST);
    el("section")
        .class("clashes")
        .attr("aria-label", "Set in both")
        .child(el("h4").child("Set here and in the copy, each without the other"))
        .child(el("p").child(
            "Taken in, the later one stands. If the other one is right, set it again in its room afterwards.",
        ))
        .child(el("ul").class("plain").child(all.iter().take(MOST).map(one).views()))
        .child((more > 0).then(|| el("p").child(["And ", &more.to_string(), " more."].concat())))
        .view()
}

fn one(clash: &Clash) -> View {
    let about = if clash.name.is_empty() { String::new() } else { [", ", &clash.name].concat() };
    let side = |value: &Option<String>| value.clone().unwrap_or_else(|| "nothing".to_owned());
    let field = |d: &Difference| {
        let values = match d.values.as_slice() {
            [here, copy] => ["here ", &side(here), "; in the copy ", &side(copy)].concat(),
            _ => String::new(),
        };
        el("div").child(el("dt").child(d.of.clone())).child(el("dd").child(values))
    };
    let when = [
        "Here ",
        &keep::when(clash.here.at),
        " on ",
        &device(&clash.here.device),
        "; in the copy ",
        &keep::when(clash.copy.at),
        " on ",
        &device(&clash.copy.device),
        if clash.stands { ". What is here stands." } else { ". What is in the copy will stand." },
    ];
    el("li")
        .child(el("strong").child([clash.what, &about].concat()))
        .child(el("dl").class("particulars").child(clash.differs.iter().map(field).views()))
        .child(el("p").class("detail").child(when.concat()))
        .view()
}
