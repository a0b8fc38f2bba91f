//! What is asked of a bundle.

use super::Tied;
use super::code::{Reader, mark};
use crate::bench::burn::{Trial, Verdict};
use crate::book::state::write;
use crate::book::{Act, Batch, Bundle, Burns, Ending, Entry, Id, Kept, Map, Past};
use crate::day::Day;
use crate::pot::Used;
use crate::quantity::{Exact, Mass};
use crate::shelf::{FINISHES, Ticked};
use crate::sort;
use crate::stores::Source;
use crate::text::key;
use crate::wire::{self, Json, Wire};
use std::cmp::Ordering;
use std::ops::Range;
use std::rc::Rc;

impl Tied {
    fn batch(&self, run: Past, place: usize) -> Batch {
        let mut record = self.record(place);
        let reader = &mut record;
        let (id, formula, version, vessel) =
            (self.id(reader), self.id(reader), self.id(reader), self.id(reader));
        let began = reader.get();
        let day = reader.get().checked_sub(1).map(|day| Day(day as u32));
        let how = if reader.get() == 0 { Ending::Poured } else { Ending::GivenUp };
        let ended = Some((how, reader.get(), self.said(reader).to_owned()));
        let plan = self.said(reader);
        let (planned, words) = (plan.len(), [plan, self.said(reader)].concat());
        let minutes = reader.get().checked_sub(1).map(|n| n as u32);
        let closed = reader.get().checked_sub(1);
        let steps = (0..reader.count()).filter_map(|_| Some(FINISHES.get(reader.get() as usize)?.0));
        let ticked = Ticked::of(steps.collect());
        let sources = (0..reader.count()).map(|_| self.source(reader)).collect();
        Batch {
            id,
            formula,
            version,
            vessel,
            began,
            day,
            run,
            ended,
            words,
            planned,
            sources,
            minutes,
            ticked,
            closed,
        }
    }

    fn source(&self, reader: &mut Reader) -> (u64, Source) {
        let (part, numbers) = (self.said(reader).to_owned(), reader.count());
        let until = reader.get().wrapping_sub(1);
        (until, Source { part, lots: (1..numbers).map(|_| self.id(reader)).collect() })
    }

    /// A candle on trial, from the first list of its entries.
    fn trial(&self, place: usize) -> Option<Kept<Trial>> {
        let mut reader = self.at_entries(place);
        let mut trials = Map::default();
        for entry in self.all_of(&mut reader)? {
            match &entry.act {
                Act::Trial { id, over, body } => write(&mut trials, &entry, id, over, &**body).ok()?,
                Act::Retire { id, retired } => trials.get_mut(id)?.retired = *retired,
                _ => {}
            }
        }
        trials.into_values().next()
    }

    /// Where of some places, in the order of their ids, this one is.
    fn among(&self, places: Range<usize>, id: &Id) -> Option<usize> {
        let (mut from, mut to) = (places.start, places.end);
        while from < to {
            let half = from.midpoint(to);
            let found = self.id(&mut self.record(half));
            match found.cmp(id) {
                Ordering::Less => from = half + 1,
                Ordering::Equal => return Some(half),
                Ordering::Greater => to = half,
            }
        }
        None
    }

    /// The mark of an entry, in the order of the marks, and the place of its batch.
    fn mark(&self, at: usize) -> Option<(u64, usize)> {
        let twelve = self.bytes.get(self.marks.clone())?.get(at.checked_mul(12)?..)?;
        let (mark, rest) = twelve.split_first_chunk::<8>()?;
        Some((u64::from_le_bytes(*mark), u32::from_le_bytes(*rest.first_chunk::<4>()?) as usize))
    }

    /// An amount: in JSON it is a text in which nothing is written otherwise than it is.
    fn amount<T: Wire>(&self, reader: &mut Reader, none: T) -> T {
        let said = self.said(reader);
        let plain = said.get(1..said.len().saturating_sub(1)).unwrap_or_default();
        wire::get(&Json::Text(plain.into())).unwrap_or(none)
    }
}

