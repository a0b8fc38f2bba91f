//! Ended batches and judged trials that are tied up: their entries are in a bundle of few bytes and not among those in
//! memory, until something is about them. Everything else is in memory, so nothing but these depends on what is tied up.

use super::{Batch, Burns, Entry, Id, Journal, Kept, Subject};
use crate::bench::burn::{Trial, Verdict};
use crate::pot::Used;
use crate::sort;
use std::fmt;
use std::rc::Rc;

/// Whole batches and trials: each with all entries about it, none of which is undone. Found by their place.
pub trait Bundle {
    /// The batches as they stand, in the order of their ids: the first places.
    fn batches(&self, bundle: &Rc<dyn Bundle>, each: &mut dyn FnMut(Batch));
    /// The candles on trial, in the order of their ids: the places after those.
    fn trials(&self, bundle: &Rc<dyn Bundle>) -> Vec<(Kept<Trial>, Burns)>;
    /// How many there are of both.
    fn places(&self) -> usize;
    fn of_thing(&self, id: &Id) -> Option<usize>;
    /// The batch or trial that has an entry of this id.
    fn of_entry(&self, id: &Id) -> Option<usize>;
    /// All entries about it, in order.
    fn entries(&self, place: usize) -> Vec<Entry>;
    /// The last clock of it, and how many entries it has.
    fn last(&self, place: usize) -> (u64, usize);
    /// When the first and the last entry of all were written, milliseconds since 1970.
    fn times(&self) -> (u64, u64);
    /// What came of a trial.
    fn verdict(&self, place: usize) -> Option<Verdict>;
    /// True where there are photos of it.
    fn pictured(&self, place: usize) -> bool;
    /// See [`super::Past::fills`] and what follows it.
    fn fills(&self, place: usize) -> (usize, Option<u64>);
    fn cure_days(&self, place: usize) -> u32;
    fn wick(&self, place: usize) -> &str;
    fn used(&self, place: usize) -> Vec<Used<'_>>;
    fn takes(&self, place: usize, name: &str) -> bool;
}

/// What of a bundle is tied up still.
#[derive(Clone, Default)]
pub(super) struct Ties {
    pub(super) bundle: Option<Rc<dyn Bundle>>,
    /// Places of what is tied up, the one with the latest clock last.
    places: Vec<usize>,
    /// For each place whether it is among those.
    tied: Vec<bool>,
    /// How many entries that are.
    entries: usize,
    /// The last clock of the bundle.
    clock: u64,
}

impl Ties {
    fn has(&self, place: usize) -> bool {
        self.tied.get(place) == Some(&true)
    }
}

impl fmt::Debug for Ties {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.places.len().fmt(f)
    }
}

impl Journal {
    /// A book of which a part is in a bundle: everything else is folded from its entries.
    pub fn open_tied(bundle: Rc<dyn Bundle>, entries: Vec<Entry>, device: &str) -> Self {
        let mut journal = Self::open(Vec::new(), device);
        journal.entries = entries;
        journal.fold();
        bundle.batches(&bundle, &mut |batch| journal.state.batches.add(&batch.id.clone(), batch));
        for (trial, burns) in bundle.trials(&bundle) {
            journal.state.burns.add(&trial.id, burns);
            journal.state.trials.add(&trial.id.clone(), trial);
        }
        let (mut clocks, mut entries) = (Vec::new(), 0);
        for place in 0..bundle.places() {
            let (clock, number) = bundle.last(place);
            entries += number;
            clocks.push(clock);
        }
        journal.ties.entries = entries;
        let at = |place: usize| clocks.get(place);
        journal.ties.places = sort::order(clocks.len(), &|a, b| at(a).cmp(&at(b)));
        journal.ties.tied = vec![true; clocks.len()];
        journal.ties.clock = clocks.into_iter().max().unwrap_or_default();
        journal.ties.bundle = Some(bundle);
        journal
    }

    /// How many entries there are, those tied up too.
    pub fn len(&self) -> usize {
        self.entries.len() + self.ties.entries
    }

    pub fn is_empty(&self) -> bool {
        self.len() == 0
    }

    /// True where some entries are not among the others.
    pub(super) const fn is_tied(&self) -> bool {
        self.ties.entries > 0
    }

    pub fn last_clock(&self) -> u64 {
        self.entries.last().map_or(0, |e| e.clock).max(self.ties.clock)
    }

    /// When the first entry was written that is later than this, milliseconds since 1970; any one of those where it is asked
    /// for what is later than something.
    pub(super) fn first_since(&self, since: Option<u64>) -> Option<u64> {
        let fresh = |at: &u64| since.is_none_or(|since| *at > since);
        let times = self.ties.bundle.as_ref().filter(|_| self.ties.entries > 0).map(|b| b.times());
        let tied = times.into_iter().flat_map(|(first, last)| [first, last]);
        self.entries.iter().map(|e| e.at).chain(tied).filter(fresh).min()
    }

