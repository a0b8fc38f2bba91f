//! The formula form: what it starts from, what it comes to while it is typed, and saving it.

use super::base::{Base, End, behind, draft_kept, end, remarks, written};
use super::drafts::{self, Unsaved};
use super::rows::Form;
use super::{missing, sections};
use crate::book::{Act, Id};
use crate::dom::*;
use crate::formula::{Draft, Formula, Looked, Place};
use crate::rooms::parts::page_head;
use crate::rooms::workshop::Workshop;

/// What a form was opened with.
struct Start {
    draft: Draft,
    /// What it would be unchanged.
    same: Draft,
    /// The version it changes.
    over: Option<(Id, Formula)>,
    name: String,
    resumed: bool,
}

fn start(shop: Workshop, base: &Base, address: &str) -> Option<Start> {
    let voice = shop.voice();
    let version = shop.state_untracked(|s| {
        base.version(base.thing().and_then(|id| s.formulas.get(id)))
            .map(|v| (v.entry.clone(), v.body.clone()))
    });
    let (same, over, name) = match (base, version) {
        (Base::New, _) => (Draft::new(voice), None, String::new()),
        (_, None) => return None,
        (Base::Copy(..), Some((_, body))) => {
            let mut draft = Draft::of(&body, voice);
            draft.name = format!("{} (copy)", body.name);
            (draft, None, body.name)
        }
        (Base::Change(_), Some((entry, body))) => {
            (Draft::of(&body, voice), Some((entry, body.clone())), body.name)
        }
    };
    let (draft, over, resumed) = match drafts::get(shop, address) {
        Some(Unsaved::Formula(draft, opened)) => {
            let over = over.map(|(entry, body)| (opened.unwrap_or(entry), body));
            (draft, over, true)
        }
        _ => (same.clone(), over, false),
    };
    Some(Start { draft, same, over, name, resumed })
}

pub(super) fn room(shop: Workshop, base: Base) -> View {
    let address = base.address("formula");
    let Some(start) = start(shop, &base, &address) else {
        return missing("No formula of this address is in this book.");
    };
    let form = Form::of(&start.draft);
    let draft = Derived::new(move || form.draft());
    let looked = Derived::new(move || shop.state(|s| draft.with(|d| d.look(s, shop.voice()))));
    let same = start.same;
    let changed = Derived::new(move || draft.with(|d| *d != same));
    let over = start.over.as_ref().map(|(entry, _)| entry.clone());
    let opened = over.clone();
    draft_kept(shop, address.clone(), changed, move || Unsaved::Formula(draft.get(), opened.clone()));
    let behind = behind(shop, &base, over, |s, id| Some(s.formulas.get(id)?.latest()?.entry.clone()));
    let tried = Value::new(false);
    let against = Derived::new(move || looked.with(|l| l.against(shop.voice())));
    // What was tried and refused shows its faults: parts with one stand open.
    watch(move || {
        if tried.get() {
            form.touch();
            let wrong = looked.with_untracked(|l| l.problems.clone());
            for (index, row) in form.parts.get_untracked().into_iter().enumerate() {
                if wrong.iter().any(|p| p.place == Place::Part(index)) {
                    row.open.set(true);
                }
            }
        }
    });
    let title = base.title("formula", &start.name);
    let origin = base.origin("formula");
    let save = {
        let (address, over) = (address.clone(), start.over);
        Callback::new(move |()| save(shop, &base, &address, over.clone(), looked))
    };
    group![
        page_head("#book", "Book", title),
        remarks(start.resumed, behind),
        el("form")
            .class("thing")
            .attr("novalidate", true)
            .on("submit", |e| e.prevent_default())
            .child(sections::all(shop, form, looked))
            .child(end(
                shop,
                End { save_words: "Save formula", against, tried, changed, address, origin, save },
            ))
    ]
}

/// An unchanged formula makes no version.
fn save(shop: Workshop, base: &Base, address: &str, over: Option<(Id, Formula)>, looked: Derived<Looked>) {
    let body = looked.with_untracked(|l| l.formula.clone());
    let id = base.id(shop);
    let (over, before) = over.unzip();
    let act = (before.as_ref() != Some(&body)).then(|| Act::Formula { id: id.clone(), over, body });
    written(shop, "formula", address, &id, act);
}
