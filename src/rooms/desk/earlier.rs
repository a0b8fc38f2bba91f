//! The way back: copies that were taken in, and books that were replaced.

use crate::book::{Act, Earlier, Journal, Taken};
use crate::dom::*;
use crate::keep;
use crate::rooms::book::device;
use crate::rooms::parts::{live, press};
use crate::rooms::workshop::Workshop;

/// ` the copy of 3 Dec 2025, 14:32`, where it says when it was made.
fn of(made: Option<u64>) -> String {
    made.map(|at| [" the copy of ", &keep::when(at)].concat()).unwrap_or_default()
}

fn entries(number: usize) -> String {
    if number == 1 { "1 entry".to_owned() } else { [&number.to_string(), " entries"].concat() }
}

/// One of a list, with the button that does `act`.
fn row(shop: Workshop, said: &[&str], button: &'static str, act: Act) -> View {
    let done = move || {
        shop.act(act.clone());
    };
    el("li").class("row").child(el("span").child(said.concat())).child(press("", button, done)).view()
}

/// Copies that were taken in, each with what takes it back.
pub(super) fn taken(shop: Workshop) -> View {
    let all = Derived::new(move || shop.journal(Journal::taken));
    let one = move |copy: &Taken| {
        let made = of(copy.made).replacen(" the", ", from the", 1);
        let number = entries(copy.entries as usize);
        let said = [&keep::when(copy.at), " on ", &device(&copy.device), &made, ": ", &number, "."];
        row(shop, &said, "Take it back", copy.back.clone())
    };
    live(move || {
        all.with(|all| match all.len() {
            0 => ().view(),
            number => el("details")
                .child(el("summary").child(["Copies that were taken in: ", &number.to_string()].concat()))
                .child(el("p").child(
                    "Taken back, what a copy brought no longer counts; nothing of it is deleted, and it can be \
brought back. What was done here since stays.",
                ))
                .child(el("ul").class("list").child(all.iter().map(one).views()))
                .view(),
        })
    })
}

/// Books that were replaced and copies that were taken back, each with the way back.
pub(super) fn earlier(shop: Workshop) -> View {
    let all = Derived::new(move || shop.journal(Journal::earlier));
    let one = move |book: &Earlier| {
        let (done, by) = match (book.taken, book.made) {
            (None, None) => ("Replaced ", String::new()),
            (None, made) => ("Replaced ", [" by", &of(made)].concat()),
            (Some(at), None) => ("Taken back ", [": what was taken in ", &keep::when(at)].concat()),
            (Some(_), made) => ("Taken back ", [":", &of(made)].concat()),
        };
        let number = entries(book.entries);
        let said =
            [done, &keep::when(book.at), " on ", &device(&book.device), &by, ". ", &number, " set aside."];
        row(shop, &said, "Bring it back", Act::Undo { entry: book.entry.clone() })
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