    /// True where an entry of this id is here.
    pub fn knows(&self, id: &Id) -> bool {
        let tied = |b: &Rc<dyn Bundle>| b.of_entry(id).is_some_and(|place| self.ties.has(place));
        self.find(id).is_some() || self.ties.bundle.as_ref().is_some_and(tied)
    }

    /// True where each of these lines says what the entry of its id says here; nothing is untied by it.
    pub fn says<'a>(&self, lines: impl Iterator<Item = (&'a Id, &'a str)>) -> bool {
        // Lines that stand together are mostly about the same few things.
        let mut untied: Vec<(usize, Vec<Entry>)> = Vec::new();
        for (id, line) in lines {
            let found = self.find(id).or_else(|| {
                let bundle = self.ties.bundle.as_ref()?;
                let place = bundle.of_entry(id).filter(|place| self.ties.has(*place))?;
                if untied.iter().all(|(here, _)| *here != place) {
                    untied.push((place, bundle.entries(place)));
                }
                untied.iter().find(|(here, _)| *here == place)?.1.iter().find(|e| e.id == *id)
            });
            let same = |e: &Entry| e.to_line() == line || Entry::from_line(line).is_ok_and(|l| l.is_same(e));
            if !found.is_some_and(same) {
                return false;
            }
        }
        true
    }

    /// The entries of a batch or trial that is tied up.
    pub(super) fn tied_entries(&self, thing: &Id) -> Option<Vec<Entry>> {
        let bundle = self.ties.bundle.as_ref()?;
        bundle.of_thing(thing).filter(|place| self.ties.has(*place)).map(|place| bundle.entries(place))
    }

    /// The entries of trials that are tied up and have photos.
    pub(super) fn tied_pictured(&self) -> Vec<Entry> {
        let Some(bundle) = &self.ties.bundle else { return Vec::new() };
        let pictured = self.ties.places.iter().filter(|place| bundle.pictured(**place));
        pictured.flat_map(|place| bundle.entries(*place)).collect()
    }

    /// Unties a batch or trial, so that its entries are among the others.
    pub fn untie(&mut self, thing: &Id) {
        if let Some(place) = self.ties.bundle.as_ref().and_then(|b| b.of_thing(thing)) {
            self.untie_place(place);
        }
    }

    fn untie_entry(&mut self, id: &Id) {
        if let Some(place) = self.ties.bundle.as_ref().and_then(|b| b.of_entry(id)) {
            self.untie_place(place);
        }
    }

    fn untie_place(&mut self, place: usize) {
        let Some(at) = self.ties.places.iter().rposition(|tied| *tied == place) else { return };
        self.ties.places.remove(at);
        if let Some(tied) = self.ties.tied.get_mut(place) {
            *tied = false;
        }
        let Some(bundle) = self.ties.bundle.clone() else { return };
        for entry in bundle.entries(place) {
            self.ties.entries = self.ties.entries.saturating_sub(1);
            self.insert(entry);
        }
    }

    /// Unties everything, for what looks at all entries.
    pub fn untie_all(&mut self) {
        let Some(bundle) = self.ties.bundle.take() else { return };
        for place in std::mem::take(&mut self.ties).places {
            self.entries.extend(bundle.entries(place));
        }
        self.arrange();
    }

    /// Unties so much that the last `most` entries are among the others, and the last one done here, if it is not very long
    /// ago.
    pub fn untie_latest(&mut self, most: usize) {
        while let Some((place, bundle)) = self.ties.places.last().zip(self.ties.bundle.as_ref()) {
            let (clock, _) = bundle.last(*place);
            let later = self.entries.len() - self.entries.partition_point(|e| e.clock <= clock);
            let own = self.last_undoable().is_some_and(|e| e.clock > clock);
            if later >= most && (own || later >= most.saturating_mul(50)) {
                return;
            }
            self.untie_place(*place);
        }
    }

    /// Unties what taking this entry in may change, or look at.
    pub(super) fn untie_for(&mut self, entry: &Entry) {
        if self.ties.bundle.is_none() {
            return;
        }
        self.untie_entry(&entry.id);
        match entry.act.subject() {
            Subject::Thing(id) => self.untie(id),
            Subject::Entry(target) => {
                self.untie_entry(target);
                // No entry that an undo here names is tied up: so what it is about in the end is found.
                if self.about(entry) == Some(Subject::Book) {
                    self.untie_all();
                }
            }
            Subject::Book => self.untie_all(),
            Subject::Settings | Subject::Nothing => {}
        }
    }
}
