//! What changes on a page and what is pressed, each compiled once however often it is used: a view is generic in all it
//! holds, so every closure put straight into one weighs a kilobyte or two in the bundle.

use leptos::prelude::*;

/// A part of the page, made anew whenever what it reads changes.
pub fn live(part: impl Fn() -> AnyView + Send + 'static) -> AnyView {
    let part: Box<dyn Fn() -> AnyView + Send> = Box::new(part);
    part.into_any()
}

/// Words that change with what they read.
pub fn words(text: impl Fn() -> String + Send + 'static) -> AnyView {
    let text: Box<dyn Fn() -> String + Send> = Box::new(text);
    text.into_any()
}

/// A button; `class` is "main", "quiet", "danger" or nothing.
pub fn press(
    class: &'static str,
    words: impl Into<String>,
    then: impl Fn() + Send + Sync + 'static,
) -> AnyView {
    button(class, words.into(), Callback::new(move |()| then()))
}

fn button(class: &'static str, words: String, then: Callback<()>) -> AnyView {
    view! { <button type="button" class=class on:click=move |_| then.run(())>{words}</button> }.into_any()
}
