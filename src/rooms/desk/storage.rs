//! Where the book is kept, how large it is, and whether the browser has promised to keep it.

use crate::book::say_bytes;
use crate::dom::*;
use crate::keep;
use crate::rooms::parts::{live, press, words};
use crate::rooms::workshop::Workshop;
use leptos::task::spawn_local;

const REFUSED: &str = "The browser did not promise it. Put Potside on the home screen, or bookmark \
it, then ask again: browsers promise it to pages that are used.";

pub(super) fn body(shop: Workshop) -> View {
    let used = Value::new(None::<keep::Room>);
    // What the browser says: it has promised, it has not, it does not say.
    let promised = Value::new(None::<bool>);
    spawn_local(async move {
        used.set(keep::room().await);
        promised.set(keep::persisted().await);
    });
    let entries = Derived::new(move || shop.journal(|j| j.len()));
    let damaged = Derived::new(move || shop.journal(|j| j.damaged().len()));
    group![
        el("dl")
            .class("facts")
            .child(el("dt").child("Entries"))
            .child(el("dd").attr("id", "entries").child(words(move || entries.get().to_string())))
            .child(live(move || if damaged.get() > 0 { set_aside(damaged.get()) } else { ().view() }))
            .child(el("dt").child("Space used"))
            .child(el("dd").child(words(move || space(shop, used.get()))))
            .child(el("dt").child("Safe from clearing"))
            .child(el("dd").child(words(move || {
                if promised.get() == Some(true) {
                    "Yes: the browser has promised not to clear it by itself.".to_owned()
                } else {
                    "Not promised: the browser may clear it when the device runs short of space.".to_owned()
                }
            }))),
        el("p").child(
            "The book is in this browser on this device and nowhere else. Clearing the \
browser's data for this site, or losing the device, takes it along: keep a \
copy elsewhere.",
        ),
        live(move || if promised.get() == Some(true) { ().view() } else { ask(promised) })
    ]
}

fn set_aside(damaged: usize) -> View {
    group![
        el("dt").child("Set aside"),
        el("dd").child(el("a").attr("href", "#desk/damaged").child(format!("{damaged} that cannot be read")))
    ]
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

fn ask(promised: Value<Option<bool>>) -> View {
    let refused = Value::new(false);
    let ask = move || {
        spawn_local(async move {
            let said = keep::persist().await;
            refused.set(said != Some(true));
            promised.set(said);
        });
    };
    group![
        el("div").class("actions").child(press("", "Ask the browser to keep it", ask)),
        el("p").attr("role", "status").child(words(move || if refused.get() {
            REFUSED.to_owned()
        } else {
            String::new()
        }))
    ]
}
