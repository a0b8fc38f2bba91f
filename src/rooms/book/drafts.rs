//! What was typed into a form and not saved, kept on this device: leaving the room, or a browser that ends, loses nothing.

use crate::book::{Id, Map};
use crate::keep::{self, Which, local};
use crate::rooms::workshop::Workshop;
use crate::wire::{self, wire_struct};
use crate::{formula, vessel};
use std::cell::{Cell, RefCell};

/// What stands in a form, and the version it was opened over.
#[derive(Clone)]
pub(super) enum Unsaved {
    Formula(formula::Draft, Option<Id>),
    Vessel(vessel::Draft, Option<Id>),
}

/// [`Unsaved`] as it is kept: one of the two is there.
struct Kept {
    formula: Option<formula::Draft>,
    vessel: Option<vessel::Draft>,
    over: Option<Id>,
}

wire_struct!(Kept { formula [skip], vessel [skip], over [skip] });

/// What every key begins with.
const HEAD: &str = "potside.unsaved/";

thread_local! {
    /// By workshop and the form's address in the book.
    static ALL: RefCell<Map<Unsaved>> = RefCell::new(found());
    static ASKING: Cell<bool> = const { Cell::new(false) };
}

/// What was left when the page was here last. What cannot be read stays where it is.
fn found() -> Map<Unsaved> {
    let mut all = Map::default();
    for key in local::keys(HEAD) {
        let kept = local::kept(&key).and_then(|text| wire::read::<Kept>(&text).ok());
        let unsaved = match kept {
            Some(Kept { formula: Some(draft), over, .. }) => Unsaved::Formula(draft, over),
            Some(Kept { vessel: Some(draft), over, .. }) => Unsaved::Vessel(draft, over),
            _ => continue,
        };
        all.add(&Id(key.trim_start_matches(HEAD).to_owned()), unsaved);
    }
    all
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
    let kept = match unsaved.clone() {
        Unsaved::Formula(draft, over) => Kept { formula: Some(draft), vessel: None, over },
        Unsaved::Vessel(draft, over) => Kept { formula: None, vessel: Some(draft), over },
    };
    local::keep(&[HEAD, &key.0].concat(), &wire::write(&kept));
    ALL.with_borrow_mut(|all| match all.get_mut(&key) {
        Some(before) => *before = unsaved,
        None => all.add(&key, unsaved),
    });
    if !ASKING.replace(true) {
        keep::ask_on_leave(|| ALL.with_borrow(|all| !all.is_empty()));
    }
}

pub(super) fn forget(shop: Workshop, address: &str) {
    drop_form(&key(shop, address));
}

fn drop_form(key: &Id) {
    local::forget(&[HEAD, &key.0].concat());
    ALL.with_borrow_mut(|all| all.remove(key));
}

/// The demo is left, with what was typed in it.
pub(crate) fn forget_demo() {
    let forms = ALL.with_borrow(|all| all.iter().map(|(id, _)| id.clone()).collect::<Vec<_>>());
    for id in forms.into_iter().filter(|id| id.0.starts_with("demo/")) {
        drop_form(&id);
    }
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
