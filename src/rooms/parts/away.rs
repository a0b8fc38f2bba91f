//! What is put away, and taking it out again.

use super::press;
use crate::book::{Act, Id, Kept, Map};
use crate::dom::*;
use crate::rooms::workshop::Workshop;

/// Things put away, each with the button that takes it out again. Nothing where there are none.
pub fn away(shop: Workshop, away: Vec<(Id, String)>) -> View {
    if away.is_empty() {
        return ().view();
    }
    let one = |(id, name): (Id, String)| {
        let words = format!("Use {name} again");
        let out = move || {
            shop.act(Act::Retire { id: id.clone(), retired: false });
        };
        el("li").class("row").child(el("span").child(name)).child(press("quiet", words, out))
    };
    el("details")
        .class("put-away")
        .child(el("summary").child(format!("Put away ({})", away.len())))
        .child(el("ul").class("list").child(away.into_iter().map(one).views()))
        .view()
}

/// What is put away of these, by name.
pub fn retired<T>(things: &Map<Kept<T>>, name: fn(&T) -> &String) -> Vec<(Id, String)> {
    let names =
        things.values().filter(|k| k.retired).filter_map(|k| Some((k.id.clone(), name(k.body()?).clone())));
    names.collect()
}
