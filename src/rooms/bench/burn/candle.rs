//! One candle on trial: burn it, look at it, see what it tells, close it.

use super::{burns, coming, does, light, look, photos, put_out, running, tells};
use crate::bench::burn::{BurnEvent, Course, Trial, Verdict, judge, suggested, suggestion};
use crate::book::{Act, Id};
use crate::dom::*;
use crate::rooms::bench::scale::put_away;
use crate::rooms::parts::{
    Typed, area, caution, choice, finish, live, page_head, page_part, press, sentence,
};
use crate::rooms::workshop::Workshop;

pub(super) fn page(shop: Workshop, id: Id) -> View {
    let named = id.clone();
    let trial = Derived::new(move || shop.state(|s| s.trials.get(&named)?.body().cloned()));
    let named = id.clone();
    let course = Derived::new(move || shop.state(|s| s.course_of(&named)));
    live(move || match trial.get() {
        Some(trial) => {
            let course = course.get();
            untrack(|| inside(shop, &id, &trial, &course))
        }
        None => group![
            page_head(super::HERE, "Burn trials", "No such candle".to_owned()),
            sentence("It is not in this book. Go back and choose one of those that are.")
        ],
    })
}

fn inside(shop: Workshop, id: &Id, trial: &Trial, course: &Course) -> View {
    let like = |words: &'static str| {
        el("a").class("button").attr("href", ["#bench/burn/new/", &id.0].concat()).child(words)
    };
    let change = el("a")
        .class("button")
        .attr("href", [super::HERE, "/", &id.0, "/change"].concat())
        .child("Put it right");
    let late = course.closed.is_none().then(|| {
        el("a")
            .class("button")
            .attr("href", [super::HERE, "/", &id.0, "/late"].concat())
            .child("Write down a burn that is over")
    });
    group![
        page_head(super::HERE, "Burn trials", trial.name.clone()),
        el("p").class("lead").child([&trial.made(), "; ", &trial.wax, "."].concat()),
        page_part("burn-now", "Now", now(shop, id, trial, course)),
        photos::part(shop, id),
        tells::parts(shop, id, trial, course),
        burns::taken_back(shop, id).map(|back| page_part("burn-back", "Taken back", back)),
        course.closed.is_none().then(|| page_part(
            "burn-end",
            "The verdict",
            verdict(shop, id, trial, course)
        )),
        el("p")
            .class("actions")
            .child(like("Another like it"))
            .child(change)
            .child(late)
            .child(take_back(shop, id)),
        put_away(shop, id.clone(), "Put this trial away")
    ]
}

fn now(shop: Workshop, id: &Id, trial: &Trial, course: &Course) -> View {
    let waiting = coming(shop, trial, course);
    if let Some(session) = course.burning() {
        return group![
            running(shop, session),
            waiting,
            el("p")
                .class("actions")
                .child(put_out(shop, id, "main big", "Put it out".to_owned(), false))
                .child(put_out(shop, id, "big", "It went out by itself".to_owned(), true)),
            light::earlier(shop, id.clone(), session.clone()),
            caution("the vessel and the wax are hot. Do not carry a burning candle."),
            look::form(shop, id.clone(), trial)
        ];
    }
    let judged = course.closed.as_ref().map(|(verdict, note)| {
        group![
            el("p").class("found").child(["This candle: ", verdict.name(), "."].concat()),
            (!note.is_empty()).then(|| sentence(note.clone()))
        ]
    });
    let again = || course.closed.is_none().then(|| light::form(shop, id.clone(), trial, course));
    if course.unweighed() {
        // What is wanted now is its weight: a light is not beside it.
        let again = again()
            .map(|form| el("details").child(el("summary").child("Light it without weighing")).child(form));
        return group![judged, waiting, light::weigh(shop, id.clone(), trial, course.sessions.last()), again];
    }
    group![judged, waiting, again()]
}

/// Closing the trial, with what the limits suggest.
fn verdict(shop: Workshop, id: &Id, trial: &Trial, course: &Course) -> View {
    if course.sessions.is_empty() {
        return el("p").class("muted").child("After its burns: passed, or which way the wick is off.").view();
    }
    let limits = shop.state(|s| s.limits.clone());
    let found = judge(trial, course, &limits, shop.voice());
    let said = suggestion(trial, course, &found, shop.voice());
    let picked = Value::new(suggested(&found));
    let note = Typed::new("");
    let id = id.clone();
    let close = move || {
        let Some(verdict) = picked.get() else {
            return vec!["Choose what came of it, then close the trial.".to_owned()];
        };
        does(shop, &id, BurnEvent::Closed { verdict, note: note.get() });
        Vec::new()
    };
    let all = [Verdict::Passed, Verdict::Small, Verdict::Large, Verdict::Other];
    let all: Vec<(Option<Verdict>, &'static str)> = all.into_iter().map(|v| (Some(v), v.name())).collect();
    group![
        el("p").child(said),
        choice("It", picked, &all),
        area("Note", note),
        finish("Close this trial", None, close)
    ]
}

/// The button that takes the last thing back.
fn take_back(shop: Workshop, id: &Id) -> Option<View> {
    let entry = shop.state(|s| s.last_done(id).cloned())?;
    Some(press("quiet", "Take the last thing back", move || {
        shop.act(Act::Undo { entry: entry.clone() });
    }))
}
