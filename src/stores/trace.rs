//! From a lot forward to the batches it went into, and from a batch back to every lot in it: one step each way.

use super::{Account, Holding, Ledger, LotEvent};
use crate::book::{Batch, Id, Kept, Map, State};
use crate::day::Zone;
use crate::quantity::Exact;
use crate::text::same;

/// A batch that has something of a lot in it.
#[derive(Clone, PartialEq, Debug)]
pub struct Reach<'a> {
    pub batch: &'a Batch,
    pub amount: Exact,
}

/// A lot that is in a batch.
#[derive(Clone, PartialEq, Debug)]
pub struct Origin<'a> {
    pub account: &'a Account,
    pub holding: &'a Holding,
    pub amount: Exact,
}

impl State {
    /// Batches and the lots on hold that are in them: quicker than [`Ledger::held`], which it is the same as, since only
    /// what was taken of an ingredient ever on hold is gone through.
    pub fn held(&self) -> Vec<(Id, Id)> {
        let hold = |(_, _, event): &(u64, Id, LotEvent)| matches!(event, LotEvent::Held { .. });
        let ever = self.lot_events.iter().filter(|(_, events)| events.iter().any(hold));
        let ever: Vec<&Id> = ever.map(|(lot, _)| lot).collect();
        if ever.is_empty() {
            return Vec::new();
        }
        // How much a lot gave hangs on all that was taken of its ingredient.
        let of = |lot: &Id| self.lots.get(lot).and_then(Kept::body).map(|l| l.ingredient.as_str());
        let kinds: Vec<&str> = ever.iter().filter_map(|lot| of(lot)).collect();
        let lots =
            self.lots.iter().filter(|(lot, _)| of(lot).is_some_and(|a| kinds.iter().any(|b| same(a, b))));
        let mut told: Map<()> = Map::default();
        lots.for_each(|(lot, _)| told.add(lot, ()));
        let names =
            |batch: &Batch| batch.sources.iter().flat_map(|(_, s)| &s.lots).any(|lot| told.contains_key(lot));
        // What a lot gave does not hang on the hour it came.
        let ledger = Ledger::with(self, Zone::GREENWICH, &names);
        ledger.held().into_iter().map(|(batch, lot)| (batch.clone(), lot.clone())).collect()
    }
}

impl Ledger {
    /// Every batch with something of this lot in it, the first poured first.
    pub fn forward<'a>(&self, state: &'a State, lot: &Id) -> Vec<Reach<'a>> {
        let mut reached: Vec<Reach> = Vec::new();
        let Some((account, _)) = self.lot(lot) else { return reached };
        for take in account.takes.iter().filter(|t| t.lot == *lot) {
            match reached.iter_mut().rev().find(|r| r.batch.id == take.batch) {
                Some(reach) => reach.amount = reach.amount + take.amount,
                None => {
                    let batch = state.batches.get(&take.batch);
                    reached.extend(batch.map(|batch| Reach { batch, amount: take.amount }));
                }
            }
        }
        reached
    }

    /// Every lot in this batch, by the name of the ingredient.
    pub fn back(&self, batch: &Id) -> Vec<Origin<'_>> {
        let mut origins: Vec<Origin> = Vec::new();
        for account in &self.accounts {
            let first = origins.len();
            for take in account.takes.iter().filter(|t| t.batch == *batch) {
                let known = origins.iter_mut().skip(first).find(|o| o.holding.id == take.lot);
                match (known, account.lot(&take.lot)) {
                    (Some(origin), _) => origin.amount = origin.amount + take.amount,
                    (None, Some(holding)) => origins.push(Origin { account, holding, amount: take.amount }),
                    (None, None) => {}
                }
            }
        }
        origins
    }

    /// True where something of a lot that is on hold is in this batch.
    pub fn is_held(&self, batch: &Id) -> bool {
        self.held().iter().any(|(held, _)| *held == batch)
    }

    /// The batches with something in them of a lot that is on hold, each with every such lot.
    pub fn held(&self) -> Vec<(&Id, &Id)> {
        let mut held: Vec<(&Id, &Id)> = Vec::new();
        for account in &self.accounts {
            for lot in account.lots.iter().filter(|h| h.held) {
                for take in account.takes.iter().filter(|t| t.lot == lot.id) {
                    if !held.contains(&(&take.batch, &lot.id)) {
                        held.push((&take.batch, &lot.id));
                    }
                }
            }
        }
        held
    }
}

impl Batch {
    /// What is in it and was named from no lot that is in the book, by name.
    pub fn untraced(&self, ledger: &Ledger) -> Vec<&str> {
        let mut names: Vec<&str> = Vec::new();
        for used in self.run.used() {
            let own = used.name == self.run.plan.vessel || used.name == self.run.plan.wick;
            let lots = self.lots_at(used.name, used.at);
            if !own && !lots.iter().any(|lot| ledger.lot(lot).is_some()) && !names.contains(&used.name) {
                names.push(used.name);
            }
        }
        names
    }
}
