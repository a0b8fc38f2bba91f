//! A copy of the book as a file: given out, and opened to take in what is not here yet.

use crate::book::{Act, Copy, CopyError, Earlier, Prospect, Seal, backup, read_copy};
use crate::dom::*;
use crate::keep::{self, Which};
use crate::rooms::parts::{caution, choice, chooser, confirm_sheet, live, press, refusal, words};
use crate::rooms::workshop::Workshop;
use leptos::task::spawn_local;

/// What was opened: a copy to look at, or why it cannot be.
type Opened = Option<Result<Copy, CopyError>>;

pub(super) fn body(shop: Workshop) -> View {
    if shop.which() == Which::Demo {
        return el("p")
            .child("This is the demo's book. Copies are made of your own: leave the demo first.")
            .view();
    }
    group![give(shop), open(shop), earlier(shop)]
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
                    let text = backup(&lines, &keep::device(), keep::now());
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
            "The copy is one JSON file that any text editor shows: an entry a line, each with its \
own checksum, and one over the whole. Everything is in it but what this device prefers.",
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
    let look = move |text: Result<String, CopyError>| {
        taken.set(None);
        opened.set(Some(text.and_then(|t| untrack(|| shop.journal(|j| read_copy(&t, j))))));
    };
    group![
        el("h3").child("Open a copy"),
        el("p").child(
            "First you see what it would bring. Then you take in what is not here yet, or put it in \
the place of this book; either can be taken back.",
        ),
        chooser(".json,application/json,text/plain", "Choose a copy", look),
        el("div")
            .attr("role", "status")
            .child(live(move || {
                opened.with(|o| match o {
                    None => ().view(),
                    Some(Err(why)) => refusal("Not opened: ", why.to_string()),
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

/// What the copy would bring, and the buttons that take it in or put it in the place of the book.
fn found(shop: Workshop, copy: &Copy, opened: Value<Opened>, taken: Value<Option<usize>>) -> View {
    let fresh = copy.fresh.len();
    let replacing = Value::new(false);
    let take = move |replace: Option<Act>| {
        if let Some(Ok(copy)) = opened.get_untracked() {
            let fresh = copy.fresh.len();
            if (fresh > 0 && !shop.take_in(copy.fresh)) || replace.is_some_and(|act| !shop.act(act)) {
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
    let replace = copy.replace.clone();
    group![
        el("p").class("found").child(copy.say()),
        copy.made.map(|at| el("p").child(["It was made ", &keep::when(at), "."].concat())),
        (copy.seal == Seal::Broken).then(|| caution(
            "this file was changed or cut off after it was written. What is whole in it can be taken \
in; it cannot take the place of the book."
        )),
        left_out,
        prospects(&copy.prospects),
        el("div")
            .class("actions")
            .child((fresh > 0).then(|| press("main", "Take them in", move || take(None))))
            .child(
                replace.is_some().then(|| press("", "Replace the book with it", move || replacing.set(true)))
            )
            .child(press("", "Leave it", move || opened.set(None))),
        confirm_sheet(
            "Replace the book with this copy?",
            "What is here and not in the copy is set aside as an earlier book: it no longer counts, \
and nothing of it is deleted. It can be brought back here at any time.",
            "Replace it",
            replacing,
            move || take(replace.clone()),
        )
    ]
}

/// What the book would hold: now, with the copy taken in, with the copy in its place.
fn prospects(all: &[Prospect]) -> View {
    let number = |n: usize| el("td").child(n.to_string());
    let row = |p: &Prospect| {
        el("tr")
            .child(el("th").attr("scope", "row").child(p.of))
            .child(number(p.now))
            .child(number(p.merged))
            .child(p.replaced.map(number))
    };
    let head = |words: &'static str| el("th").attr("scope", "col").child(words);
    el("table")
        .class("prospects")
        .child(el("caption").child("Tried out beforehand: what the book would hold"))
        .child(
            el("tr")
                .child(el("td"))
                .child(head("Now"))
                .child(head("Taken in"))
                .child(all.iter().any(|p| p.replaced.is_some()).then(|| head("Replaced"))),
        )
        .child(all.iter().map(row).views())
        .view()
}

/// Books that were replaced, each with the way back.
fn earlier(shop: Workshop) -> View {
    let all = Derived::new(move || shop.journal(crate::book::Journal::earlier));
    let one = move |book: &Earlier| {
        let made = book.made.map(|at| [" by the copy of ", &keep::when(at)].concat()).unwrap_or_default();
        let entries =
            if book.entries == 1 { "1 entry".to_owned() } else { format!("{} entries", book.entries) };
        let words = ["Replaced ", &keep::when(book.at), &made, ". ", &entries, " set aside."].concat();
        let entry = book.entry.clone();
        let back = move || {
            shop.act(Act::Undo { entry: entry.clone() });
        };
        el("li").class("row").child(el("span").child(words)).child(press("", "Bring it back", back))
    };
    live(move || {
        all.with(|all| {
            if all.is_empty() {
                return ().view();
            }
            group![el("h3").child("Earlier books"), el("ul").class("list").child(all.iter().map(one).views())]
        })
    })
}
