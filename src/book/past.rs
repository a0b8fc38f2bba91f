//! What was done of a batch. Of one that is tied up in a bundle it is untied when it is first looked at.

use super::{Bundle, Entry, Id, State};
use crate::pot::{Event, Plan, Run, RunError, StepKey, Used};
use crate::wire::{Flaws, Json, Wire};
use std::cell::OnceCell;
use std::fmt;
use std::ops::Deref;
use std::rc::Rc;

/// The run of a batch, with the entries that made it. Reads as the [`Run`].
#[derive(Clone)]
pub struct Past(Kind);

#[derive(Clone)]
enum Kind {
    Here(Box<Full>),
    /// At a place of a bundle; once it was looked at, also here.
    Tied(OnceCell<Box<Full>>, Rc<dyn Bundle>, usize),
}

/// A run and its entries.
#[derive(Clone, PartialEq, Debug)]
pub struct Full {
    run: Run,
    entries: Vec<Id>,
}

impl Full {
    /// The fold of the entries of one batch.
    pub(super) fn of(entries: &[Entry]) -> Box<Self> {
        let mut state = State::default();
        entries.iter().for_each(|entry| state.take(entry));
        let batch = state.batches.into_values().next();
        match batch.map(|b| b.run.0) {
            Some(Kind::Here(full)) => full,
            _ => {
                // Cannot be: a bundle is proved when it is made, and again when it is read.
                let nothing = Plan::get(&Json::Nothing, &mut Flaws::default());
                Box::new(Self { run: Run::new(nothing), entries: Vec::new() })
            }
        }
    }
}

impl Past {
    pub(super) fn new(plan: Plan, began: Id) -> Self {
        Self(Kind::Here(Box::new(Full { run: Run::new(plan), entries: vec![began] })))
    }

    /// That of the batch at this place of a bundle.
    pub(super) const fn tied(bundle: Rc<dyn Bundle>, place: usize) -> Self {
        Self(Kind::Tied(OnceCell::new(), bundle, place))
    }

    /// Entries that made it, in order: the last one is what "undo" takes back.
    pub fn entries(&self) -> &[Id] {
        &self.full().entries
    }

    pub(super) fn note(&mut self, entry: &Id) {
        self.change().entries.push(entry.clone());
    }

    /// Where it is tied up, so that what many batches are asked need not untie them.
    fn bundle(&self) -> Option<(&dyn Bundle, usize)> {
        match &self.0 {
            Kind::Here(_) => None,
            Kind::Tied(_, bundle, place) => Some((bundle.as_ref(), *place)),
        }
    }

    /// How many vessels were filled, and when the last one was, milliseconds since 1970.
    pub fn fills(&self) -> (usize, Option<u64>) {
        if let Some((bundle, place)) = self.bundle() {
            return bundle.fills(place);
        }
        let mut fills = (0, None);
        for event in self.events() {
            if let Event::Did { step: StepKey::Fill { .. }, at, .. } = event {
                fills = (fills.0 + 1, fills.1.max(Some(*at)));
            }
        }
        fills
    }

    /// Full days from the pour until it may ship.
    pub fn cure_days(&self) -> u32 {
        self.bundle().map_or_else(|| self.plan.cure_days, |(bundle, place)| bundle.cure_days(place))
    }

    pub fn wick(&self) -> &str {
        self.bundle().map_or_else(|| self.plan.wick.as_str(), |(bundle, place)| bundle.wick(place))
    }

    /// See [`Run::used`].
    pub fn used(&self) -> Vec<Used<'_>> {
        self.bundle().map_or_else(|| (**self).used(), |(bundle, place)| bundle.used(place))
    }

    /// See [`Plan::takes`].
    pub fn takes(&self, name: &str) -> bool {
        self.bundle().map_or_else(|| self.plan.takes(name), |(bundle, place)| bundle.takes(place, name))
    }

    fn full(&self) -> &Full {
        match &self.0 {
            Kind::Here(full) => full,
            Kind::Tied(full, bundle, place) => full.get_or_init(|| bundle.full(*place)),
        }
    }

    /// It to be changed: then it is no longer as it was tied up.
    fn change(&mut self) -> &mut Full {
        if let Kind::Tied(full, bundle, place) = &mut self.0 {
            self.0 = Kind::Here(full.take().unwrap_or_else(|| bundle.full(*place)));
        }
        match &mut self.0 {
            Kind::Here(full) => full,
            Kind::Tied(..) => unreachable!("it is here now"),
        }
    }

    /// See [`Run::take`].
    pub fn take(&mut self, event: Event) -> Result<(), RunError> {
        self.change().run.take(event)
    }
}

impl Deref for Past {
    type Target = Run;
    fn deref(&self) -> &Run {
        &self.full().run
    }
}

impl PartialEq for Past {
    fn eq(&self, other: &Self) -> bool {
        self.full() == other.full()
    }
}

impl fmt::Debug for Past {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.full().fmt(f)
    }
}
