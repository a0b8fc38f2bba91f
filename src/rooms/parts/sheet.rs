//! A sheet over the room, closed back to where one was. The browser's own dialog keeps the focus in it.

use super::{live, words};
use leptos::html::Dialog;
use leptos::prelude::*;

/// Shows `body` over the room while `open` is true. Escape, the button and `open` itself close it.
pub fn sheet(
    title: impl Fn() -> String + Send + Sync + 'static,
    open: RwSignal<bool>,
    body: impl Fn() -> AnyView + Send + Sync + 'static,
) -> AnyView {
    over(words(title), open, live(move || if open.get() { body() } else { ().into_any() }))
}

fn over(title: AnyView, open: RwSignal<bool>, body: AnyView) -> AnyView {
    let dialog: NodeRef<Dialog> = NodeRef::new();
    Effect::new(move |_| {
        let Some(dialog) = dialog.get() else { return };
        if open.get() {
            if !dialog.open() && dialog.show_modal().is_err() {
                dialog.set_open(true);
            }
        } else if dialog.open() {
            dialog.close();
        }
    });
    let id = crate::rooms::workshop::Workshop::here().fresh_dom_id();
    let heading = id.clone();
    view! {
        <dialog class="sheet" node_ref=dialog aria-labelledby=heading on:close=move |_| open.set(false)>
            <header>
                <h2 id=id>{title}</h2>
                <button type="button" class="quiet" on:click=move |_| open.set(false)>"Close"</button>
            </header>
            {body}
        </dialog>
    }
    .into_any()
}

/// Asks before something that takes effect widely.
pub fn confirm_sheet(
    title: &'static str,
    says: &'static str,
    yes: &'static str,
    open: RwSignal<bool>,
    then: impl Fn() + Send + Sync + Clone + 'static,
) -> AnyView {
    sheet(
        move || title.to_owned(),
        open,
        move || {
            let then = then.clone();
            view! {
                <p>{says}</p>
                <div class="actions">
                    <button type="button" class="main" on:click=move |_| { open.set(false); then(); }>{yes}</button>
                    <button type="button" on:click=move |_| open.set(false)>"No, go back"</button>
                </div>
            }
            .into_any()
        },
    )
}
