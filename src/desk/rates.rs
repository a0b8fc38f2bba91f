//! What work and the workshop cost, and how prices are made: the workshop's own rates.

use crate::book::{Kept, State};
use crate::quantity::{Currency, Exact, Money};
use crate::wire::{wire_enum, wire_struct};

/// The workshop's rates; shares are of one, 0.4 is 40 %.
#[derive(Clone, PartialEq, Debug)]
pub struct Rates {
    pub currency: Currency,
    /// An hour of work.
    pub hour: Money,
    /// Work of a batch by the times of its steps; else by minutes.
    pub timed: bool,
    /// Minutes for a batch whatever its size: setting up, cleaning.
    pub batch_minutes: Exact,
    /// Minutes more for each candle.
    pub candle_minutes: Exact,
    pub overhead_batch: Money,
    /// For each hour of work.
    pub overhead_hour: Money,
    /// Of the candles that are filled, the share that cannot be sold.
    pub loss: Exact,
    /// Box, tissue and the like of one candle, where they are not in the stores.
    pub packaging: Money,
    pub retail: Channel,
    pub wholesale: Channel,
    /// What is paid every month whatever is made.
    pub month: Money,
    /// The share of waits for a delivery in which nothing is to run out.
    pub service: Exact,
}

wire_struct!(Rates {
    currency,
    hour,
    timed,
    batch_minutes,
    candle_minutes,
    overhead_batch,
    overhead_hour,
    loss,
    packaging,
    retail,
    wholesale,
    month,
    service,
});

/// A way of selling.
#[derive(Clone, PartialEq, Debug)]
pub struct Channel {
    pub aim: Aim,
    /// Of the price, for the market place or the card.
    pub fee: Exact,
    /// For each candle beside the share.
    pub fee_each: Money,
    pub shipping: Money,
}

wire_struct!(Channel { aim, fee, fee_each, shipping });

/// What the price is made from. The two are not the same: 40 % margin is 66.7 % markup.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Aim {
    /// Profit as a share of the price.
    Margin(Exact),
    /// Profit as a share of the cost.
    Markup(Exact),
}

wire_enum!(Aim { Margin(it), Markup(it) });

impl Default for Rates {
    /// Nothing is known of what work costs. The margins and the service are starting points of our own.
    fn default() -> Self {
        let channel = |percent| Channel {
            aim: Aim::Margin(Exact::ratio(percent, 100)),
            fee: Exact::ZERO,
            fee_each: Money::ZERO,
            shipping: Money::ZERO,
        };
        Self {
            currency: Currency::default(),
            hour: Money::ZERO,
            timed: false,
            batch_minutes: Exact::ZERO,
            candle_minutes: Exact::ZERO,
            overhead_batch: Money::ZERO,
            overhead_hour: Money::ZERO,
            loss: Exact::ZERO,
            packaging: Money::ZERO,
            retail: channel(60),
            wholesale: channel(30),
            month: Money::ZERO,
            service: Exact::ratio(95, 100),
        }
    }
}

impl State {
    /// Why rates cannot be kept beside the prices that are written down. They are whole minor units: with another number of
    /// decimals 12.50 would read as 1250.
    pub fn refuses(&self, rates: &Rates) -> Option<String> {
        let (now, then) = (self.rates.currency.digits, rates.currency.digits);
        let paid = self.lots.values().filter_map(Kept::body).any(|lot| lot.price != Money::ZERO);
        let asked = self.ingredients.values().filter_map(Kept::body).any(|i| i.supply.is_some());
        (now != then && (paid || asked)).then(|| {
            format!(
                "Decimals: the prices in the Stores are written down with {now}, and nothing is converted. With {then} each of \
                 them would read as another amount. Leave it at {now}."
            )
        })
    }
}
