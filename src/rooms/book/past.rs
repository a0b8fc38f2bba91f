//! What was done: to one thing, or altogether; each with the way to take it back.

use super::fork::{device, fork};
use super::when;
use crate::book::{Difference, Done, Id, Journal};
use crate::dom::*;
use crate::rooms::parts::{live, page_head, press};
use crate::rooms::workshop::Workshop;

/// So much is shown of the whole book.
const MOST: usize = 60;

/// `#book/history/ID`.
pub(super) fn of(shop: Workshop, id: Id) -> View {
    let (named, thing) = (id.clone(), id.clone());
    let name = shop.state(|s| s.name(&named).unwrap_or("What was done").to_owned());
    let done = Derived::new(move || {
        shop.untie(Some(&thing), 0);
        shop.journal(|j| j.done(Some(&thing), usize::MAX, shop.voice()))
    });
    group![
        page_head("#book", "Book", name),
        fork(shop, &id),
        el("p").class("lead").child("Everything that was done to it, the last first."),
        live(move || list(shop, done.get(), false))
    ]
}

/// `#book/done`.
pub(super) fn everything(shop: Workshop) -> View {
    let done = Derived::new(move || {
        shop.untie(None, MOST);
        shop.journal(|j| j.done(None, MOST, shop.voice()))
    });
    let step = move |words: &'static str, of: fn(&Journal) -> Option<&crate::book::Entry>| {
        let next = Derived::new(move || {
            shop.untie(None, MOST);
            shop.journal(|j| of(j).map(|e| e.id.clone()))
        });
        live(move || match next.get() {
            Some(entry) => press("", words, move || {
                shop.act(crate::book::Act::Undo { entry: entry.clone() });
            }),
            None => el("button").attr("type", "button").attr("disabled", true).child(words).view(),
        })
    };
    group![
        page_head("#book", "Book", "What was done".to_owned()),
        el("p").class("lead").child(
            "The last things that were done in this book, on every device. Whatever is taken back \
can be brought back; only a person who was removed is gone for good.",
        ),
        el("div")
            .class("actions")
            .child(step("Undo the last one of this device", Journal::last_undoable))
            .child(step("Redo", Journal::last_redoable)),
        live(move || list(shop, done.get(), true))
    ]
}

fn list(shop: Workshop, all: Vec<Done>, named: bool) -> View {
    if all.is_empty() {
        return el("p").class("empty").child("Nothing was done yet.").view();
    }
    el("ol").class("list past").child(all.into_iter().map(|d| line(shop, d, named)).views()).view()
}

fn line(shop: Workshop, done: Done, named: bool) -> View {
    let title = if named && !done.name.is_empty() {
        [&done.name, ": ", &done.what].concat()
    } else {
        done.what.clone()
    };
    let title = match (&done.thing, named) {
        (Some(thing), true) => {
            el("a").attr("href", ["#book/history/", &thing.0].concat()).child(title.clone()).view()
        }
        _ => el("span").child(title.clone()).view(),
    };
    let (back, earlier) = (done.undone.is_some(), done.earlier);
    let words = if back { "Bring back" } else { "Undo" };
    let act = done.turn();
    let said = [words, ": ", &done.name, " ", &done.what].concat();
    el("li")
        .class("row")
        .child(el("span").class("title").child(title))
        .child(el("span").class("detail").child([&when(done.at), ", ", &device(&done.device)].concat()))
        .child(
            (!done.changes.is_empty())
                .then(|| el("ul").class("changes").child(done.changes.iter().map(change).views())),
        )
        .child(done.undone.as_ref().map(|undone| {
            let by = [&when(undone.at), ", ", &device(&undone.device)].concat();
            el("span").class("tag").child(["Taken back ", &by].concat())
        }))
        .child(
            done.refused
                .as_ref()
                .map(|why| el("span").class("tag").child(["Changes nothing: ", why].concat())),
        )
        .child(earlier.then(|| el("span").class("tag").child("In an earlier book, which was replaced")))
        .child(act.filter(|_| !earlier).map(|act| {
            el("button")
                .attr("type", "button")
                .class("quiet")
                .attr("aria-label", said)
                .attr("disabled", move || shop.read_only())
                .on("click", move |_| {
                    shop.act(act.clone());
                })
                .child(words)
        }))
        .view()
}

/// Before and after; of what is no change, what it says.
fn change(change: &Difference) -> View {
    let mut words = [&change.of, ": "].concat();
    match change.values.as_slice() {
        [None, Some(is)] => words.push_str(is),
        [Some(was), None] => words.extend([was, " taken out"]),
        [Some(was), Some(is)] => words.extend([was, " → ", is]),
        _ => {}
    }
    el("li").child(words).view()
}
