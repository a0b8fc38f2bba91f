//! Tying up: a bundle is made of a book, a piece at a time.

use super::code::{Texts, mark, put, put_leaves, put_step, seal, split};
use super::{HEAD, join};
use crate::book::{Act, Batch, Ending, Entry, Id, Journal, Subject};
use crate::shelf::FINISHES;
use crate::wire::{self, Wire};
use std::collections::{HashMap, HashSet};

/// A bundle in the making. What is done in the book meanwhile is not tied up.
pub struct Tying {
    about: About,
    next: usize,
    /// How many entries each batch had that is tied up.
    tied: HashMap<Id, usize>,
    pack: Pack,
    records: Vec<u8>,
    ends: Vec<u8>,
    marks: Vec<(u64, u32)>,
    times: (u64, u64),
}

/// What the entries in memory are about.
struct About {
    things: HashMap<Id, Vec<Id>>,
    /// Entries that are not to be tied up: undone once, or without effect.
    apart: HashSet<Id>,
    replaced: usize,
}

impl About {
    fn of(journal: &Journal) -> Self {
        let mut things: HashMap<Id, Vec<Id>> = HashMap::new();
        let mut apart: HashSet<Id> = journal.state().ignored.iter().map(|(id, _)| id.clone()).collect();
        let mut replaced = 0;
        for entry in journal.entries() {
            match entry.act.subject() {
                Subject::Thing(id) => things.entry(id.clone()).or_default().push(entry.id.clone()),
                Subject::Entry(target) => {
                    apart.insert(target.clone());
                }
                Subject::Book => replaced += 1,
                Subject::Settings => {}
            }
        }
        Self { things, apart, replaced }
    }
}

#[derive(Default)]
struct Pack {
    texts: Texts,
    shapes: HashMap<String, usize>,
    /// The leaves of the first of each shape.
    models: Vec<(u64, Vec<u64>)>,
    /// Something was not as it is again.
    failed: bool,
}

impl Tying {
    /// None where a book cannot be tied up: a part of it is damaged or of a newer format.
    pub fn begin(journal: &Journal) -> Option<Self> {
        journal.damaged().is_empty().then(|| Self {
            about: About::of(journal),
            next: 0,
            tied: HashMap::new(),
            pack: Pack::default(),
            records: Vec::new(),
            ends: Vec::new(),
            marks: Vec::new(),
            times: (u64::MAX, 0),
        })
    }

    /// Ties up the next batch that is ended. False where there is none.
    pub fn go_on(&mut self, journal: &Journal) -> bool {
        let Some(batch) = journal.state().batches.at(self.next) else { return false };
        self.next += 1;
        if batch.ended.is_none() {
            return true;
        }
        if let Some(entries) = journal.tied_entries(&batch.id) {
            self.batch(batch, &entries.iter().collect::<Vec<_>>());
            return true;
        }
        let ids = self.about.things.get(&batch.id).map(Vec::as_slice).unwrap_or_default();
        let entries: Vec<&Entry> = ids.iter().filter_map(|id| journal.find(id)).collect();
        let good =
            |e: &&Entry| of_batch(&e.act) && journal.counts(&e.id) && !self.about.apart.contains(&e.id);
        if !entries.is_empty() && entries.len() == ids.len() && entries.iter().all(good) {
            self.batch(batch, &entries);
        }
        true
    }

    fn batch(&mut self, batch: &Batch, entries: &[&Entry]) {
        let place = self.tied.len() as u32;
        self.tied.insert(batch.id.clone(), entries.len());
        self.pack.batch(&mut self.records, batch);
        put(&mut self.records, entries.last().map_or(0, |e| e.clock));
        put(&mut self.records, entries.len() as u64);
        let mut last = (0, 0);
        for entry in entries {
            self.pack.entry(&mut self.records, entry, &mut last);
            self.marks.push((mark(&entry.id.0), place));
            self.times = (self.times.0.min(entry.at), self.times.1.max(entry.at));
        }
        self.ends.extend((self.records.len() as u32).to_le_bytes());
    }

    /// True where what was tied up is still as it was: nothing was done to it, and nothing of it undone.
    fn still(&self, journal: &Journal) -> bool {
        let now = About::of(journal);
        let same =
            |(batch, entries): (&Id, &usize)| match (journal.tied_entries(batch), now.things.get(batch)) {
                (Some(tied), _) => tied.len() == *entries,
                (None, Some(ids)) => ids.len() == *entries && !ids.iter().any(|id| now.apart.contains(id)),
                (None, None) => false,
            };
        journal.damaged().is_empty() && now.replaced == self.about.replaced && self.tied.iter().all(same)
    }

