//! A copy of the book as a file: given out, and opened to take in what is not here yet.

use crate::book::{Copy, CopyError, read_copy};
use crate::keep::{self, Which};
use crate::rooms::parts::{live, press, words};
use crate::rooms::workshop::Workshop;
use leptos::prelude::*;
use leptos::task::spawn_local;
use web_sys::HtmlInputElement;

/// What was opened: a copy to look at, or why it cannot be.
type Opened = Option<Result<Copy, CopyError>>;

pub(super) fn body(shop: Workshop) -> AnyView {
    if shop.which() == Which::Demo {
        return view! { <p>"This is the demo's book. Copies are made of your own: leave the demo first."</p> }.into_any();
    }
    view! { {give(shop)} {open(shop)} }.into_any()
}

fn give(shop: Workshop) -> AnyView {
    let said = RwSignal::new(String::new());
    let give = move || {
        let which = untrack(|| shop.which());
        spawn_local(async move {
            let name = ["potside-book-", &keep::file_day(), ".json"].concat();
            said.set(match keep::load(which).await {
                Ok(lines) => {
                    let count = lines.len();
                    let text = lines.join("\n") + "\n";
                    if keep::download(&name, &text) {
                        format!("{name} with {count} entries is among your downloads. Put it where this device is not.")
                    } else {
                        "This browser does not give out files here. Open Potside in an ordinary window, then try again."
                            .to_owned()
                    }
                }
                Err(why) => why.to_string(),
            });
        });
    };
    view! {
        <h3>"A copy to keep"</h3>
        <p>
            "The copy is a plain text file: one entry a line, as it is stored, each with its own checksum. Everything is in it but
            what this device prefers."
        </p>
        <div class="actions">{press("", "Download a copy", give)}</div>
        <p role="status">{words(move || said.get())}</p>
    }
    .into_any()
}

fn open(shop: Workshop) -> AnyView {
    let opened = RwSignal::new(Opened::None);
    let taken = RwSignal::new(None::<usize>);
    let id = shop.fresh_dom_id();
    let choose = move |e| {
        let input: HtmlInputElement = event_target(&e);
        spawn_local(async move {
            let Some(text) = keep::chosen(&input).await else { return };
            taken.set(None);
            opened.set(Some(text.and_then(|t| untrack(|| shop.journal(|j| read_copy(&t, j))))));
        });
    };
    view! {
        <h3>"Open a copy"</h3>
        <p>"Nothing here is replaced: entries that are not here yet are added, those that are here stay as they are."</p>
        <div class="actions">
            <input type="file" class="file" id=id.clone() accept=".json,application/json,text/plain" on:change=choose />
            <label class="button" for=id>"Choose a copy"</label>
        </div>
        <div role="status">
            {live(move || opened.with(|o| match o {
                None => ().into_any(),
                Some(Err(why)) => view! { <p class="note caution"><strong>"Not opened: "</strong>{why.to_string()}</p> }.into_any(),
                Some(Ok(copy)) => found(shop, copy, opened, taken),
            }))}
            {words(move || match taken.get() {
                None => String::new(),
                Some(1) => "1 entry was taken in.".to_owned(),
                Some(n) => format!("{n} entries were taken in."),
            })}
        </div>
    }
    .into_any()
}

/// What the copy would bring, and the button that takes it in.
fn found(shop: Workshop, copy: &Copy, opened: RwSignal<Opened>, taken: RwSignal<Option<usize>>) -> AnyView {
    let fresh = copy.fresh.len();
    let take = move || {
        if let Some(Ok(copy)) = opened.get_untracked() {
            let fresh = copy.fresh.len();
            if !shop.take_in(copy.fresh) {
                return;
            }
            taken.set(Some(fresh));
        }
        opened.set(None);
    };
    let left_out = copy.damaged.iter().map(|(line, why)| view! { <li>{format!("Line {line}: {why}")}</li> });
    let left_out = (!copy.damaged.is_empty()).then(|| {
        view! {
            <details>
                <summary>{format!("Left out: {}", copy.damaged.len())}</summary>
                <ul class="left-out">{left_out.collect_view()}</ul>
            </details>
        }
    });
    view! {
        <p class="found">{copy.say()}</p>
        {left_out}
        <div class="actions">
            {(fresh > 0).then(|| press("main", "Take them in", take))}
            {press("", "Leave it", move || opened.set(None))}
        </div>
    }
    .into_any()
}
