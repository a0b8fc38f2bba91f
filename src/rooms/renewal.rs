//! After an update: the bundle of a large book is made anew before the book is opened from it.

use super::bundling::pause;
use super::workshop::Workshop;
use crate::book::bundle::Renewing;
use crate::keep::bundle::Trust;
use crate::keep::{self, bundle};

/// Milliseconds: while the book is opened a piece takes no longer than that; and so often it is begun to make it anew: were
/// it what ends the page, it would do so each time.
const TURN: u64 = 50;
const TIMES: u8 = 3;
const NEW: &str = "Opening the book … Potside was updated, and goes through all of it this once.";

/// Makes of the bundle of another build that of this one, a piece at a time, and keeps it. None where it does not come to an
/// end: then the lines are read.
pub(super) async fn renewed(shop: Workshop, at: u32, mut old: Box<Renewing>) -> Option<Vec<u8>> {
    let times = if let Trust::Begun(times) = bundle::trust() { times } else { 0 };
    if times >= TIMES {
        bundle::forget_bundle();
        return None;
    }
    bundle::set_trust(Trust::Begun(times + 1));
    let began = keep::now();
    loop {
        let start = keep::now();
        while keep::now().saturating_sub(start) < TURN {
            if old.go_on()? {
                continue;
            }
            let bytes = old.finish(&bundle::build())?;
            // One that cannot be kept is made anew the next time.
            let _ = bundle::keep_bundle(&bytes, Trust::Entries).await;
            bundle::set_trust(Trust::Entries);
            return Some(bytes);
        }
        pause(0).await;
        if !shop.goes_on(at, began, NEW) {
            // Left for the other workshop.
            bundle::set_trust(Trust::Entries);
            return None;
        }
    }
}
