//! What was typed into a form and not saved, kept while the page lives, so that leaving the room loses nothing.

use crate::book::{Id, Map};
use crate::keep::{self, Which};
use crate::rooms::workshop::Workshop;
use crate::{formula, vessel};
use std::cell::{Cell, RefCell};

/// What stands in a form, and the version it was opened over.
#[derive(Clone)]
pub(super) enum Unsaved {
    Formula(formula::Draft, Option<Id>),
    Vessel(vessel::Draft, Option<Id>),
}

thread_local! {
    /// By workshop and the form's address in the book.
    static ALL: RefCell<Map<Unsaved>> = RefCell::default();
    static ASKING: Cell<bool> = const { Cell::new(false) };
}

fn workshop(shop: Workshop) -> &'static str {
    if shop.which() == Which::Demo { "demo/" } else { "own/" }
}

fn key(shop: Workshop, address: &str) -> Id {
    Id([workshop(shop), address].concat())
}

pub(super) fn get(shop: Workshop, address: &str) -> Option<Unsaved> {
    ALL.with_borrow(|all| all.get(&key(shop, address)).cloned())
}

/// From now on leaving the page asks first.
pub(super) fn keep(shop: Workshop, address: &str, unsaved: Unsaved) {
    let key = key(shop, address);
    ALL.with_borrow_mut(|all| match all.get_mut(&key) {
        Some(before) => *before = unsaved,
        None => all.add(&key, unsaved),
    });
    if !ASKING.replace(true) {
        keep::ask_on_leave(|| ALL.with_borrow(|all| !all.is_empty()));
    }
}

pub(super) fn forget(shop: Workshop, address: &str) {
    ALL.with_borrow_mut(|all| all.remove(&key(shop, address)));
}

/// Each form of this workshop with something unsaved in it: its address and the name typed there.
pub(super) fn all(shop: Workshop) -> Vec<(String, String)> {
    let here = workshop(shop);
    let name = |unsaved: &Unsaved| match unsaved {
        Unsaved::Formula(draft, _) => draft.name.trim().to_owned(),
        Unsaved::Vessel(draft, _) => draft.name.trim().to_owned(),
    };
    ALL.with_borrow(|all| {
        all.iter()
            .filter_map(|(id, unsaved)| Some((id.0.strip_prefix(here)?.to_owned(), name(unsaved))))
            .collect()
    })
}
