//! What is done beside the work: photos whose entry never came are taken away, a while after an opening; and candles that
//! burn are looked after.

use super::workshop::{Opened, Workshop};
use crate::keep::{self, photo};
use crate::rooms::parts::later;
use leptos::task::spawn_local;

/// Milliseconds: whoever has opened the book has begun by then.
const LATER: u32 = 20_000;

pub(super) fn begin(shop: Workshop) {
    super::bench::remind(shop);
    let at = shop.attempt.get_untracked();
    later(LATER, move || {
        spawn_local(async move {
            let which = shop.prefs.with_untracked(|p| p.workshop);
            // Where it cannot be done, the next opening tries again.
            let _ = photo::sweep(which, &|| named(shop, at), keep::now()).await;
        });
    });
}

/// The photos that the book names. None where it is another book now; where entries of it may be missing; and where nothing
/// was ever on trial, so that there are no photos.
fn named(shop: Workshop, at: u32) -> Option<Vec<String>> {
    let open = shop.opened.get_untracked() == Opened::Open && shop.attempt.get_untracked() == at;
    let book = shop.book.borrow();
    let journal = book.journal();
    let whole = open && journal.damaged().is_empty() && !journal.state().trials.is_empty();
    whole.then(|| journal.photos())
}
