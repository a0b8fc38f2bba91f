//! What changes on a page and what is pressed.

use crate::dom::*;
use crate::keep;

/// A part of the page, made anew whenever what it reads changes.
pub fn live(part: impl Fn() -> View + 'static) -> View {
    part.view()
}

/// Words that change with what they read.
pub fn words(text: impl Fn() -> String + 'static) -> View {
    text.view()
}

/// A button; `class` is "main", "quiet", "danger" or nothing.
pub fn press(class: &'static str, words: impl Into<String>, then: impl Fn() + 'static) -> View {
    el("button").attr("type", "button").class(class).on("click", move |_| then()).child(words.into()).view()
}

/// Does this after so many milliseconds. Boxed, since each kind of closure that the browser calls is fetched with the
/// first screen.
pub fn later(milliseconds: u32, then: impl FnOnce() + 'static) {
    let then: Box<dyn FnOnce()> = Box::new(then);
    keep::after(milliseconds, then);
}
