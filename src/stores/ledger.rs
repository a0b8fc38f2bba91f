//! What became of every gram and every coin: the lots of each ingredient played through in the order of time.

use super::pool::Pool;
use super::{Lot, LotEvent, Measure};
use crate::book::{Batch, Ending, Id, Kept, Map, State};
use crate::day::DAY;
use crate::pot::Used;
use crate::quantity::{Exact, Mass, Money};
use crate::{sort, text};

/// The whole stores, an account for each ingredient, by name.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Ledger {
    pub accounts: Vec<Account>,
}

/// All lots of one ingredient.
#[derive(Clone, PartialEq, Debug)]
pub struct Account {
    /// As it is written on the lot that was got last.
    pub name: String,
    pub measure: Measure,
    /// As they are to be used: first to expire, then first got.
    pub lots: Vec<Holding>,
    /// In the order of time.
    pub takes: Vec<Take>,
    /// What was there in all after each change, with its time.
    pub stock: Vec<(u64, Exact)>,
    /// What is left is worth this by the moving average.
    pub worth: Money,
}

/// One lot as it stands. Bought = in candles + written off + unexplained + left, exactly.
#[derive(Clone, PartialEq, Debug)]
pub struct Holding {
    pub id: Id,
    pub lot: Lot,
    pub in_candles: Exact,
    /// With what went into pours that were stopped.
    pub written_off: Exact,
    /// What a count found missing; below zero where there was more than the book had.
    pub unexplained: Exact,
    pub left: Exact,
    /// Of it what a pour that is on has still to take.
    pub reserved: Exact,
    pub held: bool,
    /// Of it that cost something: what is found beyond what was bought cost nothing.
    out: Exact,
    /// What that cost.
    spent: Money,
}

/// What one part of one pour took of one lot.
#[derive(Clone, PartialEq, Debug)]
pub struct Take {
    pub lot: Id,
    pub batch: Id,
    pub amount: Exact,
    pub at: u64,
    /// By the price of the lot it came from.
    pub cost: Money,
    /// By the moving average of all lots that were there.
    pub average: Money,
}

impl Holding {
    /// What the lot cost of `out` grams or pieces that are out of it, rounded once, so that the parts add up to its price.
    fn cost_of(&self, out: Exact) -> Money {
        let share = out.min(self.lot.amount).checked_div(self.lot.amount);
        self.lot.price.times(share.unwrap_or(Exact::ONE))
    }

    /// Takes so much out; what it cost.
    fn go(&mut self, amount: Exact) -> Money {
        let over = (amount - self.left).max(Exact::ZERO);
        self.left = self.left - amount + over;
        self.unexplained = self.unexplained - over;
        let before = self.spent;
        self.out = self.out + amount;
        self.spent = self.cost_of(self.out);
        self.spent - before
    }

    /// What is left of it cost.
    pub fn value(&self) -> Money {
        self.lot.price - self.spent
    }

    /// What comes to be used first: those that expire, the earliest first; then by the day they were got.
    fn place(&self) -> (bool, Option<crate::day::Day>, crate::day::Day, &Id) {
        (self.lot.best_before.is_none(), self.lot.best_before, self.lot.got_on, &self.id)
    }
}

impl Account {
    /// The lots that can be used, in their turn: not on hold, and something left.
    pub fn usable(&self) -> impl Iterator<Item = &Holding> {
        self.lots.iter().filter(|h| !h.held && h.left > Exact::ZERO)
    }

    /// What is left in all lots, those on hold too.
    pub fn left(&self) -> Exact {
        self.lots.iter().map(|h| h.left).sum()
    }

    pub fn lot(&self, id: &Id) -> Option<&Holding> {
        self.lots.iter().find(|h| h.id == *id)
    }

    /// True of its name, however it is spelt.
    pub fn is(&self, name: &str) -> bool {
        same(&self.name, name)
    }
}

