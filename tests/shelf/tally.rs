//! What a book's entries come to, added up for a test from the entries that count and by nothing of the app's own sums.

use potside::book::{Act, Ending, Entry, Id, Journal};
use potside::pot::{Event, Plan, StepKey};
use potside::quantity::{Exact, Mass};
use potside::shelf::{Finish, Move, Reason};
use std::collections::BTreeMap;

/// One batch.
#[derive(Default)]
pub(crate) struct Poured {
    pub(crate) plan: Option<Plan>,
    pub(crate) ended: Option<Ending>,
    pub(crate) filled: i64,
    /// When it was closed, and when the last vessel was filled.
    closed: Option<u64>,
    last: u64,
    /// What was weighed of each part, and when.
    weighed: Vec<(String, u64, Exact)>,
    /// The lots that were named for each part, and when.
    pub(crate) lots: BTreeMap<String, Vec<(u64, Vec<Id>)>>,
}

#[derive(Default)]
pub(crate) struct Tally {
    pub(crate) batches: BTreeMap<Id, Poured>,
    /// With whether it was taken back.
    moves: BTreeMap<Id, (Move, bool)>,
}

impl Tally {
    /// Of the entries that are not undone and were not refused.
    pub(crate) fn of(journal: &Journal) -> Self {
        let mut tally = Self::default();
        let good = |e: &&Entry| journal.counts(&e.id) && !journal.state().ignored.contains_key(&e.id);
        journal.entries().iter().filter(good).for_each(|e| tally.take(e.at, &e.act));
        tally
    }

    fn take(&mut self, now: u64, act: &Act) {
        match act {
            Act::Began { batch, plan, .. } => self.at(batch).plan = Some((**plan).clone()),
            Act::At { batch, event: Event::Did { step, weighed, at, .. } } => {
                self.at(batch).did(*step, *at, *weighed);
            }
            Act::Ended { batch, how, .. } => self.at(batch).ended = Some(*how),
            Act::Ticked { batch, step: Finish::Closed, done } => {
                self.at(batch).closed = done.then_some(now);
            }
            Act::TakenFrom { batch, sources } => {
                for source in sources {
                    let named = self.at(batch).lots.entry(source.part.clone()).or_default();
                    named.push((now, source.lots.clone()));
                }
            }
            Act::Moved { id, body, .. } => {
                self.moves.entry(id.clone()).or_insert((body.clone(), false)).0 = body.clone();
            }
            Act::Retire { id, retired } => {
                if let Some(moved) = self.moves.get_mut(id) {
                    moved.1 = *retired;
                }
            }
            _ => {}
        }
    }

    fn at(&mut self, batch: &Id) -> &mut Poured {
        self.batches.entry(batch.clone()).or_default()
    }

    /// Candles that went, of a batch or of all, for reasons of a kind.
    pub(crate) fn went(&self, of: Option<&Id>, why: impl Fn(&Reason) -> bool) -> i64 {
        let all = self.moves.values().filter(|(_, back)| !back).map(|(moved, _)| moved);
        let good = all.filter(|m| why(&m.reason) && of.is_none_or(|batch| m.batch == *batch));
        good.map(|m| i64::from(m.number)).sum()
    }

    /// Candles of a batch that stand there: nothing of one that is on, or was given up.
    pub(crate) fn left(&self, batch: &Id) -> i64 {
        let of = &self.batches[batch];
        let went = |why: fn(&Reason) -> bool| self.went(Some(batch), why);
        if of.ended != Some(Ending::Poured) || of.filled == 0 {
            return 0;
        }
        of.filled - went(|r| !comes(r)) + went(comes)
    }
}

/// What comes back to the shelf.
pub(crate) fn comes(reason: &Reason) -> bool {
    matches!(reason, Reason::Returned | Reason::Found)
}

impl Poured {
    fn did(&mut self, step: StepKey, at: u64, weighed: Option<Mass>) {
        match step {
            StepKey::Fill { .. } => {
                self.filled += 1;
                self.last = at.max(self.last);
            }
            StepKey::Wax { pour, line } | StepKey::Add { pour, line } | StepKey::TopUp { pour, line, .. } => {
                let plan = self.plan.as_ref().unwrap();
                let name = plan.pours[pour as usize].lines[line as usize].name.clone();
                self.weighed.push((name, at, weighed.map_or(Exact::ZERO, Mass::in_base)));
            }
            StepKey::Melt { .. } | StepKey::Stir { .. } | StepKey::Gate { .. } | StepKey::Close => {}
        }
    }

    /// Grams or pieces of a part that are used, each with when.
    fn uses(&self, part: &str) -> Vec<(u64, Exact)> {
        let (plan, filled) = (self.plan.as_ref().unwrap(), Exact::whole(self.filled.into()));
        if part == plan.vessel || part == plan.wick {
            return vec![(self.last, filled)];
        }
        if part == "Lid" {
            return self.closed.iter().map(|at| (*at, filled)).collect();
        }
        let of = self.weighed.iter().filter(|(name, ..)| name == part);
        of.map(|(_, at, amount)| (*at, *amount)).collect()
    }

    /// The lots that were named last before what went in at this time; where none were, those that were named next.
    fn lots_at(&self, part: &str, at: u64) -> &[Id] {
        let named = &self.lots[part];
        let holds = |n: &usize| {
            let until = named[n + 1..].iter().map(|(from, _)| *from).min();
            until.is_none_or(|until| at < until) && !named[*n].1.is_empty()
        };
        (0..named.len()).find(holds).map_or(&[], |n| &named[n].1)
    }

    /// Grams or pieces of a part that were used of lots which are `known`.
    pub(crate) fn used(&self, part: &str, known: impl Fn(&Id) -> bool) -> Exact {
        let of = self.uses(part).into_iter().filter(|(at, _)| self.lots_at(part, *at).iter().any(&known));
        of.map(|(_, amount)| amount).sum()
    }
}
