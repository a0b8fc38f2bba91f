//! The Book room: formulas with their versions, vessels, past pours; find, make, change, copy, put away.

mod base;
mod batch;
mod drafts;
mod fork;
mod formula;
mod formula_form;
mod list;
mod part_form;
mod past;
mod rows;
mod sections;
mod versions;
mod vessel;
mod vessel_form;

use super::parts::{page_head, paged};
use super::workshop::Workshop;
use crate::book::Id;
use crate::dom::*;
use crate::keep::when;
use base::Base;
pub(super) use drafts::forget_demo;
pub(super) use fork::device;

/// What the address asks for: `#book/formula/new`, `#book/formula/ID`, `#book/formula/ID/change`,
/// `#book/formula/ID/VERSION`, `#book/formula/copy/ID/VERSION`; vessels alike; `#book/batch/ID`; `#book/done` and
/// `#book/history/ID` are what was done.
pub(super) fn room() -> View {
    el("div").class("book").child(paged(inside)).view()
}

fn inside(shop: Workshop, rest: &[String]) -> View {
    let at = |n: usize| rest.get(n).map_or("", String::as_str);
    let id = |n: usize| Id(at(n).to_owned());
    match (at(0), at(1), at(2)) {
        ("formula", "new", _) => formula_form::room(shop, Base::New),
        ("formula", "copy", _) => formula_form::room(shop, Base::Copy(id(2), id(3))),
        ("formula", _, "change") => formula_form::room(shop, Base::Change(id(1))),
        ("formula", thing, version) if !thing.is_empty() => formula::room(shop, id(1), version),
        ("vessel", "new", _) => vessel_form::room(shop, Base::New),
        ("vessel", "copy", _) => vessel_form::room(shop, Base::Copy(id(2), id(3))),
        ("vessel", _, "change") => vessel_form::room(shop, Base::Change(id(1))),
        ("vessel", thing, version) if !thing.is_empty() => vessel::room(shop, id(1), version),
        ("batch", batch, _) if !batch.is_empty() => batch::room(shop, id(1)),
        ("history", thing, _) if !thing.is_empty() => past::of(shop, id(1)),
        ("done", ..) => past::everything(shop),
        _ => list::room(shop),
    }
}

/// The address names nothing that is in this book.
fn missing(what: &'static str) -> View {
    group![page_head("#book", "Book", "Not in this book".to_owned()), el("p").class("empty").child(what)]
}
