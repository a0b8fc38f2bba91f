//! A copy of the book as a file: given out, and opened to take in what is not here yet.

use crate::book::{Copy, CopyError, read_copy};
use crate::dom::*;
use crate::keep::{self, Which};
use crate::rooms::parts::{choice, live, press, words};
use crate::rooms::workshop::Workshop;
use leptos::task::spawn_local;
use web_sys::HtmlInputElement;

/// What was opened: a copy to look at, or why it cannot be.
type Opened = Option<Result<Copy, CopyError>>;

pub(super) fn body(shop: Workshop) -> View {
    if shop.which() == Which::Demo {
        return el("p")
            .child("This is the demo's book. Copies are made of your own: leave the demo first.")
            .view();
    }
    group![give(shop), open(shop)]
}

fn give(shop: Workshop) -> View {
    let said = Value::new(String::new());
    let give = move || {
        let which = untrack(|| shop.which());
        spawn_local(async move {
            let name = ["potside-book-", &keep::file_day(), ".json"].concat();
            said.set(match keep::load(which).await {
                Ok(lines) => {
                    let count = lines.len();
                    let text = lines.join("\n") + "\n";
                    if keep::download(&name, &text) {
                        shop.change_prefs(|p| p.copied = keep::now());
                        format!("{name} with {count} entries is among your downloads. Put it where this device is not.")
                    } else {
                        keep::NO_FILES.to_owned()
                    }
                }
                Err(why) => why.to_string(),
            });
        });
    };
    group![
        el("h3").child("A copy to keep"),
        el("p").child(
            "The copy is a plain text file: one entry a line, as it is stored, each with \
its own checksum. Everything is in it but what this device prefers.",
        ),
        el("div").class("actions").child(press("", "Download a copy", give)),
        el("p").attr("role", "status").child(words(move || said.get())),
        remind(shop)
    ]
}

/// After how long a copy is asked for; kept as soon as it is chosen.
fn remind(shop: Workshop) -> View {
    let (days, pours) = untrack(|| shop.prefs().with(|p| (p.remind_days, p.remind_pours)));
    let (days, pours) = (Value::new(days), Value::new(pours));
    watch(move || {
        let (days, pours) = (days.get(), pours.get());
        shop.change_prefs(|p| (p.remind_days, p.remind_pours) = (days, pours));
    });
    el("div")
        .class("fields")
        .child(choice("Ask for a copy after days", days, &[(0, "Never"), (7, "7"), (14, "14"), (30, "30")]))
        .child(choice("or after pours", pours, &[(0, "Never"), (5, "5"), (10, "10"), (25, "25")]))
        .view()
}

fn open(shop: Workshop) -> View {
    let opened = Value::new(Opened::None);
    let taken = Value::new(None::<usize>);
    let id = shop.fresh_dom_id();
    let choose = move |e| {
        let Some(input) = target::<HtmlInputElement>(&e) else { return };
        spawn_local(async move {
            let Some(text) = keep::chosen(&input).await else { return };
            taken.set(None);
            opened.set(Some(text.and_then(|t| untrack(|| shop.journal(|j| read_copy(&t, j))))));
        });
    };
    group![
        el("h3").child("Open a copy"),
        el("p").child(
            "Nothing here is replaced: entries that are not here yet are added, those that \
are here stay as they are.",
        ),
        el("div")
            .class("actions")
            .child(
                el("input")
                    .attr("type", "file")
                    .class("file")
                    .attr("id", id.clone())
                    .attr("accept", ".json,application/json,text/plain")
                    .on("change", choose),
            )
            .child(el("label").class("button").attr("for", id).child("Choose a copy")),
        el("div")
            .attr("role", "status")
            .child(live(move || {
                opened.with(|o| match o {
                    None => ().view(),
                    Some(Err(why)) => el("p")
                        .class("note caution")
                        .child(el("strong").child("Not opened: "))
                        .child(why.to_string())
                        .view(),
                    Some(Ok(copy)) => found(shop, copy, opened, taken),
                })
            }))
            .child(words(move || match taken.get() {
                None => String::new(),
                Some(1) => "1 entry was taken in.".to_owned(),
                Some(n) => format!("{n} entries were taken in."),
            }))
    ]
}

/// What the copy would bring, and the button that takes it in.
fn found(shop: Workshop, copy: &Copy, opened: Value<Opened>, taken: Value<Option<usize>>) -> View {
    let fresh = copy.fresh.len();
    let take = move || {
        if let Some(Ok(copy)) = opened.get_untracked() {
            let fresh = copy.fresh.len();
            if !shop.take_in(copy.fresh) {
                return;
            }
            taken.set(Some(fresh));
        }
        opened.set(None);
    };
    let left_out = copy.damaged.iter().map(|(line, why)| el("li").child(format!("Line {line}: {why}")));
    let left_out = (!copy.damaged.is_empty()).then(|| {
        el("details")
            .child(el("summary").child(format!("Left out: {}", copy.damaged.len())))
            .child(el("ul").class("left-out").child(left_out.views()))
    });
    group![
        el("p").class("found").child(copy.say()),
        left_out,
        el("div")
            .class("actions")
            .child((fresh > 0).then(|| press("main", "Take them in", take)))
            .child(press("", "Leave it", move || opened.set(None)))
    ]
}
