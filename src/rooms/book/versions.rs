//! What every kept thing has: its versions, copying it, putting it away.

use super::when;
use crate::book::{Act, Id, Kept};
use crate::rooms::parts::sentence;
use crate::rooms::workshop::Workshop;
use leptos::prelude::*;

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
pub(super) fn standing(history: &History, noun: &'static str) -> AnyView {
    let (shown, count) = (history.shown, history.versions.len());
    let at = history.versions.get(shown.saturating_sub(1)).map(|(_, at)| when(*at)).unwrap_or_default();
    let today = format!("#book/{noun}/{}", history.id);
    view! {
        <p class="muted">{format!("Version {shown} of {count}, {at}")}</p>
        {history.retired.then(|| sentence("This is put away. It is not offered at the Pot; batches made with it keep it."))}
        {(!history.is_latest()).then(|| view! {
            <p class="note">"This is an earlier version. " <a href=today>"See today's version"</a></p>
        })}
    }
    .into_any()
}

/// Change, copy, put away.
pub(super) fn actions(shop: Workshop, history: &History, noun: &'static str, more: AnyView) -> AnyView {
    let History { id, retired, .. } = history.clone();
    let change = history.is_latest().then(|| format!("#book/{noun}/{id}/change"));
    let copy = format!("#book/{noun}/copy/{id}/{}", history.entry());
    let put = move |_| {
        shop.act(Act::Retire { id: id.clone(), retired: !retired });
    };
    view! {
        <div class="actions">
            {more}
            {change.map(|to| view! { <a class="button" href=to>"Change"</a> })}
            <a class="button" href=copy>{format!("Copy to a new {noun}")}</a>
            <button type="button" on:click=put disabled=move || shop.read_only()>
                {if retired { "Take out again" } else { "Put away" }}
            </button>
        </div>
    }
    .into_any()
}

pub(super) fn list(history: &History, noun: &'static str) -> AnyView {
    let line = |(index, (entry, at)): (usize, &(Id, u64))| {
        let n = index + 1;
        let here = n == history.shown;
        let to = format!("#book/{noun}/{}/{entry}", history.id);
        view! {
            <li>
                <a href=to aria-current=here.then_some("true")>
                    <span class="title">{format!("Version {n}")}</span>
                    <span class="detail">{when(*at)}</span>
                    {here.then(|| view! { <span class="tag">"Shown"</span> })}
                </a>
            </li>
        }
    };
    view! {
        <section aria-labelledby="versions-title">
            <h2 id="versions-title">"Versions"</h2>
            <p class="muted">"A change makes a new version; batches made with an earlier one keep it."</p>
            <ul class="list">{history.versions.iter().enumerate().rev().map(line).collect_view()}</ul>
        </section>
    }
    .into_any()
}
