//! What is under the thumb: the one big button, and below it what is wanted now and then.

use super::fewer::{empty, stop};
use super::list::list;
use super::pouring::Pouring;
use super::screen::DONE;
use super::thermometer::{judged, thermometer};
use super::weighed::weighed;
use crate::book::Ending;
use crate::dom::*;
use crate::pot::{Dose, StepKey};
use crate::rooms::parts::{Typed, area, later, sheet};

/// A second tap within this many milliseconds after a new step came up was meant for the one before.
const SETTLE: u32 = 350;

/// `note` is what was typed at the close.
pub(super) fn hand(p: Pouring, note: Typed) -> View {
    let [weighing, reading, listing, noting, stopping, leaving] = [(); 6].map(|()| Value::new(false));
    let key = Derived::new(move || p.card.with(|c| c.as_ref().map(|c| c.step.key)));
    let settled = Value::new(true);
    watch(move || {
        key.track();
        settled.set(false);
        later(SETTLE, move || {
            settled.set(true);
        });
    });
    let done = move |_| {
        if !settled.get_untracked() {
            return;
        }
        match key.get_untracked() {
            Some(StepKey::Close) | None => p.end(Ending::Poured, untrack(|| note.get())),
            Some(step) => p.did(step, None),
        }
    };
    let open = move || p.pending.with(Option::is_some);
    let held = Derived::new(move || key.get().is_some_and(|step| p.held(step)));
    let weighable = Derived::new(move || {
        p.card.with(|c| {
            c.as_ref().filter(|_| !held.get()).is_some_and(|c| match (&c.step.dose, c.step.key) {
                (Some(Dose::Count { .. }), _) => false,
                (Some(_), _) | (None, StepKey::Fill { .. }) => true,
                (None, _) => false,
            })
        })
    });
    let filling = move || matches!(key.get(), Some(StepKey::Fill { .. }));
    // Where a temperature is wanted the thermometer is at hand at once.
    let wants =
        Derived::new(move || p.card.with(|c| c.as_ref().filter(|c| c.wants.is_some()).map(|c| c.step.key)));
    let small = move |words: &'static str, show: Value<bool>| {
        el("button").attr("type", "button").on("click", move |_| show.set(true)).child(words)
    };
    group![
        move || {
            wants.get().filter(|_| !open()).map(|key| {
                el("section")
                    .class("gauge")
                    .attr("aria-label", "Thermometer")
                    .child(judged(p, key))
                    .child(thermometer(p, "Note it", Callback::new(|()| ())))
            })
        },
        el("div")
            .class("hand")
            .child(move || {
                (!open()).then(|| {
                    el("div")
                        .class("main-row")
                        .child(
                            el("button")
                                .attr("type", "button")
                                .attr("id", DONE)
                                .class("main")
                                .attr("aria-disabled", move || {
                                    (!settled.get() || held.get()).then_some("true")
                                })
                                .on("keydown", move |e| {
                                    if held_down(&e) {
                                        e.prevent_default()
                                    }
                                })
                                .on("click", done)
                                .child(move || match key.get() {
                                    Some(StepKey::Close) | None => "Finish and keep the record",
                                    Some(_) if held.get() => "Take another lot first",
                                    Some(_) => "Done",
                                }),
                        )
                        .child(move || {
                            filling().then(|| {
                                el("button")
                                    .attr("type", "button")
                                    .class("all")
                                    .attr("disabled", move || held.get())
                                    .on("click", move |_| p.filled_all())
                                    .child("All filled")
                            })
                        })
                })
            })
            .child(
                el("div")
                    .class("small-row")
                    .child(move || {
                        (weighable.get() && !open()).then(|| small("Enter what went in", weighing))
                    })
                    .child(move || (wants.get().is_none() && !open()).then(|| small("Thermometer", reading)))
                    .child(
                        el("button")
                            .attr("type", "button")
                            .attr("disabled", move || !p.can_undo())
                            .on("click", move |_| p.undo())
                            .child("Undo"),
                    )
                    .child(el("span").class("only-narrow").child(small("All steps", listing)))
                    .child(
                        el("span")
                            .class("only-wide")
                            .child(move || (filling() && !open()).then(|| small("Not filled", leaving)))
                            .child(small("Note", noting))
                            .child(small("Stop this pour", stopping)),
                    ),
            ),
        sheet(move || "What went in".to_owned(), weighing, move || weighed(p, weighing)),
        sheet(
            move || "Thermometer".to_owned(),
            reading,
            move || thermometer(p, "Keep this reading", Callback::new(move |()| reading.set(false))),
        ),
        sheet(
            move || "All steps".to_owned(),
            listing,
            move || {
                let instead = move |words: &'static str, show: Value<bool>| {
                    let go = move |_| {
                        listing.set(false);
                        show.set(true);
                    };
                    el("button").attr("type", "button").on("click", go).child(words)
                };
                group![
                    list(p, None),
                    el("div")
                        .class("actions")
                        .child(filling().then(|| instead("Not filled", leaving)))
                        .child(instead("Note", noting))
                        .child(instead("Stop this pour", stopping))
                ]
            },
        ),
        sheet(
            move || "Note for the record".to_owned(),
            noting,
            move || {
                let text = Typed::new("");
                let save = move |_| {
                    let said = untrack(|| text.get());
                    if said.is_empty() || p.say(said) {
                        noting.set(false);
                    }
                };
                group![
                    area("What should be remembered of this moment", text),
                    el("div").class("actions").child(
                        el("button")
                            .attr("type", "button")
                            .class("main")
                            .on("click", save)
                            .child("Keep the note"),
                    )
                ]
            },
        ),
        empty(p, leaving),
        stop(p, note, stopping)
    ]
}
