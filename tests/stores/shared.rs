//! A book with lots and pours for the tests of the stores.

use super::common::Workshop;
use potside::book::{Act, Book, Ending, Id, State};
use potside::day::{Day, Zone};
use potside::pot::{Event, StepKey, Target};
use potside::quantity::{Amount, Exact, Mass, MassUnit, Money};
use potside::stores::{Bought, Ledger, Lot, LotEvent, Pack, Source};

/// 1 January 2025 in days since 1970, and in milliseconds.
pub(crate) const FIRST: u32 = 20_089;
pub(crate) const DAY: u64 = 86_400_000;

pub(crate) fn id(text: &str) -> Id {
    Id(text.to_owned())
}

pub(crate) fn at(day: u32) -> u64 {
    u64::from(FIRST + day) * DAY + DAY / 2
}

pub(crate) fn whole(n: i128) -> Exact {
    Exact::whole(n)
}

/// A book whose acts are done at the days they are told.
pub(crate) struct Shop {
    pub(crate) book: Book,
    random: u32,
}

impl Shop {
    pub(crate) fn new() -> Self {
        Self { book: Book::open(Vec::new(), "tablet"), random: 0 }
    }

    pub(crate) fn state(&self) -> &State {
        self.book.state()
    }

    pub(crate) fn ledger(&self) -> Ledger {
        Ledger::of(self.state(), Zone::GREENWICH)
    }

    pub(crate) fn act(&mut self, day: u32, act: Act) -> Id {
        self.random += 1;
        self.book.act(act, at(day), self.random).expect("the book can be written")
    }

    /// So many grams for a price, got on a day.
    pub(crate) fn lot(&mut self, lot: &str, of: &str, day: u32, grams: i128, price: i64) -> Id {
        self.act(day, Act::Lot { id: id(lot), over: None, body: grams_of(of, lot, day, grams, price) })
    }

    pub(crate) fn event(&mut self, lot: &str, day: u32, event: LotEvent) -> Id {
        self.act(day, Act::AtLot { lot: id(lot), event })
    }

    /// A pour of four, and nothing done of it.
    pub(crate) fn begin(&mut self, batch: &str, day: u32) {
        let plan = Workshop::new().plan(Target::Vessels(4)).expect("it can be planned");
        self.act(
            day,
            Act::Began {
                batch: id(batch),
                formula: id("f"),
                version: id("e"),
                vessel: id("v"),
                day: None,
                plan: plan.into(),
            },
        );
    }

    /// A pour that weighs so many grams of “Coco”, the first wax of the workshop's formula, from these lots.
    pub(crate) fn pour(&mut self, batch: &str, day: u32, grams: i128, lots: &[&str]) {
        self.begin(batch, day);
        self.from(batch, day, "Coco", lots);
        self.did(batch, day, StepKey::Wax { pour: 0, line: 0 }, Some(grams));
    }

    pub(crate) fn from(&mut self, batch: &str, day: u32, part: &str, lots: &[&str]) -> Id {
        let lots = lots.iter().map(|l| id(l)).collect();
        let sources = vec![Source { part: part.to_owned(), lots }];
        self.act(day, Act::TakenFrom { batch: id(batch), sources })
    }

    pub(crate) fn did(&mut self, batch: &str, day: u32, step: StepKey, grams: Option<i128>) {
        let weighed = grams.map(|g| Mass::base(whole(g)));
        let event = Event::Did { step, weighed, temperature: None, at: at(day) };
        self.act(day, Act::At { batch: id(batch), event });
    }

    pub(crate) fn end(&mut self, batch: &str, day: u32, how: Ending) {
        self.act(day, Act::Ended { batch: id(batch), how, note: String::new() });
    }
}

pub(crate) fn grams_of(of: &str, number: &str, day: u32, grams: i128, price: i64) -> Lot {
    Lot {
        ingredient: of.to_owned(),
        number: number.to_owned(),
        supplier: String::new(),
        got_on: Day(FIRST + day),
        best_before: None,
        price: Money(price),
        bought: Bought { packs: 1, pack: Pack::Weight(Amount::new(whole(grams), MassUnit::Gram)) },
        amount: whole(grams),
    }
}
