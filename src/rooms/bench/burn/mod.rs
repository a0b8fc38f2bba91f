//! Burn trials: what burns now, each candle's own page, wick series, limits.

mod burns;
mod candle;
mod form;
mod guess;
mod late;
mod light;
mod limits;
mod look;
mod photos;
mod remind;
mod tells;
mod wicks;

pub(in crate::rooms) use remind::begin as remind;

use super::HERE as BENCH;
use crate::bench::burn::{BurnEvent, Course, Reminder, Session, Trial, Verdict, clock, reminders};
use crate::book::{Act, Burns, Id, State};
use crate::dom::*;
use crate::keep;
use crate::quantity::{Amount, AmountError, Quantity};
use crate::rooms::parts::{Typed, away, caution, live, page_head, page_part, press, retired};
use crate::rooms::workshop::Workshop;

const HERE: &str = "#bench/burn";

/// `#bench/burn`: all candles; `/new`, also with a candle to be like and a place in its series after it; `/wicks/ID` or
/// `new`; `/limits`; `/ID`: one candle, `/ID/change` to put it right,
/// `/ID/late` for a burn that nobody tapped.
pub(super) fn page(shop: Workshop, what: &str, id: &str, place: &str) -> View {
    let named = Id(id.to_owned());
    match what {
        "" => home(shop),
        "new" => form::page(shop, &named, place),
        of if id == "change" => form::change(shop, &Id(of.to_owned())),
        of if id == "late" => late::page(shop, &Id(of.to_owned())),
        "wicks" => wicks::page(shop, &named),
        "limits" => limits::page(shop),
        _ => candle::page(shop, Id(what.to_owned())),
    }
}

/// Of candles that are done so many are shown at first.
const DONE: usize = 30;

/// A candle that is not judged yet, as it is now.
type Candle = (Id, Trial, Course);

/// The candles not judged yet, and those that are: what each is called, and what came of it.
type Candles = (Vec<Candle>, Vec<(Id, String, Verdict)>);

/// Of years of candles that are done none is gone through burn by burn.
fn candles(s: &State) -> Candles {
    let (mut open, mut done) = Candles::default();
    for kept in s.trials_shown() {
        let Some(trial) = kept.body() else { continue };
        let burns = s.burns.get(&kept.id);
        match burns.filter(|b| !b.burning()).and_then(Burns::verdict) {
            Some(verdict) => done.push((kept.id.clone(), trial.say(), verdict)),
            None => open.push((kept.id.clone(), trial.clone(), burns.map(Burns::course).unwrap_or_default())),
        }
    }
    (open, done)
}

fn home(shop: Workshop) -> View {
    let all = Derived::new(move || shop.state(candles));
    let whole = Value::new(false);
    let link = |to: &'static str, words: &'static str| el("a").class("button").attr("href", to).child(words);
    group![
        page_head(BENCH, "Bench", "Burn trials".to_owned()),
        el("p").class("lead").child(
            "A wick fits one wax, one fragrance and one vessel. Mark a candle, burn it down in sessions, look and \
weigh: the trials tell how it burns and which wick to try next.",
        ),
        caution(
            "never leave a burning candle. Keep it in sight, away from whatever catches fire, from children and pets, out of \
draughts, on something that takes heat. Never water on burning wax: put the lid on.",
        ),
        live(move || all.with(|all| rows(shop, all, whole))),
        live(move || away(shop, shop.state(|s| retired(&s.trials, |t| &t.name)))),
        el("p")
            .class("actions")
            .child(link("#bench/burn/new", "A new candle"))
            .child(link("#bench/burn/limits", "My limits")),
        page_part("burn-series", "Wick series", live(move || wicks::list(shop)))
    ]
}

