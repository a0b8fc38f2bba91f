//! What the person does.

use super::{Id, Replace, Settings};
use crate::bench::burn::{BurnEvent, Limits, Trial, WickSeries};
use crate::bench::{Ingredient, MeltingPot, Scale};
use crate::day::Day;
use crate::desk::Rates;
use crate::desk::hazard::SafetySheet;
use crate::desk::label::Design;
use crate::formula::Formula;
use crate::pot::{Event, Plan};
use crate::shelf::{Customer, Finish, Move, Order, Pins, Product};
use crate::stores::{Lot, LotEvent, Source};
use crate::vessel::Vessel;
use crate::wire::wire_enum;
use std::rc::Rc;

/// One thing done. Naming the same id again is a new version of that thing; `over` is the entry of the version that
/// was on the screen when the change was made, so that two changes of the same version can be told apart from one
/// after the other.
#[derive(Clone, PartialEq, Debug)]
pub enum Act {
    Formula {
        id: Id,
        over: Option<Id>,
        body: Formula,
    },
    Vessel {
        id: Id,
        over: Option<Id>,
        body: Vessel,
    },
    Scale {
        id: Id,
        over: Option<Id>,
        body: Scale,
    },
    Pot {
        id: Id,
        over: Option<Id>,
        body: MeltingPot,
    },
    Ingredient {
        id: Id,
        over: Option<Id>,
        body: Ingredient,
    },
    /// What the safety data sheet of an ingredient says.
    Safety {
        id: Id,
        over: Option<Id>,
        body: SafetySheet,
    },
    /// A label: its sheet and what stands on it.
    Label {
        id: Id,
        over: Option<Id>,
        body: Design,
    },
    /// Put away, or taken out again.
    Retire {
        id: Id,
        retired: bool,
    },
    Settings(Settings),
    /// A pour began. `version` is the entry that wrote the formula's version: a count would shift when books merge. `day`
    /// is the one on the calendar of the workshop, which no other device can tell from the time.
    Began {
        batch: Id,
        formula: Id,
        version: Id,
        vessel: Id,
        day: Option<Day>,
        plan: Rc<Plan>,
    },
    At {
        batch: Id,
        event: Event,
    },
    Ended {
        batch: Id,
        how: Ending,
        note: String,
    },
    Lot {
        id: Id,
        over: Option<Id>,
        body: Lot,
    },
    AtLot {
        lot: Id,
        event: LotEvent,
    },
    /// Which lots the parts of a batch are taken from; a part named before is taken from these now.
    TakenFrom {
        batch: Id,
        sources: Vec<Source>,
    },
    /// How long a batch took the hands, in minutes.
    Worked {
        batch: Id,
        minutes: u32,
    },
    Product {
        id: Id,
        over: Option<Id>,
        body: Product,
    },
    Customer {
        id: Id,
        over: Option<Id>,
        body: Customer,
    },
    /// What is known of a customer is taken out for good: nothing undoes it.
    Forgotten {
        customer: Id,
    },
    Order {
        id: Id,
        over: Option<Id>,
        body: Order,
    },
    /// Candles went, or came back; put away, it counts as not done.
    Moved {
        id: Id,
        over: Option<Id>,
        body: Move,
    },
    /// A step of finishing a batch is done, or is not.
    Ticked {
        batch: Id,
        step: Finish,
        done: bool,
    },
    /// Which pours of a product the plan is made around.
    Pinned {
        product: Id,
        body: Pins,
    },
    /// What work costs, and how prices are made.
    Rates(Box<Rates>),
    /// A candle to be burned on trial.
    Trial {
        id: Id,
        over: Option<Id>,
        body: Box<Trial>,
    },
    AtTrial {
        trial: Id,
        event: BurnEvent,
    },
    /// A series of wicks.
    Wicks {
        id: Id,
        over: Option<Id>,
        body: WickSeries,
    },
    /// What a candle on trial has to keep to.
    Limits(Box<Limits>),
    /// Of versions of a thing that were made beside each other, the one of this entry is today's; `among` are those
    /// that were seen. See [`super::Fork`].
    Choose {
        id: Id,
        chosen: Id,
        among: Vec<Id>,
    },
    /// The book was replaced by a copy; or a copy that was taken in was taken back.
    Replace(Box<Replace>),
    /// A copy was taken in, with so many entries. It changes nothing itself: `back`, done, takes them back.
    Took {
        entries: u64,
        back: Box<Replace>,
    },
    /// The entry of this id counts as not done; undoing the undo brings it back.
    Undo {
        entry: Id,
    },
}

wire_enum!(Act {
    Formula { id, over [skip], body },
    Vessel { id, over [skip], body },
    Scale { id, over [skip], body },
    Pot { id, over [skip], body },
    Ingredient { id, over [skip], body },
    Safety { id, over [skip], body },
    Label { id, over [skip], body },
    Retire { id, retired },
    Settings(it),
    Began { batch, formula, version, vessel, day [skip], plan },
    At { batch, event },
    Ended { batch, how, note },
    Lot { id, over [skip], body },
    AtLot { lot, event },
    TakenFrom { batch, sources },
    Worked { batch, minutes },
    Product { id, over [skip], body },
    Customer { id, over [skip], body },
    Forgotten { customer },
    Order { id, over [skip], body },
    Moved { id, over [skip], body },
    Ticked { batch, step, done },
    Pinned { product, body },
    Rates(it),
    Trial { id, over [skip], body },
    AtTrial { trial, event },
    Wicks { id, over [skip], body },
    Limits(it),
    Choose { id, chosen, among },
    Replace(it),
    Took { entries, back },
    Undo { entry },
});

#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Ending {
    Poured,
    GivenUp,
}

wire_enum!(Ending { Poured, GivenUp });
