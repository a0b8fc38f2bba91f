//! Today's state: the fold of the journal.

use super::refusal::MOST_VESSELS;
use super::{Act, Burns, Ending, Entry, Id, Ignored, Map, Past, Refusal, Settings, Subject};
use crate::bench::burn::{Limits, Trial, WickSeries};
use crate::bench::{Ingredient, MeltingPot, Scale};
use crate::desk::Rates;
use crate::desk::hazard::SafetySheet;
use crate::desk::label::Design;
use crate::formula::Formula;
use crate::pot::Plan;
use crate::shelf::{Customer, Finish, Move, Order, Pins, Product, Ticked, batch_number};
use crate::stores::{Lot, LotEvent, Source};
use crate::text;
use crate::vessel::Vessel;

/// One version of a thing.
#[derive(Clone, PartialEq, Debug)]
pub struct Version<T> {
    pub entry: Id,
    /// The clock of its entry: which of two versions is later.
    pub clock: u64,
    /// The device's wall clock, milliseconds since 1970.
    pub at: u64,
    pub device: String,
    /// The version that was on the screen when this one was made.
    pub over: Option<Id>,
    pub body: T,
}

/// A thing with all its versions, oldest first; there is at least one.
#[derive(Clone, PartialEq, Debug)]
pub struct Kept<T> {
    pub id: Id,
    pub versions: Vec<Version<T>>,
    pub retired: bool,
}

impl<T> Kept<T> {
    /// Today's version.
    pub fn latest(&self) -> Option<&Version<T>> {
        self.versions.last()
    }

    /// What today's version says.
    pub fn body(&self) -> Option<&T> {
        self.latest().map(|v| &v.body)
    }

    /// The version that this entry wrote, with its number from 1.
    pub fn version(&self, entry: &Id) -> Option<(usize, &Version<T>)> {
        self.versions.iter().enumerate().find(|(_, v)| v.entry == *entry).map(|(i, v)| (i + 1, v))
    }
}

/// A pour, running or ended.
#[derive(Clone, PartialEq, Debug)]
pub struct Batch {
    pub id: Id,
    pub formula: Id,
    /// The entry that wrote the formula's version.
    pub version: Id,
    pub vessel: Id,
    /// Milliseconds since 1970.
    pub began: u64,
    pub run: Past,
    /// How, when (milliseconds since 1970), and what was said of it.
    pub ended: Option<(Ending, u64, String)>,
    /// Everything it can be found by, in small letters: made once, since years of batches are looked through at each key.
    pub(super) words: String,
    /// Which lots its parts are taken from.
    pub sources: Vec<Source>,
    /// How long it took the hands, where it was said.
    pub minutes: Option<u32>,
    /// What of finishing it is done.
    pub ticked: Ticked,
    /// When the last step of it was said to be done, milliseconds since 1970: then its lids, labels and boxes are used.
    pub closed: Option<u64>,
}

#[derive(Clone, PartialEq, Debug, Default)]
pub struct State {
    pub formulas: Map<Kept<Formula>>,
    pub vessels: Map<Kept<Vessel>>,
    pub scales: Map<Kept<Scale>>,
    pub pots: Map<Kept<MeltingPot>>,
    pub ingredients: Map<Kept<Ingredient>>,
    pub safety: Map<Kept<SafetySheet>>,
    pub labels: Map<Kept<Design>>,
    pub batches: Map<Batch>,
    pub lots: Map<Kept<Lot>>,
    /// What happened to each lot, when (milliseconds since 1970), and the entry that says so, in order.
    pub lot_events: Map<Vec<(u64, Id, LotEvent)>>,
    pub trials: Map<Kept<Trial>>,
    pub burns: Map<Burns>,
    pub wicks: Map<Kept<WickSeries>>,
    pub products: Map<Kept<Product>>,
    pub customers: Map<Kept<Customer>>,
    pub orders: Map<Kept<Order>>,
    /// Candles that went or came back.
    pub moves: Map<Kept<Move>>,
    /// What was said last of the pours of each product, and when (milliseconds since 1970).
    pub pins: Map<(u64, Pins)>,
    pub settings: Settings,
    pub rates: Rates,
    pub limits: Limits,
    /// Entries that change nothing, by their id.
    pub ignored: Map<Ignored>,
}

