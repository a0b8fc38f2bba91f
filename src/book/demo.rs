//! A workshop to try things in. Every name in it is invented.

use super::{Act, Book, Ending, Id};
use crate::bench::burn::BurnEvent;
use crate::day::{Day, Zone};
use crate::formula::TemperatureRange;
use crate::pot::{Ask, Event, Run, StepKey, Target, plan};
use crate::quantity::{Amount, Exact, MassUnit, Money, Temperature, Voice};
use crate::shelf::{Order, OrderLine, Product};
use crate::stores::{Bought, Ledger, Lot, Pack};
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

/// What is in the stores: what it is, its lot, days ago it came, days from now it is best before (0: it keeps), minor units
/// for all of it, packs, and grams in each; pieces where negative.
const LOTS: [(&str, &str, u64, u64, i64, u32, i32); 15] = [
    ("Meadow soft wax", "MS-2210", 38, 300, 4150, 1, 5000),
    ("Meadow soft wax", "MS-2304", 12, 420, 8200, 2, 5000),
    ("Harbour firm wax", "HF-77", 38, 500, 5400, 1, 5000),
    ("Light guard powder", "LG-9", 38, 0, 1280, 1, 100),
    ("Hard flake", "F-31", 38, 0, 900, 1, 500),
    ("Brick dye", "B-4", 38, 0, 690, 1, 30),
    ("Plum dye", "P-11", 38, 0, 690, 1, 30),
    ("Late orchard oil", "LO-118", 38, 40, 3150, 1, 250),
    ("Late orchard oil", "LO-121", 10, 360, 5600, 1, 500),
    ("Salt hedge oil", "SH-52", 38, 200, 3900, 1, 250),
    ("Cold larder oil", "CL-8", 20, 330, 3600, 1, 250),
    ("Wet slate oil", "WS-3", 20, 330, 3300, 1, 250),
    ("Shoulder jar", "J-0924", 38, 0, 4320, 3, -12),
    ("Low tin", "T-1107", 38, 0, 2640, 2, -24),
    ("Cotton 14", "C14-6", 38, 0, 800, 1, -50),
];

/// What is sold: its id and name, formula, vessel, wick, and how many are wished in store.
const SOLD: [(&str, &str, &str, &str, &str, u32); 2] = [
    ("demo-sold-orchard", "Late Orchard, jar", "demo-orchard", "demo-jar", "Cotton 14", 2),
    ("demo-sold-hedge", "Salt Hedge, tin", "demo-hedge", "demo-tin", "Cotton 10", 0),
];

/// Orders: what of which, and in how many days it is wanted.
const ORDERS: [(&str, &str, u32, u32); 2] =
    [("demo-order-market", "demo-sold-orchard", 6, 18), ("demo-order-shop", "demo-sold-hedge", 8, 3)];

/// Everything of the demo workshop as lines to store, with their entry ids: formulas, vessels, ingredients with their
/// trials, two scales, two pots, candles on trial, what is sold and ordered, and pours of the past. `now` is in
/// milliseconds since 1970, and its days are those of the zone.
pub fn demo(device: &str, now: u64, zone: Zone, mut random: impl FnMut() -> u32) -> Vec<(String, String)> {
    let mut book = Book::open(Vec::new(), device);
    let began = now.saturating_sub(30 * DAY);
    // Each act is one the app itself would do; a test holds that none is refused.
    let mut at = began;
    for mut act in wire::read::<Vec<Act>>(WORKSHOP).unwrap_or_default() {
        at = timed(&mut act, began).unwrap_or(at);
        let _ = book.act(act, at, random());
    }
    for (number, of) in LOTS.iter().enumerate() {
        let (id, at, body) = lot(number, of, now, zone);
        let _ = book.act(Act::Lot { id, over: None, body }, at, random());
    }
    for (id, name, formula, vessel, wick, spare) in SOLD {
        let body = Product {
            name: name.to_owned(),
            formula: Id(formula.to_owned()),
            vessel: Id(vessel.to_owned()),
            wick: wick.to_owned(),
            parts: vec!["lid".to_owned(), "label".to_owned()],
            spare,
            cure_days: None,
        };
        let _ = book.act(Act::Product { id: Id(id.to_owned()), over: None, body }, began, random());
    }
    for (id, product, number, days) in ORDERS {
        let at = now.saturating_sub(2 * DAY);
        let body = Order {
            customer: None,
            lines: vec![OrderLine { product: Id(product.to_owned()), number }],
            wanted: Some(Day(zone.day(now).0.saturating_add(days))),
            in_parts: false,
            note: String::new(),
            closed: false,
        };
        let _ = book.act(Act::Order { id: Id(id.to_owned()), over: None, body }, at, random());
    }
    for past in &PAST {
        let _ = pour(&mut book, past, now.saturating_sub(past.days_ago * DAY), zone, &mut random);
    }
    book.to_store().unwrap_or_default()
}

/// What was done with a candle on trial is written in milliseconds since the workshop began: puts the act at its time, and
/// tells it where it has one.
fn timed(act: &mut Act, began: u64) -> Option<u64> {
    let Act::AtTrial { event, .. } = act else { return None };
    let at = match event {
        BurnEvent::Lit { at, .. } | BurnEvent::Out { at, .. } | BurnEvent::Pictured { at, .. } => at,
        BurnEvent::Looked(look) => &mut look.at,
        // The demo has no burn that was missed.
        BurnEvent::Weighed { .. } | BurnEvent::Missed(_) | BurnEvent::Closed { .. } => return None,
    };
    *at = at.saturating_add(began);
    Some(*at)
}

fn lot(
    number: usize,
    (name, lot, ago, keeps, price, packs, holds): &(&str, &str, u64, u64, i64, u32, i32),
    now: u64,
    zone: Zone,
) -> (Id, u64, Lot) {
    let at = now.saturating_sub(ago * DAY);
    let each = Exact::whole(holds.unsigned_abs().into());
    let pack = if *holds < 0 {
        Pack::Pieces(holds.unsigned_abs())
    } else {
        Pack::Weight(Amount::new(each, MassUnit::Gram))
    };
    let body = Lot {
        ingredient: (*name).to_owned(),
        number: (*lot).to_owned(),
        supplier: String::new(),
        got_on: zone.day(at),
        best_before: (*keeps > 0).then(|| zone.day(now + keeps * DAY)),
        price: Money(*price),
        bought: Bought { packs: *packs, pack },
        amount: each * Exact::whole((*packs).into()),
    };
    (Id(["demo-lot-", &number.to_string()].concat()), at, body)
}

/// Plans a pour and does every step of it, as planned, one minute apart. None where it cannot be planned.
fn pour(
    book: &mut Book,
    past: &Past,
    mut now: u64,
    zone: Zone,
    random: &mut impl FnMut() -> u32,
) -> Option<()> {
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
        shade: 0,
        recipe: state,
        tolerance: state.settings.tolerance.value,
        voice: Voice::default(),
    })
    .ok()?;
    let version = version.entry.clone();
    let batch = book.journal().new_id(random());
    let mut run = Run::new(plan.clone());
    let (sources, _) = Ledger::of(state, zone).sources(&plan, zone.day(now), Voice::default());
    let began = Act::Began {
        batch: batch.clone(),
        formula: formula_id,
        version,
        vessel: vessel_id,
        day: Some(zone.day(now)),
        plan: plan.into(),
    };
    book.act(began, now, random()).ok()?;
    book.act(Act::TakenFrom { batch: batch.clone(), sources }, now, random()).ok()?;
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
