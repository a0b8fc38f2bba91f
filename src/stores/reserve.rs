//! What is spoken for: what a pour that is on has still to take of the lots that are named for it.

use super::{Account, Holding, Ledger, Measure};
use crate::book::{Batch, Id};
use crate::quantity::Exact;

impl Ledger {
    /// Sets aside what this batch has still to take: of one lot after the other what is there of it and not set aside.
    pub(super) fn reserve(&mut self, batch: &Batch) {
        for (part, mass, pieces) in batch.run.rest() {
            let lots = batch.lots_of(part);
            // As it will be drawn: from the lots of one ingredient.
            let of = |lot: &Id| self.accounts.iter().position(|a| a.lot(lot).is_some());
            let own = |at: &usize| self.accounts.get(*at).is_some_and(|a| a.is(part));
            let at = lots.iter().filter_map(of).find(own).or_else(|| lots.iter().find_map(of));
            let Some(account) = at.and_then(|at| self.accounts.get_mut(at)) else { continue };
            let mut rest = match account.measure {
                Measure::Grams => mass.in_base(),
                Measure::Pieces => pieces,
            };
            for lot in lots {
                let Some(holding) = account.lots.iter_mut().find(|h| h.id == *lot) else { continue };
                let taken = rest.min(holding.free());
                holding.reserved = holding.reserved + taken;
                rest = rest - taken;
            }
        }
    }
}

impl Holding {
    /// What is left and not spoken for.
    pub fn free(&self) -> Exact {
        (self.left - self.reserved).max(Exact::ZERO)
    }
}

impl Account {
    /// What is not spoken for in the lots that can be used.
    pub fn free(&self) -> Exact {
        self.usable().map(Holding::free).sum()
    }

    /// What pours that are on have still to take.
    pub fn reserved(&self) -> Exact {
        self.lots.iter().map(|h| h.reserved).sum()
    }
}
