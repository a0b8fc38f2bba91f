//! What a formula costs at any size of batch, before it is poured.

use super::Cost;
use super::cost::{Item, Kind, coins, money};
use crate::book::{Id, State, Wish, WishError};
use crate::pot::Target;
use crate::quantity::{Exact, Money, Voice};
use crate::stores::{Account, Ledger, Measure};

impl Account {
    /// What a gram or a piece costs now, in minor units: the moving average of what is there, or else the price of the
    /// lot that came last.
    fn unit_price(&self) -> Option<Exact> {
        let left = self.left();
        if left > Exact::ZERO && self.worth > Money::ZERO {
            return money(self.worth).checked_div(left);
        }
        let last = self.lots.iter().max_by_key(|h| (h.lot.got_on, &h.id))?;
        money(last.lot.price).checked_div(last.lot.amount)
    }
}

impl Ledger {
    fn unit_price(&self, state: &State, name: &str) -> Option<(Exact, Measure)> {
        if let Some(account) = self.account(name) {
            return Some((account.unit_price()?, account.measure));
        }
        // Never bought yet: what the supplier asks.
        let supply = state.supply(name)?;
        let density = state.ingredient(name).and_then(|i| i.density);
        let price = money(supply.offers.first()?.price).checked_div(supply.pack.holds(density)?)?;
        Some((price, supply.pack.measure()))
    }
}

impl State {
    /// What so many vessels of a formula cost at today's prices, in warmed vessels and the largest pot.
    ///
    /// # Errors
    /// Where it cannot be planned; see [`WishError`].
    pub fn expected(
        &self,
        ledger: &Ledger,
        (formula, vessel): (&Id, &Id),
        vessels: u32,
        voice: Voice,
    ) -> Result<Cost, WishError> {
        let pots = self.pots_shown().into_iter().filter_map(|k| Some((&k.id, k.body()?.capacity.value)));
        let pot = pots.max_by(|(_, a), (_, b)| a.cmp(b)).map(|(id, _)| id.clone());
        let offer = self.vessels_for(formula).into_iter().find(|o| o.vessel == *vessel);
        let wish = Wish {
            shade: 0,
            formula: formula.clone(),
            vessel: vessel.clone(),
            wick: offer.and_then(|o| o.wick).unwrap_or_default(),
            target: Target::Vessels(vessels),
            residue: self.settings.residue.clone(),
            warmed: true,
            pot,
        };
        let (plan, _) = self.outline(&wish, voice)?;
        let (mut items, mut unpriced, mut poured) = (Vec::new(), Vec::new(), Money::ZERO);
        let mut add = |name: &str, grams: Exact, pieces: u32| {
            let price = self.price_of(ledger, name, grams, pieces);
            match price {
                Some(cost) => {
                    items.push(Item { kind: Kind::Material, name: name.to_owned(), cost, average: cost });
                }
                None => unpriced.push(name.to_owned()),
            }
            price.unwrap_or_default()
        };
        for need in plan.needs() {
            let cost = add(&need.name, need.mass.in_base(), need.pieces);
            if need.pieces == 0 {
                poured = poured + cost;
            }
        }
        let product = self.product_with(formula, vessel);
        let finish = product.map(|p| p.finish(|part| plan.takes(part))).unwrap_or_default();
        for part in plan.own().into_iter().chain(finish) {
            add(part, Exact::ZERO, plan.vessels);
        }
        let rates = &self.rates;
        let mut cost = Cost::of(items, unpriced, plan.vessels, rates.minutes(plan.vessels), rates);
        let stays = plan.residue.over(plan.total).unwrap_or_default();
        cost.fixed = cost.fixed + poured.times(stays);
        Ok(cost)
    }

    fn price_of(&self, ledger: &Ledger, name: &str, grams: Exact, pieces: u32) -> Option<Money> {
        let (price, measure) = ledger.unit_price(self, name)?;
        let amount = match measure {
            Measure::Grams => grams,
            Measure::Pieces => Exact::whole(pieces.into()),
        };
        // Of drops whose weight is not known, and of what is bought by pieces and weighed at the pot, nobody knows it.
        (!amount.is_zero()).then(|| coins(price * amount))
    }

    /// Why a candle of a small batch costs more than one of a large batch.
    pub fn why_small(&self, small: &Cost, large: &Cost, voice: Voice) -> String {
        let say = |m: Money| self.rates.currency.show(m, voice.locale);
        let each = |c: &Cost| say(coins(money(c.fixed) / Exact::whole(c.candles.max(1).into())));
        if small.fixed <= Money::ZERO {
            return "Nothing here costs the same whatever the size. Say under “Rates” how long setting up and cleaning \
                    take, and what stays in the pot: that is what makes small batches dear."
                .to_owned();
        }
        format!(
            "A batch of {} takes {} whatever its size: setting up, cleaning, overhead, what stays in the pot. That is {} a \
             candle. In a batch of {} it is {}.",
            small.candles,
            say(small.fixed),
            each(small),
            large.candles,
            each(large)
        )
    }
}
