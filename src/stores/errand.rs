//! What to buy: the shopping list.

use super::{Account, Buy, Ledger, Pace, Reorder, Supply};
use crate::book::State;
use crate::day::Day;
use crate::quantity::{Exact, Money, Voice};
use crate::sort;

/// Without a supplier's wait it is put on the list where it lasts no longer than this, in days (our own choice).
const SOON: u32 = 14;
/// Beyond so many days the number says more than the pace can tell (our own choice).
const LONG: u32 = 1000;

/// One ingredient as it stands today.
#[derive(Clone, PartialEq, Debug)]
pub struct Standing<'a> {
    pub account: &'a Account,
    /// Of the lots that can be used.
    pub left: Exact,
    pub pace: Option<Pace>,
    /// Full days that it lasts at that pace.
    pub lasts: Option<u32>,
    pub supply: Option<&'a Supply>,
    pub reorder: Option<Reorder>,
    /// How many to order at a time.
    pub buy: Option<Buy>,
    pub due: bool,
    /// What the pours that are planned lack of it.
    pub lack: Option<&'a Lack>,
}

/// What pours take of an ingredient beyond what there is of it.
#[derive(Clone, PartialEq, Debug)]
pub struct Lack {
    pub name: String,
    pub amount: Exact,
    /// Which pours, in words.
    pub pours: String,
}

impl Ledger {
    pub fn standing<'a>(
        &'a self,
        account: &'a Account,
        state: &'a State,
        today: Day,
        voice: Voice,
    ) -> Standing<'a> {
        let left = account.usable_left();
        let pace = account.pace(today, self.zone);
        let lasts = pace.and_then(|p| p.lasts(left));
        let supply = state.supply(&account.name);
        let reorder = pace.zip(supply).map(|(p, s)| p.reorder(s, state.rates.service, account, voice));
        let fits = supply.filter(|s| s.pack.measure() == account.measure);
        let buy = pace.zip(fits).and_then(|(p, s)| {
            let density = state.ingredient(&account.name).and_then(|i| i.density);
            s.best((p.daily * Exact::whole(365)).checked_div(s.pack.holds(density)?)?)
        });
        // What a pour that is on has still to take is as good as gone.
        let free = account.free();
        let due = match &reorder {
            Some(reorder) => free <= reorder.at,
            None => free.is_zero() || pace.and_then(|p| p.lasts(free)).is_some_and(|days| days <= SOON),
        };
        Standing { account, left, pace, lasts, supply, reorder, buy, due, lack: None }
    }

    /// What is due, and what the pours lack: the latter first, then the first to run out.
    pub fn errands<'a>(
        &'a self,
        state: &'a State,
        lacks: &'a [Lack],
        today: Day,
        voice: Voice,
    ) -> Vec<Standing<'a>> {
        let mut due: Vec<Standing> = Vec::new();
        for account in &self.accounts {
            let mut standing = self.standing(account, state, today, voice);
            standing.lack = lacks.iter().find(|lack| account.is(&lack.name));
            if standing.due || standing.lack.is_some() {
                due.push(standing);
            }
        }
        let place = |s: &Standing| (s.lack.is_none(), s.lasts.unwrap_or(0));
        sort::by(&mut due, |a, b| place(a).cmp(&place(b)));
        due
    }
}

impl Standing<'_> {
    /// What the pours lack of it, in words.
    pub fn say_lack(&self, voice: Voice) -> Option<String> {
        let lack = self.lack?;
        let amount = self.account.measure.say(lack.amount, voice);
        Some([&amount, " more for ", &lack.pours].concat())
    }

    /// How many packs to order, and the price of each. The number that is best at its pace, and as often as it takes until
    /// what is free stands above the line at which to order: by the rule of continuous review that is called (nQ, r), since
    /// from further below one such order would leave it due as before. What the pours lack is as good as gone, and no fewer
    /// are ordered than that. Where so many cost no less than more of them do, from the next price on, so many more.
    pub fn order(&self, state: &State) -> Option<(u32, Money)> {
        let supply = self.supply.filter(|supply| supply.pack.measure() == self.account.measure)?;
        let holds = supply.pack.holds(state.ingredient(&self.account.name).and_then(|i| i.density))?;
        let there = self.lack.map_or_else(|| self.account.free(), |lack| Exact::ZERO - lack.amount);
        let best = self.buy.as_ref().map_or(0, |buy| {
            let below = self.reorder.as_ref().map_or(Exact::ZERO, |reorder| reorder.at - there);
            let times = below.checked_div(holds * Exact::whole(buy.packs.into())).unwrap_or_default();
            u32::try_from((times.floor() + 1).max(1)).unwrap_or(u32::MAX).saturating_mul(buy.packs)
        });
        let needed = self.lack.map_or(0, |lack| {
            let packs = lack.amount.checked_div(holds).unwrap_or_default();
            let first = supply.offers.first().map_or(1, |offer| offer.from);
            u32::try_from(packs.ceil()).unwrap_or(u32::MAX).max(first)
        });
        let packs = supply.no_dearer(best.max(needed));
        (packs > 0).then_some(())?;
        Some((packs, supply.price(packs)?))
    }

    /// For how long it lasts, in words.
    pub fn say(&self) -> String {
        match (self.lasts, self.pace) {
            _ if self.left.is_zero() => "none left that can be used".to_owned(),
            (Some(0), _) => "lasts less than a day at this pace".to_owned(),
            (Some(1), _) => "lasts 1 day at this pace".to_owned(),
            (Some(days), _) if days > LONG => "lasts for years at this pace".to_owned(),
            (Some(days), _) => format!("lasts {days} days at this pace"),
            (None, Some(_)) => "not used of late".to_owned(),
            (None, None) => "too new to tell its pace".to_owned(),
        }
    }
}

impl State {
    /// How the ingredient of this name is bought.
    pub fn supply(&self, name: &str) -> Option<&Supply> {
        self.ingredient(name).and_then(|i| i.supply.as_ref())
    }
}
