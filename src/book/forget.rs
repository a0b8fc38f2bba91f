//! What is put away, what is left out of the state again, and who is removed.

use super::{Id, Kept, Map, Refusal, Settings, State, Subject};
use crate::bench::burn::Limits;
use crate::desk::Rates;
use crate::shelf::Customer;

/// Things of one kind, whichever.
trait Things {
    fn leave_out(&mut self, id: &Id);
    /// The mark of one that it is put away.
    fn retired(&mut self, id: &Id) -> Option<&mut bool>;
}

impl<T> Things for Map<Kept<T>> {
    fn leave_out(&mut self, id: &Id) {
        self.remove(id);
    }

    fn retired(&mut self, id: &Id) -> Option<&mut bool> {
        self.get_mut(id).map(|kept| &mut kept.retired)
    }
}

impl State {
    /// Leaves out all that the entries about `subject` made.
    pub(super) fn forget(&mut self, subject: Subject) {
        match subject {
            Subject::Thing(id) => {
                self.things().into_iter().for_each(|kind| kind.leave_out(id));
                self.lots.remove(id);
                self.lot_events.remove(id);
                self.batches.remove(id);
                self.burns.remove(id);
                self.pins.remove(id);
                self.ignored.retain(|i| i.thing != *id);
            }
            Subject::Settings => {
                self.settings = Settings::default();
                self.rates = Rates::default();
                self.limits = Limits::default();
            }
            Subject::Book => *self = Self::default(),
            Subject::Entry(_) | Subject::Nothing => {}
        }
    }

    /// The things that are kept in versions and can be put away: all but lots.
    fn things(&mut self) -> [&mut dyn Things; 13] {
        [
            &mut self.formulas,
            &mut self.vessels,
            &mut self.products,
            &mut self.customers,
            &mut self.orders,
            &mut self.moves,
            &mut self.scales,
            &mut self.pots,
            &mut self.ingredients,
            &mut self.safety,
            &mut self.labels,
            &mut self.trials,
            &mut self.wicks,
        ]
    }

    pub(super) fn retire(&mut self, id: &Id, retired: bool) -> Result<(), Refusal> {
        let mut found = Err(Refusal::NoSuchThing);
        for mark in self.things().into_iter().filter_map(|kind| kind.retired(id)) {
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
