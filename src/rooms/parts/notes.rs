//! Sentences that must be seen: cautions, remarks, what went wrong.

use crate::pot::Note;
use leptos::prelude::*;

/// A caution: the word beside the colour.
pub fn caution(text: impl Into<String>) -> AnyView {
    view! { <p class="note caution"><strong>"Caution: "</strong>{text.into()}</p> }.into_any()
}

/// A plain remark.
pub fn sentence(text: impl Into<String>) -> AnyView {
    view! { <p class="note">{text.into()}</p> }.into_any()
}

pub fn notes(notes: &[Note]) -> AnyView {
    notes
        .iter()
        .map(|n| if n.caution { caution(n.text.clone()) } else { sentence(n.text.clone()) })
        .collect_view()
        .into_any()
}