impl State {
    /// Takes one entry in, the next in order. One that cannot be done is put with the ignored ones. An undo is the
    /// journal's to do: it leaves the undone entry out of the fold.
    pub fn take(&mut self, entry: &Entry) {
        let refused = match &entry.act {
            Act::Formula { id, over, body } => write(&mut self.formulas, entry, id, over, body),
            Act::Vessel { id, over, body } => write(&mut self.vessels, entry, id, over, body),
            Act::Scale { id, over, body } => write(&mut self.scales, entry, id, over, body),
            Act::Pot { id, over, body } => write(&mut self.pots, entry, id, over, body),
            Act::Ingredient { id, over, body } => write(&mut self.ingredients, entry, id, over, body),
            Act::Safety { id, over, body } => write(&mut self.safety, entry, id, over, body),
            Act::Product { id, over, body } => write(&mut self.products, entry, id, over, body),
            Act::Customer { id, over, body } => {
                let done = write(&mut self.customers, entry, id, over, body);
                self.keep_removed(id);
                done
            }
            Act::Forgotten { customer } => self.forget_customer(customer),
            Act::Order { id, over, body } => write(&mut self.orders, entry, id, over, body),
            Act::Moved { id, over, body } => write(&mut self.moves, entry, id, over, body),
            Act::Ticked { batch, step, done } => self.at(batch, |b| {
                let solid = b.ended.as_ref().is_some_and(|(how, ..)| *how == Ending::Poured);
                if !solid || !b.ticked.set(*step, *done) {
                    return Err(Refusal::NotSolid);
                }
                if *step == Finish::Closed {
                    b.closed = done.then_some(entry.at);
                }
                b.run.note(&entry.id);
                Ok(())
            }),
            Act::Pinned { product, body } => {
                self.pins.remove(product);
                self.pins.add(product, (entry.at, body.clone()));
                Ok(())
            }
            Act::Label { id, over, body } => write(&mut self.labels, entry, id, over, body),
            Act::Retire { id, retired } => self.retire(id, *retired),
            Act::Settings(settings) => {
                self.settings = settings.clone();
                Ok(())
            }
            Act::Began { batch, formula, version, vessel, plan } => {
                self.begin(entry, batch, (formula, version, vessel), plan)
            }
            Act::At { batch, event } => self.at(batch, |b| {
                b.run.take(event.clone()).map_err(Refusal::Run)?;
                b.run.note(&entry.id);
                Ok(())
            }),
            Act::Ended { batch, how, note } => self.at(batch, |b| {
                b.words.extend(["\n", &text::lower(note)]);
                b.ended = Some((*how, entry.at, note.clone()));
                b.run.note(&entry.id);
                Ok(())
            }),
            Act::Lot { id, over, body } => write(&mut self.lots, entry, id, over, body),
            Act::AtLot { lot, event } => self.at_lot(lot, entry, event),
            Act::TakenFrom { batch, sources } => self.at(batch, |b| {
                for source in sources {
                    b.sources.retain(|old| old.part != source.part);
                    b.sources.push(source.clone());
                }
                Ok(())
            }),
            Act::Worked { batch, minutes } => self.at(batch, |b| {
                b.minutes = Some(*minutes);
                Ok(())
            }),
            Act::Rates(rates) => {
                self.rates = (**rates).clone();
                Ok(())
            }
            Act::Trial { id, over, body } => write(&mut self.trials, entry, id, over, &**body),
            Act::AtTrial { trial, event } => {
                let known = self.trials.contains_key(trial);
                happened(&mut self.burns, known, trial).map(|burns| burns.add(&entry.id, event))
            }
            Act::Wicks { id, over, body } => write(&mut self.wicks, entry, id, over, body),
            Act::Limits(limits) => {
                self.limits = (**limits).clone();
                Ok(())
            }
            // The journal puts what was chosen in its place; here it is a choice of nothing.
            Act::Choose { .. } => Err(Refusal::NoSuchThing),
            Act::Replace(_) | Act::Undo { .. } => Ok(()),
        };
        if let (Err(why), Subject::Thing(thing)) = (refused, entry.act.subject()) {
            self.ignored.add(&entry.id, Ignored { thing: thing.clone(), why });
        }
    }

    /// Leaves out all that the entries about `subject` made.
    pub(super) fn forget(&mut self, subject: Subject) {
        match subject {
            Subject::Thing(id) => {
                self.formulas.remove(id);
                self.vessels.remove(id);
                self.products.remove(id);
                self.customers.remove(id);
                self.orders.remove(id);
                self.moves.remove(id);
                self.pins.remove(id);
                self.scales.remove(id);
                self.pots.remove(id);
                self.ingredients.remove(id);
                self.safety.remove(id);
                self.labels.remove(id);
                self.batches.remove(id);
                self.lots.remove(id);
                self.lot_events.remove(id);
                self.trials.remove(id);
                self.burns.remove(id);
                self.wicks.remove(id);
                self.ignored.retain(|i| i.thing != *id);
            }
            Subject::Settings => {
                self.settings = Settings::default();
                self.rates = Rates::default();
                self.limits = Limits::default();
            }
            Subject::Book => *self = Self::default(),
            Subject::Entry(_) => {}
        }
    }

