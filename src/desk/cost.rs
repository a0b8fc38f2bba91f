//! What a batch cost, part by part, and each of its candles.

use super::Rates;
use crate::book::{Batch, Id, State};
use crate::pot::{Event, StepKey};
use crate::quantity::{Exact, Money};
use crate::sort;
use crate::stores::Ledger;

#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
pub enum Kind {
    Material,
    Work,
    Overhead,
    Packaging,
    /// What the candles that cannot be sold cost.
    Loss,
}

/// One part of what a batch costs.
#[derive(Clone, PartialEq, Debug)]
pub struct Item {
    pub kind: Kind,
    pub name: String,
    /// Materials by the lots they were really taken from.
    pub cost: Money,
    /// Materials by the moving average.
    pub average: Money,
}

/// What a batch costs; the items add up to the whole, to the minor unit.
#[derive(Clone, PartialEq, Debug)]
pub struct Cost {
    pub items: Vec<Item>,
    pub candles: u32,
    /// What it would cost however few candles are in it.
    pub fixed: Money,
    /// What is in it and whose price is not known.
    pub unpriced: Vec<String>,
}

/// A step that took longer was a pause, in ms: half an hour (our own choice).
const PAUSE: u64 = 30 * 60_000;

pub(super) fn coins(amount: Exact) -> Money {
    Money(i64::try_from(amount.round()).unwrap_or(i64::MAX))
}

pub(super) fn money(amount: Money) -> Exact {
    Exact::whole(amount.0.into())
}

impl Batch {
    /// How long it took the hands, in minutes: as it was said; or by the times of its steps without melting and cooling;
    /// or by the workshop's usual minutes.
    pub fn minutes(&self, rates: &Rates) -> Exact {
        if let Some(minutes) = self.minutes {
            return Exact::whole(minutes.into());
        }
        if rates.timed { self.timed() } else { rates.minutes(self.candles()) }
    }

    /// Each step took from the one before until it was done.
    fn timed(&self) -> Exact {
        let mut steps: Vec<(u64, bool)> = Vec::new();
        for event in self.run.events() {
            if let Event::Did { step, at, .. } = event {
                steps.push((*at, matches!(step, StepKey::Melt { .. } | StepKey::Gate { .. })));
            }
        }
        sort::by(&mut steps, |a, b| a.0.cmp(&b.0));
        let (mut before, mut sum) = (self.began, 0);
        for (at, waits) in steps {
            let took = at.saturating_sub(before);
            if !waits && took <= PAUSE {
                sum += took;
            }
            before = at;
        }
        Exact::ratio(sum.into(), 60_000)
    }

    fn candles(&self) -> u32 {
        u32::try_from(self.filled_vessels()).unwrap_or(u32::MAX)
    }
}

impl Rates {
    /// The usual minutes of work for so many candles in one batch.
    pub fn minutes(&self, candles: u32) -> Exact {
        self.batch_minutes + self.candle_minutes * Exact::whole(candles.into())
    }

    /// What so many minutes of work cost.
    pub(super) fn work(&self, minutes: Exact) -> Money {
        coins(money(self.hour) * minutes * Exact::ratio(1, 60))
    }

    pub(super) fn overhead(&self, minutes: Exact) -> Money {
        self.overhead_batch + coins(money(self.overhead_hour) * minutes * Exact::ratio(1, 60))
    }
}

impl State {
    /// What a batch cost. None where nothing was filled.
    pub fn cost(&self, ledger: &Ledger, batch: &Id) -> Option<Cost> {
        let batch = self.batches.get(batch)?;
        let candles = batch.candles();
        if candles == 0 {
            return None;
        }
        let mut items: Vec<Item> = Vec::new();
        for account in &ledger.accounts {
            let takes = || account.takes.iter().filter(|t| t.batch == batch.id);
            if takes().next().is_some() {
                items.push(Item {
                    kind: Kind::Material,
                    name: account.name.clone(),
                    cost: takes().map(|t| t.cost).sum(),
                    average: takes().map(|t| t.average).sum(),
                });
            }
        }
        let unpriced = self.unpriced(ledger, batch);
        Some(Cost::of(items, unpriced, candles, batch.minutes(&self.rates), &self.rates))
    }
}

