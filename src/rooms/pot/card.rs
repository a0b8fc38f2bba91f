//! One step: its amount the largest thing on the screen, then what to know about it.

use super::lots::from_lot;
use super::pouring::Pouring;
use super::thermometer::missed;
use crate::dom::*;
use crate::pot::{Said, StepKey, StepView, countdown};
use crate::quantity::{Temperature, show_both};
use crate::rooms::parts::{Field, Typed, caution, notes, press, sheet, temperature_field, why_button};

/// A number with more signs is shown in smaller ones, or it is wider than a telephone.
const SHORT: usize = 7;

pub(super) fn card(p: Pouring) -> View {
    // Rebuilt only where the step, its amount or what is said at it changes.
    (move || p.card.with(|card| card.as_ref().map(|card| one(p, card)))).view()
}

fn one(p: Pouring, card: &StepView) -> View {
    group![
        el("h1")
            .attr("id", "step-title")
            .attr("data-step", crate::wire::write(&card.step.key))
            .child(card.title.clone()),
        wanted(p, card),
        from_lot(p, card.step.key),
        card.wants.as_ref().map(|_| missed(p, card.step.key)),
        card.step.key.goes_in().then(|| chilled(p, card.step.key)),
        (!card.cautions.is_empty()).then(|| caution(card.cautions.join(" "))),
        notes(&card.notes)
    ]
}

/// The number that is wanted now, and with what it is measured.
fn wanted(p: Pouring, card: &StepView) -> View {
    let voice = p.shop.voice();
    let range = card.wants.as_ref().map(|w| w.say(voice));
    let said = match (&card.step.dose, card.step.amount) {
        (Some(dose), _) => Some(dose.said(voice)),
        (None, Some(mass)) => {
            let (first, other) = show_both(mass, voice.mass, None, voice.locale);
            let unit = first.unit.to_owned();
            Some(Said {
                number: first.number,
                unit,
                beside: other.to_string(),
                with: "Into the vessel".to_owned(),
            })
        }
        (None, None) => None,
    };
    let why = card.why.clone().map(why_button);
    match (card.step.key, said, range) {
        (StepKey::Stir { .. }, ..) => timer(p, card),
        (key, Some(said), range) => {
            let verb = if matches!(key, StepKey::Fill { .. }) { "Pour at " } else { "Add at " };
            let long = said.number.chars().count() > SHORT;
            group![
                el("p")
                    .class(if long { "wanted long" } else { "wanted" })
                    .child(el("span").class("figure").child(said.number))
                    .child(" ")
                    .child(el("span").class("unit").child(said.unit)),
                el("p")
                    .class("beside")
                    .child(el("span").child(said.beside).child(why))
                    .child(el("strong").child(said.with))
                    .child(range.map(|range| el("span").child(verb).child(el("strong").child(range))))
            ]
        }
        (_, None, Some(range)) => {
            el("p").class("wanted range").child(el("span").class("figure").child(range)).view()
        }
        (_, None, None) => ().view(),
    }
}

/// The stirring time, counted down from the moment that is in the book: a reload does not stop it.
fn timer(p: Pouring, card: &StepView) -> View {
    let key = card.step.key;
    let minutes = card.minutes;
    let left = Derived::new(move || p.run(|run| run.stir_left(key, p.shop.now().get())).flatten());
    let over = Derived::new(move || left.get() == Some(0));
    let mut was = true;
    watch(move || {
        let is = over.get();
        if is && !was {
            p.ring();
        }
        was = is;
    });
    group![
        el("p")
            .class("wanted")
            .attr("role", "timer")
            .attr("aria-live", "off")
            .child(el("span").class("figure").child(move || left.get().map(countdown))),
        el("p").class("beside").child(format!("of {minutes} min stirring left")),
        el("p")
            .class("over")
            .attr("role", "status")
            .child(move || over.get().then_some("Stirred long enough."))
    ]
}

/// What adding it does to the pot, as far as a reading tells.
fn chilled(p: Pouring, key: StepKey) -> View {
    let (warm, asking) = (Value::new(None), Value::new(false));
    let chill = Derived::new(move || {
        let now = p.shop.now().get();
        p.run(|run| run.chill(key, now, p.shop.air(), warm.get(), p.shop.voice())).flatten()
    });
    let said = move || {
        chill.get().map(|chill| {
            group![
                el("p").class("note").child(chill.said).child(" ").child(why_button(chill.why)),
                chill.caution.map(caution)
            ]
        })
    };
    let other = move || {
        (chill.with(Option::is_some) || warm.get().is_some())
            .then(|| press("quiet", "It is not as cold as the room", move || asking.set(true)))
    };
    group![
        el("div").attr("aria-live", "polite").child(said),
        other,
        sheet(|| "How warm it is".to_owned(), asking, move || warmth(p, warm, asking))
    ]
}

/// How warm a part is that does not come from the shelf; left empty, it is as cold as the room.
fn warmth(p: Pouring, warm: Value<Option<Temperature>>, asking: Value<bool>) -> View {
    let typed = Typed::new("");
    let keep = move || {
        let read = untrack(|| typed.read::<Temperature>(p.shop.temperature_unit()));
        match read {
            _ if untrack(|| typed.is_empty()) => warm.set(None),
            Ok(at) => warm.set(Some(at.value)),
            Err(_) => return typed.touched.set(true),
        };
        asking.set(false);
    };
    group![
        temperature_field(
            Field::new("What goes in is at").optional().hint("Left empty: as cold as the room."),
            typed
        ),
        el("div").class("actions").child(press("main", "Reckon with it", keep))
    ]
}