/// What happens to an account at a time.
enum Move<'a> {
    Got(usize),
    Lot(usize, &'a LotEvent),
    /// So much of these lots for a batch.
    Use(Vec<usize>, Exact, &'a Batch),
}

struct Play<'a> {
    account: Account,
    /// In the order of time once sorted; what comes in is before what goes out.
    moves: Vec<(u64, Move<'a>)>,
}

/// Names are the same whatever their case and the spaces around them.
fn key(name: &str) -> Id {
    Id(text::lower(name.trim()))
}

/// True of two spellings of one name.
pub(super) fn same(a: &str, b: &str) -> bool {
    a == b || key(a) == key(b)
}

impl Ledger {
    pub fn of(state: &State) -> Self {
        Self::with(state, &|_| true)
    }

    /// With these batches only: what is told of a lot is whole where they are all that name it.
    pub(super) fn with(state: &State, wanted: &dyn Fn(&Batch) -> bool) -> Self {
        let mut plays: Vec<Play> = Vec::new();
        let mut by_name: Map<usize> = Map::default();
        // Where each lot is: in which play, and which of its lots.
        let mut places: Map<(usize, usize)> = Map::default();
        for lot in state.lots.values() {
            let Some(body) = lot.body() else { continue };
            let name = key(&body.ingredient);
            by_name.add(&name, plays.len());
            let at = by_name.get(&name).copied().unwrap_or_default();
            if at == plays.len() {
                plays.push(Play { account: Account::new(body), moves: Vec::new() });
            }
            if let Some(play) = plays.get_mut(at) {
                places.add(&lot.id, (at, play.account.lots.len()));
                play.bring(lot, state);
            }
        }
        for batch in state.batches.values().filter(|b| wanted(b)) {
            note_uses(&mut plays, &places, batch);
        }
        let mut accounts: Vec<Account> = plays.into_iter().map(Play::run).collect();
        sort::by(&mut accounts, |a, b| key(&a.name).cmp(&key(&b.name)));
        let mut ledger = Self { accounts };
        for batch in state.batches.values().filter(|b| b.ended.is_none() && wanted(b)) {
            ledger.reserve(batch);
        }
        ledger
    }

    /// The account of the ingredient of this name.
    pub fn account(&self, name: &str) -> Option<&Account> {
        self.accounts.iter().find(|a| a.is(name))
    }

    /// The account a lot is in, and the lot.
    pub fn lot(&self, id: &Id) -> Option<(&Account, &Holding)> {
        self.accounts.iter().find_map(|a| Some((a, a.lot(id)?)))
    }
}

impl Account {
    fn new(lot: &Lot) -> Self {
        Self {
            name: lot.ingredient.trim().to_owned(),
            measure: lot.bought.pack.measure(),
            lots: Vec::new(),
            takes: Vec::new(),
            stock: Vec::new(),
            worth: Money::ZERO,
        }
    }
}

/// The parts of a batch, and what finished it, each from the lots that were named for it: those of the ingredient of the
/// first of them.
fn note_uses<'a>(plays: &mut [Play<'a>], places: &Map<(usize, usize)>, batch: &'a Batch) {
    if batch.sources.is_empty() {
        return;
    }
    let mut note = |used: &Used| {
        let Some(source) = batch.sources.iter().find(|s| s.part == used.name) else { return };
        let (mut of, mut lots) = (None, Vec::new());
        for (at, lot) in source.lots.iter().filter_map(|lot| places.get(lot)) {
            if *of.get_or_insert(*at) == *at {
                lots.push(*lot);
            }
        }
        let Some(play) = of.and_then(|at| plays.get_mut(at)) else { return };
        let amount = match play.account.measure {
            Measure::Grams => used.mass.in_base(),
            Measure::Pieces => used.pieces,
        };
        play.moves.push((used.at, Move::Use(lots, amount.max(Exact::ZERO), batch)));
    };
    batch.run.used().iter().for_each(&mut note);
    // One of each to every candle, however many were broken before: a count puts that right.
    if let Some(at) = batch.closed {
        let pieces = Exact::whole(batch.filled_vessels() as i128);
        for source in batch.sources.iter().filter(|s| !batch.run.takes(&s.part)) {
            note(&Used { name: &source.part, mass: Mass::ZERO, pieces, at });
        }
    }
}

impl<'a> Play<'a> {
    fn bring(&mut self, kept: &Kept<Lot>, state: &'a State) {
        let Some(body) = kept.body() else { return };
        let index = self.account.lots.len();
        let amount = body.amount.max(Exact::ZERO);
        self.account.lots.push(Holding {
            id: kept.id.clone(),
            lot: Lot { amount, ..body.clone() },
            in_candles: Exact::ZERO,
            written_off: Exact::ZERO,
            unexplained: Exact::ZERO,
            left: amount,
            reserved: Exact::ZERO,
            held: false,
            out: Exact::ZERO,
            spent: Money::ZERO,
        });
        self.moves.push((u64::from(body.got_on.0).saturating_mul(DAY), Move::Got(index)));
        for (at, _, event) in state.lot_events.get(&kept.id).into_iter().flatten() {
            self.moves.push((*at, Move::Lot(index, event)));
        }
    }

