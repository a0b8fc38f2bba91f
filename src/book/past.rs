//! What was done of a batch. Of one that is tied up in a bundle it is untied when it is first looked at.

use super::lazy::{Lazy, Made};
use super::{Bundle, Id, State};
use crate::pot::{Event, Plan, Run, RunError, Used};
use crate::wire::{Flaws, Json, Wire};
use std::fmt;
use std::ops::Deref;
use std::rc::Rc;

/// The run of a batch, with the entries that made it. Reads as the [`Run`].
#[derive(Clone)]
pub struct Past(Lazy<Full>);

/// A run and its entries.
#[derive(Clone, PartialEq, Debug)]
pub struct Full {
    run: Run,
    entries: Vec<Id>,
}

impl Made for Full {
    fn made(state: State) -> Self {
        match state.batches.into_values().next().map(|b| b.run.0) {
            Some(Lazy::Here(full)) => *full,
            _ => {
                // Cannot be: a bundle is proved when it is made, and again when it is read.
                let nothing = Plan::get(&Json::Nothing, &mut Flaws::default());
                Self { run: Run::new(nothing), entries: Vec::new() }
            }
        }
    }
}

impl Past {
    pub(super) fn new(plan: Rc<Plan>, began: Id) -> Self {
        Self(Lazy::here(Full { run: Run::new(plan), entries: vec![began] }))
    }

    /// That of the batch at this place of a bundle.
    pub(super) const fn tied(bundle: Rc<dyn Bundle>, place: usize) -> Self {
        Self(Lazy::tied(bundle, place))
    }

    /// Entries that made it, in order: the last one is what "undo" takes back.
    pub fn entries(&self) -> &[Id] {
        &self.0.get().entries
    }

    pub(super) fn note(&mut self, entry: &Id) {
        self.0.change().entries.push(entry.clone());
    }

    /// How many vessels were filled, and when the last one was, milliseconds since 1970.
    pub fn fills(&self) -> (usize, Option<u64>) {
        if let Some((bundle, place)) = self.0.bundle() {
            return bundle.fills(place);
        }
        let mut fills = (0, None);
        for event in self.events() {
            if let Some(at) = event.filled() {
                fills = (fills.0 + 1, fills.1.max(Some(at)));
            }
        }
        fills
    }

    /// Full days from the pour until it may ship.
    pub fn cure_days(&self) -> u32 {
        self.0.bundle().map_or_else(|| self.plan.cure_days, |(bundle, place)| bundle.cure_days(place))
    }

    pub fn wick(&self) -> &str {
        self.0.bundle().map_or_else(|| self.plan.wick.as_str(), |(bundle, place)| bundle.wick(place))
    }

    /// See [`Run::used`].
    pub fn used(&self) -> Vec<Used<'_>> {
        self.0.bundle().map_or_else(|| (**self).used(), |(bundle, place)| bundle.used(place))
    }

    /// See [`Plan::takes`].
    pub fn takes(&self, name: &str) -> bool {
        self.0.bundle().map_or_else(|| self.plan.takes(name), |(bundle, place)| bundle.takes(place, name))
    }

    /// See [`Run::take`].
    pub fn take(&mut self, event: Event) -> Result<(), RunError> {
        self.0.change().run.take(event)
    }
}

impl Deref for Past {
    type Target = Run;
    fn deref(&self) -> &Run {
        &self.0.get().run
    }
}

impl PartialEq for Past {
    fn eq(&self, other: &Self) -> bool {
        self.0.get() == other.0.get()
    }
}

impl fmt::Debug for Past {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.get().fmt(f)
    }
}