    /// The bundle, for this build of the app and a storage of so many lines. None where what is tied up has changed
    /// meanwhile, or would not come out as it was.
    pub fn finish(mut self, journal: &Journal, build: &str, lines: usize) -> Option<Vec<u8>> {
        while self.go_on(journal) {}
        if !self.still(journal) {
            return None;
        }
        let mut rest = Vec::new();
        let other = |e: &&Entry| !matches!(e.act.subject(), Subject::Thing(id) if self.tied.contains_key(id));
        let others: Vec<&Entry> = journal.entries().iter().filter(other).collect();
        put(&mut rest, others.len() as u64);
        let mut last = (0, 0);
        for entry in others {
            self.pack.entry(&mut rest, entry, &mut last);
        }
        let mut models = Vec::new();
        put(&mut models, self.pack.models.len() as u64);
        for (shape, leaves) in &self.pack.models {
            put(&mut models, *shape);
            put(&mut models, leaves.len() as u64);
            leaves.iter().for_each(|leaf| put(&mut models, *leaf));
        }
        self.marks.sort_unstable();
        let mut marks = Vec::new();
        for (mark, place) in &self.marks {
            marks.extend(mark.to_le_bytes());
            marks.extend(place.to_le_bytes());
        }
        let mut head = Vec::new();
        put(&mut head, self.pack.texts.number(build));
        put(&mut head, lines as u64);
        put(&mut head, self.times.0);
        put(&mut head, self.times.1);
        let (text_ends, text) = self.pack.texts.bytes();
        let parts: [&[u8]; 8] =
            [&head, text.as_bytes(), &text_ends, &models, &self.records, &self.ends, &marks, &rest];
        let mut body = Vec::new();
        for part in parts {
            body.extend((part.len() as u32).to_le_bytes());
        }
        parts.iter().for_each(|part| body.extend_from_slice(part));
        let whole = [HEAD, &seal(&body).to_le_bytes(), &body].concat();
        (!self.pack.failed && whole.len() < u32::MAX as usize).then_some(whole)
    }
}

/// True for what is done to a batch and to nothing else.
fn of_batch(act: &Act) -> bool {
    matches!(
        act,
        Act::Began { .. }
            | Act::At { .. }
            | Act::Ended { .. }
            | Act::TakenFrom { .. }
            | Act::Worked { .. }
            | Act::Ticked { .. }
    )
}

impl Pack {
    /// Ids are kept as they stand in JSON, where they stand most often.
    fn id(&mut self, id: &Id) -> u64 {
        self.texts.number(&["\"", &id.0, "\""].concat())
    }

    fn json<T: Wire>(&mut self, value: &T) -> u64 {
        self.texts.number(&wire::write(value))
    }

    fn batch(&mut self, out: &mut Vec<u8>, batch: &Batch) {
        for id in [&batch.id, &batch.formula, &batch.version, &batch.vessel] {
            put(out, self.id(id));
        }
        put(out, batch.began);
        if let Some((how, at, note)) = &batch.ended {
            put(out, u64::from(*how == Ending::GivenUp));
            put(out, *at);
            put(out, self.texts.number(note));
        }
        let words = batch.words.as_str();
        let planned = crate::book::lookup::words(&batch.run.plan).len();
        let (plan, own) = words.split_at_checked(planned).unwrap_or((words, ""));
        put(out, self.texts.number(plan));
        put(out, self.texts.number(own));
        put(out, batch.minutes.map_or(0, |n| u64::from(n) + 1));
        put(out, batch.closed.map_or(0, |at| at.saturating_add(1)));
        put(out, batch.ticked.steps().len() as u64);
        for step in batch.ticked.steps() {
            put(out, FINISHES.iter().position(|(known, _)| known == step).unwrap_or_default() as u64);
        }
        put(out, batch.sources.len() as u64);
        for source in &batch.sources {
            put(out, self.texts.number(&source.part));
            put(out, source.lots.len() as u64);
            for lot in &source.lots {
                put(out, self.id(lot));
            }
        }
        let (count, last) = batch.run.fills();
        put(out, count as u64);
        put(out, last.map_or(0, |at| at.saturating_add(1)));
        put(out, batch.run.cure_days().into());
        let names: HashSet<String> = batch.run.plan.needs().into_iter().map(|need| need.name).collect();
        let plan = &batch.run.plan;
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
}
