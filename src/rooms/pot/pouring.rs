//! The pour that is on: what is known of it, and what can be done at it. Everything goes into the book at once.

use crate::book::{Act, Batch, Ending, Id};
use crate::dom::*;
use crate::keep;
use crate::keep::local;
use crate::pot::{Beside, Event, Foretold, Pending, Run, StepKey, StepView, Way};
use crate::quantity::{Mass, Temperature};
use crate::rooms::workshop::Workshop;

/// Which pot was turned to, and of which batch: a page that is loaded again comes back to it.
const TURNED: &str = "potside.turned";

/// Copied freely.
#[derive(Clone, Copy)]
pub(super) struct Pouring {
    pub(super) shop: Workshop,
    /// The pour that was turned to; none where one is at the pot that something was done at last.
    turned: Value<Option<u32>>,
    /// The step that is now; none when all are done.
    pub(super) card: Derived<Option<StepView>>,
    /// An overshoot that has to be settled first.
    pub(super) pending: Derived<Option<Pending>>,
    /// The last reading of its pot.
    pub(super) reading: Derived<Option<(u64, Temperature)>>,
    /// What its readings foretell.
    pub(super) told: Derived<Option<Foretold>>,
    /// The other pots of the batch.
    pub(super) beside: Derived<Vec<Beside>>,
}

impl Pouring {
    pub(super) fn new(shop: Workshop) -> Self {
        let batch = untrack(|| shop.state(|s| s.running().map(|b| b.id.0.clone())));
        let kept = local::kept(TURNED);
        let turned = kept.as_deref().and_then(|kept| kept.rsplit_once(' '));
        let turned = turned.filter(|(of, _)| batch.as_deref() == Some(*of)).and_then(|(_, n)| n.parse().ok());
        let turned: Value<Option<u32>> = Value::new(turned);
        let at = move |run: &Run| turned.get().unwrap_or_else(|| run.last_pour());
        let of = move |run: &Run| run.shown_step(run.now_in(at(run))?.key, shop.voice());
        let card = Derived::new(move || running(shop, of).flatten());
        let here = move || card.with(|c| c.as_ref().and_then(|c| c.step.key.pour()));
        Self {
            shop,
            turned,
            card,
            pending: Derived::new(move || running(shop, |run| run.pending(shop.voice())).flatten()),
            reading: Derived::new(move || running(shop, |run| run.last_reading(here()?)).flatten()),
            told: Derived::new(move || {
                let (now, air) = (shop.now().get(), shop.air());
                running(shop, |run| run.foretold(here()?, now, air, shop.voice(), keep::time)).flatten()
            }),
            beside: Derived::new(move || {
                let Some(here) = here() else { return Vec::new() };
                if running(shop, |run| run.plan.pours.len()).is_none_or(|pours| pours < 2) {
                    return Vec::new();
                }
                let (now, air) = (shop.now().get(), shop.air());
                running(shop, |run| run.beside(here, now, air, shop.voice(), keep::time)).unwrap_or_default()
            }),
        }
    }

    /// Something of the run; none when no pour is on.
    pub(super) fn run<T>(self, of: impl FnOnce(&Run) -> T) -> Option<T> {
        running(self.shop, of)
    }

    /// The pour that one is at; none at the close.
    pub(super) fn here(self) -> Option<u32> {
        self.card.with(|c| c.as_ref().and_then(|c| c.step.key.pour()))
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
        let pot_at = |b: &Batch| b.run.wants(step).and(b.run.pot_at(step.pour()?, at));
        let temperature = self.batch(pot_at).flatten();
        self.happened(Event::Did { step, weighed, temperature, at });
        self.turn(None);
    }

    /// To the pot of another pour. None: to where something was done last.
    pub(super) fn turn(self, pour: Option<u32>) {
        match (pour, self.batch(|b| b.id.0.clone())) {
            (Some(pour), Some(batch)) => {
                local::keep(TURNED, &[&batch, " ", &pour.to_string()].concat());
            }
            _ if self.turned.get_untracked().is_some() => local::forget(TURNED),
            _ => {}
        }
        self.turned.set(pour);
    }

    /// Every vessel left of the pour that is now.
    pub(super) fn filled_all(self) {
        let now = self.card.with_untracked(|c| c.as_ref().map(|c| c.step.key));
        let left = now.and_then(StepKey::pour).and_then(|pour| self.batch(|b| b.run.unfilled(pour)));
        left.unwrap_or_default().into_iter().for_each(|step| self.did(step, None));
    }

    /// These vessels stay empty. Nothing is taken for them, so no lot on hold is in the way.
    pub(super) fn leave(self, vessels: Vec<StepKey>) {
        for step in vessels {
            let weighed = Some(Mass::ZERO);
            self.happened(Event::Did { step, weighed, temperature: None, at: keep::now() });
        }
        self.turn(None);
    }

    /// Sounds, where this device is to.
    pub(super) fn ring(self) {
        if self.shop.prefs().with_untracked(|p| p.sound) {
            keep::chime();
        }
    }

    pub(super) fn read(self, temperature: Temperature) {
        let step = self.card.with_untracked(|c| c.as_ref().map(|c| c.step.key));
        let pour = step.and_then(|step| self.batch(|b| b.run.read_in(step)).flatten());
        self.happened(Event::Read { temperature, at: keep::now(), pour });
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
            // One is at the pot that something is taken back at.
            self.turn(self.batch(|b| b.run.last_pour()));
            self.shop.act(Act::Undo { entry });
        }
    }

    /// Ends it and shows its record.
    pub(super) fn end(self, how: Ending, note: String) {
        let Some(batch) = self.batch(|b| b.id.clone()) else { return };
        if how == Ending::Poured && self.batch(|b| b.run.done(StepKey::Close).is_none()) == Some(true) {
            self.did(StepKey::Close, None);
        }
        let how = self.batch(|b| b.ends(how)).unwrap_or(how);
        if self.shop.act(Act::Ended { batch: batch.clone(), how, note }) {
            self.shop.go(&format!("#pot/record/{batch}"));
        }
    }
}

fn running<T>(shop: Workshop, of: impl FnOnce(&Run) -> T) -> Option<T> {
    shop.state(|s| s.running().map(|b| of(&b.run)))
}
