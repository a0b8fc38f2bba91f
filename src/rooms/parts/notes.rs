//! Sentences that must be seen: cautions, remarks, what went wrong.

use crate::dom::*;
use crate::pot::Note;

/// A caution: the word beside the colour.
pub fn caution(text: impl Into<String>) -> View {
    el("p").class("note caution").child(el("strong").child("Caution: ")).child(text.into()).view()
}

/// A plain remark.
pub fn sentence(text: impl Into<String>) -> View {
    el("p").class("note").child(text.into()).view()
}

pub fn notes(notes: &[Note]) -> View {
    notes
        .iter()
        .map(|n| if n.caution { caution(n.text.clone()) } else { sentence(n.text.clone()) })
        .views()
        .view()
}
