//! What is under the thumb: the one big button, and below it what is wanted now and then.

use super::list::list;
use super::pouring::Pouring;
use super::screen::DONE;
use super::thermometer::{judged, thermometer};
use super::weighed::weighed;
use crate::book::Ending;
use crate::keep;
use crate::pot::{Dose, StepKey};
use crate::rooms::parts::{Typed, area, confirm_sheet, sheet};
use leptos::prelude::*;

/// A second tap within this many milliseconds after a new step came up was meant for the one before.
const SETTLE: u32 = 350;

/// `note` is what was typed at the close.
pub(super) fn hand(p: Pouring, note: Typed) -> AnyView {
    let (weighing, reading, listing, noting, stopping) = (
        RwSignal::new(false),
        RwSignal::new(false),
        RwSignal::new(false),
        RwSignal::new(false),
        RwSignal::new(false),
    );
    let key = Memo::new(move |_| p.card.with(|c| c.as_ref().map(|c| c.step.key)));
    let settled = RwSignal::new(true);
    Effect::new(move |_| {
        key.track();
        settled.set(false);
        keep::after(SETTLE, move || {
            settled.try_set(true);
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
    let weighable = Memo::new(move |_| {
        p.card.with(|c| {
            c.as_ref().is_some_and(|c| match (&c.step.dose, c.step.key) {
                (Some(Dose::Count { .. }), _) => false,
                (Some(_), _) | (None, StepKey::Fill { .. }) => true,
                (None, _) => false,
            })
        })
    });
    let filling = move || matches!(key.get(), Some(StepKey::Fill { .. }));
    // Where a temperature is wanted the thermometer is at hand at once.
    let wants =
        Memo::new(move |_| p.card.with(|c| c.as_ref().filter(|c| c.wants.is_some()).map(|c| c.step.key)));
    let small = move |words: &'static str, show: RwSignal<bool>| {
        view! { <button type="button" on:click=move |_| show.set(true)>{words}</button> }
    };
    view! {
        {move || wants.get().filter(|_| !open()).map(|key| view! {
            <section class="gauge" aria-label="Thermometer">
                {judged(p, key)}
                {thermometer(p, "Note it", Callback::new(|()| ()))}
            </section>
        })}
        <div class="hand">
            {move || (!open()).then(|| view! {
                <div class="main-row">
                    <button
                        type="button"
                        id=DONE
                        class="main"
                        aria-disabled=move || (!settled.get()).then_some("true")
                        on:keydown=move |e| if e.repeat() { e.prevent_default() }
                        on:click=done
                    >
                        {move || match key.get() {
                            Some(StepKey::Close) | None => "Finish and keep the record",
                            Some(_) => "Done",
                        }}
                    </button>
                    {move || filling().then(|| view! {
                        <button type="button" class="all" on:click=move |_| p.filled_all()>"All filled"</button>
                    })}
                </div>
            })}
            <div class="small-row">
                {move || (weighable.get() && !open()).then(|| small("Enter what it weighed", weighing))}
                {move || (wants.get().is_none() && !open()).then(|| small("Thermometer", reading))}
                <button type="button" disabled=move || !p.can_undo() on:click=move |_| p.undo()>"Undo"</button>
                <span class="only-narrow">{small("All steps", listing)}</span>
                <span class="only-wide">{small("Note", noting)}{small("Stop this pour", stopping)}</span>
            </div>
        </div>
        {sheet(move || "What it weighed".to_owned(), weighing, move || weighed(p, weighing))}
        {sheet(move || "Thermometer".to_owned(), reading, move || {
            thermometer(p, "Keep this reading", Callback::new(move |()| reading.set(false)))
        })}
        {sheet(move || "All steps".to_owned(), listing, move || {
            let instead = move |words: &'static str, show: RwSignal<bool>| {
                let go = move |_| {
                    listing.set(false);
                    show.set(true);
                };
                view! { <button type="button" on:click=go>{words}</button> }
            };
            view! {
                {list(p, None)}
                <div class="actions">{instead("Note", noting)}{instead("Stop this pour", stopping)}</div>
            }
            .into_any()
        })}
        {sheet(move || "Note for the record".to_owned(), noting, move || {
            let text = Typed::new("");
            let save = move |_| {
                let said = untrack(|| text.get());
                if said.is_empty() || p.say(said) {
                    noting.set(false);
                }
            };
            view! {
                {area("What should be remembered of this moment", text)}
                <div class="actions"><button type="button" class="main" on:click=save>"Keep the note"</button></div>
            }
            .into_any()
        })}
        {confirm_sheet(
            "Stop this pour?",
            "The pour ends here and its record is kept as it stands, marked as stopped. Turn the heat off first if you leave the pot.",
            "Stop this pour",
            stopping,
            move || p.end(Ending::GivenUp, untrack(|| note.get())),
        )}
    }
    .into_any()
}