    fn run(mut self) -> Account {
        self.before_use();
        sort::by(&mut self.moves, |a, b| a.0.cmp(&b.0).then_with(|| b.1.comes_in().cmp(&a.1.comes_in())));
        let Self { mut account, moves } = self;
        let mut pool = Pool::default();
        let mut there = Exact::ZERO;
        for (at, step) in moves {
            there = there + account.take(&mut pool, at, step);
            account.stock.push((at, there));
        }
        account.worth = pool.value();
        sort::by(&mut account.lots, |a, b| a.place().cmp(&b.place()));
        if let Some(last) = account.lots.iter().max_by_key(|h| (h.lot.got_on, &h.id)) {
            account.name = last.lot.ingredient.trim().to_owned();
        }
        account
    }

    /// A lot came in before anything of it was used, whatever day was typed.
    fn before_use(&mut self) {
        let mut first: Vec<u64> = vec![u64::MAX; self.account.lots.len()];
        for (at, step) in &self.moves {
            let lots: &[usize] = match step {
                Move::Got(index) | Move::Lot(index, _) => std::slice::from_ref(index),
                Move::Use(lots, ..) => lots,
            };
            for lot in lots {
                if let Some(first) = first.get_mut(*lot) {
                    *first = (*first).min(*at);
                }
            }
        }
        for (at, step) in &mut self.moves {
            if let Move::Got(index) = step {
                *at = first.get(*index).copied().unwrap_or(*at);
            }
        }
    }
}

impl Move<'_> {
    const fn comes_in(&self) -> bool {
        matches!(self, Self::Got(_))
    }
}

impl Account {
    /// Does one move; by how much what is there changes.
    fn take(&mut self, pool: &mut Pool, at: u64, step: Move) -> Exact {
        match step {
            Move::Got(index) => {
                let Some(holding) = self.lots.get(index) else { return Exact::ZERO };
                pool.put(holding.lot.amount, holding.lot.price);
                holding.lot.amount
            }
            Move::Lot(index, event) => {
                let Some(holding) = self.lots.get_mut(index) else { return Exact::ZERO };
                let before = holding.left;
                holding.take(event);
                let change = holding.left - before;
                if change.is_negative() {
                    pool.go(change.abs());
                } else {
                    pool.put(change, Money::ZERO);
                }
                change
            }
            Move::Use(lots, amount, batch) => self.draw(pool, at, &lots, amount, batch),
        }
    }

    /// From one lot after the other; what is more than they hold is from the last. By how much what is there changes.
    fn draw(&mut self, pool: &mut Pool, at: u64, lots: &[usize], amount: Exact, batch: &Batch) -> Exact {
        let stopped = matches!(batch.ended, Some((Ending::GivenUp, ..)));
        let (mut rest, mut change) = (amount, Exact::ZERO);
        let mut taken = false;
        for (n, index) in lots.iter().enumerate() {
            let Some(holding) = self.lots.get_mut(*index) else { continue };
            let last = n + 1 == lots.len();
            let part = if last { rest } else { rest.min(holding.left) };
            // Of what has no known weight it is told all the same that it is in.
            if part.is_zero() && (taken || !last) {
                continue;
            }
            taken = true;
            rest = rest - part;
            let before = holding.left;
            let cost = holding.go(part);
            change = change + holding.left - before;
            let sum = if stopped { &mut holding.written_off } else { &mut holding.in_candles };
            *sum = *sum + part;
            let lot = holding.id.clone();
            self.takes.push(Take {
                lot,
                batch: batch.id.clone(),
                amount: part,
                at,
                cost,
                average: pool.go(part),
            });
        }
        change
    }
}

impl Holding {
    fn take(&mut self, event: &LotEvent) {
        match event {
            LotEvent::Counted { left, .. } => {
                let missing = self.left - (*left).max(Exact::ZERO);
                self.unexplained = self.unexplained + missing;
                self.left = self.left - missing;
                self.out = self.out + missing.max(Exact::ZERO);
                self.spent = self.cost_of(self.out);
            }
            LotEvent::WrittenOff { amount, .. } => {
                let amount = (*amount).max(Exact::ZERO);
                self.go(amount);
                self.written_off = self.written_off + amount;
            }
            LotEvent::Held { .. } => self.held = true,
            LotEvent::Released { .. } => self.held = false,
        }
    }
}
