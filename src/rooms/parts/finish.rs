//! The end of a form: what is wrong with it once one has tried, and the buttons.

use leptos::prelude::*;

/// `save` saves and returns nothing, or returns every sentence that says why it cannot. `back` is where leaving goes,
/// none where one stays.
pub fn finish(
    words: &'static str,
    back: Option<&'static str>,
    save: impl Fn() -> Vec<String> + Send + Sync + 'static,
) -> AnyView {
    foot(words, back, Callback::new(move |()| untrack(&save)))
}

fn foot(words: &'static str, back: Option<&'static str>, save: Callback<(), Vec<String>>) -> AnyView {
    let wrong = RwSignal::new(Vec::<String>::new());
    view! {
        <div role="alert">
            {move || wrong.get().into_iter().map(|why| view! {
                <p class="note caution"><strong>"Not saved: "</strong>{why}</p>
            }).collect_view()}
        </div>
        <div class="actions">
            <button type="button" class="main" on:click=move |_| wrong.set(save.run(()))>{words}</button>
            {back.map(|to| view! { <a class="button" href=to>"Leave it"</a> })}
        </div>
    }
    .into_any()
}
