//! Less than was planned: vessels that stay empty, a pot that is given up, the whole pour stopped.

use super::pouring::Pouring;
use crate::book::Ending;
use crate::dom::*;
use crate::pot::Leaving;
use crate::rooms::parts::{Typed, press, sheet};

/// The vessel that is now, or all that are left of its pour, stays empty.
pub(super) fn empty(p: Pouring, open: Value<bool>) -> View {
    let ways = move || {
        let step = p.card.with(|c| c.as_ref().map(|c| c.step.key));
        step.and_then(|step| p.run(|run| run.leaving(step, p.shop.voice()))).unwrap_or_default()
    };
    let one = move |(n, way): (usize, Leaving)| {
        let words = match (n, way.vessels.len()) {
            (0, _) => "Leave this one empty".to_owned(),
            (_, all) => format!("Leave all {all} empty"),
        };
        let leave = move |_| {
            open.set(false);
            p.leave(way.vessels.clone());
        };
        group![
            el("div")
                .class("actions")
                .child(el("button").attr("type", "button").class("big").on("click", leave).child(words)),
            el("p").child(way.said)
        ]
    };
    let inside = move || {
        group![
            el("p").child(
                "For a glass that cracked, or wax that ran out. Nothing is taken from the stores for it, and it is no candle."
            ),
            ways().into_iter().enumerate().map(one).views(),
            el("p").class("muted").child("One that is only not full: “Enter what went in”.")
        ]
    };
    sheet(move || "Not filled".to_owned(), open, inside)
}

/// The end before the end; of several pots one may be given up and the others go on.
pub(super) fn stop(p: Pouring, note: Typed, open: Value<bool>) -> View {
    let of_pot = move || {
        // Where too much of something went into one of them, it is that one.
        let over = p.pending.with(|over| over.as_ref().and_then(|over| over.step.pour()));
        let pour = over.or_else(|| p.here()).filter(|_| p.run(|run| run.plan.pours.len()) > Some(1))?;
        let vessels = p.run(|run| run.unfilled(pour)).unwrap_or_default();
        let number = pour + 1;
        let give_up = move || {
            open.set(false);
            p.leave(vessels.clone());
        };
        Some(group![
            el("p").child(format!(
                "Or only the pot of pour {number} is lost: its vessels that are not filled stay empty, nothing more is asked \
of it, and the rest of the batch goes on."
            )),
            el("div").class("actions").child(press("", format!("Give up pour {number} only"), give_up))
        ])
    };
    let stop = move || {
        open.set(false);
        p.end(Ending::GivenUp, untrack(|| note.get()));
    };
    let inside = move || {
        group![
            el("p").child(
                "The pour ends here and its record is kept as it stands, marked as stopped: none of its candles stands on the \
shelf. Where some of them are good, leave the other vessels empty instead: “Not filled”, at the vessel. Turn the heat off first if you leave the pot."
            ),
            el("div")
                .class("actions")
                .child(press("main", "Stop this pour", stop))
                .child(press("", "No, go back", move || {
                    open.set(false);
                })),
            of_pot()
        ]
    };
    sheet(move || "Stop this pour?".to_owned(), open, inside)
}
