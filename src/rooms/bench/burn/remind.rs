//! Candles that burn are told of in every room when something is due: who pours does not look at the bench.

use crate::dom::*;
use crate::keep;
use crate::rooms::parts::later;
use crate::rooms::route::Room;
use crate::rooms::workshop::Workshop;
use std::cell::Cell;

/// Milliseconds: a burn of hours is not looked at every second.
const TICK: u64 = 10_000;

thread_local! {
    static BEGUN: Cell<bool> = const { Cell::new(false) };
}

/// Looks after them as long as the page lives; once is enough, whatever book is open.
pub(in crate::rooms) fn begin(shop: Workshop) {
    if !BEGUN.replace(true) {
        shop.page.with(|| look_after(shop));
    }
}

fn look_after(shop: Workshop) {
    let tick = Derived::new(move || shop.now().get() / TICK);
    let here = Derived::new(move || {
        shop.route().with(|r| r.room == Room::Bench && r.rest.first().is_some_and(|place| place == "burn"))
    });
    let burning = Value::new(false);
    let mut told: Vec<String> = Vec::new();
    watch(move || {
        tick.track();
        let found = shop.state_untracked(|s| s.burning_due(keep::now()));
        burning.set(found.is_some());
        let due = found.unwrap_or_default();
        if due.iter().any(|said| !told.contains(said)) && shop.prefs().with_untracked(|p| p.sound) {
            keep::chime();
        }
        told.clone_from(&due);
        // The pages of the trials say it themselves.
        let due = if here.get() { Vec::new() } else { due };
        if shop.reminds.with_untracked(|shown| *shown != due) {
            shop.reminds.set(due);
        }
    });
    // A sound has to be ready before it is wanted, and a browser gives it only at a tap.
    on_window("click", move |_| {
        if burning.get_untracked() && shop.prefs().with_untracked(|p| p.sound) {
            later(0, keep::ready_sound);
        }
    });
}
