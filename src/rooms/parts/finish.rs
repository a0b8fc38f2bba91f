//! The end of a form: what is wrong with it once one has tried, and the buttons.

use super::press;
use crate::dom::*;

/// `save` saves and returns nothing, or returns every sentence that says why it cannot. `back` is where leaving goes,
/// none where one stays.
pub fn finish(
    words: &'static str,
    back: Option<&'static str>,
    save: impl Fn() -> Vec<String> + 'static,
) -> View {
    foot(words, back, Callback::new(move |()| untrack(&save)))
}

fn foot(words: &'static str, back: Option<&'static str>, save: Callback<(), Vec<String>>) -> View {
    let wrong = Value::new(Vec::<String>::new());
    group![
        el("div").attr("role", "alert").child(move || {
            wrong
                .get()
                .into_iter()
                .map(|why| el("p").class("note caution").child(el("strong").child("Not saved: ")).child(why))
                .views()
        }),
        el("div")
            .class("actions")
            .child(press("main", words, move || wrong.set(save.run(()))))
            .child(back.map(|to| el("a").class("button").attr("href", to).child("Leave it")))
    ]
}
