//! A workshop to try things in. Every name in it is invented.

use super::{Act, Book, Ending, Id};
use crate::formula::TemperatureRange;
use crate::pot::{Ask, Event, Run, StepKey, Target, plan};
use crate::quantity::{Exact, Temperature, Voice};
use crate::wire;

/// What is in the workshop, as acts; the pours of the past are made from it.
const WORKSHOP: &str = include_str!("demo.json");

const MINUTE: u64 = 60_000;
const DAY: u64 = 24 * 60 * MINUTE;

/// A pour of the past.
struct Past {
    formula: &'static str,
    vessel: &'static str,
    vessels: u32,
    days_ago: u64,
    note: &'static str,
}

const PAST: [Past; 2] = [
    Past {
        formula: "demo-hedge",
        vessel: "demo-tin",
        vessels: 12,
        days_ago: 16,
        note: "Smooth tops. Two tins had a small well; a little hot wax mended it.",
    },
    Past {
        formula: "demo-orchard",
        vessel: "demo-jar",
        vessels: 4,
        days_ago: 9,
        note: "Shade as it should be.",
    },
];

/// Everything of the demo workshop as lines to store, with their entry ids: formulas, vessels, ingredients with their
/// trials, two scales, two pots, and pours of the past. `now` is in milliseconds since 1970.
pub fn demo(device: &str, now: u64, mut random: impl FnMut() -> u32) -> Vec<(String, String)> {
    let mut book = Book::open(Vec::new(), device);
    let began = now.saturating_sub(30 * DAY);
    // Each act is one the app itself would do; a test holds that none is refused.
    for act in wire::read::<Vec<Act>>(WORKSHOP).unwrap_or_default() {
        let _ = book.act(act, began, random());
    }
    for past in &PAST {
        let _ = pour(&mut book, past, now.saturating_sub(past.days_ago * DAY), &mut random);
    }
    book.to_store().unwrap_or_default()
}

/// Plans a pour and does every step of it, as planned, one minute apart. None where it cannot be planned.
fn pour(book: &mut Book, past: &Past, mut now: u64, random: &mut impl FnMut() -> u32) -> Option<()> {
    let (formula_id, vessel_id) = (Id(past.formula.to_owned()), Id(past.vessel.to_owned()));
    let state = book.state();
    let version = state.formulas.get(&formula_id)?.latest()?;
    let vessel = state.vessels.get(&vessel_id)?.body()?;
    let scales: Vec<_> = state.scales_shown().iter().filter_map(|k| k.body().cloned()).collect();
    let plan = plan(&Ask {
        formula: &version.body,
        vessel: &vessel.name,
        wick: &version.body.vessels.iter().find(|v| v.vessel == vessel_id)?.wick,
        fill: state.fill(vessel, &version.body, Voice::default()).ok()?,
        target: Target::Vessels(past.vessels),
        residue: &state.settings.residue,
        warmed: true,
        scales: &scales,
        pot: state.pots.get(&Id("demo-pot-large".to_owned()))?.body(),
        recipe: state,
        tolerance: state.settings.tolerance.value,
        voice: Voice::default(),
    })
    .ok()?;
    let version = version.entry.clone();
    let batch = book.journal().new_id(random());
    let mut run = Run::new(plan.clone());
    let began = Act::Began {
        batch: batch.clone(),
        formula: formula_id,
        version,
        vessel: vessel_id,
        plan: Box::new(plan),
    };
    book.act(began, now, random()).ok()?;
    while let Some(step) = run.now() {
        now += MINUTE;
        let temperature = temperature(&run, step.key);
        let event = Event::Did { step: step.key, weighed: step.amount, temperature, at: now };
        run.take(event.clone()).ok()?;
        book.act(Act::At { batch: batch.clone(), event }, now, random()).ok()?;
    }
    book.act(Act::Ended { batch, how: Ending::Poured, note: past.note.to_owned() }, now + MINUTE, random())
        .ok()?;
    Some(())
}

/// What the thermometer shows at a step: the middle of its range.
fn temperature(run: &Run, step: StepKey) -> Option<Temperature> {
    let middle = |r: &TemperatureRange| {
        let sum = r.low.value.in_celsius() + r.high.value.in_celsius();
        Temperature::celsius((sum * Exact::ratio(1, 2)).round_to(Exact::ratio(1, 2)))
    };
    match step {
        StepKey::Melt { .. } => Some(run.plan.melt_to.value),
        StepKey::Gate { .. } => Some(middle(&run.plan.pour)),
        StepKey::Add { pour, line } => run.line(pour, line)?.add.as_ref().map(middle),
        _ => None,
    }
}
