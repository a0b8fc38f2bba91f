//! The pour that is on: what is known of it, and what can be done at it. Everything goes into the book at once.

use crate::book::{Act, Batch, Ending, Id};
use crate::dom::*;
use crate::keep;
use crate::pot::{Event, Foretold, Pending, Run, StepKey, StepView, Way};
use crate::quantity::{Mass, Temperature};
use crate::rooms::workshop::Workshop;

/// Copied freely.
#[derive(Clone, Copy)]
pub(super) struct Pouring {
    pub(super) shop: Workshop,
    /// The step that is now; none when all are done.
    pub(super) card: Derived<Option<StepView>>,
    /// An overshoot that has to be settled first.
    pub(super) pending: Derived<Option<Pending>>,
    /// The temperature of the pot as far as it is known now.
    pub(super) reading: Derived<Option<(u64, Temperature)>>,
    /// What the readings foretell.
    pub(super) told: Derived<Option<Foretold>>,
}

impl Pouring {
    pub(super) fn new(shop: Workshop) -> Self {
        let of = move |run: &Run| run.shown_step(run.now()?.key, shop.voice());
        Self {
            shop,
            card: Derived::new(move || running(shop, of).flatten()),
            pending: Derived::new(move || running(shop, |run| run.pending(shop.voice())).flatten()),
            reading: Derived::new(move || running(shop, Run::last_reading).flatten()),
            told: Derived::new(move || {
                let (now, air) = (shop.now().get(), shop.air());
                running(shop, |run| run.foretold(now, air, shop.voice(), keep::time)).flatten()
            }),
        }
    }

    /// Something of the run; none when no pour is on.
    pub(super) fn run<T>(self, of: impl FnOnce(&Run) -> T) -> Option<T> {
        running(self.shop, of)
    }

    fn batch<T>(self, of: impl FnOnce(&Batch) -> T) -> Option<T> {
        untrack(|| self.shop.state(|s| s.running().map(of)))
    }

    fn happened(self, event: Event) -> bool {
        self.batch(|b| b.id.clone()).is_some_and(|batch| self.shop.act(Act::At { batch, event }))
    }

    /// True where the step takes from a lot that is on hold.
    pub(super) fn held(self, step: StepKey) -> bool {
        self.shop.state(|s| s.running().is_some_and(|b| !s.held_at(b, step).is_empty()))
    }

    /// A step is done, unless what goes in is on hold; its temperature is that of a reading fresh enough to stand for it.
    pub(super) fn did(self, step: StepKey, weighed: Option<Mass>) {
        if untrack(|| self.held(step)) {
            return;
        }
        let at = keep::now();
        let temperature = self.batch(|b| b.run.wants(step).and(b.run.pot_at(at))).flatten();
        self.happened(Event::Did { step, weighed, temperature, at });
    }

    /// Every vessel left of the pour that is now.
    pub(super) fn filled_all(self) {
        let now = self.card.with_untracked(|c| c.as_ref().map(|c| c.step.key));
        let left = now.and_then(StepKey::pour).and_then(|pour| self.batch(|b| b.run.unfilled(pour)));
        left.unwrap_or_default().into_iter().for_each(|step| self.did(step, None));
    }

    /// Sounds, where this device is to.
    pub(super) fn ring(self) {
        if self.shop.prefs().with_untracked(|p| p.sound) {
            keep::chime();
        }
    }

    pub(super) fn read(self, temperature: Temperature) {
        self.happened(Event::Read { temperature, at: keep::now() });
    }

    pub(super) fn mend(self, step: StepKey, way: Way) {
        self.happened(Event::Mended { step, way, at: keep::now() });
    }

    /// False where it was not kept.
    pub(super) fn say(self, text: String) -> bool {
        self.happened(Event::Said { text, at: keep::now() })
    }

    /// The entry that "Undo" takes back: the last of this batch, but not its beginning.
    fn last(self) -> Option<Id> {
        self.shop.state(|s| {
            let (_, later) = s.running()?.run.entries().split_first()?;
            later.last().cloned()
        })
    }

    pub(super) fn can_undo(self) -> bool {
        self.last().is_some()
    }

    pub(super) fn undo(self) {
        if let Some(entry) = untrack(|| self.last()) {
            self.shop.act(Act::Undo { entry });
        }
    }

    /// Ends it and shows its record.
    pub(super) fn end(self, how: Ending, note: String) {
        let Some(batch) = self.batch(|b| b.id.clone()) else { return };
        if how == Ending::Poured && self.batch(|b| b.run.done(StepKey::Close).is_none()) == Some(true) {
            self.did(StepKey::Close, None);
        }
        if self.shop.act(Act::Ended { batch: batch.clone(), how, note }) {
            self.shop.go(&format!("#pot/record/{batch}"));
        }
    }
}

fn running<T>(shop: Workshop, of: impl FnOnce(&Run) -> T) -> Option<T> {
    shop.state(|s| s.running().map(|b| of(&b.run)))
}
