//! The frame around every room: the edge with the six rooms, the line on top, what must be told at once.

use super::converter::converter;
use super::fetch::{Part, inside};
use super::notices::notices;
use super::parts::why_sheet;
use super::route::Room;
use super::workshop::{Opened, Workshop};
use crate::book::Saving;
use crate::dom::*;
use crate::keep::Which;

pub fn frame() -> View {
    let shop = Workshop::here();
    let converting = Value::new(false);
    let room = Derived::new(move || shop.route().with(|r| r.room));
    // A pour that is on takes the whole screen and gives it back when done.
    let whole = Derived::new(move || room.get() == Room::Pot && shop.state(|s| s.running().is_some()));
    // The first screen takes nothing in: so it may stand there before the book is open, and stays as it is after.
    let shown = Derived::new(move || match shop.opened().get() {
        Opened::Guessed if room.get() == Room::Pot => Opened::Open,
        other => other,
    });
    group![
        el("div")
            .class("app")
            .flag("whole", whole)
            .attr("data-room", move || room.get().slug())
            .child(
                el("header")
                    .class("top")
                    .child(el("p").class("where").child(el("span").class("app-name").child("Potside")).child(
                        move || {
                            (shop.which() == Which::Demo)
                                .then(|| el("span").class("demo").child("Demo workshop"))
                        },
                    ))
                    .child(saved_line(shop))
                    .child(
                        el("button")
                            .attr("type", "button")
                            .class("quiet")
                            .on("click", move |_| converting.set(true))
                            .child("Convert"),
                    ),
            )
            .child(notices())
            .child(
                el("main")
                    .attr("id", "room")
                    .attr("tabindex", "-1")
                    .attr("aria-busy", move || {
                        matches!(shop.opened().get(), Opened::Opening | Opened::Guessed).then_some("true")
                    })
                    .child(move || match shown.get() {
                        Opened::Open => Part::of(room.get()).map_or_else(super::pot::room, inside),
                        Opened::Failed(why) => closed(why.to_string()),
                        _ => opening(),
                    }),
            )
            .child(
                el("nav")
                    .class("edge")
                    .attr("aria-label", "Rooms")
                    .child(Room::ALL.into_iter().map(|r| edge_link(r, room)).views()),
            ),
        converter(converting),
        why_sheet()
    ]
}

fn opening() -> View {
    el("p").class("opening").attr("role", "status").child(|| Workshop::here().opening.get().0).view()
}

/// The book cannot be opened: why, and the way out.
fn closed(why: String) -> View {
    el("div")
        .class("empty")
        .child(el("h1").child("The book cannot be opened"))
        .child(el("p").child(why))
        .child(
            el("button")
                .attr("type", "button")
                .class("main")
                .on("click", move |_| leptos::task::spawn_local(Workshop::here().load()))
                .child("Try again"),
        )
        .view()
}

fn edge_link(this: Room, room: Derived<Room>) -> View {
    let here = move || room.get() == this;
    el("a")
        .attr("href", format!("#{}", this.slug()))
        .flag("here", here)
        .attr("aria-current", move || here().then_some("page"))
        .child(this.name())
        .view()
}

/// Saving, saved, or not saved and why.
fn saved_line(shop: Workshop) -> View {
    let closed = Derived::new(move || matches!(shop.opened().get(), Opened::Failed(_)));
    el("p")
        .attr("class", move || match shop.said().get() {
            Saving::NotSaved(_) => "saved failed",
            _ if closed.get() => "saved failed",
            _ => "saved",
        })
        .attr("role", "status")
        .attr("data-saving", move || match shop.saving().get() {
            Saving::Saved if closed.get() => "closed",
            Saving::Saved => "saved",
            Saving::Saving => "saving",
            Saving::NotSaved(_) => "not-saved",
        })
        .child(move || match shop.said().get() {
            Saving::Saved if closed.get() => "Not open",
            Saving::Saved => "Saved",
            Saving::Saving => "Saving …",
            Saving::NotSaved(_) => "Not saved",
        })
        .view()
}