    fn retire(&mut self, id: &Id, retired: bool) -> Result<(), Refusal> {
        let marks = [
            self.formulas.get_mut(id).map(|k| &mut k.retired),
            self.vessels.get_mut(id).map(|k| &mut k.retired),
            self.products.get_mut(id).map(|k| &mut k.retired),
            self.customers.get_mut(id).map(|k| &mut k.retired),
            self.orders.get_mut(id).map(|k| &mut k.retired),
            self.moves.get_mut(id).map(|k| &mut k.retired),
            self.scales.get_mut(id).map(|k| &mut k.retired),
            self.pots.get_mut(id).map(|k| &mut k.retired),
            self.ingredients.get_mut(id).map(|k| &mut k.retired),
            self.safety.get_mut(id).map(|k| &mut k.retired),
            self.trials.get_mut(id).map(|k| &mut k.retired),
            self.wicks.get_mut(id).map(|k| &mut k.retired),
            self.labels.get_mut(id).map(|k| &mut k.retired),
        ];
        let mut found = Err(Refusal::NoSuchThing);
        for mark in marks.into_iter().flatten() {
            *mark = retired;
            found = Ok(());
        }
        self.keep_removed(id);
        found
    }

    fn begin(
        &mut self,
        entry: &Entry,
        batch: &Id,
        (formula, version, vessel): (&Id, &Id, &Id),
        plan: &Plan,
    ) -> Result<(), Refusal> {
        if self.batches.contains_key(batch) {
            return Err(Refusal::BegunAlready);
        }
        let vessels = plan.pours.iter().map(|p| u64::from(p.vessels)).sum::<u64>().max(plan.vessels.into());
        if vessels > MOST_VESSELS {
            return Err(Refusal::TooManyVessels { vessels });
        }
        let mut begun = Batch {
            id: batch.clone(),
            formula: formula.clone(),
            version: version.clone(),
            vessel: vessel.clone(),
            began: entry.at,
            run: Past::new(plan.clone(), entry.id.clone()),
            ended: None,
            words: super::lookup::words(plan),
            sources: Vec::new(),
            minutes: None,
            ticked: Ticked::default(),
            closed: None,
        };
        begun.words.extend(["\n", &text::lower(&batch_number(&begun))]);
        self.batches.add(batch, begun);
        Ok(())
    }

    fn at(
        &mut self,
        batch: &Id,
        take: impl FnOnce(&mut Batch) -> Result<(), Refusal>,
    ) -> Result<(), Refusal> {
        take(self.batches.get_mut(batch).ok_or(Refusal::NoSuchBatch)?)
    }

    fn at_lot(&mut self, lot: &Id, entry: &Entry, event: &LotEvent) -> Result<(), Refusal> {
        let known = self.lots.contains_key(lot);
        let events = happened(&mut self.lot_events, known, lot)?;
        events.push((entry.at, entry.id.clone(), event.clone()));
        Ok(())
    }

    /// What was known of a customer is gone; orders keep its id, which says nothing. The journal has taken it out of the
    /// entries as well.
    fn forget_customer(&mut self, id: &Id) -> Result<(), Refusal> {
        let customer = self.customers.get_mut(id).ok_or(Refusal::NoSuchThing)?;
        for version in &mut customer.versions {
            version.body = Customer::nobody();
        }
        customer.retired = true;
        Ok(())
    }

    /// Who was removed stays put away, whatever comes after.
    fn keep_removed(&mut self, id: &Id) {
        if let Some(customer) = self.customers.get_mut(id) {
            customer.retired |= customer.body().is_some_and(|c| c.removed);
        }
    }

    /// The batch that is on, if any: the latest begun and not ended.
    pub fn running(&self) -> Option<&Batch> {
        self.batches.values().filter(|b| b.ended.is_none()).max_by_key(|b| b.began)
    }
}

/// What happened to a thing, which has to be `known`.
fn happened<'a, T: Default>(events: &'a mut Map<T>, known: bool, thing: &Id) -> Result<&'a mut T, Refusal> {
    if !known {
        return Err(Refusal::NoSuchThing);
    }
    events.add(thing, T::default());
    events.get_mut(thing).ok_or(Refusal::NoSuchThing)
}

/// Adds a version of a thing, the first one if it is new.
pub(super) fn write<T: Clone>(
    things: &mut Map<Kept<T>>,
    entry: &Entry,
    id: &Id,
    over: &Option<Id>,
    body: &T,
) -> Result<(), Refusal> {
    things.add(id, Kept { id: id.clone(), versions: Vec::new(), retired: false });
    let Some(thing) = things.get_mut(id) else { return Ok(()) };
    thing.versions.push(Version {
        entry: entry.id.clone(),
        clock: entry.clock,
        at: entry.at,
        device: entry.device.clone(),
        over: over.clone(),
        body: body.clone(),
    });
    Ok(())
}
