//! A burn that was taken back, all of it in one go, and what brings it back.

use super::{Act, Entry, Id, Journal};
use crate::bench::burn::{BurnEvent, Session, course, of_burn};

/// A burn of a candle on trial that was taken back.
#[derive(Clone, PartialEq, Debug)]
pub struct Unburnt {
    pub burn: Session,
    /// The undos that took it back: undone, it is here again.
    pub undos: Vec<Id>,
}

impl Journal {
    /// The burn of this candle that was taken back last, as long as all of it can come back.
    ///
    /// Undos written one right after another on one device are one go: a look that was taken back for itself, before,
    /// stays away.
    pub fn unburnt(&self, trial: &Id) -> Option<Unburnt> {
        let mut undos: Vec<(&Entry, &Id)> = Vec::new();
        for (entry, counts) in self.all().rev() {
            let Act::Undo { entry: target } = &entry.act else { continue };
            if !counts || self.burn_event(trial, target).is_none() {
                continue;
            }
            let goes_on =
                |(next, _): &(&Entry, &Id)| next.device == entry.device && next.clock == entry.clock + 1;
            if !undos.is_empty() && !undos.last().is_some_and(goes_on) {
                if let Some(found) = self.taken_in_one(trial, &undos) {
                    return Some(found);
                }
                undos.clear();
            }
            undos.push((entry, target));
        }
        self.taken_in_one(trial, &undos)
    }

    /// The last burn that these undos, the last first, took back from beginning to end.
    fn taken_in_one(&self, trial: &Id, undos: &[(&Entry, &Id)]) -> Option<Unburnt> {
        let undo_of = |id: &Id| undos.iter().find(|(_, target)| *target == id).map(|(undo, _)| &undo.id);
        let of_trial = |(e, counts): (_, bool)| {
            let e: &Entry = e;
            let event = self.burn_event(trial, &e.id)?;
            (counts || undo_of(&e.id).is_some()).then_some((&e.id, event, counts))
        };
        let events: Vec<(&Id, &BurnEvent, bool)> = self.all().filter_map(of_trial).collect();
        let now = course(events.iter().filter(|(.., counts)| *counts).map(|(_, event, _)| *event)).sessions;
        let with = course(events.iter().map(|(_, event, _)| *event)).sessions;
        let gone: Vec<(Session, Vec<Id>)> = with
            .into_iter()
            .filter(|s| s.out.is_some() && now.iter().all(|n| n.lit != s.lit))
            .map(|burn| {
                let own = of_burn(events.iter().map(|(id, event, _)| (*id, *event)), burn.lit);
                (burn, own.into_iter().filter_map(undo_of).cloned().collect())
            })
            .collect();
        // Of several the one whose undo is the last.
        let at = |(_, ids): &(Session, Vec<Id>)| undos.iter().position(|(undo, _)| ids.contains(&undo.id));
        gone.into_iter()
            .min_by_key(|one| at(one).unwrap_or(usize::MAX))
            .map(|(burn, undos)| Unburnt { burn, undos })
    }

    fn burn_event(&self, trial: &Id, entry: &Id) -> Option<&BurnEvent> {
        match &self.find(entry)?.act {
            Act::AtTrial { trial: of, event } if of == trial => Some(event),
            _ => None,
        }
    }
}
