//! What is fetched when it is first wanted: the app starts with its frame and the room one comes to; the other rooms, the
//! converter and the demo come after it.

use super::bundling::{self, Bundling};
use super::parts::{Typed, press};
use super::rescue::{self, Rescue};
use super::route::Room;
use super::workshop::Workshop;
use super::{bench, book, converter, desk, pot, shelf, stores, sweep};
use crate::apart::{Missing, apart};
use crate::book::{StoreError, demo};
use crate::day::Zone;
use crate::dom::*;
use crate::keep;
use js_sys::Promise;
use leptos::task::spawn_local;
use std::cell::Cell;

/// What makes a page.
type Make = fn() -> View;
type Demo = fn(&str, u64, Zone, fn() -> u32) -> Vec<(String, String)>;
type Sweep = fn(Workshop);
type Convert = fn(Workshop, Typed, Value<String>) -> View;

apart!(pot, the_asking, Make, pot::ask);
apart!(pour, the_pour, Make, pot::pour);
apart!(pour, the_record, Make, pot::named);
apart!(shelves, the_shelf, Make, shelf::room);
apart!(shelves, the_stores, Make, stores::room);
apart!(shelves, the_book, Make, book::room);
apart!(works, the_bench, Make, bench::room);
apart!(works, the_desk, Make, desk::room);
apart!(works, the_demo, Demo, demo);
apart!(works, the_sweep, Sweep, sweep::begin);
apart!(works, the_rescue, Rescue, rescue::RESCUE);
apart!(pot, the_converter, Convert, converter::body);
apart!(bundle, the_bundling, Bundling, bundling::BUNDLING);

/// A page that is not in the first module.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Part {
    Ask,
    Pour,
    Record,
    Shelf,
    Stores,
    Book,
    Bench,
    Desk,
}

impl Part {
    const ALL: [Self; 8] =
        [Self::Ask, Self::Pour, Self::Record, Self::Shelf, Self::Stores, Self::Book, Self::Bench, Self::Desk];

    /// The page of a room, where it is one part.
    pub const fn of(room: Room) -> Option<Self> {
        match room {
            Room::Pot => None,
            Room::Shelf => Some(Self::Shelf),
            Room::Stores => Some(Self::Stores),
            Room::Bench => Some(Self::Bench),
            Room::Book => Some(Self::Book),
            Room::Desk => Some(Self::Desk),
        }
    }

    /// What one most likely wants first in a room.
    pub fn first_of(room: Room) -> Self {
        Self::of(room).unwrap_or(Self::Ask)
    }

    async fn fetched(self) -> Result<Make, Missing> {
        match self {
            Self::Ask => the_asking().await,
            Self::Pour => the_pour().await,
            Self::Record => the_record().await,
            Self::Shelf => the_shelf().await,
            Self::Stores => the_stores().await,
            Self::Book => the_book().await,
            Self::Bench => the_bench().await,
            Self::Desk => the_desk().await,
        }
    }

    fn there(self) -> Option<Make> {
        THERE.get().get(self as usize).copied().flatten()
    }
}

thread_local! {
    static THERE: Cell<[Option<Make>; Part::ALL.len()]> = const { Cell::new([None; Part::ALL.len()]) };
}

/// Has a part at hand.
pub(super) async fn fetch(part: Part) -> Result<Make, Missing> {
    if let Some(make) = part.there() {
        return Ok(make);
    }
    let make = part.fetched().await?;
    let mut all = THERE.get();
    if let Some(place) = all.get_mut(part as usize) {
        *place = Some(make);
    }
    THERE.set(all);
    Ok(make)
}

/// Has every part at hand, so that none is waited for; then what is done beside the work begins.
pub(super) async fn fetch_all(shop: Workshop) {
    for part in Part::ALL {
        // One that cannot be fetched now is asked for again when it is wanted, and says so then.
        let _ = fetch(part).await;
    }
    if let Ok(sweep) = the_sweep().await {
        sweep(shop);
    }
}

/// A part: at once where it is at hand.
pub(super) fn inside(part: Part) -> View {
    if let Some(make) = part.there() {
        return untrack(make);
    }
    when_there(move || fetch(part), |make| make())
}

/// What the converter shows.
pub(super) fn convert(shop: Workshop, typed: Typed, of: Value<String>) -> View {
    when_there(the_converter, move |body| body(shop, typed, of))
}

/// A part of a page whose module is on the way.
fn when_there<T, F>(fetch: impl Fn() -> F + Copy + 'static, page: impl Fn(T) -> View + 'static) -> View
where
    T: Copy + 'static,
    F: Future<Output = Result<T, Missing>> + 'static,
{
    let come = Value::new(None);
    let ask = move || {
        spawn_local(async move {
            come.set(Some(fetch().await.ok()));
        });
    };
    ask();
    (move || match come.get() {
        None => ().view(),
        Some(Some(there)) => untrack(|| page(there)),
        Some(None) => el("div")
            .class("empty")
            .child(el("h2").child("This is not here yet"))
            .child(
                el("p")
                    .child("A part of Potside could not be fetched. Check the connection, then try again."),
            )
            .child(press("main", "Try again", ask))
            .view(),
    })
    .view()
}

/// Opens a large book at once from the bundle that was asked for, if one was, and looks after its bundle. False where that
/// cannot be.
pub(super) async fn bundling(shop: Workshop, asked: Option<Promise>) -> bool {
    match the_bundling().await {
        Ok(bundling) => bundling(shop, asked).await,
        Err(_) => false,
    }
}

/// Stores all of the book again where what was stored of it may be gone.
pub(super) async fn rescue(shop: Workshop, flight: Option<u64>) -> Result<(), StoreError> {
    match the_rescue().await {
        Ok(rescue) => rescue(shop, flight).await,
        Err(_) => Err(StoreError::Cleared),
    }
}

/// The lines of a demo workshop; none where they cannot be fetched.
pub(super) async fn demo_lines() -> Option<Vec<(String, String)>> {
    let demo = the_demo().await.ok()?;
    Some(demo(&keep::device(), keep::now(), keep::ZONE, keep::random))
}