impl Bundle for Tied {
    fn batches(&self, bundle: &Rc<dyn Bundle>, each: &mut dyn FnMut(Batch)) {
        (0..self.batches).for_each(|place| each(self.batch(Past::tied(Rc::clone(bundle), place), place)));
    }

    fn trials(&self, bundle: &Rc<dyn Bundle>) -> Vec<(Kept<Trial>, Burns)> {
        let places = self.batches..self.places();
        places.filter_map(|place| Some((self.trial(place)?, Burns::tied(Rc::clone(bundle), place)))).collect()
    }

    fn places(&self) -> usize {
        self.places.len() / 4
    }

    fn of_thing(&self, id: &Id) -> Option<usize> {
        self.among(0..self.batches, id).or_else(|| self.among(self.batches..self.places(), id))
    }

    fn of_entry(&self, id: &Id) -> Option<usize> {
        let wanted = mark(&id.0);
        let (mut from, mut to) = (0, self.marks.len() / 12);
        while from < to {
            let half = from.midpoint(to);
            let (found, place) = self.mark(half)?;
            match found.cmp(&wanted) {
                Ordering::Less => from = half + 1,
                Ordering::Equal => return Some(place),
                Ordering::Greater => to = half,
            }
        }
        None
    }

    fn entries(&self, place: usize) -> Vec<Entry> {
        let mut reader = self.at_entries(place);
        let lists = [self.all_of(&mut reader), self.all_of(&mut reader)];
        let mut entries: Vec<Entry> = lists.into_iter().flatten().flatten().collect();
        sort::by(&mut entries, |a, b| a.place().cmp(&b.place()));
        entries
    }

    fn verdict(&self, place: usize) -> Option<Verdict> {
        let mut reader = self.record(place);
        reader.get();
        wire::read(self.said(&mut reader)).ok()
    }

    fn pictured(&self, place: usize) -> bool {
        let mut reader = self.record(place);
        reader.skip(2);
        place >= self.batches && reader.get() > 0
    }

    fn last(&self, place: usize) -> (u64, usize) {
        let mut reader = self.whole(place);
        (reader.get(), reader.get() as usize)
    }

    fn times(&self) -> (u64, u64) {
        self.times
    }

    fn fills(&self, place: usize) -> (usize, Option<u64>) {
        let mut reader = self.run(place);
        (reader.get() as usize, reader.get().checked_sub(1))
    }

    fn cure_days(&self, place: usize) -> u32 {
        let mut reader = self.run(place);
        (reader.get(), reader.get(), reader.get()).2 as u32
    }

    fn wick(&self, place: usize) -> &str {
        let mut reader = self.run(place);
        let _ = (reader.get(), reader.get(), reader.get());
        // It is the last of what a pour takes.
        (0..reader.count())
            .map(|_| reader.get())
            .last()
            .and_then(|number| self.text(number))
            .unwrap_or_default()
    }

    fn takes(&self, place: usize, name: &str) -> bool {
        let mut reader = self.run(place);
        let _ = (reader.get(), reader.get(), reader.get());
        let wanted = key(name);
        // Small letters are as many: of most names nothing more has to be looked at.
        let long = wanted.chars().count();
        (0..reader.count()).any(|_| {
            let own = self.said(&mut reader).trim();
            own.chars().count() == long && key(own) == wanted
        })
    }

    fn used(&self, place: usize) -> Vec<Used<'_>> {
        let mut reader = self.record(place);
        reader.skip(4);
        let began = reader.get();
        let mut reader = self.run(place);
        let _ = (reader.get(), reader.get(), reader.get());
        let numbers = reader.count();
        reader.skip(numbers);
        let mut used = Vec::new();
        for _ in 0..reader.count() {
            let name = self.said(&mut reader);
            let mass = self.amount(&mut reader, Mass::ZERO);
            let pieces = self.amount(&mut reader, Exact::ZERO);
            used.push(Used { name, mass, pieces, at: reader.step(began) });
        }
        used
    }
}
