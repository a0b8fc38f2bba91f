//! The burns of a candle that are over, each with what may still be written of it.

use super::light::weight;
use crate::bench::burn::{Course, Session, Trial, burn_line};
use crate::book::{Act, Id};
use crate::dom::*;
use crate::keep;
use crate::rooms::parts::press;
use crate::rooms::workshop::Workshop;

pub(super) fn list(shop: Workshop, id: &Id, trial: &Trial, course: &Course) -> View {
    let over = course.sessions.iter().filter(|s| s.out.is_some());
    // What the last one weighs is asked above.
    let asked = course.sessions.last().filter(|_| course.unweighed()).map(|s| s.lit);
    el("ul").class("list").child(over.map(|s| burn(shop, id, trial, s, asked == Some(s.lit))).views()).view()
}

fn burn(shop: Workshop, id: &Id, trial: &Trial, session: &Session, asked: bool) -> View {
    let missed = shop.state_untracked(|s| s.missed(id, session.lit)).map(|entry| {
        press("quiet", "Take this burn back", move || {
            shop.act(Act::Undo { entry: entry.clone() });
        })
    });
    let words = if session.after.is_none() { "Write its weight down" } else { "Put its weight right" };
    let weight = (!asked).then(|| {
        let weight = weight(shop, id.clone(), trial, Some(session.mass), Some(session.lit));
        el("details").child(el("summary").child(words)).child(weight)
    });
    el("li")
        .child(
            el("p")
                .class("row")
                .child(el("span").child(keep::when(session.lit)))
                .child(el("span").class("detail").child(burn_line(session, shop.voice()))),
        )
        .child(weight)
        .child(missed)
        .view()
}
