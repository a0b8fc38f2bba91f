//! A person taken out of the book for good. The removal counts over every version of them, whenever and wherever it was
//! made, and cannot be undone; what the entries said of them is taken out of the entries themselves, so that no stored
//! line, no copy made later and no book merged with it tells it any more. The entries stay, and with them the trace.

use super::{Act, Damage, Entry, Id, Journal};
use crate::shelf::Customer;
use crate::sort;

impl Entry {
    /// The customer who is removed as this entry says: by its act, or because what it said was taken out already.
    pub(super) fn removes(&self) -> Option<&Id> {
        match &self.act {
            Act::Forgotten { customer } => Some(customer),
            Act::Customer { id, body, .. } if body.removed => Some(id),
            _ => None,
        }
    }

    /// Takes out what it says of one of these, which are in their order. True where it said something.
    pub(super) fn take_out(&mut self, removed: &[Id]) -> bool {
        let Act::Customer { id, body, .. } = &mut self.act else { return false };
        let says = !body.removed && removed.binary_search(id).is_ok();
        if says {
            *body = Customer::nobody();
        }
        says
    }

    /// Its line as it would be were its customer removed.
    pub(super) fn bare_line(&self) -> String {
        let Act::Customer { id, .. } = &self.act else { return self.to_line() };
        let mut bare = self.clone();
        bare.take_out(std::slice::from_ref(id));
        bare.to_line()
    }
}

impl Journal {
    /// Everybody who was removed, in the order of their ids.
    pub(super) fn removed(&self) -> &[Id] {
        &self.removed
    }

    /// Who is removed as these entries say, and was not yet; in the order of their ids.
    pub(super) fn newly_removed(&self, entries: &[Entry]) -> Vec<Id> {
        let said = entries.iter().filter_map(Entry::removes);
        let mut new: Vec<Id> = said.filter(|id| self.removed.binary_search(id).is_err()).cloned().collect();
        sort::by(&mut new, Id::cmp);
        new.dedup();
        new
    }

    /// Takes out what the entries here say of these, who are in the order of their ids; also of lines that were set aside beside an entry of the same id.
    pub(super) fn remove_people(&mut self, people: Vec<Id>) {
        if people.is_empty() {
            return;
        }
        for entry in &mut self.entries {
            if entry.take_out(&people) {
                self.rewritten.push(entry.id.clone());
            }
        }
        self.damaged.retain(|(line, damage)| {
            let of_them = || Entry::from_line(line).is_ok_and(|mut e| e.take_out(&people));
            *damage != Damage::SameId || !of_them()
        });
        self.removed.extend(people);
        sort::by(&mut self.removed, Id::cmp);
    }

    /// The entries that something was taken out of since this was last asked: their stored lines are to be replaced.
    pub(super) fn rewritten(&mut self) -> Vec<Entry> {
        let ids = std::mem::take(&mut self.rewritten);
        ids.iter().filter_map(|id| self.find(id).cloned()).collect()
    }
}
