//! Where the book is kept, how large it is, and whether the browser has promised to keep it.

use crate::book::say_bytes;
use crate::keep;
use crate::rooms::parts::{live, press, words};
use crate::rooms::workshop::Workshop;
use leptos::prelude::*;
use leptos::task::spawn_local;

const REFUSED: &str = "The browser did not promise it. Put Potside on the home screen, or bookmark it, then ask again: browsers \
                       promise it to pages that are used.";

pub(super) fn body(shop: Workshop) -> AnyView {
    let used = RwSignal::new(None::<keep::Room>);
    // What the browser says: it has promised, it has not, it does not say.
    let promised = RwSignal::new(None::<bool>);
    spawn_local(async move {
        used.set(keep::room().await);
        promised.set(keep::persisted().await);
    });
    let entries = Memo::new(move |_| shop.journal(|j| j.entries().len()));
    let damaged = Memo::new(move |_| shop.journal(|j| j.damaged().len()));
    view! {
        <dl class="facts">
            <dt>"Entries"</dt>
            <dd id="entries">{words(move || entries.get().to_string())}</dd>
            {live(move || if damaged.get() > 0 { set_aside(damaged.get()) } else { ().into_any() })}
            <dt>"Space used"</dt>
            <dd>{words(move || space(shop, used.get()))}</dd>
            <dt>"Safe from clearing"</dt>
            <dd>
                {words(move || if promised.get() == Some(true) {
                    "Yes: the browser has promised not to clear it by itself.".to_owned()
                } else {
                    "Not promised: the browser may clear it when the device runs short of space.".to_owned()
                })}
            </dd>
        </dl>
        <p>
            "The book is in this browser on this device and nowhere else. Clearing the browser's data for this site, or losing
            the device, takes it along: keep a copy elsewhere."
        </p>
        {live(move || if promised.get() == Some(true) { ().into_any() } else { ask(promised) })}
    }
    .into_any()
}

fn set_aside(damaged: usize) -> AnyView {
    view! {
        <dt>"Set aside"</dt>
        <dd><a href="#desk/damaged">{format!("{damaged} that cannot be read")}</a></dd>
    }
    .into_any()
}

fn space(shop: Workshop, used: Option<keep::Room>) -> String {
    let size = |bytes: f64| say_bytes(bytes as u64, shop.locale());
    match used {
        Some(room) => {
            let [used, whole] = [room.used, room.whole].map(size);
            format!("{used} of the {whole} this browser allows, with the app itself")
        }
        None => "The browser does not say.".to_owned(),
    }
}

fn ask(promised: RwSignal<Option<bool>>) -> AnyView {
    let refused = RwSignal::new(false);
    let ask = move || {
        spawn_local(async move {
            let said = keep::persist().await;
            refused.set(said != Some(true));
            promised.set(said);
        });
    };
    view! {
        <div class="actions">{press("", "Ask the browser to keep it", ask)}</div>
        <p role="status">
            {words(move || if refused.get() { REFUSED.to_owned() } else { String::new() })}
        </p>
    }
    .into_any()
}
