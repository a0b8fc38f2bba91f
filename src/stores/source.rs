//! Which lots a pour is taken from, unless one chooses otherwise.

use super::{Account, Ledger, LotEvent, Measure, Source};
use crate::book::{Batch, Id, State};
use crate::day::Day;
use crate::pot::{Note, Plan, StepKey};
use crate::quantity::{Exact, Voice};
use crate::text::same;

impl Ledger {
    /// For everything of the plan that is in the stores: the lots first to expire, as many as it needs. With what must be
    /// told: a lot on hold is not used, one may be past its day, and what is there may be too little.
    pub fn sources(&self, plan: &Plan, today: Day, voice: Voice) -> (Vec<Source>, Vec<Note>) {
        let mut names: Vec<(String, Exact, Exact)> = Vec::new();
        for need in plan.needs() {
            names.push((need.name, need.mass.in_base(), Exact::whole(need.pieces.into())));
        }
        for name in plan.own() {
            names.push((name.clone(), Exact::ZERO, Exact::whole(plan.vessels.into())));
        }
        self.first_of(names, today, voice)
    }

    /// The same for what finishes a batch: one of each of its product's parts to a candle, where the stores count them in
    /// pieces and the pour has not used them already.
    pub fn finishing(
        &self,
        state: &State,
        batch: &Batch,
        today: Day,
        voice: Voice,
    ) -> (Vec<Source>, Vec<Note>) {
        let candles = Exact::whole(batch.filled_vessels() as i128);
        let mut names: Vec<(String, Exact, Exact)> = Vec::new();
        let product = state.product_of(batch);
        for part in product.map(|p| p.finish(|part| batch.run.takes(part))).unwrap_or_default() {
            if self.account(part).is_some_and(|a| a.measure == Measure::Pieces) {
                names.push((part.clone(), Exact::ZERO, candles));
            }
        }
        self.first_of(names, today, voice)
    }

    /// Names with the grams and pieces that are needed of them.
    fn first_of(
        &self,
        names: Vec<(String, Exact, Exact)>,
        today: Day,
        voice: Voice,
    ) -> (Vec<Source>, Vec<Note>) {
        let (mut sources, mut notes) = (Vec::new(), Vec::new());
        for (part, grams, pieces) in names {
            let Some(account) = self.account(&part) else { continue };
            let needs = match account.measure {
                Measure::Grams => grams,
                Measure::Pieces => pieces,
            };
            account.told(needs, voice, &mut notes);
            let lots = account.first(needs, None);
            account.old(&lots, today, &mut notes);
            if !lots.is_empty() {
                sources.push(Source { part, lots });
            }
        }
        (sources, notes)
    }
}

impl Ledger {
    /// The lots for one part of a plan where one of them is chosen: that first, then others until there is enough.
    pub fn choose(&self, plan: &Plan, part: &str, chosen: &Id) -> Source {
        let need = plan.needs().into_iter().find(|n| n.name == part);
        let own = if plan.own().iter().any(|name| *name == part) { plan.vessels } else { 0 };
        let own = Exact::whole(own.into());
        let needs = need.map_or(own, |n| n.mass.in_base().max(Exact::whole(n.pieces.into())));
        let mut lots = vec![chosen.clone()];
        let left = self.lot(chosen).map_or(Exact::ZERO, |(_, h)| h.left);
        if left < needs
            && let Some(account) = self.account(part)
        {
            lots.extend(account.first(needs - left, Some(chosen)));
        }
        Source { part: part.to_owned(), lots }
    }
}

impl State {
    /// True of a lot that is on hold now.
    pub fn on_hold(&self, lot: &Id) -> bool {
        let events = self.lot_events.get(lot).map(Vec::as_slice).unwrap_or_default();
        let last = events.iter().rev().find_map(|(_, _, event)| match event {
            LotEvent::Held { .. } => Some(true),
            LotEvent::Released { .. } => Some(false),
            LotEvent::Counted { .. } | LotEvent::WrittenOff { .. } => None,
        });
        last == Some(true)
    }

    /// Of the lots that a step of a batch takes from, those that are on hold: it has to wait until another is chosen or
    /// the hold is lifted.
    pub fn held_at<'a>(&'a self, batch: &'a Batch, step: StepKey) -> Vec<&'a Id> {
        let lots = batch.run.takes_at(step).into_iter().flat_map(|part| batch.lots_of(part));
        lots.filter(|lot| self.on_hold(lot)).collect()
    }

    /// True where there is a lot of this name in the book.
    pub fn has_lots(&self, name: &str) -> bool {
        self.lots.values().filter_map(|k| k.body()).any(|l| same(&l.ingredient, name))
    }
}

impl Account {
    /// Lots first to expire that hold so much together, or all there are; without this one.
    fn first(&self, needs: Exact, without: Option<&Id>) -> Vec<Id> {
        let (mut lots, mut sum) = (Vec::new(), Exact::ZERO);
        for holding in self.usable().filter(|h| Some(&h.id) != without) {
            lots.push(holding.id.clone());
            sum = sum + holding.left;
            if sum >= needs {
                break;
            }
        }
        lots
    }

    /// Of the lots that would be taken, those past their day.
    fn old(&self, lots: &[Id], today: Day, notes: &mut Vec<Note>) {
        for holding in lots.iter().filter_map(|lot| self.lot(lot)) {
            if holding.lot.best_before.is_some_and(|day| day < today) {
                let text = format!(
                    "Lot {} of “{}” is past its best-before day. Look at it, smell it and try it before you pour it, or take another.",
                    holding.lot.number, self.name
                );
                notes.push(Note { caution: true, text });
            }
        }
    }

    fn told(&self, needs: Exact, voice: Voice, notes: &mut Vec<Note>) {
        for held in self.lots.iter().filter(|h| h.held && h.left > Exact::ZERO) {
            let text = format!(
                "Lot {} of “{}” is on hold, so it is not used. Release it in the Stores, or use another.",
                held.lot.number, self.name
            );
            notes.push(Note { caution: true, text });
        }
        let there = self.usable_left();
        if there < needs {
            let text = format!(
                "“{}”: this takes {}, and {} can be used of what is in the stores. Get more, count what is there, or pour fewer.",
                self.name,
                self.measure.say(needs, voice),
                self.measure.say(there, voice)
            );
            notes.push(Note { caution: false, text });
        }
    }

    /// What is left in the lots that can be used.
    pub fn usable_left(&self) -> Exact {
        self.usable().map(|h| h.left).sum()
    }
}

impl Batch {
    /// The lots that a part of it is taken from now.
    pub fn lots_of(&self, part: &str) -> &[Id] {
        self.lots_at(part, u64::MAX - 1)
    }

    /// The lots that what of a part went in at a time was taken from: those that were named for it then. Where none were,
    /// those that were named next.
    pub(super) fn lots_at(&self, part: &str, at: u64) -> &[Id] {
        let named =
            |(until, source): &&(u64, Source)| at < *until && source.part == part && !source.lots.is_empty();
        self.sources.iter().find(named).map(|(_, source)| source.lots.as_slice()).unwrap_or_default()
    }
}
