//! What the rooms ask of a book, all of it: a hostile entry that was taken in must stop none of them.

use potside::bench::burn::{Course, burn_curve, judge, pool_picture, rate, reminders, tells};
use potside::book::{Journal, Labelling, State};
use potside::day::Zone;
use potside::desk::label::{Face, lay};
use potside::formula::{self, check};
use potside::lists::{LISTS, give, write};
use potside::pot::Air;
use potside::quantity::{MassUnit, TemperatureUnit, Voice};
use potside::shelf::Fit;
use potside::stores::{self, Ledger};
use potside::vessel;
use std::hint::black_box;

const NOW: u64 = 1_765_400_000_000;
/// Where it is another day than at Greenwich for more than half of it.
const FAR: Zone = Zone(|at| at.saturating_add(13 * 3_600_000));

pub(crate) fn american() -> Voice {
    Voice { mass: MassUnit::Ounce, temperature: TemperatureUnit::Fahrenheit, ..Voice::default() }
}

/// The book's own, then one thing after the other; gives how much it had to say, so that none of it is left out.
pub(crate) fn all(journal: &Journal, voice: Voice) -> usize {
    let state = journal.state();
    let done = journal.done(None, 60, voice);
    black_box((journal.last_undoable(), journal.last_redoable(), journal.forks(), journal.earlier()));
    for kind in [state.wax_names(), state.part_names(), state.measured_names()] {
        black_box(kind);
    }
    for (list, _, _) in LISTS {
        black_box(write(&give(*list, state, FAR, voice), voice.locale));
    }
    done.len()
        + state.find(&state.finder(), "wax a").len()
        + state.uses().len()
        + recipes(state, voice)
        + pours(state, voice)
        + trials(state, voice)
        + trade(state, voice)
}

fn recipes(state: &State, voice: Voice) -> usize {
    let mut said = 0;
    for kept in state.formulas.values() {
        let Some(body) = kept.body() else { continue };
        let (read, problems) = formula::Draft::of(body, voice).read(voice);
        said += problems.len() + check(body, state).map_or(0, |cautions| cautions.len());
        said += check(&read, state).map_or(0, |_| 1) + state.limits_of(body, voice).len();
        black_box((state.known_of(&kept.id, voice), state.ingredients_of(&kept.id)));
        for vessel in state.vessels.values().filter_map(|k| k.body()) {
            said += usize::from(state.fill(vessel, body, voice).is_ok());
            for design in state.labels.values().filter_map(|k| k.body()) {
                let ask = Labelling {
                    design,
                    formula: body,
                    vessel,
                    batch: state.batches.values().next(),
                    name: String::new(),
                    number: "B".to_owned(),
                    day: "today".to_owned(),
                    declared: None,
                    tapers: None,
                    small: false,
                    few_names: false,
                };
                let label = state.label(&ask, Face::of(521, 716), voice);
                said += label.remarks.len() + design.sheet.cells().len().min(1);
                black_box((lay(&label.content, &design.sheet).is_ok(), design.check().is_ok()));
            }
        }
    }
    for vessel in state.vessels.values().filter_map(|k| k.body()) {
        said += vessel::Draft::of(vessel, voice).read(voice).1.len();
    }
    said
}

fn pours(state: &State, voice: Voice) -> usize {
    let mut said = 0;
    for batch in state.batches.values() {
        for step in batch.run.steps().into_iter().take(40) {
            black_box(batch.run.shown_step(step.key, voice));
            black_box(batch.run.chill(step.key, NOW, Air::of(None, voice), None, voice));
            said += 1;
        }
        black_box((batch.run.record(voice), batch.run.pending(voice), batch.run.used().len()));
        black_box(batch.run.foretold(0, NOW, Air::of(None, voice), voice, |at| at.to_string()));
        black_box((batch.run.plan.needs().len(), state.sells_on(batch, FAR), state.made_of(batch)));
        said += usize::from(state.plan(&state.again(batch), voice).is_ok());
    }
    said
}

fn trials(state: &State, voice: Voice) -> usize {
    let mut said = 0;
    for kept in state.trials.values() {
        let Some(trial) = kept.body() else { continue };
        let course: Course = state.course_of(&kept.id);
        said += judge(trial, &course, &state.limits, voice).len() + tells(trial, &course, voice).len();
        said += reminders(trial, &course, &state.limits, NOW).len() + state.like(trial).len();
        black_box((state.next_wick(trial, voice), pool_picture(trial, &course, voice)));
        black_box(trial.check(state.series(&trial.series)).is_ok());
        if let Some(rate) = rate(&course, voice) {
            black_box(burn_curve(trial, &course, &rate, voice));
        }
    }
    said
}

fn trade(state: &State, voice: Voice) -> usize {
    let (ledger, today) = (Ledger::of(state, FAR), FAR.day(NOW));
    let mut said = ledger.errands(state, &[], today, voice).iter().map(|s| s.say().len()).sum();
    for batch in state.batches.values() {
        said += ledger.back(&batch.id).len();
        if let Some(cost) = state.cost(&ledger, &batch.id) {
            black_box(cost.bars(&state.rates.currency, voice));
            said += usize::from(state.rates.retail.price(cost.average()).is_ok());
        }
    }
    for kept in state.lots.values() {
        let reached = ledger.forward(state, &kept.id);
        said += state.sent_of(&reached).len();
        if let Some(lot) = kept.body() {
            let draft = stores::Draft::of(lot, &state.rates.currency, voice);
            said += usize::from(draft.read(&state.rates.currency, None, voice).is_ok());
        }
    }
    for kept in state.formulas.values() {
        for offer in state.vessels_for(&kept.id) {
            let cost = state.expected(&ledger, (&kept.id, &offer.vessel), 8, voice);
            said += cost.map_or(0, |cost| cost.parts().len());
        }
    }
    let shelf = state.shelf(today, FAR);
    for order in &shelf.orders {
        said += order.shipment(today, Fit::Unfinished).len() + usize::from(order.is_late());
        black_box((order.when(), order.short()));
    }
    black_box((state.held(), potside::book::Reminder::default().said(None, &Journal::default(), NOW)));
    said
}
