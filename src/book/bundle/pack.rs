//! What is tied up, written: a batch, a trial, an entry.

use super::code::{Texts, put, put_leaves, put_step, split};
use super::join;
use crate::bench::burn::BurnEvent;
use crate::book::{Batch, Burns, Ending, Entry, Id};
use crate::shelf::FINISHES;
use crate::text::cut;
use crate::wire::{self, Wire};
use std::collections::HashMap;

#[derive(Default)]
pub(super) struct Pack {
    pub(super) texts: Texts,
    shapes: HashMap<String, usize>,
    /// The leaves of the first of each shape.
    pub(super) models: Vec<(u64, Vec<u64>)>,
    /// Something was not as it is again.
    pub(super) failed: bool,
}

impl Pack {
    /// Ids are kept as they stand in JSON, where they stand most often.
    fn id(&mut self, id: &Id) -> u64 {
        self.texts.number(&["\"", &id.0, "\""].concat())
    }

    fn json<T: Wire>(&mut self, value: &T) -> u64 {
        self.texts.number(&wire::write(value))
    }

    pub(super) fn batch(&mut self, out: &mut Vec<u8>, batch: &Batch) {
        for id in [&batch.id, &batch.formula, &batch.version, &batch.vessel] {
            put(out, self.id(id));
        }
        put(out, batch.began);
        put(out, batch.day.map_or(0, |day| u64::from(day.0) + 1));
        if let Some((how, at, note)) = &batch.ended {
            put(out, u64::from(*how == Ending::GivenUp));
            put(out, *at);
            put(out, self.texts.number(note));
        }
        let (plan, own) = cut(&batch.words, batch.planned);
        put(out, self.texts.number(plan));
        put(out, self.texts.number(own));
        put(out, batch.minutes.map_or(0, |n| u64::from(n) + 1));
        put(out, batch.closed.map_or(0, |at| at.saturating_add(1)));
        put(out, batch.ticked.steps().len() as u64);
        for step in batch.ticked.steps() {
            put(out, FINISHES.iter().position(|(known, _)| known == step).unwrap_or_default() as u64);
        }
        put(out, batch.sources.len() as u64);
        for (until, source) in &batch.sources {
            put(out, self.texts.number(&source.part));
            // So that what is between them can be passed over, the time counts as one of the lots.
            put(out, source.lots.len() as u64 + 1);
            put(out, until.wrapping_add(1));
            for lot in &source.lots {
                put(out, self.id(lot));
            }
        }
        let (count, last) = batch.run.fills();
        put(out, count as u64);
        put(out, last.map_or(0, |at| at.saturating_add(1)));
        put(out, batch.run.cure_days().into());
        let plan = &batch.run.plan;
        // In their order, so that the same book always comes to the same bytes.
        let mut names: Vec<String> = Vec::new();
        for need in plan.needs() {
            if !names.contains(&need.name) {
                names.push(need.name);
            }
        }
        put(out, names.len() as u64 + 2);
        for name in names.iter().chain([&plan.vessel, &plan.wick]) {
            put(out, self.texts.number(name));
        }
        let used = batch.run.used();
        put(out, used.len() as u64);
        for used in used {
            put(out, self.texts.number(used.name));
            put(out, self.json(&used.mass));
            put(out, self.json(&used.pieces));
            put_step(out, batch.began, used.at);
        }
    }

    /// How many they are, and they.
    pub(super) fn list(&mut self, out: &mut Vec<u8>, entries: &[&Entry]) {
        put(out, entries.len() as u64);
        let mut last = (0, 0);
        for entry in entries {
            self.entry(out, entry, &mut last);
        }
    }

    /// An entry, after one of this clock and time.
    fn entry(&mut self, out: &mut Vec<u8>, entry: &Entry, last: &mut (u64, u64)) {
        put(out, self.texts.number(&entry.device));
        put_step(out, last.0, entry.clock);
        put_step(out, last.1, entry.at);
        *last = (entry.clock, entry.at);
        let random = entry.id.0.rsplit('-').next().and_then(|r| u64::from_str_radix(r, 16).ok());
        match random.filter(|r| *r >> 32 == 0 && super::id(&entry.device, entry.clock, *r) == entry.id.0) {
            Some(random) => put(out, random << 1),
            None => put(out, (self.texts.number(&entry.id.0) << 1) | 1),
        }
        let json = wire::write(&entry.act);
        let (shape, leaves) = split(&json, &mut self.texts);
        let text = |number| self.texts.get(number);
        self.failed |= join(&shape, leaves.iter().copied(), text).as_deref() != Some(&json);
        let model = match self.shapes.get(&shape) {
            Some(model) => *model,
            None => {
                self.models.push((self.texts.number(&shape), leaves.clone()));
                self.shapes.insert(shape, self.models.len() - 1);
                self.models.len() - 1
            }
        };
        put(out, model as u64);
        match self.models.get(model) {
            Some((_, first)) if first.len() == leaves.len() => put_leaves(out, first, &leaves),
            _ => self.failed = true,
        }
    }

    /// What is asked of a trial that is tied up.
    pub(super) fn trial(&mut self, out: &mut Vec<u8>, trial: &Id, burns: &Burns) {
        put(out, self.id(trial));
        put(out, burns.verdict().map_or(0, |verdict| self.json(&verdict)));
        let photo = |(_, event): &(Id, BurnEvent)| matches!(event, BurnEvent::Pictured { .. });
        put(out, u64::from(burns.events().iter().any(photo)));
    }
}
