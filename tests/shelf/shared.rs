//! A shop with candles, pours and orders for the tests of the shelf.

use super::common::Workshop;
use potside::book::{Act, Book, Ending, Entry, Id, State};
use potside::day::{DAY, Day};
use potside::pot::{Event, StepKey, Target};
use potside::quantity::{Amount, Exact, MassUnit, Money};
use potside::shelf::{FINISHES, Move, Order, OrderLine, Product, Reason};
use potside::stores::{Bought, Lot, LotEvent, Pack, Source};

pub(crate) fn id(text: &str) -> Id {
    Id(text.to_owned())
}

/// 1 January 2025.
pub(crate) const FIRST: u32 = 20_089;

pub(crate) fn at(day: u32) -> u64 {
    u64::from(FIRST + day) * DAY + DAY / 2
}

pub(crate) struct Shop {
    pub(crate) book: Book,
    random: u32,
}

impl Shop {
    pub(crate) fn new() -> Self {
        Self { book: Book::open(Vec::new(), "tablet"), random: 0 }
    }

    /// The same book on another device.
    pub(crate) fn on(&self, device: &str) -> Self {
        let lines = self.book.journal().entries().iter().map(Entry::to_line).collect();
        Self { book: Book::open(lines, device), random: self.random + 1000 * device.len() as u32 }
    }

    pub(crate) fn act(&mut self, day: u32, act: Act) -> Id {
        self.random += 1;
        self.book.act(act, at(day), self.random).unwrap()
    }

    pub(crate) fn state(&self) -> &State {
        self.book.state()
    }

    /// A candle whose formula cures 14 days.
    pub(crate) fn product(&mut self, name: &str, spare: u32, cure_days: Option<u32>) {
        let body = Product {
            name: name.to_owned(),
            formula: id("f"),
            vessel: id("v"),
            wick: "Cotton 12".to_owned(),
            parts: Vec::new(),
            spare,
            cure_days,
        };
        self.act(0, Act::Product { id: id(name), over: None, body });
    }

    /// The same with what finishes it.
    pub(crate) fn product_of(&mut self, name: &str, parts: &[&str]) {
        self.product(name, 0, None);
        let kept = self.state().products.get(&id(name)).and_then(|k| k.body()).unwrap();
        let body = Product { parts: parts.iter().map(|p| (*p).to_owned()).collect(), ..kept.clone() };
        self.act(0, Act::Product { id: id(name), over: None, body });
    }

    /// A batch of which so many vessels were filled.
    pub(crate) fn pour(&mut self, batch: &str, day: u32, vessels: u32) {
        self.begin(batch, day, vessels);
        while self.step(batch, day) {}
        self.end(batch, day, Ending::Poured);
    }

    /// A batch of so many vessels, and nothing done of it.
    pub(crate) fn begin(&mut self, batch: &str, day: u32, vessels: u32) -> Id {
        let act = self.began(batch, vessels);
        self.act(day, act)
    }

    pub(crate) fn began(&self, batch: &str, vessels: u32) -> Act {
        let plan = std::rc::Rc::new(Workshop::new().plan(Target::Vessels(vessels)).unwrap());
        let (formula, version, vessel) = (id("f"), id("e"), id("v"));
        Act::Began { batch: id(batch), formula, version, vessel, day: None, plan }
    }

    /// Does the next step of a batch; false where all is done.
    pub(crate) fn step(&mut self, batch: &str, day: u32) -> bool {
        let next = self.state().batches.get(&id(batch)).unwrap().run.now();
        let Some(step) = next.filter(|s| s.key != StepKey::Close) else { return false };
        let event = Event::Did { step: step.key, weighed: None, temperature: None, at: at(day) };
        let done = self.act(day, Act::At { batch: id(batch), event });
        assert!(!self.state().ignored.contains_key(&done));
        true
    }

    pub(crate) fn end(&mut self, batch: &str, day: u32, how: Ending) -> Id {
        self.act(day, Act::Ended { batch: id(batch), how, note: String::new() })
    }

    pub(crate) fn order(
        &mut self,
        name: &str,
        product: &str,
        number: u32,
        wanted: Option<u32>,
        in_parts: bool,
    ) {
        let body = Order {
            customer: None,
            lines: vec![OrderLine { product: id(product), number }],
            wanted: wanted.map(|d| Day(FIRST + d)),
            in_parts,
            note: String::new(),
            closed: false,
        };
        self.act(0, Act::Order { id: id(name), over: None, body });
    }

    /// Everything of finishing it is done.
    pub(crate) fn finish(&mut self, batch: &str, day: u32) {
        for (step, _) in FINISHES {
            self.act(day, Act::Ticked { batch: id(batch), step, done: true });
        }
    }

    /// So many pieces of something, got on the first day.
    pub(crate) fn pieces(&mut self, lot: &str, of: &str, pieces: u32) {
        self.lot(lot, of, Pack::Pieces(pieces), Exact::whole(pieces.into()));
    }

    /// So many grams of something, got on the first day.
    pub(crate) fn grams(&mut self, lot: &str, of: &str, grams: i128) {
        let amount = Exact::whole(grams);
        self.lot(lot, of, Pack::Weight(Amount::new(amount, MassUnit::Gram)), amount);
    }

    fn lot(&mut self, lot: &str, of: &str, pack: Pack, amount: Exact) {
        let body = Lot {
            ingredient: of.to_owned(),
            number: lot.to_owned(),
            supplier: String::new(),
            got_on: Day(FIRST),
            best_before: None,
            price: Money(100),
            bought: Bought { packs: 1, pack },
            amount,
        };
        self.act(0, Act::Lot { id: id(lot), over: None, body });
    }

    pub(crate) fn from(&mut self, batch: &str, part: &str, lot: &str) {
        let sources = vec![Source { part: part.to_owned(), lots: vec![id(lot)] }];
        self.act(0, Act::TakenFrom { batch: id(batch), sources });
    }

    pub(crate) fn hold(&mut self, lot: &str, day: u32, held: bool) -> Id {
        let reason = "cloudy".to_owned();
        let event = if held { LotEvent::Held { reason } } else { LotEvent::Released { reason } };
        self.act(day, Act::AtLot { lot: id(lot), event })
    }

    pub(crate) fn moved(&mut self, day: u32, batch: &str, number: u32, reason: Reason) -> Id {
        let body = Move { batch: id(batch), number, reason, on: Day(FIRST + day), note: String::new() };
        let name = format!("m{}", self.random);
        self.act(day, Act::Moved { id: id(&name), over: None, body })
    }
}

pub(crate) fn shipped(order: &str, product: &str) -> Reason {
    Reason::Shipped { order: id(order), product: id(product) }
}
