//! Entries that were set aside because they cannot be read.

use crate::book::Damage;
use crate::keep;
use crate::rooms::parts::{live, page_head, press, words};
use crate::rooms::workshop::Workshop;
use leptos::prelude::*;

/// So much of a line is shown; the file has the whole.
const SHOWN: usize = 160;

pub(super) fn page(shop: Workshop) -> AnyView {
    view! {
        {page_head("#desk", "Desk", "Entries set aside".to_owned())}
        {live(move || shop.journal(|j| match j.damaged() {
            [] => view! { <p class="lead">"Nothing is set aside: every entry of the book can be read."</p> }.into_any(),
            damaged => set_aside(shop, damaged),
        }))}
    }
    .into_any()
}

fn set_aside(shop: Workshop, damaged: &[(String, Damage)]) -> AnyView {
    let one = |(line, why): &(String, Damage)| {
        let start: String = line.chars().take(SHOWN).collect();
        let more = if start.len() < line.len() { " …" } else { "" };
        view! { <li class="damaged"><p>{why.to_string()}</p><pre>{start}{more}</pre></li> }
    };
    let said = RwSignal::new(String::new());
    let give = move || {
        let name = ["potside-set-aside-", &keep::file_day(), ".txt"].concat();
        let lines: Vec<String> =
            untrack(|| shop.journal(|j| j.damaged().iter().map(|(line, _)| line.clone()).collect()));
        said.set(if keep::download(&name, &(lines.join("\n") + "\n")) {
            format!("{name} is among your downloads.")
        } else {
            "This browser does not give out files here. Open Potside in an ordinary window, then try again."
                .to_owned()
        });
    };
    view! {
        <p class="lead">
            "These entries cannot be read. They are still stored as they are and nothing is written over them; everything else of
            the book is open. Keep them as a file: whoever knows the format may still read them."
        </p>
        <div class="actions">{press("", "Download them", give)}</div>
        <p role="status">{words(move || said.get())}</p>
        <ul class="list">{damaged.iter().map(one).collect_view()}</ul>
    }
    .into_any()
}