impl State {
    /// What is in its candles, or is to finish them, and nothing is known to have been taken of for it.
    fn unpriced(&self, ledger: &Ledger, batch: &Batch) -> Vec<String> {
        let takes = ledger.accounts.iter().flat_map(|a| &a.takes);
        let taken: Vec<&Id> =
            takes.filter(|t| t.batch == batch.id && !t.amount.is_zero()).map(|t| &t.lot).collect();
        let priced = |part: &str| {
            let mut of = batch.sources.iter().filter(|(_, source)| source.part == part);
            of.any(|(_, source)| source.lots.iter().any(|lot| taken.contains(&lot)))
        };
        let product = self.product_of(batch);
        let finish = product.map(|p| p.finish(|part| batch.run.takes(part))).unwrap_or_default();
        let mut names: Vec<String> = Vec::new();
        let used = batch.run.used();
        for name in used.iter().map(|used| used.name).chain(finish.into_iter().map(String::as_str)) {
            if !priced(name) && names.iter().all(|known| known != name) {
                names.push(name.to_owned());
            }
        }
        names
    }
}

impl Cost {
    /// From the materials and the minutes of work.
    pub(super) fn of(
        materials: Vec<Item>,
        unpriced: Vec<String>,
        candles: u32,
        minutes: Exact,
        rates: &Rates,
    ) -> Self {
        let mut items = materials;
        let mut add = |kind, name: &str, cost: Money| {
            if cost != Money::ZERO {
                items.push(Item { kind, name: name.to_owned(), cost, average: cost });
            }
        };
        add(Kind::Work, "Work", rates.work(minutes));
        add(Kind::Overhead, "Overhead", rates.overhead(minutes));
        add(Kind::Packaging, "Packaging", Money(rates.packaging.0.saturating_mul(candles.into())));
        let share = rates.loss.checked_div(Exact::ONE - rates.loss).unwrap_or_default().max(Exact::ZERO);
        if !share.is_zero() {
            let lost = |of: fn(&Item) -> Money| items.iter().map(of).sum::<Money>().times(share);
            let (cost, average) = (lost(|i| i.cost), lost(|i| i.average));
            items.push(Item {
                kind: Kind::Loss,
                name: "Candles that cannot be sold".to_owned(),
                cost,
                average,
            });
        }
        let set_up = rates.batch_minutes.min(minutes);
        let fixed = rates.work(set_up) + rates.overhead(set_up);
        Self { items, candles, fixed, unpriced }
    }

    pub fn total(&self) -> Money {
        self.items.iter().map(|i| i.cost).sum()
    }

    /// What is paid for it: without what the candles that cannot be sold cost, which is in all of them once already.
    pub(super) fn paid(&self) -> Money {
        self.items.iter().filter(|i| i.kind != Kind::Loss).map(|i| i.cost).sum()
    }

    /// With the materials by the moving average.
    pub fn average(&self) -> Money {
        self.items.iter().map(|i| i.average).sum()
    }

    /// What one candle costs, and how many of them cost a minor unit more, so that all add up to the whole.
    pub fn candle(&self) -> (Money, u32) {
        shared(self.total(), self.candles)
    }

    /// What one candle costs, rounded up: what a price must cover.
    pub fn dearest(&self) -> Money {
        let (each, more) = self.candle();
        each + Money(i64::from(more > 0))
    }

    /// The parts of one candle that costs [`Cost::dearest`], in the order of the items: they add up to it.
    pub fn parts(&self) -> Vec<Money> {
        let weights: Vec<Exact> = self.items.iter().map(|i| money(i.cost).max(Exact::ZERO)).collect();
        self.dearest().split(&weights).unwrap_or_else(|| vec![Money::ZERO; weights.len()])
    }

    /// How much dearer the batch gets where a material costs this share more.
    pub fn rise(&self, name: &str, by: Exact) -> Money {
        let of = |kind| self.items.iter().filter(move |i| i.kind == kind);
        let part: Money = of(Kind::Material).filter(|i| i.name == name).map(|i| i.cost).sum();
        let lost: Money = of(Kind::Loss).map(|i| i.cost).sum();
        // Losses rise with all that is lost.
        let good = money(self.total() - lost);
        let with_lost = money(self.total()).checked_div(good).unwrap_or(Exact::ONE);
        coins(money(part) * by * with_lost)
    }
}

/// Shared out equally: each, and how many get a minor unit more.
pub(super) fn shared(all: Money, among: u32) -> (Money, u32) {
    let n = i64::from(among.max(1));
    (Money(all.0.div_euclid(n)), u32::try_from(all.0.rem_euclid(n)).unwrap_or(0))
}
