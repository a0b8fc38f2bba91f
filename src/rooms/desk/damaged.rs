//! Entries that were set aside because they cannot be read.

use crate::book::Damage;
use crate::dom::*;
use crate::keep;
use crate::rooms::parts::{live, page_head, press, words};
use crate::rooms::workshop::Workshop;

/// So much of a line is shown; the file has the whole.
const SHOWN: usize = 160;

pub(super) fn page(shop: Workshop) -> View {
    group![
        page_head("#desk", "Desk", "Entries set aside".to_owned()),
        live(move || {
            shop.journal(|j| match j.damaged() {
                [] => el("p")
                    .class("lead")
                    .child("Nothing is set aside: every entry of the book can be read.")
                    .view(),
                damaged => set_aside(shop, damaged),
            })
        })
    ]
}

fn set_aside(shop: Workshop, damaged: &[(String, Damage)]) -> View {
    let one = |(line, why): &(String, Damage)| {
        let start: String = line.chars().take(SHOWN).collect();
        let more = if start.len() < line.len() { " …" } else { "" };
        el("li")
            .class("damaged")
            .child(el("p").child(why.to_string()))
            .child(el("pre").child(start).child(more))
    };
    let said = Value::new(String::new());
    let give = move || {
        let name = ["potside-set-aside-", &keep::file_day(), ".txt"].concat();
        let lines: Vec<String> =
            untrack(|| shop.journal(|j| j.damaged().iter().map(|(line, _)| line.clone()).collect()));
        said.set(if keep::download(&name, &(lines.join("\n") + "\n")) {
            format!("{name} is among your downloads.")
        } else {
            keep::NO_FILES.to_owned()
        });
    };
    group![
        el("p").class("lead").child(
            "These entries cannot be read. They are still stored as they are and nothing is \
written over them; everything else of the book is open. Keep them as a file: \
whoever knows the format may still read them.",
        ),
        el("div").class("actions").child(press("", "Download them", give)),
        el("p").attr("role", "status").child(words(move || said.get())),
        el("ul").class("list").child(damaged.iter().map(one).views())
    ]
}
