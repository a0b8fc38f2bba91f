//! The shopping list: what is due at its pace, and what the best pours lack.

use super::line;
use crate::book::Map;
use crate::dom::*;
use crate::keep;
use crate::rooms::parts::{caution, coins, later, live};
use crate::rooms::shelf;
use crate::rooms::workshop::Workshop;
use crate::shelf::agenda::Batches;
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
    let asked = Value::new(0_u32);
    watch(move || {
        shop.state(|_| ());
        asked.update(|n| *n += 1);
        let mine = asked.get_untracked();
        told.set(Told::Looking);
        // What is due stands there before.
        later(0, move || gather(shop, told, asked, mine, Map::default()));
    });
    told
}

/// Reckons the batches of one product, then of the next: with many it takes so long that a key would be waited for.
fn gather(shop: Workshop, told: Asked, asked: Value<u32>, mine: u32, mut reckoned: Map<Batches>) {
    if asked.try_untracked() != Some(mine) {
        return;
    }
    let voice = untrack(|| shop.voice());
    let next = shop.state_untracked(|s| {
        let shown = s.products_shown();
        let kept = shown.into_iter().find(|kept| !reckoned.contains_key(&kept.id))?;
        let batches = kept.body().map(|product| s.batches_of(product, voice));
        Some((kept.id.clone(), batches.unwrap_or_default()))
    });
    match next {
        Some((product, batches)) => {
            reckoned.add(&product, batches);
            later(0, move || gather(shop, told, asked, mine, reckoned));
        }
        None => untrack(|| look(shop, told, asked, mine, &reckoned)),
    }
}

fn look(shop: Workshop, told: Asked, asked: Value<u32>, mine: u32, reckoned: &Map<Batches>) {
    let agenda = shelf::agenda(shop, reckoned);
    if agenda.items.is_empty() {
        return told.set(Told::Nothing);
    }
    keep::plan(&agenda.with_enough(), move |plan, done| {
        // What was asked meanwhile is answered by its own plan.
        let current = asked.try_untracked() == Some(mine);
        if current {
            told.set(plan.map_or(Told::Missing, |plan| {
                Told::Found(Rc::new(Found {
                    lacks: agenda.shortages(&plan),
                    unknown: agenda.unknown(&plan),
                    pours: !plan.pours.is_empty(),
                    unmet: plan.lines.iter().any(|line| line.unmet > 0),
                    looking: !done,
                }))
            }));
        }
        current
    });
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
