//! Random schedules of a store that fails: tabs that write turn about, answers that fail, come late or never, the page or
//! the whole browser ended between any two steps, the clock set anywhere. What a book has said is saved has to be there.

use super::deal::Deck;
use super::dice::Dice;
use super::{Length, Tally, same};
use potside::book::{Act, Book, Entry, FailingStore, Fault, Id, Journal, Saving, Store, StoreError};
use std::collections::BTreeSet;
use std::pin::Pin;
use std::rc::Rc;
use std::task::{Context, Poll, Waker};

type Answer = Result<(), StoreError>;

/// An append on its way.
struct Flight {
    number: u64,
    lines: Vec<(String, String)>,
    answer: Pin<Box<dyn Future<Output = Answer>>>,
}

struct Tab {
    book: Book,
    /// What was done here since it was opened, in order: its line, and how many lines had been given to the storage by then,
    /// its own among them.
    did: Vec<(usize, String)>,
    /// How many lines were ever given to the storage: also those of entries that something was taken out of.
    given: usize,
    flights: Vec<Flight>,
    /// What other tabs have told and this one has not heard yet.
    told: Vec<String>,
}

struct World {
    store: Rc<FailingStore>,
    tabs: Vec<Tab>,
    /// What was shown as saved, of every tab that ever was.
    acknowledged: BTreeSet<String>,
    done: BTreeSet<String>,
    clock: u64,
}

const DEVICE: &str = "tablet";
const START: u64 = 1_764_000_000_000;
const TEN_YEARS: u64 = 10 * 365 * 24 * 60 * 60_000;

fn fault(dice: &mut Dice) -> Fault {
    match dice.roll(9) {
        0 | 1 => Fault::Refused(StoreError::Full),
        2 => Fault::Refused(StoreError::Denied),
        3 => Fault::Refused(StoreError::Failed("AbortError".to_owned())),
        4 => Fault::KeptUnsaid,
        5 => Fault::Torn { kept: dice.roll(4) },
        6 => Fault::Silent { kept: dice.once_in(2) },
        _ => Fault::Slow { polls: dice.roll(6) as u32, early: dice.once_in(2) },
    }
}

fn poll(answer: &mut Pin<Box<dyn Future<Output = Answer>>>) -> Poll<Answer> {
    answer.as_mut().poll(&mut Context::from_waker(Waker::noop()))
}

impl World {
    fn new(dice: &mut Dice) -> Self {
        // From no append at all to one in two.
        let rate = dice.roll(6);
        let mut faults = Vec::new();
        for append in 1..120 {
            if dice.roll(10) < rate {
                faults.push((append, fault(dice)));
            }
        }
        let mut world = Self {
            store: Rc::new(FailingStore::at(faults)),
            tabs: Vec::new(),
            acknowledged: BTreeSet::new(),
            done: BTreeSet::new(),
            clock: START,
        };
        for _ in 0..=dice.roll(2) {
            world.open();
        }
        world
    }

    fn lines(&self) -> Vec<String> {
        let mut load = Box::pin(self.store.load());
        match load.as_mut().poll(&mut Context::from_waker(Waker::noop())) {
            Poll::Ready(Ok(lines)) => lines,
            _ => panic!("this store can always be read"),
        }
    }

    fn open(&mut self) {
        let book = Book::open(self.lines(), DEVICE);
        let given = book.unsaved();
        self.tabs.push(Tab { book, did: Vec::new(), given, flights: Vec::new(), told: Vec::new() });
    }

    fn act(&mut self, tab: usize, deck: &Deck, dice: &mut Dice) {
        self.clock = match dice.roll(12) {
            0 => self.clock.saturating_sub(TEN_YEARS),
            1 => dice.next() >> 12,
            _ => self.clock + dice.roll(100_000) as u64,
        };
        let tab = &mut self.tabs[tab];
        if dice.once_in(20) {
            return tab.take_in(deck, dice);
        }
        let act = deck.deal(tab.book.journal(), dice);
        let first = tab.given + 1;
        if let Ok(id) = tab.gives(|book| book.act(act, self.clock, dice.next() as u32)) {
            let line = tab.book.journal().find(&id).map(Entry::to_line).unwrap_or_default();
            tab.did.push((first, line));
        }
    }

