//! A copy of the book as a file: given out, and opened to take in what is not here yet.

use super::clash::clashes;
use super::give::counted;
use crate::book::{Act, Copy, CopyError, Prospect, Seal, read_copy};
use crate::dom::*;
use crate::keep::{self, Which};
use crate::photo::Photo;
use crate::rooms::parts::{caution, chooser, confirm_sheet, live, press, refusal, sentence, words};
use crate::rooms::workshop::Workshop;
use leptos::task::spawn_local;

/// So many lines that are left out are shown.
const MOST_SHOWN: usize = 100;

/// What was opened: a copy to look at, or why it cannot be.
type Opened = Option<Result<Copy, CopyError>>;

/// How many entries and photos were taken in.
type Taken = Option<(usize, usize)>;

pub(super) fn body(shop: Workshop) -> View {
    if shop.which() == Which::Demo {
        return el("p")
            .child("This is the demo's book. Copies are made of your own: leave the demo first.")
            .view();
    }
    group![super::give::part(shop), open(shop), super::earlier::taken(shop), super::earlier::earlier(shop)]
}

fn open(shop: Workshop) -> View {
    let opened = Value::new(Opened::None);
    let taken = Value::new(Taken::None);
    let look = move |text: Result<String, CopyError>| {
        taken.set(None);
        let mut found = text.and_then(|t| untrack(|| shop.journal(|j| read_copy(&t, j))));
        spawn_local(async move {
            if let Ok(copy) = &mut found {
                keep_lacking(&mut copy.photos).await;
            }
            opened.set(Some(found));
        });
    };
    group![
        el("h3").child("Open a copy"),
        el("p").child(
            "First you see what it would bring. Then you take in what is not here yet, or put it in \
the place of this book. Either can be taken back here; only a customer who is removed stays so.",
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
                Some((1, 0)) => "1 entry was taken in.".to_owned(),
                Some((n, 0)) => format!("{n} entries were taken in."),
                Some((0, photos)) =>
                    counted(photos, "photo") + if photos == 1 { " was taken in." } else { " were taken in." },
                Some((1, photos)) => ["1 entry and ", &counted(photos, "photo"), " were taken in."].concat(),
                Some((n, photos)) => format!("{n} entries and {} were taken in.", counted(photos, "photo")),
            }))
    ]
}

/// Leaves those photos that are not whole on this device.
async fn keep_lacking(photos: &mut Vec<Photo>) {
    let mut lacking = Vec::new();
    for photo in std::mem::take(photos) {
        if keep::photo::photo(Which::Own, &photo.name).await.is_err() {
            lacking.push(photo);
        }
    }
    *photos = lacking;
}

/// What the copy would bring, and the buttons that take it in or put it in the place of the book.
fn found(shop: Workshop, copy: &Copy, opened: Value<Opened>, taken: Value<Taken>) -> View {
    let fresh = copy.fresh.len();
    let replacing = Value::new(false);
    let failed = Value::new(None::<String>);
    // A second tap while the photos are stored would take it in twice.
    let taking = Value::new(false);
    let take = move |replace: Option<Act>| {
        let Some(Ok(copy)) = opened.get_untracked() else { return };
        if taking.get_untracked() {
            return;
        }
        taking.set(true);
        spawn_local(async move {
            let fresh = copy.fresh.len();
            let photos: Vec<(String, String)> = copy.photos.into_iter().map(|p| (p.name, p.jpeg)).collect();
            // First the photos, then what names them.
            if !photos.is_empty()
                && let Err(why) = keep::photo::keep_photos(Which::Own, &photos).await
            {
                taking.set(false);
                return failed.set(Some(why.to_string()));
            }
            if (fresh > 0 || replace.is_some()) && !shop.take_copy(copy.fresh, copy.made, replace) {
                taking.set(false);
                return;
            }
            taken.set(Some((fresh, photos.len())));
            opened.set(None);
        });
    };
    let left_out = left_out(copy);
    let lacking = copy.photos.len();
    let replace = copy.replace.clone();
    group![
        el("p").class("found").child(copy.say()),
        (lacking > 0).then(|| el("p").child(Copy::say_photos(lacking))),
        copy.made.map(|at| el("p").child(["It was made ", &keep::when(at), "."].concat())),
        (copy.seal == Seal::Broken).then(|| caution(
            "this file was changed or cut off after it was written. What is whole in it can be taken \
in; it cannot take the place of the book."
        )),
        left_out,
        prospects(&copy.prospects),
        clashes(&copy.clashes),
        copy.say_puts_aside().map(caution),
        copy.say_removes().map(caution),
        copy.say_resent().map(caution),
        (!copy.undoable).then(|| sentence(
            "Most copies can be taken back in one go once they are taken in. This one brings too many \
entries from between yours: it can only be taken back one by one, under “What was done” in the Book."
        )),
        live(move || failed.get().map(|why| refusal("Not taken in: ", why)).view()),
        el("div")
            .class("actions")
            .child((fresh + lacking > 0).then(|| press("main", "Take them in", move || take(None))))
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

/// The lines that are left out, the first of them named.
fn left_out(copy: &Copy) -> View {
    let all = (copy.damaged.iter().map(|(line, why)| format!("Line {line}: {why}")))
        .chain(copy.no_photos.iter().map(|(line, why)| format!("Line {line}: {why}")));
    let mut said: Vec<String> = all.take(MOST_SHOWN).collect();
    let number = copy.left_out();
    if number > said.len() {
        said.push(["and ", &(number - said.len()).to_string(), " more."].concat());
    }
    let list = el("ul").class("left-out").child(said.into_iter().map(|said| el("li").child(said)).views());
    let title = ["Left out: ", &number.to_string()].concat();
    (number > 0).then(|| el("details").child(el("summary").child(title)).child(list)).view()
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
