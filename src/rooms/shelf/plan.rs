//! What to pour next: the pours that are best for the orders and the wished spare, each with its reason, and what cannot
//! be met. Each can be held on to, made larger or smaller, or left out; the rest is planned anew.

use super::look::{Looker, look};
use super::{HERE, calendar, goals};
use crate::book::{Act, Id};
use crate::dom::*;
use crate::keep;
use crate::rooms::parts::{Typed, caution, live, page_head, page_part, press, sentence, sheet, stepper};
use crate::rooms::pot;
use crate::rooms::workshop::Workshop;
use crate::shelf::agenda::{Agenda, Pick, Picks, Rows};
use crate::shelf::planning::{Plan, Pour};
use std::rc::Rc;

/// What is asked, and the best plan so far.
type Shown = Option<(Rc<Agenda>, Rc<Plan>)>;

#[derive(Clone, Copy)]
struct Page {
    shop: Workshop,
    shown: Value<Shown>,
    /// True while better plans are looked for.
    looking: Value<bool>,
    /// True where what looks for them could not be fetched.
    missing: Value<bool>,
    /// The product whose pour is made larger or smaller, and its number before where it is held on to.
    sizing: Value<bool>,
    sized: Value<Option<(Pick, bool)>>,
}

pub(super) fn page(shop: Workshop) -> View {
    let page = Page {
        shop,
        shown: Value::new(None),
        looking: Value::new(true),
        missing: Value::new(false),
        sizing: Value::new(false),
        sized: Value::new(None),
    };
    look(Looker {
        shop,
        begin: Box::new(move || page.looking.set(true)),
        ask: |agenda| agenda.problem.clone(),
        tell: Box::new(move |agenda, plan, done| {
            page.missing.set(plan.is_none());
            page.shown.set(plan.map(|plan| (agenda.clone(), Rc::new(plan))));
            page.looking.set(!done);
        }),
    });
    group![
        page_head(HERE, "Shelf", "What to pour next".to_owned()),
        el("p").class("lead").child(
            "The best pours for the orders that wait and what you wish to have in store, with what is in the Stores and the pots \
you have, if they are poured today."
        ),
        move || shop.state(|s| s.running().is_some()).then(|| sentence(
            "A pour is on at the Pot. Its candles count here as candles to come, and what it takes as taken. What you choose to \
pour here waits there until it is done."
        )),
        el("div").attr("aria-live", "polite").child(live(move || match page.shown.get() {
            None if page.missing.get() => caution(
                "What looks for the best pours could not be fetched. Check the connection, then come here again."
            ),
            None => sentence("Looking for the best pours …"),
            Some((agenda, plan)) => found(page, &agenda, &plan),
        })),
        page_part("plan-goals", "What counts most", goals::list(shop)),
        sheet(|| "How many of them".to_owned(), page.sizing, move || resize(page))
    ]
}

/// Changes what is said of the pours of a product.
fn pin(shop: Workshop, product: &Id, change: impl FnOnce(&mut Picks)) {
    let today = keep::today();
    let mut picks = shop.state_untracked(|s| s.picks(today));
    change(&mut picks);
    let body = shop.state_untracked(|s| s.pins_of(&picks, product, today));
    shop.act(Act::Pinned { product: product.clone(), body });
}

fn let_go(shop: Workshop, pick: &Pick) {
    pin(shop, &pick.product, |picks| {
        if let Some(at) = picks.pinned.iter().position(|known| known == pick) {
            picks.pinned.remove(at);
        }
    });
}

fn found(page: Page, agenda: &Agenda, plan: &Plan) -> View {
    if agenda.items.is_empty() {
        return group![
            el("p").child("Pours are planned of candles that you sell, and none is named yet."),
            el("a").class("button main").attr("href", "#shelf/product/new").child("Name a candle to sell")
        ];
    }
    let voice = page.shop.voice();
    let missed = agenda.missed(plan, &keep::weekday, voice);
    let proven =
        move |words: String| if page.looking.get() { [&words, " Still looking …"].concat() } else { words };
    let words = agenda.proven(plan);
    let lacks = (!plan.lacks.is_empty()).then(|| {
        let lacks = agenda.lacks(&plan.lacks, voice);
        caution(["The pours you hold on to take more than there is: ", &lacks, " is lacking."].concat())
    });
    let pours = if plan.pours.is_empty() {
        let none = if missed.is_empty() {
            "Nothing needs to be poured."
        } else {
            "No pour would help. What cannot be met stands below, and why."
        };
        el("p").class("muted").child(none).view()
    } else {
        let rows = plan.pours.iter().map(|p| pour(page, agenda, p)).views();
        el("ol").class("list pours").child(rows).view()
    };
    group![
        el("p").class("found").child(agenda.score(&plan.score)),
        el("p").class("muted").child(move || proven(words.clone())),
        lacks,
        agenda.refused.iter().map(|(pick, why)| refused(page.shop, pick, why)).views(),
        page_part("plan-pours", "The pours, in this order", pours),
        (!missed.is_empty()).then(|| {
            let rows = missed.iter().map(|(at, said)| {
                let order = agenda.wants.get(*at).map(|w| [HERE, "/order/", &w.order.0].concat());
                el("li").child(el("a").attr("href", order).child(said.clone()))
            });
            page_part(
                "plan-missed",
                "What cannot be met, and why",
                el("ul").class("list").child(rows.views()).view(),
            )
        }),
        left_out(page, agenda),
        Rows::of(agenda, plan, &keep::weekday).map(|rows| page_part(
            "plan-days",
            "On the calendar",
            calendar::picture(&rows)
        ))
    ]
}

