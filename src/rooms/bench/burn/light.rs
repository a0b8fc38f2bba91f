//! Lighting a candle, and weighing it afterwards.

use super::{does, noted};
use crate::bench::burn::{BurnEvent, Course, Session, THROWS, Trial, lost, trim_first};
use crate::book::Id;
use crate::dom::*;
use crate::keep;
use crate::quantity::{Amount, Mass, Quantity, Unit};
use crate::rooms::parts::{Field, Typed, caution, choice, field, finish, mass_field};
use crate::rooms::workshop::Workshop;

/// Nothing said, or a throw of 1 to 5.
pub(super) fn throws() -> Vec<(Option<u32>, &'static str)> {
    let all = (1..).zip(THROWS).map(|(n, words)| (Some(n), words));
    [(None, "not smelt")].into_iter().chain(all).collect()
}

/// A weight of this candle as it was typed; none, and why, where it cannot be one.
pub(super) fn weighed(
    what: &str,
    mass: Typed,
    trial: &Trial,
    before: Option<Mass>,
    wrong: &mut Vec<String>,
) -> Option<Amount<Mass>> {
    let shop = Workshop::here();
    let mass = noted(what, mass.read(shop.mass_unit()), wrong)?;
    let voice = shop.voice();
    let can = trial.shows(mass, voice).and_then(|()| before.map_or(Ok(()), |b| lost(b, mass, voice)));
    can.map_err(|why| wrong.push(why)).ok().map(|()| mass)
}

pub(super) fn form(shop: Workshop, id: Id, trial: &Trial, course: &Course) -> View {
    // What it weighed last; the first time, what was typed of it.
    let last = course.sessions.last().and_then(|s| s.after);
    let unit = shop.mass_unit();
    let mass = last.map_or(trial.start, |m| Amount::new(m.to(unit).round_to(unit.step()), unit));
    let mass = Typed::amount(Some(mass));
    let trimmed = Value::new(true);
    let throw = Value::new(None::<u32>);
    let of = trial.clone();
    let light = move || {
        let mut wrong = Vec::new();
        if let Some(mass) = weighed("The scale shows", mass, &of, None, &mut wrong) {
            let event = BurnEvent::Lit { at: keep::now(), mass, trimmed: trimmed.get(), throw: throw.get() };
            does(shop, &id, event);
        }
        wrong
    };
    let trim = shop.state(|s| trim_first(&s.limits, shop.voice()));
    group![
        el("p").class("found").child(trim),
        mass_field(Field::new("The scale shows").hint("The candle with its vessel, cold."), mass),
        choice("The wick", trimmed, &[(true, "is trimmed"), (false, "is not trimmed")]),
        choice("Cold throw", throw, &throws()),
        caution(
            "stay with it until it is out again. Set it on something that takes heat, away from whatever catches fire."
        ),
        el("div").class("large").child(finish("Light it now", None, light))
    ]
}

/// It was put out a while ago, and nobody tapped.
pub(super) fn earlier(shop: Workshop, id: Id, session: Session) -> View {
    let minutes = Typed::new("");
    let save = move || {
        let mut wrong = Vec::new();
        if let Some(ago) = noted("Minutes", minutes.count(), &mut wrong) {
            match session.out_ago(keep::now(), ago) {
                Ok(at) => {
                    does(shop, &id, BurnEvent::Out { at, mass: None, itself: false });
                }
                Err(why) => wrong.push(why),
            }
        }
        wrong
    };
    let of = Field { keys: "numeric", ..Field::new("So many minutes ago") };
    let count = move || minutes.count().map(|_| String::new()).map_err(|e| e.to_string());
    el("details")
        .child(el("summary").child("It was put out earlier"))
        .child(field(of, minutes, count))
        .child(finish("It is out since then", None, save))
        .view()
}

/// After the burn that ended last.
pub(super) fn weigh(shop: Workshop, id: Id, trial: &Trial, last: Option<&Session>) -> View {
    group![
        caution("hot wax burns. Carry it only when the wax has set."),
        weight(shop, id, trial, last.map(|s| s.mass), None)
    ]
}

/// `lit`: when the burn was lit that it was weighed after, where that is not the one that ended last; `before`: what it
/// weighed then.
pub(super) fn weight(shop: Workshop, id: Id, trial: &Trial, before: Option<Mass>, lit: Option<u64>) -> View {
    let mass = Typed::new("");
    let of = trial.clone();
    let keep = move || {
        let mut wrong = Vec::new();
        if let Some(mass) = weighed("The scale shows", mass, &of, before, &mut wrong) {
            does(shop, &id, BurnEvent::Weighed { mass, lit });
        }
        wrong
    };
    group![
        mass_field(Field::new("After the burn it weighs").hint("The candle with its vessel."), mass),
        el("div").class("large").child(finish("Keep this weight", None, keep))
    ]
}
