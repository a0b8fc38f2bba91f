//! What must be told in every room: storage that fails, damage, a new version, no offline use here.

use super::parts::press;
use super::workshop::Workshop;
use crate::book::Saving;
use crate::day::DAY;
use crate::dom::*;
use crate::keep;

/// In milliseconds.
const QUARTER: u64 = 15 * 60 * 1000;

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
    // Looked at once in a quarter of an hour: a copy that is due is not due to the second.
    let quarter = Derived::new(move || shop.now().get() / QUARTER);
    let copy_due = Derived::new(move || {
        let now = quarter.get() * QUARTER;
        shop.prefs().with(|p| shop.journal(|j| p.copy_due(j, now)))
    });
    let damaged = Derived::new(move || shop.journal(|j| j.damaged().len()));
    let newer = Derived::new(move || shop.journal(crate::book::Journal::read_only));
    el("div")
        .class("told")
        .attr("aria-live", "assertive")
        .child(move || match shop.saving().get() {
            Saving::NotSaved(why) => {
                Some(told(true, why.to_string(), vec![("Try now", Callback::new(move |()| shop.store()))]))
            }
            _ => None,
        })
        .child(move || {
            shop.cleared.get().map(|why| {
                let copy = Callback::new(move |()| shop.go("#desk"));
                let understood = Callback::new(move |()| shop.cleared.set(None));
                told(true, why, vec![("Make a copy", copy), ("Understood", understood)])
            })
        })
        .child(move || {
            shop.refused().get().filter(|_| !newer.get()).map(|why| {
                told(
                    true,
                    why.to_string(),
                    vec![("Understood", Callback::new(move |()| shop.refused().set(None)))],
                )
            })
        })
        .child(move || {
            shop.reminds.with(|due| {
                let see = Callback::new(move |()| shop.go("#bench/burn"));
                (!due.is_empty()).then(|| told(true, due.join(" "), vec![("See them", see)]))
            })
        })
        .child(move || {
            newer.get().then(|| {
                told(
                    true,
                    "This book was written by a newer Potside. It can be read, not changed: update \
the app first."
                        .into(),
                    Vec::new(),
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
                    vec![("Look at them", Callback::new(move |()| shop.go("#desk/damaged")))],
                )
            })
        })
        .child(move || {
            copy_due.get().filter(|_| !pouring.get()).map(|why| {
                let later = Callback::new(move |()| shop.change_prefs(|p| p.later = keep::now() + DAY));
                let now = Callback::new(move |()| shop.go("#desk"));
                told(false, why, vec![("Make a copy", now), ("Ask tomorrow", later)])
            })
        })
        .child(move || cannot.get().filter(|_| !pouring.get()).map(|why| told(false, why, Vec::new())))
        .child(move || {
            (update.get() && !pouring.get()).then(|| {
                told(
                    false,
                    "A new version of Potside is ready.".into(),
                    vec![("Use it now", Callback::new(|()| keep::tell_page("potside:apply-update")))],
                )
            })
        })
        .view()
}

fn told(serious: bool, text: String, ways: Vec<(&'static str, Callback<()>)>) -> View {
    el("p")
        .class("note")
        .flag("caution", serious)
        .child(el("span").child(text))
        .child(ways.into_iter().map(|(words, then)| press("", words, move || then.run(()))).views())
        .view()
}
