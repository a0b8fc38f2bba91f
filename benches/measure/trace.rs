//! From a lot of the ten-year book to every batch it is in, and from a batch back to every lot; and the reckoning of the
//! whole stores, which that stands on: natively.

use crate::decade_shared::{BEGAN, DAY, TEN_YEARS, lines, lines_sold};
use crate::{line, median};
use potside::book::{Act, Id, Journal};
use potside::day::{Day, Zone};
use potside::lists::{List, give};
use potside::quantity::Voice;
use potside::stores::{Ledger, LotEvent, Source};
use std::hint::black_box;
use std::time::Instant;

/// One picture of a screen.
const BUDGET_MS: f64 = 16.7;

/// The book, with every part of every batch taken from the lot that came last.
fn traced() -> Journal {
    let mut journal = Journal::open(lines(TEN_YEARS), "tablet");
    let mut lots: Vec<(String, Id)> = Vec::new();
    let mut taken = Vec::new();
    for entry in journal.entries() {
        match &entry.act {
            Act::Lot { id, body, .. } => {
                lots.retain(|(name, _)| *name != body.ingredient);
                lots.push((body.ingredient.clone(), id.clone()));
            }
            Act::Began { batch, plan, .. } => {
                let mut names: Vec<String> = plan.needs().into_iter().map(|n| n.name).collect();
                names.extend([plan.vessel.clone(), plan.wick.clone()]);
                let lot = |part: String| {
                    let lot = lots.iter().find(|(name, _)| *name == part)?.1.clone();
                    Some(Source { part, lots: vec![lot] })
                };
                let sources = names.into_iter().filter_map(lot).collect();
                taken.push(Act::TakenFrom { batch: batch.clone(), sources });
            }
            _ => {}
        }
    }
    let mut entry = journal.entry(taken[0].clone(), 0, 0);
    let entries = taken.into_iter().map(|act| {
        entry.clock += 1;
        entry.act = act;
        entry.id = Id(format!("tablet-t{:x}", entry.clock));
        entry.clone()
    });
    journal.take_all(entries.collect());
    journal
}

fn millis<T>(mut call: impl FnMut() -> T) -> f64 {
    let mut once = || {
        let start = Instant::now();
        black_box(call());
        start.elapsed().as_secs_f64() * 1e3
    };
    once();
    median(&mut (0..11).map(|_| once()).collect::<Vec<_>>())
}

pub(crate) fn figures() {
    let journal = traced();
    let state = journal.state();
    let whole = Ledger::of(state, Zone::GREENWICH);
    let most = whole.accounts.iter().max_by_key(|a| a.takes.len()).unwrap();
    let lot = most.takes[most.takes.len() / 2].lot.clone();
    let batch = most.takes[most.takes.len() / 2].batch.clone();
    assert!(whole.forward(state, &lot).iter().any(|r| r.batch.id == batch));
    // Once after a change, when it is asked for.
    line("ledger_ms", millis(|| Ledger::of(black_box(state), Zone::GREENWICH)), "ms", None);
    let trace = || whole.forward(state, black_box(&lot)).len() + whole.back(black_box(&batch)).len();
    line("trace_ms", millis(trace), "ms", Some(BUDGET_MS));
    // What the Shelf asks after every change once a lot was on hold; here of an ingredient that is in every batch.
    let mut journal = journal.clone();
    let event = LotEvent::Held { reason: "cloudy".to_owned() };
    let entry = journal.entry(Act::AtLot { lot: lot.clone(), event }, u64::from(u32::MAX), 1);
    journal.take(entry);
    let state = journal.state();
    assert!(state.held().iter().any(|(held, _)| *held == batch));
    line("held_ms", millis(|| black_box(state).held()), "ms", None);
    drop(journal);
    sold();
}

/// In the book whose pours were all filled and whose candles were sold: what the Shelf, a recall sheet, a batch and the lists
/// ask.
fn sold() {
    let lines = lines_sold(TEN_YEARS);
    line("sold_entries", lines.len() as f64, "", None);
    let journal = Journal::open(lines, "tablet");
    let state = journal.state();
    let (zone, voice) = (Zone::GREENWICH, Voice::default());
    let today = Day::of(BEGAN + 3650 * DAY);
    let ledger = Ledger::of(state, zone);
    let most = ledger.accounts.iter().max_by_key(|a| a.takes.len()).unwrap();
    let take = &most.takes[most.takes.len() / 2];
    let reached = ledger.forward(state, &take.lot);
    let there = state.whereabouts(&reached);
    assert!(there.out > 0 && there.gone > 0 && there.back > 0 && there.apart == 0, "{there:?}");
    line("sold_ledger_ms", millis(|| Ledger::of(black_box(state), zone)), "ms", None);
    let trace = || ledger.forward(state, black_box(&take.lot)).len() + ledger.back(&take.batch).len();
    line("sold_trace_ms", millis(trace), "ms", Some(BUDGET_MS));
    let recall = || {
        let reached = ledger.forward(state, black_box(&take.lot));
        (state.sent_of(&reached).len(), state.whereabouts(&reached))
    };
    line("sold_recall_ms", millis(recall), "ms", Some(BUDGET_MS));
    line("sold_shelf_ms", millis(|| state.shelf(black_box(today), zone).orders.len()), "ms", None);
    line("sold_cost_ms", millis(|| state.cost(&ledger, black_box(&take.batch))), "ms", Some(BUDGET_MS));
    line("sold_finished_ms", millis(|| black_box(state).finished().len()), "ms", Some(BUDGET_MS));
    for (list, name) in [
        (List::Shelf, "sold_shelf_list_ms"),
        (List::Moves, "sold_moves_list_ms"),
        (List::Orders, "sold_orders_list_ms"),
    ] {
        line(name, millis(|| give(list, black_box(state), zone, voice).len()), "ms", None);
    }
}
