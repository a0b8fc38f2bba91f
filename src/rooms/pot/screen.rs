//! The screen of a pour that is on: where one stands, the step, and the buttons under the thumb.

use super::card::card;
use super::cooling::cooling;
use super::hand::hand;
use super::list::list;
use super::over::over;
use super::pouring::Pouring;
use crate::dom::*;
use crate::keep::{self, Wake};
use crate::pot::{Beside, StepKey};
use crate::rooms::parts::{Typed, area, later};
use crate::rooms::workshop::Workshop;
use leptos::prelude::on_cleanup;

/// The button that every step ends with.
pub(super) const DONE: &str = "done";

pub(super) fn screen(shop: Workshop) -> View {
    let p = Pouring::new(shop);
    let wake = Value::new(Wake::Asleep);
    keep::stay_awake(true, move |now| {
        wake.set(now);
    });
    on_cleanup(|| keep::stay_awake(false, |_| ()));
    let key = Derived::new(move || {
        (p.card.with(|c| c.as_ref().map(|c| c.step.key)), p.pending.with(Option::is_some))
    });
    // What was pressed may be gone with its step: the next thing to press has the focus then.
    watch(move || {
        key.track();
        later(0, || {
            keep::to_top();
            keep::scroll_within("now", "step-title");
            keep::focus_if_lost(DONE);
            keep::scroll_within("side", "step-now");
        });
    });
    let note = Typed::new("");
    let closing = move || matches!(key.get().0, Some(StepKey::Close) | None) && !key.get().1;
    el("div")
        .class("pouring")
        .flag("mending", move || key.get().1)
        .child(course(p))
        .child(
            el("section")
                .class("now")
                .attr("id", "now")
                .attr("aria-labelledby", "step-title")
                .child(move || {
                    let (step, pending) = key.get();
                    if pending {
                        over(p)
                    } else if step.is_some() {
                        card(p)
                    } else {
                        all_done()
                    }
                })
                .child(cooling(p))
                .child(move || closing().then(|| area("What to remember of this pour", note))),
        )
        .child(hand(p, note))
        .child(
            el("aside")
                .class("side")
                .attr("id", "side")
                .attr("tabindex", "0")
                .attr("aria-label", "All steps")
                .child(list(p, Some("step-now"))),
        )
        .child(el("p").class("wake").attr("role", "status").child(move || {
            (wake.get() == Wake::Refused).then_some(
                "This browser does not keep the screen on by itself: set the tablet's screen to stay on.",
            )
        }))
        .child(el("p").class("unseen").attr("aria-live", "polite").child(move || announced(p)))
        .view()
}

/// Closed, but the page was left before it was written down how it ended.
fn all_done() -> View {
    el("h1").attr("id", "step-title").child("Everything is done").view()
}

/// What is being made, and which step of how many this is.
fn course(p: Pouring) -> View {
    let what = move || p.run(|run| format!("{}, {}", run.plan.formula, run.plan.vessel));
    let place = Derived::new(move || {
        let key = p.card.with(|c| c.as_ref().map(|c| c.step.key))?;
        p.run(|run| run.place(key)).flatten()
    });
    let pour = move || {
        let (pour, of) = p.card.with(|c| c.as_ref().and_then(|c| c.pour))?;
        (of > 1).then(|| format!(", pour {pour} of {of}"))
    };
    let words = move || place.get().map(|(n, of)| format!("Step {n} of {of}"));
    el("header")
        .class("course")
        .child(el("p").class("what").child(what))
        .child(el("p").class("place").child(words).child(pour))
        .child(move || {
            let pots = p.beside.get();
            (!pots.is_empty())
                .then(|| el("div").class("actions").child(pots.into_iter().map(|pot| beside(p, pot)).views()))
        })
        .child(
            el("progress")
                .attr("aria-hidden", "true")
                .attr("max", move || place.get().map_or(1, |(_, of)| of).to_string())
                .prop("value", move || place.get().map_or(0, |(n, _)| n - 1).to_string()),
        )
        .view()
}

/// The way to another pot, with what is to be done at it next and when.
fn beside(p: Pouring, pot: Beside) -> View {
    el("button")
        .attr("type", "button")
        .class("big")
        .on("click", move |_| p.turn(Some(pot.pour)))
        .child(pot.title)
        .child(pot.when.map(|when| [", ", &when].concat()))
        .view()
}

/// The new step in one sentence, for who does not see it.
fn announced(p: Pouring) -> String {
    if let Some(name) = p.pending.with(|o| o.as_ref().map(|o| o.name.clone())) {
        return format!("Too much {name}. Choose what to do about it.");
    }
    p.card.with(|card| {
        let Some(card) = card else { return "All steps are done.".to_owned() };
        let amount = match &card.step.dose {
            Some(dose) => {
                let said = dose.said(p.shop.voice());
                format!(": {} {}", said.number, said.unit)
            }
            None => String::new(),
        };
        format!("{}{amount}.", card.title)
    })
}
