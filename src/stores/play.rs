//! The lots of one ingredient, played through in the order of time.

use super::ledger::{Account, Holding, Take};
use super::pool::Pool;
use super::{Lot, LotEvent, Measure, Source};
use crate::book::{Batch, Ending, Kept, Map, State};
use crate::day::Zone;
use crate::pot::Used;
use crate::quantity::{Exact, Mass, Money};
use crate::sort;

/// What happens to an account at a time.
pub(super) enum Move<'a> {
    Got(usize),
    Lot(usize, &'a LotEvent),
    /// So much of these lots for a batch.
    Use(Vec<usize>, Exact, &'a Batch),
}

pub(super) struct Play<'a> {
    pub(super) account: Account,
    /// In the order of time once sorted; what comes in is before what goes out.
    pub(super) moves: Vec<(u64, Move<'a>)>,
}

/// The parts of a batch, and what finished it, each from the lots that were named for it. Where one of them was put right to
/// be of another ingredient since, from those of the part's own name, or else of the first of them; of each other it is told
/// that something of it may be in, since it was named: a recall must find it.
pub(super) fn note_uses<'a>(plays: &mut [Play<'a>], places: &Map<(usize, usize)>, batch: &'a Batch) {
    if batch.sources.is_empty() {
        return;
    }
    let mut note = |used: &Used| {
        let named = || batch.lots_at(used.name, used.at).iter().filter_map(|lot| places.get(lot));
        let Some((first, _)) = named().next() else { return };
        let mut of = *first;
        if named().any(|(at, _)| at != first) {
            let is_own = |at: &usize| plays.get(*at).is_some_and(|play| play.account.is(used.name));
            of = named().map(|(at, _)| *at).find(is_own).unwrap_or(of);
            for (at, lot) in named().filter(|(at, _)| *at != of) {
                if let Some(play) = plays.get_mut(*at) {
                    play.moves.push((used.at, Move::Use(vec![*lot], Exact::ZERO, batch)));
                }
            }
        }
        let lots = named().filter(|(at, _)| *at == of).map(|(_, lot)| *lot).collect();
        let Some(play) = plays.get_mut(of) else { return };
        let amount = match play.account.measure {
            Measure::Grams => used.mass.in_base(),
            Measure::Pieces => used.pieces,
        };
        play.moves.push((used.at, Move::Use(lots, amount.max(Exact::ZERO), batch)));
    };
    for used in batch.run.used() {
        // Vessels and wicks are told all together: only where other lots were named on the way is each looked at.
        let of = |source: &&(u64, Source)| source.1.part == used.name;
        if !used.pieces.is_zero()
            && batch.sources.iter().filter(of).nth(1).is_some()
            && batch.run.plan.own().iter().any(|own| *own == used.name)
        {
            let one = |at| note(&Used { at, pieces: Exact::ONE, ..used });
            batch.run.filled_at().into_iter().for_each(one);
            continue;
        }
        note(&used);
    }
    // One of each to every candle, however many were broken before: a count puts that right.
    if let Some(at) = batch.closed {
        let pieces = Exact::whole(batch.filled_vessels() as i128);
        for (_, source) in
            batch.sources.iter().filter(|(until, s)| *until == u64::MAX && !batch.run.takes(&s.part))
        {
            note(&Used { name: &source.part, mass: Mass::ZERO, pieces, at });
        }
    }
}

impl<'a> Play<'a> {
    pub(super) fn bring(&mut self, kept: &Kept<Lot>, state: &'a State, zone: Zone) {
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
            // By the order in which it was said, not by clocks: of two tablets one is always slow.
            held: state.on_hold(&kept.id),
            written: kept.versions.first().map_or(0, |version| version.at),
        });
        self.moves.push((zone.start(body.got_on), Move::Got(index)));
        for (at, _, event) in state.lot_events.get(&kept.id).into_iter().flatten() {
            self.moves.push((*at, Move::Lot(index, event)));
        }
    }

    pub(super) fn run(mut self) -> Account {
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
                match event {
                    _ if !change.is_negative() => pool.find(change),
                    LotEvent::Counted { .. } => pool.miss(change.abs()),
                    _ => {
                        pool.go(change.abs());
                    }
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
            let gone = before - holding.left;
            change = change - gone;
            // More than the book has of it: so much more was there.
            pool.find(part - gone);
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
    /// What the lot cost of `out` grams or pieces that are out of it, rounded once, so that the parts add up to its price.
    pub(super) fn cost_of(&self, out: Exact) -> Money {
        let share = out.min(self.lot.amount).checked_div(self.lot.amount);
        self.lot.price.times(share.unwrap_or(Exact::ONE))
    }

    /// Takes so much out, before it is told where it went; what it cost. What is beyond all that was bought cost nothing.
    fn go(&mut self, amount: Exact) -> Money {
        let over = (amount - self.left).max(Exact::ZERO);
        self.left = self.left - amount + over;
        self.unexplained = self.unexplained - over;
        self.cost_of(self.went() + amount) - self.cost_of(self.went())
    }

    fn take(&mut self, event: &LotEvent) {
        match event {
            LotEvent::Counted { left, .. } => {
                let missing = self.left - (*left).max(Exact::ZERO);
                self.unexplained = self.unexplained + missing;
                self.left = self.left - missing;
            }
            LotEvent::WrittenOff { amount, .. } => {
                let amount = (*amount).max(Exact::ZERO);
                self.go(amount);
                self.written_off = self.written_off + amount;
            }
            LotEvent::Held { .. } | LotEvent::Released { .. } => {}
        }
    }
}
