//! How a vessel freezes: two set-ups side by side, their pictures through time, and a map to find the sweet spot.

mod cut;
mod form;
mod log;
mod map;

use super::HERE;
use crate::bench::{differences, reckoned, results};
use crate::dom::*;
use crate::heat::{Freezing, Job, Setup, compare, job};
use crate::keep;
use crate::rooms::parts::{later, page_head, page_part, sentence, why_button};
use crate::rooms::workshop::Workshop;
use form::Form;
use std::rc::Rc;

/// Milliseconds: what was typed is on the screen by then, and what was reckoned before makes room. A worker that begins
/// earlier takes the processor away from that, and what is typed quickly would be reckoned letter by letter.
const PAINTED: u32 = 40;

/// One set-up and what came of it.
#[derive(Clone, Copy)]
struct Side {
    form: Form,
    setup: Derived<Result<Setup, String>>,
    /// None while it is being reckoned, or where there is nothing to reckon.
    freezing: Value<Option<Rc<Freezing>>>,
}

impl Side {
    fn new(shop: Workshop, warmed: bool) -> Self {
        let form = Form::new(shop, warmed);
        let setup = Derived::new(move || {
            form.scene(shop, shop.settings().air()).and_then(|s| s.setup().map_err(|e| e.say(shop.voice())))
        });
        let freezing = Value::new(None);
        watch(move || {
            let Ok(asked) = setup.get() else {
                freezing.set(None);
                return;
            };
            let wanted = move || setup.try_untracked() == Some(Ok(asked));
            later(PAINTED, move || {
                if !wanted() {
                    return;
                }
                freezing.set(None);
                keep::reckon(job(&asked, &Job::Freeze), move |numbers| {
                    // What was asked meanwhile is answered by its own job.
                    if wanted() {
                        freezing.set(Freezing::of_numbers(&numbers).map(Rc::new));
                    }
                });
            });
        });
        Self { form, setup, freezing }
    }
}

pub(super) fn page(shop: Workshop) -> View {
    let (one, two) = (Side::new(shop, false), Side::new(shop, true));
    group![
        page_head(HERE, "Bench", "How a vessel freezes".to_owned()),
        el("p").class("lead").child(
            "See a vessel freeze before you pour it. Two set-ups, side by side: compare, do not take the times \
as promises. Real wax also stirs itself while it is liquid, so it cools faster at first; and a gap may open \
between wax and wall, which is not shown.",
        ),
        el("div").class("sides").child(side(shop, one, "First", "first")).child(side(shop, two, "Second", "second")),
        cut::pictures(shop, one.freezing, two.freezing),
        page_part("freeze-told", "What comes of it", table(shop, one, two)),
        page_part("freeze-apart", "The second against the first", apart(shop, one, two)),
        page_part("freeze-map", "Where the sweet spot is", map::map(shop, one)),
        page_part("freeze-log", "A log of your own", log::log(shop, one))
    ]
}

fn side(shop: Workshop, side: Side, title: &'static str, id: &'static str) -> View {
    let wrong = move || side.setup.with(|s| s.as_ref().err().cloned()).map(sentence);
    el("section")
        .class("side-by-side")
        .attr("aria-labelledby", id)
        .child(el("h2").attr("id", id).child(title))
        .child(side.form.fields(shop))
        .child(el("div").attr("aria-live", "polite").child(wrong))
        .view()
}

/// Every result of both, beside each other.
fn table(shop: Workshop, one: Side, two: Side) -> View {
    let rows = move || {
        let told = |side: Side| match side.freezing.get() {
            Some(f) => results(&f, shop.voice()),
            None => Vec::new(),
        };
        let (a, b) = (told(one), told(two));
        let words = |told: &[(&'static str, String)], at: usize| {
            told.get(at).map_or_else(|| "…".to_owned(), |(_, how)| how.clone())
        };
        let named = if a.is_empty() { &b } else { &a };
        let row = |(at, (what, _)): (usize, &(&'static str, String))| {
            el("tr")
                .child(el("th").attr("scope", "row").child(*what))
                .child(el("td").child(words(&a, at)))
                .child(el("td").child(words(&b, at)))
        };
        named.iter().enumerate().map(row).views()
    };
    let how = move |side: Side| {
        let reckoned = |f: &Freezing, setup: &Setup| why_button(reckoned(setup, f, shop.voice()));
        // Followed alone: it comes after the set-up it is of, and is gone before another is reckoned.
        side.freezing.get().zip(side.setup.get_untracked().ok()).map(|(f, setup)| reckoned(&f, &setup))
    };
    let head = |words: &'static str, side: Side| {
        el("th").attr("scope", "col").child(words).child(" ").child(move || how(side))
    };
    el("table")
        .class("results")
        .child(
            el("thead").child(
                el("tr")
                    .child(el("th").attr("scope", "col").child(el("span").class("unseen").child("What")))
                    .child(head("First", one))
                    .child(head("Second", two)),
            ),
        )
        .child(el("tbody").child(rows))
        .view()
}

fn apart(shop: Workshop, one: Side, two: Side) -> View {
    let said = move || {
        let (Some(a), Some(b)) = (one.freezing.get(), two.freezing.get()) else {
            return el("p").class("muted").child("Both set-ups are needed for this.").view();
        };
        let lines =
            differences(&compare(&a, &b), shop.voice()).into_iter().map(|said| el("li").child(said)).views();
        el("ul").class("differences").child(lines).view()
    };
    el("div").attr("aria-live", "polite").child(said).view()
}