    /// Asks the storage for an answer, and tells the other tabs of what it has kept.
    fn answer(&mut self, tab: usize, flight: usize) {
        let Some(flown) = self.tabs[tab].flights.get_mut(flight) else { return };
        let Poll::Ready(outcome) = poll(&mut flown.answer) else { return };
        let flown = self.tabs[tab].flights.remove(flight);
        if outcome.is_ok() {
            for (at, other) in self.tabs.iter_mut().enumerate() {
                if at != tab {
                    other.told.extend(flown.lines.iter().map(|(_, line)| line.clone()));
                }
            }
        }
        self.tabs[tab].book.answered(flown.number, outcome);
    }

    fn step(&mut self, deck: &Deck, dice: &mut Dice) -> Result<(), String> {
        let tab = dice.roll(self.tabs.len());
        let flight = dice.roll(self.tabs[tab].flights.len());
        match dice.roll(24) {
            0..8 => self.act(tab, deck, dice),
            8..13 => {
                self.tabs[tab].send(&self.store);
                if !dice.once_in(4) {
                    self.answer(tab, self.tabs[tab].flights.len().saturating_sub(1));
                }
            }
            13..18 => self.answer(tab, flight),
            18 => self.tabs[tab].late(flight),
            19..22 => self.tabs[tab].listen(dice),
            22 => {
                // A tab is closed and opened again; what it had asked for may still be done.
                let mut closed = self.tabs.remove(tab);
                if let Some(flight) = closed.flights.get_mut(flight).filter(|_| dice.once_in(2)) {
                    let _ = poll(&mut flight.answer);
                }
                self.open();
            }
            _ => {
                let tabs = self.tabs.len();
                self.tabs.clear();
                self.whole()?;
                (0..tabs).for_each(|_| self.open());
            }
        }
        self.check()
    }

    /// Whether the storage holds all that was shown as saved.
    fn check(&mut self) -> Result<(), String> {
        for tab in &self.tabs {
            let waits = tab.book.unsaved();
            if (tab.book.saving() == Saving::Saved) != (waits == 0) {
                return Err(format!("{waits} wait and it says {:?}", tab.book.saving()));
            }
            let stored = tab.given.checked_sub(waits).ok_or("more waits than was given")?;
            self.done.extend(tab.did.iter().map(|(_, line)| line.clone()));
            let saved = tab.did.iter().filter(|(given, _)| *given <= stored);
            self.acknowledged.extend(saved.map(|(_, line)| line.clone()));
        }
        let stored: BTreeSet<String> = self.lines().into_iter().collect();
        match self.acknowledged.iter().find(|line| !stands(line, &stored)) {
            Some(lost) => Err(format!("acknowledged and not stored: {lost}")),
            None => Ok(()),
        }
    }

    /// Whether the book opens, with all that was shown as saved and nothing that was never done.
    fn whole(&self) -> Result<Journal, String> {
        let lines = self.lines();
        let strange = |line: &&String| {
            !self.done.contains(*line) && !self.done.iter().any(|done| taken_out(done, line))
        };
        if let Some(line) = lines.iter().find(strange) {
            return Err(format!("stored and never done: {line}"));
        }
        let journal = Journal::open(lines, DEVICE);
        if !journal.damaged().is_empty() || journal.read_only() {
            return Err(format!("set aside: {:?}", journal.damaged()));
        }
        let entries: BTreeSet<String> = journal.entries().iter().map(Entry::to_line).collect();
        if let Some(line) = self.acknowledged.iter().find(|line| !stands(line, &entries)) {
            return Err(format!("acknowledged and not in the book: {line}"));
        }
        Ok(journal)
    }

    /// Stores what waits in a tab, as long as it takes.
    fn empty(&mut self, tab: usize) -> Result<(), String> {
        for _ in 0..400 {
            self.tabs[tab].send(&self.store);
            for flight in (0..self.tabs[tab].flights.len()).rev() {
                self.answer(tab, flight);
            }
            (0..self.tabs[tab].flights.len()).for_each(|flight| self.tabs[tab].late(flight));
        }
        match self.tabs[tab].book.unsaved() {
            0 => Ok(()),
            _ => Err(format!("never stored: {:?}", self.tabs[tab].book.saving())),
        }
    }

    /// In the end everything is stored, and every tab shows what the next opening shows.
    fn settle(&mut self) -> Result<(), String> {
        for tab in 0..self.tabs.len() {
            self.empty(tab)?;
        }
        self.check()?;
        for tab in 0..self.tabs.len() {
            for line in self.lines() {
                self.tabs[tab].gives(|book| book.hear(line));
            }
            self.empty(tab)?;
        }
        self.check()?;
        let (journal, lines) = (self.whole()?, self.lines().into_iter().collect());
        for tab in &self.tabs {
            same("the entries", &tab.book.journal().entries(), &journal.entries())?;
            same("the states", tab.book.state(), journal.state())?;
            if let Some((_, line)) = tab.did.iter().find(|(_, line)| !stands(line, &lines)) {
                return Err(format!("done and not stored in the end: {line}"));
            }
        }
        self.forgotten()
    }

