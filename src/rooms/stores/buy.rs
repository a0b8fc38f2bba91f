//! The shopping list: what is due at its pace, and what the best pours lack.

use super::line;
use crate::dom::*;
use crate::keep;
use crate::rooms::parts::{caution, coins, live};
use crate::rooms::shelf::{self, Looker};
use crate::rooms::workshop::Workshop;
use crate::shelf::agenda::Agenda;
use crate::stores::{Lack, Ledger, Standing};
use std::rc::Rc;

/// What the pours lack, as far as it is known: they are looked for beside the page.
#[derive(Clone)]
pub(super) enum Told {
    /// No candle is sold: there is nothing to ask.
    Nothing,
    Looking,
    /// What looks for the pours could not be fetched.
    Missing,
    Found(Rc<Found>),
}

pub(super) type Asked = Value<Told>;

/// What the best pours so far lack.
pub(super) struct Found {
    lacks: Vec<Lack>,
    /// What they take and the book has no lot of, in words.
    unknown: String,
    pours: bool,
    /// Some of what is ordered is not poured, whatever is bought: it was left out, or no size of batch can be.
    unmet: bool,
    /// True while better pours are looked for.
    looking: bool,
}

/// Asks for the pours that would be best if nothing lacked, after what is here already is shown, and anew after a change.
pub(super) fn ask(shop: Workshop) -> Asked {
    let told = Value::new(Told::Looking);
    shelf::look(Looker {
        shop,
        begin: Box::new(move || told.set(Told::Looking)),
        ask: Agenda::with_enough,
        tell: Box::new(move |agenda, plan, done| {
            told.set(match plan {
                _ if agenda.items.is_empty() => Told::Nothing,
                None => Told::Missing,
                Some(plan) => Told::Found(Rc::new(Found {
                    lacks: agenda.shortages(&plan),
                    unknown: agenda.unknown(&plan),
                    pours: !plan.pours.is_empty(),
                    unmet: plan.lines.iter().any(|line| line.unmet > 0),
                    looking: !done,
                })),
            });
        }),
    });
    told
}

pub(super) fn list(shop: Workshop, asked: Asked) -> View {
    live(move || {
        let told = asked.get();
        let lacks = match &told {
            Told::Found(found) => found.lacks.as_slice(),
            _ => &[],
        };
        let rows = untrack(|| shop.ledger().with(|ledger| rows(shop, ledger, lacks)));
        group![rows, el("div").attr("aria-live", "polite").child(said(&told))]
    })
}

fn rows(shop: Workshop, ledger: &Ledger, lacks: &[Lack]) -> View {
    let voice = shop.voice();
    shop.state(|s| {
        let due = ledger.errands(s, lacks, keep::today(), voice);
        if due.is_empty() {
            return el("p").child("Nothing is due at the pace it goes.").view();
        }
        let row = |due: &Standing| {
            let buy = due.order(s).zip(due.supply).map(|((packs, price), supply)| {
                let packs = packs.to_string();
                ["order ", &packs, " × ", &supply.pack.say(voice), " at ", &coins(price)].concat()
            });
            let left = [&due.account.measure.say(due.left, voice), " left"].concat();
            line(due, vec![due.say_lack(voice), Some(due.say()), buy], left)
        };
        el("ul").class("list").attr("id", "errands").child(due.iter().map(row).views()).view()
    })
}

/// How far the list can be relied on for the pours.
fn said(told: &Told) -> View {
    let found = match told {
        Told::Nothing => return ().view(),
        Told::Looking => {
            return el("p").class("muted").child("Looking for what the next pours lack …").view();
        }
        Told::Missing => {
            return caution(
                "What the next pours lack is not in this list: what looks for it could not be fetched. Check the \
                 connection, then come here again.",
            );
        }
        Told::Found(found) => found,
    };
    let words = match (found.pours, found.lacks.is_empty()) {
        (false, _) => "No pour is wanted today that would lack anything.",
        (true, true) => "The next pours lack nothing that the book has lots of.",
        (true, false) => {
            "“More” is what the best pours for the orders that wait and what you wish to have in store would take \
             beyond what is here."
        }
    };
    let looking = found.looking.then_some(" Better pours are still looked for: this may change.");
    let unmet = found.unmet.then_some(
        " Some of what is ordered cannot be poured today, or was left out: “What to pour next” says why.",
    );
    let unknown = (!found.unknown.is_empty()).then(|| {
        [" Of ", &found.unknown, " the book has no lot, so it cannot tell whether there is enough."].concat()
    });
    el("p")
        .class("muted")
        .child(words)
        .child(unmet)
        .child(unknown)
        .child(looking)
        .child(" ")
        .child(el("a").attr("href", "#shelf/plan").child("What to pour next"))
        .view()
}
