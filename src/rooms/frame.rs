//! The frame around every room: the edge with the six rooms, the line on top, what must be told at once.

use super::converter::Converter;
use super::notices::notices;
use super::parts::WhySheet;
use super::route::Room;
use super::workshop::{Opened, Workshop};
use super::{bench, book, desk, pot, shelf, stores};
use crate::book::Saving;
use crate::keep::Which;
use leptos::prelude::*;

#[component]
pub fn Frame() -> impl IntoView {
    let shop = Workshop::here();
    let converting = RwSignal::new(false);
    let room = Memo::new(move |_| shop.route().with(|r| r.room));
    // A pour that is on takes the whole screen and gives it back when done.
    let whole = Memo::new(move |_| room.get() == Room::Pot && shop.state(|s| s.running().is_some()));
    view! {
        <div class="app" class:whole=whole data-room=move || room.get().slug()>
            <header class="top">
                <p class="where">
                    <span class="app-name">"Potside"</span>
                    {move || (shop.which() == Which::Demo).then(|| view! { <span class="demo">"Demo workshop"</span> })}
                </p>
                {saved_line(shop)}
                <button type="button" class="quiet" on:click=move |_| converting.set(true)>"Convert"</button>
            </header>
            {notices()}
            <main id="room" tabindex="-1">
                {move || match shop.opened().get() {
                    Opened::Open => inside(room.get()),
                    Opened::Opening => opening(),
                    Opened::Failed(why) => closed(why.to_string()),
                }}
            </main>
            <nav class="edge" aria-label="Rooms">
                {Room::ALL.into_iter().map(|r| edge_link(r, room)).collect_view()}
            </nav>
        </div>
        <Converter open=converting />
        <WhySheet />
    }
}

fn inside(room: Room) -> AnyView {
    match room {
        Room::Pot => pot::room(),
        Room::Shelf => shelf::room(),
        Room::Stores => stores::room(),
        Room::Bench => bench::room(),
        Room::Book => book::room(),
        Room::Desk => desk::room(),
    }
}

fn opening() -> AnyView {
    view! { <p class="opening" role="status">"Opening the book …"</p> }.into_any()
}

/// The book cannot be opened: why, and the way out.
fn closed(why: String) -> AnyView {
    view! {
        <div class="empty">
            <h1>"The book cannot be opened"</h1>
            <p>{why}</p>
            <button type="button" class="main" on:click=move |_| leptos::task::spawn_local(Workshop::here().load())>
                "Try again"
            </button>
        </div>
    }
    .into_any()
}

fn edge_link(this: Room, room: Memo<Room>) -> AnyView {
    let here = move || room.get() == this;
    view! {
        <a href=format!("#{}", this.slug()) class:here=here aria-current=move || here().then_some("page")>
            {this.name()}
        </a>
    }
    .into_any()
}

/// Saving, saved, or not saved and why.
fn saved_line(shop: Workshop) -> AnyView {
    view! {
        <p class="saved" role="status" data-saving=move || match shop.saving().get() {
            Saving::Saved => "saved",
            Saving::Saving => "saving",
            Saving::NotSaved(_) => "not-saved",
        }>
            {move || match shop.saving().get() {
                Saving::Saved => "Saved",
                Saving::Saving => "Saving …",
                Saving::NotSaved(_) => "Not saved",
            }}
        </p>
    }
    .into_any()
}