    /// Of a customer who was removed no stored line tells, once the book was opened again.
    fn forgotten(&mut self) -> Result<(), String> {
        self.tabs.clear();
        self.open();
        self.empty(0)?;
        let journal = self.whole()?;
        let gone = |of: &Id| {
            journal.entries().iter().any(|e| matches!(&e.act, Act::Forgotten { customer } if customer == of))
        };
        for line in self.lines() {
            if let Ok(Entry { act: Act::Customer { id, body, .. }, .. }) = Entry::from_line(&line)
                && gone(&id)
                && !body.removed
            {
                return Err(format!("still told of one who was removed: {line}"));
            }
        }
        Ok(())
    }
}

/// Whether a line is among the stored ones: as it was, or without what was taken out of it.
fn stands(line: &String, stored: &BTreeSet<String>) -> bool {
    stored.contains(line) || stored.iter().any(|other| taken_out(line, other))
}

/// Whether the second is the first without what it said of a customer who was removed. All else is as it was.
fn taken_out(line: &str, bare: &str) -> bool {
    let (Ok(full), Ok(bare)) = (Entry::from_line(line), Entry::from_line(bare)) else { return false };
    let place = |e: &Entry| (e.id.clone(), e.clock, e.at, e.device.clone());
    match (&full.act, &bare.act) {
        (Act::Customer { id, over, .. }, Act::Customer { id: same, over: still, body }) => {
            body.removed && id == same && over == still && place(&full) == place(&bare)
        }
        _ => false,
    }
}

impl Tab {
    /// Does something with the book, and counts what it gives to the storage.
    fn gives<T>(&mut self, how: impl FnOnce(&mut Book) -> T) -> T {
        let before = self.book.unsaved();
        let out = how(&mut self.book);
        self.given += self.book.unsaved() - before;
        out
    }

    /// As the page does: what waits goes to the storage.
    fn send(&mut self, store: &Rc<FailingStore>) {
        let Some(lines) = self.book.to_store() else { return };
        let (store, sent) = (Rc::clone(store), lines.clone());
        let answer = Box::pin(async move { store.append(&sent).await });
        self.flights.push(Flight { number: self.book.flight(), lines, answer });
    }

    /// The page's patience is at its end.
    fn late(&mut self, flight: usize) {
        if let Some(flight) = self.flights.get(flight) {
            self.book.late(flight.number);
        }
    }

    /// Some of what other tabs have told comes here, in any order; some is lost, some comes twice.
    fn listen(&mut self, dice: &mut Dice) {
        let mut told = std::mem::take(&mut self.told);
        dice.shuffle(&mut told);
        for line in told {
            if dice.once_in(8) {
                self.gives(|book| book.hear(line.clone()));
            }
            if !dice.once_in(8) {
                self.gives(|book| book.hear(line));
            }
        }
    }

    /// A copy from another device is taken in.
    fn take_in(&mut self, deck: &Deck, dice: &mut Dice) {
        let mut other = Journal::open(vec![], &format!("desk{}", dice.roll(1000)));
        for _ in 0..=dice.roll(4) {
            let entry = other.entry(deck.deal(&other, dice), START, dice.next() as u32);
            other.take(entry);
        }
        let here = self.book.journal();
        let fresh = other.entries().iter().filter(|e| here.find(&e.id).is_none());
        let entries: Vec<_> = fresh.map(|e| (e.clone(), e.to_line())).collect();
        if self.gives(|book| book.take_in(entries.clone())).is_ok() {
            self.did.extend(entries.into_iter().map(|(_, line)| (self.given, line)));
        }
    }
}

/// Schedules in which something acknowledged was lost, or a book did not open as it should.
pub(crate) fn lost(length: Length) -> Tally {
    let (deck, mut tally) = (Deck::new(), Tally::default());
    for case in length.each() {
        let name = || format!("schedule {case} of seed {}", length.seed);
        tally.case(name, || {
            let mut dice = Dice::of(length.seed, case);
            let deck = deck.hand(&mut dice);
            let mut world = World::new(&mut dice);
            for step in 0..10 + dice.roll(50) {
                world.step(&deck, &mut dice).map_err(|why| format!("step {step}: {why}"))?;
            }
            world.settle()
        });
    }
    tally
}
