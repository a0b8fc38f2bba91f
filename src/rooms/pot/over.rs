//! Too much went in: the two honest ways, each with what it comes to.

use super::dose::dose;
use super::pouring::Pouring;
use crate::dom::*;
use crate::pot::{Added, Pending, Way};
use crate::quantity::Share;
use crate::rooms::parts::{mass, notes, why_button};

pub(super) fn over(p: Pouring) -> View {
    (move || p.pending.with(|o| o.as_ref().map(|o| both_ways(p, o)))).view()
}

fn both_ways(p: Pouring, over: &Pending) -> View {
    let step = over.step;
    let [asked, weighed, too_much] = over.said.each_ref().map(String::as_str);
    group![
        el("h1").attr("id", "step-title").attr("data-step", "over").child(format!("Too much {}", over.name)),
        el("p").class("wanted range").child(el("span").class("figure").child(["+", too_much].concat())),
        el("p").child(
            [
                weighed,
                " went in, ",
                asked,
                " was asked. What is in the pot cannot be taken out.",
                if over.no_way_back.is_none() { " There are two ways:" } else { "" }
            ]
            .concat(),
        ),
        notes(over.doubt.as_slice()),
        el("div")
            .class("ways")
            .child(
                el("section")
                    .child(el("h2").child("Keep it"))
                    .child(
                        el("p")
                            .child("The rest goes in as planned. The pot then holds what stands below. ")
                            .child(why_button(over.kept_why.clone())),
                    )
                    .child(notes(&over.keep_notes))
                    .child(
                        el("button")
                            .attr("type", "button")
                            .class("big")
                            .on("click", move |_| p.mend(step, Way::Keep))
                            .child("Keep it"),
                    )
                    .child(shares(over, &over.kept.of_wax, &over.kept.of_whole, p)),
            )
            .child(restoring(p, over))
    ]
}

fn shares(over: &Pending, of_wax: &[Share], of_whole: &[Share], p: Pouring) -> View {
    let voice = p.shop.voice();
    let row = |((line, wax), whole): ((&crate::pot::Mended, &Share), &Share)| {
        el("tr")
            .child(el("th").attr("scope", "row").child(line.name.clone()))
            .child(el("td").class("number").child(voice.share(*wax)))
            .child(el("td").class("number").child(voice.share(*whole)))
    };
    el("table")
        .child(
            el("thead").child(
                el("tr")
                    .child(el("th").attr("scope", "col").child("Part"))
                    .child(el("th").attr("scope", "col").class("number").child("of wax"))
                    .child(el("th").attr("scope", "col").class("number").child("of whole")),
            ),
        )
        .child(el("tbody").child(over.lines.iter().zip(of_wax).zip(of_whole).map(row).views()))
        .view()
}

fn restoring(p: Pouring, over: &Pending) -> View {
    let step = over.step;
    let Some(restored) = &over.restored else {
        return el("section")
            .child(el("h2").child("Restore it"))
            .child(el("p").child(over.no_way_back.clone()))
            .view();
    };
    let row = |add: &Added| {
        let words = if add.more { "more" } else { "instead of what was planned" };
        el("li").child(
            el("span").class("row").child(el("span").child(add.name.clone())).child(
                el("span")
                    .child(dose(add.said.clone()))
                    .child(" ")
                    .child(el("span").class("detail").child(words)),
            ),
        )
    };
    let adds = over.adds.iter().map(row).views();
    el("section")
        .child(el("h2").child("Restore it"))
        .child(
            el("p")
                .child("Of the others is added until every share is right again.")
                .child(why_button(restored.why.clone())),
        )
        .child(notes(&over.restore_notes))
        .child(
            el("button")
                .attr("type", "button")
                .class("big")
                .on("click", move |_| p.mend(step, Way::Restore))
                .child("Restore it"),
        )
        .child(el("ul").class("list").child(adds))
        .child(el("p").class("total").child("Then in the pot: ").child(mass(restored.total, None)))
        .view()
}
