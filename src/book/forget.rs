//! What is put away, what is left out of the state again, and who is removed.

use super::{Id, Refusal, Settings, State, Subject};
use crate::bench::burn::Limits;
use crate::desk::Rates;
use crate::shelf::Customer;

impl State {
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

    pub(super) fn retire(&mut self, id: &Id, retired: bool) -> Result<(), Refusal> {
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

    /// What was known of a customer is gone; orders keep its id, which says nothing. The journal has taken it out of the
    /// entries as well.
    pub(super) fn forget_customer(&mut self, id: &Id) -> Result<(), Refusal> {
        let customer = self.customers.get_mut(id).ok_or(Refusal::NoSuchThing)?;
        for version in &mut customer.versions {
            version.body = Customer::nobody();
        }
        customer.retired = true;
        Ok(())
    }

    /// Who was removed stays put away, whatever comes after.
    pub(super) fn keep_removed(&mut self, id: &Id) {
        if let Some(customer) = self.customers.get_mut(id) {
            customer.retired |= customer.body().is_some_and(|c| c.removed);
        }
    }
}
