//! What must be told in every room: storage that fails, damage, a new version, no offline use here.

use super::workshop::Workshop;
use crate::book::Saving;
use crate::dom::*;
use crate::keep;

/// The lines under the top, each only while it holds.
pub fn notices() -> View {
    let shop = Workshop::here();
    // The page may have learnt these before the app was there, so the root element keeps them too.
    let update = Value::new(keep::root("update").as_deref() == Some("ready"));
    let cannot = Value::new(keep::root("offlineReason"));
    on_window("potside:update-ready", move |_| update.set(true));
    on_window("potside:cannot-keep", move |_| {
        cannot.set(keep::root("offlineReason"));
    });
    let pouring = Derived::new(move || shop.state(|s| s.running().is_some()));
    let damaged = Derived::new(move || shop.journal(|j| j.damaged().len()));
    let newer = Derived::new(move || shop.journal(crate::book::Journal::read_only));
    el("div")
        .class("told")
        .attr("aria-live", "assertive")
        .child(move || match shop.saving().get() {
            Saving::NotSaved(why) => {
                Some(told(true, why.to_string(), Some(("Try now", Callback::new(move |()| shop.store())))))
            }
            _ => None,
        })
        .child(move || {
            shop.refused().get().filter(|_| !newer.get()).map(|why| {
                told(
                    true,
                    why.to_string(),
                    Some(("Understood", Callback::new(move |()| shop.refused().set(None)))),
                )
            })
        })
        .child(move || {
            newer.get().then(|| {
                told(
                    true,
                    "This book was written by a newer Potside. It can be read, not changed: update \
the app first."
                        .into(),
                    None,
                )
            })
        })
        .child(move || {
            (damaged.get() > 0 && !newer.get()).then(|| {
                told(
                    true,
                    match damaged.get() {
                        1 => "1 entry of the book is damaged and was set aside; the rest is open.".into(),
                        n => format!(
                            "{n} entries of the book are damaged and were set aside; the rest is open."
                        ),
                    },
                    Some(("Look at them", Callback::new(move |()| shop.go("#desk/damaged")))),
                )
            })
        })
        .child(move || cannot.get().filter(|_| !pouring.get()).map(|why| told(false, why, None)))
        .child(move || {
            (update.get() && !pouring.get()).then(|| {
                told(
                    false,
                    "A new version of Potside is ready.".into(),
                    Some(("Use it now", Callback::new(|()| keep::tell_page("potside:apply-update")))),
                )
            })
        })
        .view()
}

fn told(serious: bool, text: String, way: Option<(&'static str, Callback<()>)>) -> View {
    el("p")
        .class("note")
        .flag("caution", serious)
        .child(el("span").child(text))
        .child(way.map(|(words, then)| {
            el("button").attr("type", "button").on("click", move |_| then.run(())).child(words)
        }))
        .view()
}
