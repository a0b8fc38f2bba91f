//! What became of every gram and every coin: the lots of each ingredient played through in the order of time.

use super::play::{Play, note_uses};
use super::{Lot, Measure};
use crate::book::{Batch, Id, Map, State};
use crate::day::Zone;
use crate::quantity::{Exact, Money};
use crate::sort;
use crate::text::{key, same};

/// The whole stores, an account for each ingredient, by name.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Ledger {
    pub accounts: Vec<Account>,
    /// Where days are those of its calendar.
    pub(super) zone: Zone,
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
    /// When it was written down first, milliseconds since 1970: of what was used before the book knows nothing.
    pub(super) written: u64,
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
    /// What is left of it cost: its price less what went, and what is missing, cost. What was found again is worth what it
    /// was before.
    pub fn value(&self) -> Money {
        self.lot.price - self.cost_of(self.went() + self.unexplained.max(Exact::ZERO))
    }

    /// What went and is known where.
    pub(super) fn went(&self) -> Exact {
        self.in_candles + self.written_off
    }

    /// What comes to be used first: those that expire, the earliest first; then by the day they were got.
    pub(super) fn place(&self) -> (bool, Option<crate::day::Day>, crate::day::Day, &Id) {
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

impl Ledger {
    /// A lot is there from the beginning of the day on which it came, in this zone.
    pub fn of(state: &State, zone: Zone) -> Self {
        Self::with(state, zone, &|_| true)
    }

    /// With these batches only: what is told of a lot is whole where they are all that name it.
    pub(super) fn with(state: &State, zone: Zone, wanted: &dyn Fn(&Batch) -> bool) -> Self {
        let mut plays: Vec<Play> = Vec::new();
        let mut by_name: Map<usize> = Map::default();
        // Where each lot is: in which play, and which of its lots.
        let mut places: Map<(usize, usize)> = Map::default();
        for lot in state.lots.values() {
            let Some(body) = lot.body() else { continue };
            let name = Id(key(&body.ingredient));
            by_name.add(&name, plays.len());
            let at = by_name.get(&name).copied().unwrap_or_default();
            if at == plays.len() {
                plays.push(Play { account: Account::new(body), moves: Vec::new() });
            }
            if let Some(play) = plays.get_mut(at) {
                places.add(&lot.id, (at, play.account.lots.len()));
                play.bring(lot, state, zone);
            }
        }
        for batch in state.batches.values().filter(|b| wanted(b)) {
            note_uses(&mut plays, &places, batch);
        }
        let mut accounts: Vec<Account> = plays.into_iter().map(Play::run).collect();
        sort::by(&mut accounts, |a, b| key(&a.name).cmp(&key(&b.name)));
        let mut ledger = Self { accounts, zone };
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