/// What is held on to and cannot be, with the way to let it go.
fn refused(shop: Workshop, pick: &Pick, why: &str) -> View {
    let held = pick.clone();
    group![sentence(why.to_owned()), press("quiet", "Let it go", move || let_go(shop, &held))]
}

/// One pour: a tap begins it at the Pot.
fn pour(page: Page, agenda: &Agenda, pour: &Pour) -> View {
    let Some(item) = agenda.items.get(pour.good).cloned() else { return ().view() };
    let pick = Pick { product: item.product.clone(), number: pour.number };
    let pinned = pour.pinned;
    let (held, sized, product) = (pick.clone(), pick.clone(), item.product.clone());
    let hold = move || {
        if pinned {
            let_go(page.shop, &held);
        } else {
            pin(page.shop, &held.product, |picks| picks.pinned.push(held.clone()));
        }
    };
    let number = pour.number;
    let start = move || {
        pot::ask_for(page.shop, &item, number);
        page.shop.go("#pot");
    };
    let size = move || {
        page.sized.set(Some((sized.clone(), pinned)));
        page.sizing.set(true);
    };
    let drop = move || {
        pin(page.shop, &product, |picks| {
            picks.pinned.retain(|x| x.product != product);
            picks.dropped.push(product.clone());
        });
    };
    let ready = ["Ready ", &keep::weekday(agenda.ready(pour)), "."].concat();
    el("li")
        .child(el("h3").child(agenda.what(pour)))
        .child(el("p").child(agenda.why(pour, &keep::weekday)).child(" ").child(ready))
        .child(
            el("div")
                .class("actions")
                .child(press("main", "Pour it", start))
                .child(press("", if pinned { "Let it go" } else { "Hold on to it" }, hold))
                .child(press("", "More or fewer", size))
                .child(press("quiet", "Not today", drop)),
        )
        .view()
}

/// The number that a pour is held on to with.
fn resize(page: Page) -> View {
    let Some((pick, pinned)) = page.sized.get_untracked() else { return ().view() };
    let number = Typed::new(pick.number.to_string());
    let save = move || {
        let Ok(now) = number.count() else { return number.touched.set(true) };
        let before = pick.clone();
        pin(page.shop, &pick.product, |p| {
            let known = if pinned { p.pinned.iter().position(|x| *x == before) } else { None };
            let after = Pick { number: now, ..before };
            match known.and_then(|at| p.pinned.get_mut(at)) {
                Some(pin) => *pin = after,
                None => p.pinned.push(after),
            }
        });
        page.sizing.set(false);
    };
    group![
        el("p").child("So many are poured in any case; the rest is planned anew around it."),
        stepper("How many", "candles", number),
        el("div").class("actions").child(press("main", "Hold on to so many", save))
    ]
}

/// Products that are not poured today, each with the way back; and sizes that cannot be poured.
fn left_out(page: Page, agenda: &Agenda) -> View {
    let mut rows = Vec::new();
    for item in &agenda.items {
        if item.dropped {
            let product = item.product.clone();
            let back = move || pin(page.shop, &product, |p| p.dropped.retain(|id| *id != product));
            rows.push(
                el("li")
                    .class("use")
                    .child(el("span").child([&item.name, ": not today, as you said."].concat()))
                    .child(press("quiet", "Plan it again", back)),
            );
        } else if !item.without.is_empty() {
            rows.push(el("li").child([&item.name, ": ", &item.without.join(" ")].concat()));
        }
    }
    (!rows.is_empty())
        .then(|| {
            page_part(
                "plan-without",
                "Left out",
                el("ul").class("list").child(rows.into_iter().views()).view(),
            )
        })
        .view()
}
