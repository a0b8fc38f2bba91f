//! A measured cooling log laid over what is reckoned: how much faster or slower this workshop's air takes the heat.

use super::Side;
use crate::bench::{Hung, duration, fitted, keep_log, kept_log, log_chart, read_log, temperature, write_log};
use crate::book::{Act, Settings};
use crate::dom::*;
use crate::heat::{Job, Reading, Setup, job};
use crate::keep;
use crate::quantity::{Amount, Share};
use crate::rooms::parts::{Typed, chart, choice, press, sentence};
use crate::rooms::workshop::Workshop;
use std::rc::Rc;

/// The factor that was in use when it was laid over.
type Film = Option<Amount<Share>>;

/// What came of it: the factor, what is left, K, and what is reckoned with it for each reading.
struct Laid {
    log: Vec<Reading>,
    hung: Hung,
    numbers: Vec<f32>,
    used: Film,
}

pub(super) fn log(shop: Workshop, of: Side) -> View {
    let text = Typed::new("");
    let hung = Value::new(Hung::Middle);
    let wrong = Value::new(None::<String>);
    let laid = Value::new(None::<Rc<Laid>>);
    let lay = move || {
        wrong.set(None);
        laid.set(None);
        // The factor in use is in the set-up already: what is fitted is another one on top of it.
        let asked = of.setup.get_untracked();
        let log = untrack(|| text.text.with(|t| read_log(t, shop.voice())));
        match (asked, log) {
            (Err(why), _) | (_, Err(why)) => wrong.set(Some(why)),
            (Ok(setup), Ok(log)) => {
                let film = untrack(|| shop.settings().film);
                reckon(setup, hung.get_untracked(), log, film, wrong, laid);
            }
        }
    };
    let again = move |log: Vec<Reading>, at: Hung| {
        text.text.set(write_log(&log, shop.voice()));
        hung.set(at);
        lay();
    };
    let id = shop.fresh_dom_id();
    let said = move || match (wrong.get(), laid.get()) {
        (Some(why), _) => sentence(why),
        (None, Some(laid)) => told(shop, &laid),
        (None, None) => View::Nothing,
    };
    let used = move || {
        shop.settings().film.map(|film| {
            let words = [
                "This workshop's air takes ",
                &shop.voice().typed(film),
                " of the heat that is reckoned for a usual one.",
            ];
            let clear = move || {
                let settings = untrack(|| shop.settings());
                shop.act(Act::Settings(Settings { film: None, ..settings }));
            };
            group![el("p").child(words.concat()), press("quiet", "Reckon with the usual air again", clear)]
        })
    };
    group![
        el("p").class("why-line").child(
            "Pour the first set-up, hang a thermometer in it, and write the readings down: minutes since the pour, \
a space, the temperature; a line for each. Laid over what is reckoned, they tell how your air cools.",
        ),
        el("div")
            .class("field")
            .child(el("label").attr("for", id.clone()).child("Readings"))
            .child(
                el("textarea")
                    .attr("id", id)
                    .attr("rows", "6")
                    .attr("spellcheck", "false")
                    .attr("placeholder", "10 158\n20 150\n40 141")
                    .prop("value", text.text)
                    .on("input", move |e| text.text.set(text_of(&e))),
            ),
        choice("The thermometer hung", hung, &[(Hung::Middle, "In the middle"), (Hung::Wall, "A finger from the wall")]),
        el("p").child(press("", "Lay it over", lay)),
        el("div").attr("aria-live", "polite").child(said).child(used).child(move || kept(shop, again))
    ]
}

fn reckon(
    setup: Setup,
    hung: Hung,
    log: Vec<Reading>,
    film: Film,
    wrong: Value<Option<String>>,
    laid: Value<Option<Rc<Laid>>>,
) {
    let wanted = Job::LayOver { probe: hung.at(&setup), log: log.clone() };
    keep::reckon(job(&setup, &wanted), move |numbers| {
        if numbers.is_empty() {
            let why = "This log and this set-up do not go together. Check the pour temperature, the times and where the \
                       thermometer hung.";
            wrong.set(Some(why.to_owned()));
        } else {
            laid.set(Some(Rc::new(Laid { log, hung, numbers, used: film })));
        }
    });
}

fn told(shop: Workshop, laid: &Laid) -> View {
    let Laid { log, hung, numbers, used } = laid;
    let voice = shop.voice();
    let [factor, residual, reckoned @ ..] = numbers.as_slice() else { return View::Nothing };
    let row = |(read, at): (&Reading, &f32)| {
        el("tr")
            .child(el("th").attr("scope", "row").child(crate::bench::duration(read.seconds)))
            .child(el("td").child(temperature(read.celsius, voice)))
            .child(el("td").child(temperature(f64::from(*at), voice)))
    };
    let head = |words: &'static str| el("th").attr("scope", "col").child(words);
    let kept = keep_log(log, *hung);
    let (words, film) = fitted(*factor, *residual, *used, voice);
    let table = el("table")
        .class("results")
        .child(el("thead").child(el("tr").child(head("After")).child(head("Read")).child(head("Reckoned"))))
        .child(el("tbody").child(log.iter().zip(reckoned).map(row).views()));
    group![
        el("p").child(words),
        log_chart(log, reckoned, voice).as_ref().map(chart),
        table,
        press("main", "Use it in this workshop", move || keep_factor(shop, film, &kept))
    ]
}

fn keep_factor(shop: Workshop, film: Amount<Share>, log: &str) {
    let settings = untrack(|| shop.settings());
    shop.act(Act::Settings(Settings { film: Some(film), log: Some(log.to_owned()), ..settings }));
}

/// The log that was kept, laid over whatever is asked for now.
fn kept(shop: Workshop, again: impl Fn(Vec<Reading>, Hung) + Copy + 'static) -> View {
    let Some((log, hung)) = shop.settings().log.and_then(|text| kept_log(&text)) else {
        return View::Nothing;
    };
    let at = match hung {
        Hung::Middle => "in the middle",
        Hung::Wall => "a finger from the wall",
    };
    let words = [
        "A log is kept: ",
        &log.len().to_string(),
        " readings within ",
        &duration(log.last().map_or(0.0, |r| r.seconds)),
        ", ",
        at,
        " of the vessel.",
    ];
    group![
        el("p").child(words.concat()),
        press("quiet", "Lay the kept readings over", move || again(log.clone(), hung))
    ]
}
