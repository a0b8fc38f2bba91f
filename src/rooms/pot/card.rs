//! One step: its amount the largest thing on the screen, then what to know about it.

use super::pouring::Pouring;
use super::thermometer::missed;
use crate::pot::{Said, StepKey, StepView, countdown};
use crate::quantity::show_both;
use crate::rooms::parts::{caution, notes, why_button};
use leptos::prelude::*;

pub(super) fn card(p: Pouring) -> AnyView {
    // Rebuilt only where the step, its amount or what is said at it changes.
    (move || p.card.with(|card| card.as_ref().map(|card| one(p, card)))).into_any()
}

fn one(p: Pouring, card: &StepView) -> AnyView {
    view! {
        <h1 id="step-title" data-step=format!("{:?}", card.step.key)>{card.title.clone()}</h1>
        {wanted(p, card)}
        {card.wants.as_ref().map(|_| missed(p, card.step.key))}
        {(!card.cautions.is_empty()).then(|| caution(card.cautions.join(" ")))}
        {notes(&card.notes)}
    }
    .into_any()
}

/// The number that is wanted now, and with what it is measured.
fn wanted(p: Pouring, card: &StepView) -> AnyView {
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
            view! {
                <p class="wanted"><span class="figure">{said.number}</span>" "<span class="unit">{said.unit}</span></p>
                <p class="beside">
                    <span>{said.beside}{why}</span>
                    <strong>{said.with}</strong>
                    {range.map(|range| view! { <span>{verb}<strong>{range}</strong></span> })}
                </p>
            }
            .into_any()
        }
        (_, None, Some(range)) => {
            view! { <p class="wanted range"><span class="figure">{range}</span></p> }.into_any()
        }
        (_, None, None) => ().into_any(),
    }
}

/// The stirring time, counted down from the moment that is in the book: a reload does not stop it.
fn timer(p: Pouring, card: &StepView) -> AnyView {
    let key = card.step.key;
    let minutes = card.minutes;
    let left = Memo::new(move |_| p.run(|run| run.stir_left(key, p.shop.now().get())).flatten());
    let over = Memo::new(move |_| left.get() == Some(0));
    view! {
        <p class="wanted" role="timer" aria-live="off">
            <span class="figure">{move || left.get().map(countdown)}</span>
        </p>
        <p class="beside">{format!("of {minutes} min stirring left")}</p>
        <p class="over" role="status">{move || over.get().then_some("Stirred long enough.")}</p>
    }
    .into_any()
}
