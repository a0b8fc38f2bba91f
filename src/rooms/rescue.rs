//! Storage that the browser has cleared while the book was open: all of the book is stored again from memory.

use super::workshop::Workshop;
use crate::book::{Again, Saving, StoreError};
use crate::keep::{self, Which, local, photo};
use std::pin::Pin;

/// What this module does: Ok once all of the book is stored but for what waits to be stored. The flight is that of the
/// append which found that lines may be gone.
pub(super) type Rescue = fn(Workshop, Option<u64>) -> Pin<Box<dyn Future<Output = Result<(), StoreError>>>>;

pub(super) const RESCUE: Rescue = |shop, flight| Box::pin(rescue(shop, flight));

/// Stands in the local storage until all is stored: where the page ends before, a bundle has what is not.
pub(super) const BEGUN: &str = "potside-rescue";

async fn rescue(shop: Workshop, flight: Option<u64>) -> Result<(), StoreError> {
    if shop.rescuing.get_untracked() {
        return Err(StoreError::Cleared);
    }
    shop.rescuing.set(true);
    let outcome = stored(shop, flight).await;
    shop.rescuing.set(false);
    if flight.is_none() {
        match &outcome {
            // What was done meanwhile waits.
            Ok(()) => shop.store(),
            Err(why) => shop.saving.set(Saving::NotSaved(why.clone())),
        }
    }
    outcome
}

async fn stored(shop: Workshop, flight: Option<u64>) -> Result<(), StoreError> {
    let which = shop.prefs.with_untracked(|p| p.workshop);
    let mut again = None;
    let mut said = false;
    let outcome = keep::bring_back(which, &mut |most, has| {
        let mut book = shop.book.borrow_mut();
        let again = again.get_or_insert_with(|| Again::of(book.journal(), keep::is_gone(which)));
        let lines = again.next(book.journal(), most, &|key| has(key) || book.waits(key))?;
        if !lines.is_empty() && !said {
            said = true;
            if let Some(flight) = flight {
                book.answered(flight, Err(StoreError::Cleared));
            }
            drop(book);
            if which == Which::Own {
                local::keep(BEGUN, "1");
            }
            shop.saving.set(Saving::NotSaved(StoreError::Cleared));
            shop.say();
        }
        Some(lines)
    })
    .await;
    match outcome {
        Ok(number) => {
            local::forget(BEGUN);
            // Nobody misses what the demo had.
            if number > 0 && which == Which::Own {
                let named = shop.book.borrow().journal().photos();
                let lacking = photo::bring_back(which, &named).await.unwrap_or(named.len());
                shop.cleared.set(Some(sentence(lacking)));
            }
            Ok(())
        }
        Err(why) => {
            // The append was answered, so it is told here.
            if said && flight.is_some() {
                shop.book.borrow_mut().stored(Err(why.clone()));
            }
            Err(why)
        }
    }
}

fn sentence(lacking: usize) -> String {
    let photos = match lacking {
        0 => String::new(),
        1 => " 1 photo could not be brought back: a copy that has it brings it.".to_owned(),
        n => [" ", &n.to_string(), " photos could not be brought back: a copy that has them brings them."]
            .concat(),
    };
    [
        "The browser had cleared the storage of this page while it was open. The book was still in memory, and all of it was \
         stored again.",
        &photos,
        " Download a copy now: the browser may clear it again.",
    ]
    .concat()
}
