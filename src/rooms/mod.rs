//! The views: one module a room, shared parts in `parts`. They show what the domain modules computed.

mod bench;
mod book;
mod bundling;
mod converter;
mod desk;
mod fetch;
mod frame;
mod notices;
mod parts;
mod pot;
mod preferred;
mod renewal;
mod rescue;
mod route;
mod shelf;
mod stores;
mod storing;
mod sweep;
mod workshop;

use crate::keep;
use leptos::prelude::Owner;
use leptos::task::spawn_local;
use wasm_bindgen::prelude::wasm_bindgen;
use workshop::Workshop;

/// Called once by the page: puts the app in the place of the shell.
#[wasm_bindgen(start)]
pub fn start() {
    // The page sees only that the app has stopped; where and why stands in the console.
    std::panic::set_hook(Box::new(|info| leptos::logging::error!("{info}")));
    let Some(place) = keep::element("app") else { return };
    place.set_text_content(None);
    let owner = Owner::new();
    owner.set();
    let shop = Workshop::open(keep::Prefs::load());
    let new = keep::is_new();
    if new {
        shop.begin();
    }
    let page = place.clone();
    leptos::mount::mount_to(place, move || crate::dom::show(&page, frame::frame())).forget();
    // Not before: the mount starts what effects run on.
    shop.listen();
    spawn_local(shop.load());
    // The room one comes to, while the book is being opened. An empty one begins with a screen that is here already.
    if !new {
        spawn_local(async move {
            let _ = fetch::fetch(fetch::Part::first_of(shop.route().with_untracked(|r| r.room))).await;
        });
    }
    // The signals live as long as the page.
    std::mem::forget(owner);
}
