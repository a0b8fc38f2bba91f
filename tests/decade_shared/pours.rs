//! What is poured: formulas that change year by year, each planned as the app plans it.

use super::{BEGAN, Lines, MINUTE};
use potside::book::{Act, Id, Journal};
use potside::formula::{Formula, PartKind};
use potside::pot::{Ask, Event, Plan, Run, Target, plan};
use potside::quantity::Voice;
use potside::stores::Source;
use potside::wire;
use std::collections::HashMap;

/// Names of formulas beside the demo's, each after one of those.
const NAMES: [&str; 19] = [
    "First Fern",
    "Slow River",
    "Grey Barn",
    "Low Meadow",
    "High Moor",
    "Old Stair",
    "Warm Brick",
    "Thin Ice",
    "Long Hall",
    "Deep Well",
    "Clear Pane",
    "Dry Stone",
    "Blue Gate",
    "Soft Rain",
    "North Room",
    "Far Bell",
    "Small Hours",
    "Green Lane",
    "White Loft",
];

const NUMBERS: [u32; 5] = [4, 6, 8, 12, 16];

/// A pour as planned and done, from which batches are made.
pub(crate) struct Pour {
    pub(crate) formula: Id,
    /// The entry that wrote the formula's version.
    pub(crate) version: Id,
    pub(crate) vessel: Id,
    pub(crate) plan: Plan,
    pub(crate) events: Vec<Event>,
    pub(crate) sources: Vec<Source>,
}

pub(crate) struct Pours {
    journal: Journal,
    /// Each formula, and the year of its version.
    formulas: Vec<(Id, Formula, Option<u64>)>,
    planned: HashMap<(usize, u64, usize, u32), Pour>,
}

/// A formula like another one, with a fragrance of its own.
fn like(formula: &Formula, name: &str) -> Formula {
    let mut formula = formula.clone();
    name.clone_into(&mut formula.name);
    for part in formula.parts.iter_mut().filter(|p| p.kind == PartKind::Fragrance) {
        part.name = [name, " oil"].concat();
    }
    formula
}

/// The formula as it was in a year: a little less fragrance, or a little more, and a longer cure.
fn in_year(formula: &Formula, year: u64) -> Formula {
    let mut text = wire::write(formula);
    for basis in ["\"OfWax\":\"", "\"OfWhole\":\""] {
        if let Some((head, tail)) = text.clone().split_once(basis)
            && let Some((_, rest)) = tail.split_once(" %")
        {
            text = format!("{head}{basis}{}.{} %{rest}", 5 + year % 3, year % 10);
        }
    }
    let mut changed: Formula = wire::read(&text).unwrap();
    changed.cure_days += year as u32;
    changed
}

impl Pours {
    pub(crate) fn new(journal: Journal) -> Self {
        let demo: Vec<(Id, Formula)> = journal
            .state()
            .formulas
            .values()
            .filter_map(|k| Some((k.id.clone(), k.body()?.clone())))
            .collect();
        let more = NAMES
            .iter()
            .enumerate()
            .map(|(n, name)| (Id(format!("formula-{n}")), like(&demo[n % demo.len()].1, name)));
        let formulas = demo.iter().cloned().chain(more).map(|(id, body)| (id, body, None)).collect();
        Self { journal, formulas, planned: HashMap::new() }
    }

    /// The pour that this batch is like; the formula's version of the year is written where there is none yet.
    pub(crate) fn of(&mut self, lines: &mut Lines, n: u64, at: u64, year: u64) -> &Pour {
        // Some are poured far more often than others.
        let which = (n * n % 31 * 7 + n % 5) as usize % self.formulas.len();
        let (id, body, of) = &mut self.formulas[which];
        if *of != Some(year) {
            *of = Some(year);
            let over = self.journal.state().formulas.get(id).and_then(|k| Some(k.latest()?.entry.clone()));
            let act = Act::Formula { id: id.clone(), over, body: in_year(body, year) };
            let entry = lines.put(at, act);
            self.journal.take(entry);
        }
        let (vessel, number) = ((n / 3) as usize % body.vessels.len(), NUMBERS[(n / 7 % 5) as usize]);
        let key = (which, year, vessel, number);
        if !self.planned.contains_key(&key) {
            let pour = planned(&self.journal, &self.formulas[which].0, vessel, number);
            self.planned.insert(key, pour);
        }
        &self.planned[&key]
    }
}

fn planned(journal: &Journal, formula: &Id, vessel: usize, number: u32) -> Pour {
    let state = journal.state();
    let version = state.formulas.get(formula).unwrap().latest().unwrap();
    let into = &version.body.vessels[vessel];
    let body = state.vessels.get(&into.vessel).unwrap().body().unwrap();
    let scales: Vec<_> = state.scales_shown().iter().filter_map(|k| k.body().cloned()).collect();
    let plan = plan(&Ask {
        formula: &version.body,
        vessel: &body.name,
        wick: &into.wick,
        fill: state.fill(body, &version.body, Voice::default()).unwrap(),
        target: Target::Vessels(number),
        residue: &state.settings.residue,
        warmed: number.is_multiple_of(4),
        scales: &scales,
        pot: None,
        shade: 0,
        recipe: state,
        tolerance: state.settings.tolerance.value,
        voice: Voice::default(),
    });
    let plan = plan.unwrap_or_else(|why| panic!("{}, {number}: {why:?}", version.body.name));
    let mut run = Run::new(plan.clone());
    let (mut events, mut at) = (Vec::new(), BEGAN);
    while let Some(step) = run.now() {
        at += MINUTE;
        let event = Event::Did { step: step.key, weighed: step.amount, temperature: None, at };
        run.take(event.clone()).unwrap();
        events.push(event);
    }
    let sources = plan.needs().into_iter().map(|need| Source { part: need.name, lots: Vec::new() }).collect();
    Pour {
        formula: formula.clone(),
        version: version.entry.clone(),
        vessel: into.vessel.clone(),
        plan,
        events,
        sources,
    }
}
