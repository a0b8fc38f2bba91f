//! A dose on the screen: number and unit large, what it also comes to beside.

use crate::dom::*;
use crate::pot::Said;

pub(super) fn dose(said: Said) -> View {
    el("span")
        .class("amount")
        .child(el("span").class("figure").child(said.number))
        .child(el("span").class("unit").child(said.unit))
        .child(el("span").class("other").child(said.beside))
        .view()
}
