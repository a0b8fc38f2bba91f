//! Today's state: the fold of the journal.

use super::refusal::MOST_VESSELS;
use super::{
    Act, Batch, Burns, Ending, Entry, Id, Ignored, Kept, Map, Past, Refusal, Settings, Subject, Version,
};
use crate::bench::burn::{Limits, Trial, WickSeries};
use crate::bench::{Ingredient, MeltingPot, Scale};
use crate::day::Day;
use crate::desk::Rates;
use crate::desk::hazard::SafetySheet;
use crate::desk::label::Design;
use crate::formula::Formula;
use crate::pot::Plan;
use crate::shelf::{Customer, Finish, Move, Order, Pins, Product, Ticked, batch_number};
use crate::stores::{Lot, LotEvent};
use crate::text;
use crate::vessel::Vessel;
use std::rc::Rc;

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
            Act::Began { batch, formula, version, vessel, day, plan } => {
                self.begin(entry, batch, (formula, version, vessel), *day, plan)
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
                    for (until, old) in &mut b.sources {
                        if old.part == source.part {
                            *until = entry.at.min(*until);
                        }
                    }
                    b.sources.push((u64::MAX, source.clone()));
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
            Act::Replace(_) | Act::Took { .. } | Act::Undo { .. } => Ok(()),
        };
        if let (Err(why), Subject::Thing(thing)) = (refused, entry.act.subject()) {
            self.ignored.add(&entry.id, Ignored { thing: thing.clone(), why });
        }
    }

    fn begin(
        &mut self,
        entry: &Entry,
        batch: &Id,
        (formula, version, vessel): (&Id, &Id, &Id),
        day: Option<Day>,
        plan: &Rc<Plan>,
    ) -> Result<(), Refusal> {
        if self.batches.contains_key(batch) {
            return Err(Refusal::BegunAlready);
        }
        let vessels = plan.pours.iter().map(|p| u64::from(p.vessels)).sum::<u64>().max(plan.vessels.into());
        if vessels > MOST_VESSELS {
            return Err(Refusal::TooManyVessels { vessels });
        }
        let words = super::find::words(plan);
        let mut begun = Batch {
            id: batch.clone(),
            formula: formula.clone(),
            version: version.clone(),
            vessel: vessel.clone(),
            began: entry.at,
            day,
            run: Past::new(Rc::clone(plan), entry.id.clone()),
            ended: None,
            planned: words.len(),
            words,
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
