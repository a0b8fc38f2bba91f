//! The moving average: everything of a kind as one heap, worth what was paid for what is in it.

use crate::quantity::{Exact, Money};

#[derive(Clone, Copy, PartialEq, Debug, Default)]
pub(super) struct Pool {
    amount: Exact,
    value: Money,
    /// What counts found missing, and what it was worth.
    missing: (Exact, Money),
}

impl Pool {
    pub(super) fn put(&mut self, amount: Exact, price: Money) {
        self.amount = self.amount + amount;
        self.value = self.value + price;
    }

    /// Takes so much out; what it was worth, rounded once to the minor unit. The rest is worth the rest.
    pub(super) fn go(&mut self, amount: Exact) -> Money {
        let worth = match amount.checked_div(self.amount) {
            Some(share) if share < Exact::ONE => self.value.times(share),
            Some(_) => self.value,
            None => Money::ZERO,
        };
        self.amount = (self.amount - amount).max(Exact::ZERO);
        self.value = self.value - worth;
        worth
    }

    /// So much is not there, as a count says.
    pub(super) fn miss(&mut self, amount: Exact) {
        let worth = self.go(amount);
        self.missing = (self.missing.0 + amount, self.missing.1 + worth);
    }

    /// So much more is there: what was missing before is worth again what it was worth then, the rest nothing.
    pub(super) fn find(&mut self, amount: Exact) {
        let (missing, worth) = self.missing;
        let again = amount.min(missing);
        let worth = again.checked_div(missing).map_or(Money::ZERO, |share| worth.times(share));
        self.missing = (missing - again, self.missing.1 - worth);
        self.put(amount, worth);
    }

    pub(super) const fn value(self) -> Money {
        self.value
    }
}
