//! The burns of a candle, each with what was seen of it; of those that are over, with what may still be written of them.

use super::light::weight;
use crate::bench::burn::{Course, Session, Sighting, Trial, burn_line, scales, sightings};
use crate::book::{Act, Id, Unburnt};
use crate::dom::*;
use crate::keep;
use crate::rooms::parts::press;
use crate::rooms::workshop::Workshop;

pub(super) fn list(shop: Workshop, id: &Id, trial: &Trial, course: &Course) -> View {
    let over = course.sessions.iter().filter(|s| s.out.is_some());
    // What the last one weighs is asked above.
    let asked = course.sessions.last().filter(|_| course.unweighed()).map(|s| s.lit);
    let seen = |s: &Session| !sightings(s, shop.voice()).is_empty();
    group![
        el("ul")
            .class("list")
            .child(over.map(|s| burn(shop, id, trial, s, asked == Some(s.lit))).views())
            .child(course.burning().filter(|s| seen(s)).map(|s| alight(shop, s))),
        course.sessions.iter().any(seen).then(|| el("p").class("why-line").child(scales()))
    ]
}

fn head(session: &Session, said: String) -> View {
    el("p")
        .class("row")
        .child(el("span").child(keep::when(session.lit)))
        .child(el("span").class("detail").child(said))
        .view()
}

/// The one that is on.
fn alight(shop: Workshop, session: &Session) -> View {
    el("li").child(head(session, "burns now".to_owned())).child(looks(shop, session)).view()
}

/// What was seen of it, a line for each look.
fn looks(shop: Workshop, session: &Session) -> View {
    let one = |Sighting { when, said, note }| {
        el("li")
            .child(el("strong").child([&when, ": "].concat()))
            .child(said)
            .child((!note.is_empty()).then(|| el("span").class("noted").child([" “", &note, "”"].concat())))
    };
    let all = sightings(session, shop.voice());
    el("ul").class("looks").child(all.into_iter().map(one).views()).view()
}

fn burn(shop: Workshop, id: &Id, trial: &Trial, session: &Session, asked: bool) -> View {
    let (own, lit) = (id.clone(), session.lit);
    let back = press("quiet", "Take this burn back", move || {
        let entries = shop.state_untracked(|s| s.entries_of_burn(&own, lit));
        shop.act_all(entries.into_iter().map(|entry| Act::Undo { entry }));
    });
    let words = if session.after.is_none() { "Write its weight down" } else { "Put its weight right" };
    let weight = (!asked).then(|| {
        let weight = weight(shop, id.clone(), trial, Some(session.mass), Some(session.lit));
        el("details").child(el("summary").child(words)).child(weight)
    });
    el("li")
        .child(head(session, burn_line(session, shop.voice())))
        .child(looks(shop, session))
        .child(weight)
        .child(back)
        .view()
}

/// The burn that was taken back last, and what brings it back.
pub(super) fn taken_back(shop: Workshop, id: &Id) -> Option<View> {
    let Unburnt { burn, undos } = shop.journal(|j| j.unburnt(id))?;
    let said =
        ["The burn of ", &keep::when(burn.lit), " was taken back, with all that belongs to it."].concat();
    let bring = move || {
        shop.act_all(undos.iter().map(|undo| Act::Undo { entry: undo.clone() }));
    };
    Some(group![
        el("p").child(said),
        el("p").class("actions").child(press("", "Bring this burn back", bring))
    ])
}
