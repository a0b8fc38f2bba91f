//! Where the book is kept, how large it is, and whether the browser has promised to keep it.

use crate::book::say_bytes;
use crate::keep;
use crate::rooms::workshop::Workshop;
use leptos::prelude::*;
use leptos::task::spawn_local;

pub(super) fn body(shop: Workshop) -> AnyView {
    let used = RwSignal::new(None::<keep::Room>);
    // What the browser says: it has promised, it has not, it does not say.
    let promised = RwSignal::new(None::<bool>);
    spawn_local(async move {
        used.set(keep::room().await);
        promised.set(keep::persisted().await);
    });
    let entries = Memo::new(move |_| shop.journal().with(|j| j.entries().len()));
    let damaged = Memo::new(move |_| shop.journal().with(|j| j.damaged().len()));
    let size = move |bytes: f64| say_bytes(bytes as u64, shop.locale());
    view! {
        <dl class="facts">
            <dt>"Entries"</dt>
            <dd id="entries">{move || entries.get().to_string()}</dd>
            {move || (damaged.get() > 0).then(|| view! {
                <dt>"Set aside"</dt>
                <dd><a href="#desk/damaged">{format!("{} that cannot be read", damaged.get())}</a></dd>
            })}
            {move || used.get().map(|room| view! {
                <dt>"Space used"</dt>
                <dd>{move || size(room.used)}" of the "{move || size(room.whole)}" this browser allows, with the app itself"</dd>
            })}
            <dt>"Safe from clearing"</dt>
            <dd>
                {move || if promised.get() == Some(true) {
                    "Yes: the browser has promised not to clear it by itself."
                } else {
                    "Not promised: the browser may clear it when the device runs short of space."
                }}
            </dd>
        </dl>
        <p>
            "The book is in this browser on this device and nowhere else. Clearing the browser's data for this site, or losing
            the device, takes it along: keep a copy elsewhere."
        </p>
        {move || (promised.get() != Some(true)).then(|| ask(promised))}
    }
    .into_any()
}

fn ask(promised: RwSignal<Option<bool>>) -> AnyView {
    let refused = RwSignal::new(false);
    let ask = move |_| {
        spawn_local(async move {
            let said = keep::persist().await;
            refused.set(said != Some(true));
            promised.set(said);
        });
    };
    view! {
        <div class="actions"><button type="button" on:click=ask>"Ask the browser to keep it"</button></div>
        <p role="status">
            {move || refused.get().then_some(
                "The browser did not promise it. Put Potside on the home screen, or bookmark it, then ask again: browsers promise it to \
                 pages that are used.",
            )}
        </p>
    }
    .into_any()
}
