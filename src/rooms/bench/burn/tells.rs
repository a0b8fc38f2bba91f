//! What a candle's burns tell, with pictures, its limits, the wicks beside each other and which comes next.

use super::burns;
use crate::bench::burn::{
    Course, Trial, TrialError, burn_curve, judge, pool_picture, rate, side_by_side, tells, wicks_picture,
};
use crate::book::{Burned, Id};
use crate::dom::*;
use crate::rooms::parts::{chart, page_part, sentence, why_button};
use crate::rooms::workshop::Workshop;

pub(super) fn parts(shop: Workshop, id: &Id, trial: &Trial, course: &Course) -> View {
    if course.sessions.is_empty() {
        return page_part("burn-next", "Which wick next", next(shop, id, trial));
    }
    let like = shop.state(|s| s.like(trial));
    group![
        page_part("burn-told", "What it shows", told(shop, id, trial, course)),
        page_part("burn-limits", "Against your limits", limits(shop, trial, course)),
        (like.len() > 1).then(|| page_part(
            "burn-wicks",
            "Wicks side by side",
            wicks(shop, &trial.series, &like)
        )),
        page_part("burn-next", "Which wick next", next(shop, id, trial))
    ]
}

/// A sentence with its why.
fn said((text, why): (String, Option<crate::quantity::Why>)) -> View {
    el("div").class("answer-line").child(el("p").child(text)).child(why.map(why_button)).view()
}

fn titled(title: &'static str, of: &crate::pot::Chart) -> View {
    el("figure").class("burned").child(el("figcaption").child(title)).child(chart(of)).view()
}

fn told(shop: Workshop, id: &Id, trial: &Trial, course: &Course) -> View {
    let voice = shop.voice();
    let all = tells(trial, course, voice);
    let none = all.is_empty().then(|| {
        sentence("Weigh it after a burn of a quarter of an hour or more: then its burn rate is told.")
    });
    let curve = rate(course, voice).and_then(|r| burn_curve(trial, course, &r, voice));
    let pool = pool_picture(trial, course, voice);
    group![
        none,
        all.into_iter().map(said).views(),
        curve.as_ref().map(|c| titled("Wax left", c)),
        pool.as_ref().map(|c| titled("Pool across, each burn a line", c)),
        burns::list(shop, id, trial, course)
    ]
}

fn limits(shop: Workshop, trial: &Trial, course: &Course) -> View {
    let limits = shop.state(|s| s.limits.clone());
    let row = |f: crate::bench::burn::Finding| {
        let seen = if f.seen.is_empty() { "–".to_owned() } else { f.seen };
        el("tr")
            .child(el("th").attr("scope", "row").child(f.what))
            .child(el("td").child(seen))
            .child(
                el("td")
                    .child(f.limit)
                    .child(el("span").class("detail").child([" (", f.source, ")"].concat())),
            )
            .child(el("td").child(el("strong").child(f.outcome.name())))
    };
    let found = judge(trial, course, &limits, shop.voice());
    let head = |words: &'static str| el("th").attr("scope", "col").child(words);
    let table = el("table")
        .class("findings")
        .child(el("thead").child(
            el("tr").child(head("What")).child(head("Worst seen")).child(head("Limit")).child(head("So")),
        ))
        .child(el("tbody").child(found.into_iter().map(row).views()));
    group![
        table,
        el("p").class("why-line").child(
            "The usual limits are common practice where no standard is named; they are no standard's text and no proof of \
safety. Set your own under “My limits”.",
        )
    ]
}

fn wicks(shop: Workshop, series: &str, like: &[Burned]) -> View {
    let voice = shop.voice();
    let sets: Vec<(&str, Vec<(&Trial, &Course)>)> =
        like.iter().map(|b| (b.wick.as_str(), b.candles.iter().map(|(t, c)| (t, c)).collect())).collect();
    let told = shop.state(|s| side_by_side(&sets, s.series(series), voice));
    let none = told.is_empty();
    let lines = told.into_iter().map(|(text, why)| said((text, Some(why)))).views();
    group![
        wicks_picture(&sets, voice).as_ref().map(|c| titled("Burn rate", c)),
        lines,
        el("p").class("why-line").child(if none {
            "Nothing to compare yet: it takes candles with two wicks, each weighed before and after a burn."
        } else {
            "Same fragrance, wax and vessel; only the wick differs. Each candle counts once, however often it was burned."
        })
    ]
}

fn next(shop: Workshop, id: &Id, trial: &Trial) -> View {
    let found = shop.state(|s| {
        s.next_wick(trial, shop.voice())
            .map(|(series, advice)| (advice.say(series, shop.voice()), advice.size))
    });
    let Some((said, place)) = found else {
        return sentence(
            "Type the series of this wick in, smallest size first: then the trials tell which size to try.",
        );
    };
    let to = ["#bench/burn/new/", &id.0, "/", &place.to_string()].concat();
    // One that is not in the series tells nothing of the others.
    let unlisted = shop.state(|s| trial.check(s.series(&trial.series))).err().unwrap_or_default();
    let unlisted = unlisted.into_iter().filter(|e| matches!(e, TrialError::NotInSeries { .. }));
    group![
        unlisted.map(|e| sentence(e.say(shop.voice()))).views(),
        el("div").attr("aria-live", "polite").child(advice(said)),
        el("p")
            .class("actions")
            .child(el("a").class("button main").attr("href", to).child("Mark a candle with this wick"))
    ]
}

/// What is advised: first the wick, then what it rests on.
pub(super) fn advice(said: Vec<String>) -> View {
    let line =
        |(place, text): (usize, String)| el("p").class(if place == 0 { "found" } else { "lead" }).child(text);
    said.into_iter().enumerate().map(line).views()
}
