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
pub struct Past {
    full: OnceCell<Box<Full>>,
    /// Where it is tied up; none once it is changed.
    tied: Option<(Rc<dyn Bundle>, usize)>,
}

#[derive(Clone, PartialEq, Debug)]
struct Full {
    run: Run,
    entries: Vec<Id>,
}

impl Past {
    pub(super) fn new(plan: Plan, began: Id) -> Self {
        Self {
            full: OnceCell::from(Box::new(Full { run: Run::new(plan), entries: vec![began] })),
            tied: None,
        }
    }

    /// That of the batch at this place of a bundle.
    pub(super) fn tied(bundle: Rc<dyn Bundle>, place: usize) -> Self {
        Self { full: OnceCell::new(), tied: Some((bundle, place)) }
    }

    /// Entries that made it, in order: the last one is what "undo" takes back.
    pub fn entries(&self) -> &[Id] {
        &self.full().entries
    }

    pub(super) fn note(&mut self, entry: &Id) {
        if let Some(full) = self.change() {
            full.entries.push(entry.clone());
        }
    }

    /// Where it is tied up and not looked at yet, so that what many batches are asked need not untie them.
    fn bundle(&self) -> Option<(&dyn Bundle, usize)> {
        let (bundle, place) = self.tied.as_ref()?;
        Some((bundle.as_ref(), *place))
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
        self.full.get_or_init(|| {
            let entries = self.bundle().map(|(bundle, place)| bundle.entries(place)).unwrap_or_default();
            Self::of(&entries).unwrap_or_else(|| {
                // Cannot be: a bundle is proved when it is made, and again when it is read.
                let nothing = Plan::get(&Json::Nothing, &mut Flaws::default());
                Box::new(Full { run: Run::new(nothing), entries: Vec::new() })
            })
        })
    }

    /// The fold of the entries of one batch.
    fn of(entries: &[Entry]) -> Option<Box<Full>> {
        let mut state = State::default();
        entries.iter().for_each(|entry| state.take(entry));
        state.batches.into_values().next()?.run.full.into_inner()
    }

    /// It to be changed: then it is no longer as it was tied up.
    fn change(&mut self) -> Option<&mut Full> {
        self.full();
        self.tied = None;
        self.full.get_mut().map(Box::as_mut)
    }

    /// See [`Run::take`].
    pub(super) fn take(&mut self, event: Event) -> Result<(), RunError> {
        self.change().map_or(Ok(()), |full| full.run.take(event))
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
