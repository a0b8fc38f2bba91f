//! How an ingredient is bought: how long it takes to come, what an order costs, the price by how many.

use super::Pack;
use crate::quantity::{Exact, Money};
use crate::wire::wire_struct;

#[derive(Clone, PartialEq, Debug)]
pub struct Supply {
    /// Days from the order to the delivery, as a rule.
    pub lead_days: u32,
    /// By so many days it is sooner or later, two times out of three (the standard deviation).
    pub lead_spread: u32,
    /// What one order costs beside the goods: delivery, time.
    pub order_cost: Money,
    /// What keeping a thing for a year costs, as a share of its price.
    pub keeping: Exact,
    pub pack: Pack,
    /// The price of a pack from so many on, the smallest number first.
    pub offers: Vec<Offer>,
}

wire_struct!(Supply { lead_days, lead_spread, order_cost, keeping, pack, offers });

/// From so many packs on each costs this.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Offer {
    pub from: u32,
    pub price: Money,
}

wire_struct!(Offer { from, price });

/// How many packs to order at a time.
#[derive(Clone, PartialEq, Debug)]
pub struct Buy {
    pub packs: u32,
    /// Of each pack.
    pub price: Money,
    /// All that a year costs: the goods, the orders, the keeping.
    pub yearly: Money,
    /// The same were one pack ordered at a time.
    pub one_by_one: Money,
}

impl Supply {
    /// What each costs where so many are ordered.
    pub fn price(&self, packs: u32) -> Option<Money> {
        self.offers.iter().rfind(|offer| offer.from <= packs).or(self.offers.first()).map(|offer| offer.price)
    }

    /// So many packs, or more of them where those, at a price that holds from there on, cost no more in all.
    pub(super) fn no_dearer(&self, packs: u32) -> u32 {
        let cost = |packs: u32| {
            let price = self.price(packs).map_or(0, |price| price.0);
            i128::from(packs) * i128::from(price)
        };
        let more = self.offers.iter().map(|offer| offer.from).filter(|from| *from > packs);
        let cheap = more.filter(|from| packs > 0 && cost(*from) <= cost(packs));
        cheap.min_by_key(|from| cost(*from)).unwrap_or(packs)
    }

    /// What a year costs where so many packs are ordered at a time: need × price + need ÷ packs × cost of an order
    /// + packs ÷ 2 × share for keeping × price.
    fn year(&self, need: Exact, packs: u32, price: Money) -> Exact {
        let money = |m: Money| Exact::whole(m.0.into());
        let packs = Exact::whole(packs.max(1).into());
        let half = packs * Exact::ratio(1, 2);
        need * money(price) + need / packs * money(self.order_cost) + half * self.keeping * money(price)
    }

    /// The number of packs at which a year costs least, with the price breaks: the economic order quantity
    /// √(2 × need × cost of an order ÷ (share for keeping × price)) of every price, kept within where that price holds.
    /// `need` is in packs a year. None where nothing is needed or no price is known.
    pub fn best(&self, need: Exact) -> Option<Buy> {
        if need <= Exact::ZERO {
            return None;
        }
        let year = u32::try_from(need.ceil()).unwrap_or(u32::MAX).max(1);
        let mut best: Option<(Exact, u32, Money)> = None;
        for (index, offer) in self.offers.iter().enumerate() {
            let least = offer.from.max(1);
            let next = self.offers.get(index + 1).map_or(u32::MAX, |o| o.from.saturating_sub(1));
            let keeping = self.keeping.to_f64() * offer.price.0 as f64;
            let root = (2.0 * need.to_f64() * self.order_cost.0 as f64 / keeping).sqrt();
            // Where keeping costs nothing, all that a year needs at once.
            let near =
                if root.is_finite() { root as u32..=(root as u32).saturating_add(1) } else { year..=year };
            for packs in near {
                let packs = packs.min(next).max(least);
                let cost = self.year(need, packs, offer.price);
                if best.is_none_or(|(least, ..)| cost < least) {
                    best = Some((cost, packs, offer.price));
                }
            }
        }
        let (cost, packs, price) = best?;
        let coins = |cost: Exact| Money(i64::try_from(cost.round()).unwrap_or(i64::MAX));
        let one = self.offers.first()?;
        let one_by_one = coins(self.year(need, one.from, one.price));
        Some(Buy { packs, price, yearly: coins(cost), one_by_one })
    }
}
