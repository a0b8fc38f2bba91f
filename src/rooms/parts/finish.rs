//! The end of a form: what is wrong with it once one has tried, and the buttons.

use super::{press, unkept};
use crate::dom::*;
use crate::rooms::workshop::Workshop;

/// Until it is kept, what was changed by hand in the fields before it is asked for on leaving.
///
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
    let shop = Workshop::here();
    let end = shop.fresh_dom_id();
    unkept::follow();
    let kept = end.clone();
    let press_it = move || {
        let against = save.run(());
        // What the book refused is not kept either.
        if against.is_empty() && untrack(|| !shop.read_only() && shop.refused().with(Option::is_none)) {
            unkept::kept(&kept);
        }
        wrong.set(against);
    };
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
            .attr("id", end)
            .attr(unkept::MARK, "")
            .child(press("main", words, press_it))
            .child(back.map(|to| el("a").class("button").attr("href", to).child("Leave it")))
    ]
}