fn rows(shop: Workshop, (all, done): &Candles, whole: Value<bool>) -> View {
    if all.is_empty() && done.is_empty() {
        return el("div")
            .class("empty")
            .child(el("p").child(
                "No candle on trial yet. Type your wicks in once, smallest to largest; then mark a candle.",
            ))
            .view();
    }
    let burning: Vec<&Candle> = all.iter().filter(|(_, _, c)| c.burning().is_some()).collect();
    let open = all.iter().filter(|(_, _, c)| c.burning().is_none());
    let list = |rows: Vec<View>, none: &'static str| {
        if rows.is_empty() {
            el("p").class("muted").child(none).view()
        } else {
            el("ul").class("list").child(rows).view()
        }
    };
    let row = |id: &Id, name: String, said: String| {
        el("li")
            .child(
                el("a")
                    .attr("href", address(id))
                    .child(el("span").class("title").child(name))
                    .child(el("span").class("detail").child(said)),
            )
            .view()
    };
    let limits = shop.state(|s| s.limits.clone());
    let waits = |(id, trial, course): &Candle| {
        let mut said = match (course.unweighed(), course.sessions.len()) {
            (true, _) => "weigh it".to_owned(),
            (false, 0) => "not lit yet".to_owned(),
            (false, 1) => "burned once".to_owned(),
            (false, burns) => ["burned ", &burns.to_string(), " times"].concat(),
        };
        if let Some(rest) = reminders(trial, course, &limits, keep::now()).pop() {
            let time = keep::time(rest.at);
            let due = if rest.due { "; rested: trim it" } else { "; rests until " };
            said.push_str(&[due, if rest.due { "" } else { &time }].concat());
        }
        row(id, trial.say(), said)
    };
    let first = if whole.get() { done.len() } else { DONE };
    let judged = done.iter().take(first).map(|(id, name, v)| row(id, name.clone(), v.name().to_owned()));
    let more = (done.len() > first)
        .then(|| press("", ["Show all ", &done.len().to_string()].concat(), move || whole.set(true)));
    let now = if burning.is_empty() {
        el("p").class("muted").child("No candle burns now.").view()
    } else {
        el("ul").class("burning").child(burning.into_iter().map(|c| alight(shop, c)).views()).view()
    };
    group![
        page_part("burn-now", "Burning now", now),
        page_part("burn-open", "To be lit", list(open.map(waits).collect(), "None waits.")),
        page_part("burn-closed", "Done", group![list(judged.collect(), "None is done yet."), more])
    ]
}

fn address(id: &Id) -> String {
    [HERE, "/", &id.0].concat()
}

/// A burning candle: its clock large, and what can be done with one hand.
fn alight(shop: Workshop, (id, trial, course): &Candle) -> View {
    let Some(session) = course.burning() else { return View::Nothing };
    el("li")
        .child(el("h3").child(trial.name.clone()))
        .child(running(shop, session))
        .child(el("p").class("detail").child(trial.made()))
        .child(coming(shop, trial, course))
        .child(
            el("p")
                .class("actions")
                .child(
                    el("a")
                        .class("button big")
                        .attr("href", address(id))
                        .child(["Look at ", &trial.name].concat()),
                )
                .child(put_out(shop, id, "big", ["Put out ", &trial.name].concat(), false)),
        )
        .view()
}

/// How long it has burned, by the second. It counts from the light that is kept, so it goes on whatever happens to the page.
fn running(shop: Workshop, session: &Session) -> View {
    let session = session.clone();
    let lit = ["since ", &keep::time(session.lit)].concat();
    el("p")
        .class("clock")
        .attr("role", "timer")
        .child(move || clock(session.seconds(shop.now().get())))
        .child(el("span").class("detail").child(lit))
        .view()
}

/// What is coming, and what has come.
fn coming(shop: Workshop, trial: &Trial, course: &Course) -> View {
    let (trial, course) = (trial.clone(), course.clone());
    let all = Derived::new(move || {
        let now = shop.now().get();
        shop.state(|s| reminders(&trial, &course, &s.limits, now))
    });
    let one = |r: &Reminder| {
        let (class, time) =
            if r.due { ("due", "Now: ".to_owned()) } else { ("detail", [&keep::time(r.at), ": "].concat()) };
        el("li").class(class).child(el("strong").child(time)).child(r.text.clone())
    };
    el("ul")
        .class("coming")
        .attr("aria-live", "polite")
        .child(live(move || all.with(|all| all.iter().map(one).views().view())))
        .view()
}

fn put_out(shop: Workshop, id: &Id, class: &'static str, words: String, itself: bool) -> View {
    let id = id.clone();
    press(class, words, move || {
        does(shop, &id, BurnEvent::Out { at: keep::now(), mass: None, itself });
    })
}

fn does(shop: Workshop, trial: &Id, event: BurnEvent) -> bool {
    shop.act(Act::AtTrial { trial: trial.clone(), event })
}

/// What a field that may stay empty reads as; what is wrong with it goes to the others.
fn read_some<Q: Quantity>(
    what: &str,
    typed: Typed,
    unit: Q::Unit,
    wrong: &mut Vec<String>,
) -> Option<Amount<Q>> {
    if typed.is_empty() { None } else { noted(what, typed.read(unit), wrong) }
}

fn noted<T>(what: &str, read: Result<T, AmountError>, wrong: &mut Vec<String>) -> Option<T> {
    read.map_err(|why| wrong.push([what, ": ", &why.to_string()].concat())).ok()
}
