//! What a form starts from: nothing, a copy, or the version that is changed.

use super::drafts::{self, Unsaved};
use crate::book::{Act, Id, Kept, State, Version};
use crate::dom::*;
use crate::rooms::parts::{confirm_sheet, sentence};
use crate::rooms::workshop::Workshop;

#[derive(Clone, PartialEq)]
pub(super) enum Base {
    New,
    /// Of this thing, the version that this entry wrote, or today's where it names none.
    Copy(Id, Id),
    Change(Id),
}

impl Base {
    /// The form's address in the book; `noun` is "formula" or "vessel".
    pub(super) fn address(&self, noun: &str) -> String {
        match self {
            Self::New => format!("{noun}/new"),
            Self::Copy(id, version) => format!("{noun}/copy/{id}/{version}"),
            Self::Change(id) => format!("{noun}/{id}/change"),
        }
    }

    pub(super) fn title(&self, noun: &str, name: &str) -> String {
        match self {
            Self::New => format!("New {noun}"),
            Self::Copy(..) => format!("New {noun}, copied from {name}"),
            Self::Change(_) => format!("Change {name}"),
        }
    }

    /// Where the form is left to without saving.
    pub(super) fn origin(&self, noun: &str) -> String {
        match self {
            Self::New => "#book".to_owned(),
            Self::Copy(id, _) | Self::Change(id) => format!("#book/{noun}/{id}"),
        }
    }

    /// The version it starts from; none where the book has no such thing.
    pub(super) fn version<'a, T>(&self, kept: Option<&'a Kept<T>>) -> Option<&'a Version<T>> {
        match self {
            Self::New => None,
            Self::Copy(_, version) => kept?.version(version).map(|(_, v)| v).or_else(|| kept?.latest()),
            Self::Change(_) => kept?.latest(),
        }
    }

    pub(super) fn thing(&self) -> Option<&Id> {
        match self {
            Self::New => None,
            Self::Copy(id, _) | Self::Change(id) => Some(id),
        }
    }

    /// A new version of the thing that is changed; otherwise a thing of its own.
    pub(super) fn id(&self, shop: Workshop) -> Id {
        match self {
            Self::Change(id) => id.clone(),
            Self::New | Self::Copy(..) => shop.new_id(),
        }
    }
}

/// What is told above a form: typed earlier, or changed elsewhere since.
pub(super) fn remarks(resumed: bool, behind: Derived<bool>) -> View {
    group![
        resumed.then(|| sentence("What you typed here before is still here. It is not saved yet.")),
        move || {
            behind.get().then(|| {
                sentence(
                    "This was changed in another tab or on another device since you opened it. \
Saving keeps both as versions, yours as today's.",
                )
            })
        }
    ]
}

/// The end of a form: what stands against saving, save, throw away.
pub(super) struct End {
    pub(super) save_words: &'static str,
    /// Sentences against saving, shown once it was tried.
    pub(super) against: Derived<Vec<String>>,
    pub(super) tried: Value<bool>,
    pub(super) changed: Derived<bool>,
    pub(super) address: String,
    pub(super) origin: String,
    pub(super) save: Callback<()>,
}

/// Keeps what is typed as a draft while it differs from what is saved.
pub(super) fn draft_kept(
    shop: Workshop,
    address: String,
    changed: Derived<bool>,
    unsaved: impl Fn() -> Unsaved + 'static,
) {
    watch(move || {
        if changed.get() {
            drafts::keep(shop, &address, unsaved());
        } else {
            drafts::forget(shop, &address);
        }
    });
}

/// True once another version was saved than the one the form was opened over.
pub(super) fn behind(
    shop: Workshop,
    base: &Base,
    over: Option<Id>,
    latest: fn(&State, &Id) -> Option<Id>,
) -> Derived<bool> {
    let thing = base.thing().filter(|_| over.is_some()).cloned();
    Derived::new(move || thing.as_ref().is_some_and(|thing| shop.state(|s| latest(s, thing)) != over))
}

/// Writes the form's thing down, if it is not as it was, and goes to its page. What cannot be kept stays as typed.
pub(super) fn written(shop: Workshop, noun: &str, address: &str, id: &Id, act: Option<Act>) {
    if act.is_none_or(|act| shop.act(act)) {
        drafts::forget(shop, address);
        shop.go(&format!("#book/{noun}/{id}"));
    }
}

pub(super) fn end(shop: Workshop, end: End) -> View {
    let End { save_words, against, tried, changed, address, origin, save } = end;
    let throwing = Value::new(false);
    let shown = Derived::new(move || if tried.get() { against.get() } else { Vec::new() });
    let press = move |_| {
        tried.set(true);
        if against.with_untracked(Vec::is_empty) {
            save.run(());
        } else {
            crate::keep::focus_in("against".to_owned());
        }
    };
    let leave = origin.clone();
    let throw = move || {
        drafts::forget(shop, &address);
        shop.go(&origin);
    };
    group![
        el("div").attr("id", "against").class("against").attr("tabindex", "-1").attr("role", "alert").child(
            move || {
                shown.with(|all| {
                    (!all.is_empty()).then(|| {
                        group![
                            el("h2").child("Not saved yet"),
                            el("ul").child(
                                all.iter().map(|s| el("li").class("note caution").child(s.clone())).views(),
                            )
                        ]
                    })
                })
            }
        ),
        move || {
            shop.read_only().then(|| {
                sentence(
                    "This book cannot be written here: a newer Potside wrote it. Update the app \
first; what you typed stays.",
                )
            })
        },
        el("div")
            .class("keep-bar")
            .child(
                el("button")
                    .attr("type", "button")
                    .class("main")
                    .attr("id", "save")
                    .attr("disabled", move || shop.read_only())
                    .on("click", press)
                    .child(save_words),
            )
            .child(move || {
                if changed.get() {
                    el("button")
                        .attr("type", "button")
                        .on("click", move |_| throwing.set(true))
                        .child("Throw away")
                        .view()
                } else {
                    el("a").class("button").attr("href", leave.clone()).child("Back").view()
                }
            })
            .child(el("p").class("detail").attr("role", "status").child(move || if changed.get() {
                "Not saved"
            } else {
                ""
            }),),
        confirm_sheet(
            "Throw away what you typed?",
            "What was saved before stays as it is.",
            "Throw it away",
            throwing,
            throw,
        )
    ]
}
