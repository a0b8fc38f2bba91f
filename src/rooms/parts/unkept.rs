//! Forms with something in them that was changed by hand and is not kept yet: leaving one asks first.

use crate::dom::on_window;
use crate::keep;
use std::cell::{Cell, RefCell};
use wasm_bindgen::JsCast;
use web_sys::{Element, Event, Node};

/// What the end of a form bears.
pub(super) const MARK: &str = "data-keeps";

/// A form does not reach beyond one of these.
const PLACES: &str = "section, dialog, main";

const ASKED: &str = "What you changed on this page is not kept yet. Leave it all the same?";

thread_local! {
    /// Changed forms by the ids of their ends. One whose end is gone from the page was left.
    static CHANGED: RefCell<Vec<String>> = const { RefCell::new(Vec::new()) };
    static FOLLOWING: Cell<bool> = const { Cell::new(false) };
}

/// From the first form on: notes what is changed in it, and asks before it is left.
pub(super) fn follow() {
    if FOLLOWING.replace(true) {
        return;
    }
    for event in ["input", "change"] {
        on_window(event, |event| changed(&event));
    }
    keep::ask_on_leave(is_there);
    on_window("click", |event| {
        if leads_away(&event) && is_there() && !keep::confirmed(ASKED) {
            event.prevent_default();
        }
    });
}

/// A field was changed by hand. Only where a form ends after it is there something to keep.
pub(super) fn changed(event: &Event) {
    let Some(end) = source(event).and_then(|field| end_of(&field)) else { return };
    CHANGED.with_borrow_mut(|all| {
        all.retain(|id| keep::element(id).is_some());
        if !all.contains(&end) {
            all.push(end);
        }
    });
}

/// What stands in the form that ends there is kept.
pub(super) fn kept(end: &str) {
    CHANGED.with_borrow_mut(|all| all.retain(|id| id != end));
}

fn is_there() -> bool {
    CHANGED.with_borrow(|all| all.iter().any(|id| keep::element(id).is_some()))
}

fn source(event: &Event) -> Option<Element> {
    event.target()?.dyn_into().ok()
}

/// The end of the form that a field is of: the first after it in the same place.
fn end_of(field: &Element) -> Option<String> {
    let place = |element: &Element| element.closest(PLACES).ok().flatten();
    let here = place(field)?;
    let ends = here.query_selector_all(&["[", MARK, "]"].concat()).ok()?;
    let ends = (0..ends.length()).filter_map(|at| ends.get(at)?.dyn_into::<Element>().ok());
    let after = |end: &Element| field.compare_document_position(end) & Node::DOCUMENT_POSITION_FOLLOWING != 0;
    ends.filter(|end| place(end).as_ref() == Some(&here)).find(after).map(|end| end.id())
}

/// True for a link within the app, but for the one by which a form is left on purpose.
fn leads_away(event: &Event) -> bool {
    let link = source(event).and_then(|at| at.closest("a[href^='#']").ok().flatten());
    link.is_some_and(|link| link.closest(&["[", MARK, "]"].concat()).ok().flatten().is_none())
}
