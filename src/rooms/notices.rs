//! What must be told in every room: storage that fails, damage, a new version, no offline use here.

use super::workshop::Workshop;
use crate::book::Saving;
use crate::keep;
use leptos::ev::{Custom, CustomEvent};
use leptos::prelude::*;

/// The lines under the top, each only while it holds.
pub fn notices() -> AnyView {
    let shop = Workshop::here();
    // The page may have learnt these before the app was there, so the root element keeps them too.
    let update = RwSignal::new(keep::root("update").as_deref() == Some("ready"));
    let cannot = RwSignal::new(keep::root("offlineReason"));
    window_event_listener(Custom::<CustomEvent>::new("potside:update-ready"), move |_| update.set(true));
    window_event_listener(Custom::<CustomEvent>::new("potside:cannot-keep"), move |_| {
        cannot.set(keep::root("offlineReason"));
    });
    let pouring = Memo::new(move |_| shop.state(|s| s.running().is_some()));
    let damaged = Memo::new(move |_| shop.journal(|j| j.damaged().len()));
    let newer = Memo::new(move |_| shop.journal(crate::book::Journal::read_only));
    view! {
        <div class="told" aria-live="assertive">
            {move || match shop.saving().get() {
                Saving::NotSaved(why) => Some(told(true, why.to_string(), Some(("Try now", Callback::new(move |()| shop.store()))))),
                _ => None,
            }}
            {move || shop.refused().get().filter(|_| !newer.get()).map(|why| told(
                true,
                why.to_string(),
                Some(("Understood", Callback::new(move |()| shop.refused().set(None)))),
            ))}
            {move || newer.get().then(|| told(
                true,
                "This book was written by a newer Potside. It can be read, not changed: update the app first.".into(),
                None,
            ))}
            {move || (damaged.get() > 0 && !newer.get()).then(|| told(
                true,
                match damaged.get() {
                    1 => "1 entry of the book is damaged and was set aside; the rest is open.".into(),
                    n => format!("{n} entries of the book are damaged and were set aside; the rest is open."),
                },
                Some(("Look at them", Callback::new(move |()| shop.go("#desk/damaged")))),
            ))}
            {move || cannot.get().filter(|_| !pouring.get()).map(|why| told(false, why, None))}
            // Never in the middle of a pour.
            {move || (update.get() && !pouring.get()).then(|| told(
                false,
                "A new version of Potside is ready.".into(),
                Some(("Use it now", Callback::new(|()| keep::tell_page("potside:apply-update")))),
            ))}
        </div>
    }
    .into_any()
}

fn told(serious: bool, text: String, way: Option<(&'static str, Callback<()>)>) -> AnyView {
    view! {
        <p class="note" class:caution=serious>
            <span>{text}</span>
            {way.map(|(words, then)| view! { <button type="button" on:click=move |_| then.run(())>{words}</button> })}
        </p>
    }
    .into_any()
}
