//! What every kept thing has: its versions, copying it, putting it away.

use super::when;
use crate::book::{Act, Id, Kept};
use crate::dom::*;
use crate::rooms::parts::{past, sentence};
use crate::rooms::workshop::Workshop;

/// The version shown and the others, without what they say.
#[derive(Clone, PartialEq)]
pub(super) struct History {
    pub(super) id: Id,
    pub(super) retired: bool,
    /// Each version's entry and when it was written, oldest first.
    versions: Vec<(Id, u64)>,
    /// Counted from 1.
    shown: usize,
}

impl History {
    /// `version` names an entry; anything else is today's version.
    pub(super) fn of<T>(kept: &Kept<T>, version: &str) -> (Self, Option<T>)
    where
        T: Clone,
    {
        let named = kept.version(&Id(version.to_owned())).map(|(n, v)| (n, v.body.clone()));
        let (shown, body) = match named {
            Some((n, body)) => (n, Some(body)),
            None => (kept.versions.len(), kept.body().cloned()),
        };
        let versions = kept.versions.iter().map(|v| (v.entry.clone(), v.at)).collect();
        (Self { id: kept.id.clone(), retired: kept.retired, versions, shown }, body)
    }

    pub(super) fn is_latest(&self) -> bool {
        self.shown == self.versions.len()
    }

    fn entry(&self) -> &str {
        self.versions.get(self.shown.saturating_sub(1)).map_or("", |(id, _)| &id.0)
    }
}

/// Under the name: which version this is.
pub(super) fn standing(history: &History, noun: &'static str) -> View {
    let (shown, count) = (history.shown, history.versions.len());
    let at = history.versions.get(shown.saturating_sub(1)).map(|(_, at)| when(*at)).unwrap_or_default();
    let today = format!("#book/{noun}/{}", history.id);
    group![
        el("p").class("muted").child(format!("Version {shown} of {count}, {at}")),
        history.retired.then(|| {
            sentence("This is put away. It is not offered at the Pot; batches made with it keep it.")
        }),
        (!history.is_latest()).then(|| {
            el("p")
                .class("note")
                .child("This is an earlier version. ")
                .child(el("a").attr("href", today).child("See today's version"))
        })
    ]
}

/// Change, copy, put away.
pub(super) fn actions(shop: Workshop, history: &History, noun: &'static str, more: View) -> View {
    let History { id, retired, .. } = history.clone();
    let change = history.is_latest().then(|| format!("#book/{noun}/{id}/change"));
    let copy = format!("#book/{noun}/copy/{id}/{}", history.entry());
    let put = move |_| {
        shop.act(Act::Retire { id: id.clone(), retired: !retired });
    };
    el("div")
        .class("actions")
        .child(more)
        .child(change.map(|to| el("a").class("button").attr("href", to).child("Change")))
        .child(el("a").class("button").attr("href", copy).child(format!("Copy to a new {noun}")))
        .child(
            el("button")
                .attr("type", "button")
                .on("click", put)
                .attr("disabled", move || shop.read_only())
                .child(if retired { "Take out again" } else { "Put away" }),
        )
        .view()
}

pub(super) fn list(shop: Workshop, history: &History, noun: &'static str) -> View {
    let line = |(index, (entry, at)): (usize, &(Id, u64))| {
        let n = index + 1;
        let here = n == history.shown;
        let to = format!("#book/{noun}/{}/{entry}", history.id);
        el("li").child(
            el("a")
                .attr("href", to)
                .attr("aria-current", here.then_some("true"))
                .child(el("span").class("title").child(format!("Version {n}")))
                .child(el("span").class("detail").child(when(*at)))
                .child(here.then(|| el("span").class("tag").child("Shown"))),
        )
    };
    el("section")
        .attr("aria-labelledby", "versions-title")
        .child(el("h2").attr("id", "versions-title").child("Versions"))
        .child(
            el("p")
                .class("muted")
                .child("A change makes a new version; batches made with an earlier one keep it."),
        )
        .child(el("ul").class("list").child(history.versions.iter().enumerate().rev().map(line).views()))
        .child(past(shop, &history.id))
        .view()
}
