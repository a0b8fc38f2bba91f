//! The price from what a candle costs, and what a price comes to.

use super::cost::{coins, money};
use super::{Aim, Channel, Cost};
use crate::quantity::{Amount, Exact, Money, Share, ShareUnit, Voice, decimal};
use std::fmt;

/// A price with all that it comes to. Price = cost + fees + shipping + profit, to the minor unit.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Price {
    pub price: Money,
    /// Of making the candle.
    pub cost: Money,
    pub fees: Money,
    pub shipping: Money,
    pub profit: Money,
    /// Profit as a share of the price; none of a price of nothing.
    pub margin: Option<Exact>,
    /// Profit as a share of all costs; none where there are none.
    pub markup: Option<Exact>,
}

/// Why no price does it. `Display` is the sentence.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum PriceError {
    /// Fee and margin take the whole price.
    NothingLeft,
}

impl fmt::Display for PriceError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NothingLeft => f.write_str(
                "No price is high enough: the fee and the profit together would take all of it. Make one of them smaller.",
            ),
        }
    }
}

impl std::error::Error for PriceError {}

/// The margin that a markup is: u ÷ (1 + u).
pub fn margin_of(markup: Exact) -> Option<Exact> {
    markup.checked_div(Exact::ONE + markup)
}

/// The markup that a margin is: m ÷ (1 − m). None where the margin is all of the price.
pub fn markup_of(margin: Exact) -> Option<Exact> {
    margin.checked_div(Exact::ONE - margin)
}

impl Channel {
    /// What a price comes to, for a candle that costs so much to make.
    pub fn at(&self, price: Money, cost: Money) -> Price {
        let fees = price.times(self.fee) + self.fee_each;
        let costs = cost + fees + self.shipping;
        let profit = price - costs;
        Price {
            price,
            cost,
            fees,
            shipping: self.shipping,
            profit,
            margin: money(profit).checked_div(money(price)),
            markup: money(profit).checked_div(money(costs)),
        }
    }

    /// The price that the aim asks for, rounded up to the minor unit: by a margin m it is (cost + shipping + fee each) ÷
    /// (1 − fee − m), by a markup u it is (1 + u) × (cost + shipping + fee each) ÷ (1 − (1 + u) × fee).
    ///
    /// # Errors
    /// Where fee and profit leave nothing.
    pub fn price(&self, cost: Money) -> Result<Price, PriceError> {
        let costs = money(cost + self.shipping + self.fee_each);
        let (above, below) = match self.aim {
            Aim::Margin(margin) => (costs, Exact::ONE - self.fee - margin),
            Aim::Markup(markup) => {
                let times = Exact::ONE + markup;
                (times * costs, Exact::ONE - times * self.fee)
            }
        };
        if below <= Exact::ZERO {
            return Err(PriceError::NothingLeft);
        }
        Ok(self.at(Money(i64::try_from((above / below).ceil()).unwrap_or(i64::MAX)), cost))
    }
}

impl Price {
    /// How many of a batch must be sold before what was paid for it is back; none where those of it that can be sold never
    /// bring it: where one brings less than it costs with its share of those that cannot.
    pub fn pays(&self, batch: &Cost) -> Option<u32> {
        let each = self.price - self.fees - self.shipping;
        let brings = Exact::whole(batch.candles.into()) * money(each);
        if brings < money(batch.total()) {
            return None;
        }
        self.covers(batch.paid(), each)
    }

    /// How many a month must be sold before what is paid every month is covered.
    pub fn covers_month(&self, month: Money) -> Option<u32> {
        self.covers(month, self.profit)
    }

    fn covers(&self, all: Money, each: Money) -> Option<u32> {
        if each <= Money::ZERO {
            return None;
        }
        u32::try_from((money(all) / money(each)).ceil()).ok()
    }

    /// Both, so that neither is taken for the other: `margin 40 % (of the price) = markup 66.7 % (on the cost)`.
    pub fn say(&self, voice: Voice) -> String {
        let percent = |share: Option<Exact>| match share {
            Some(share) => {
                let text = decimal(share * Exact::whole(100), Exact::ratio(1, 10), voice.locale);
                [&text, " %"].concat()
            }
            None => "none".to_owned(),
        };
        let (margin, markup) = (percent(self.margin), percent(self.markup));
        ["margin ", &margin, " of the price = markup ", &markup, " on the cost"].concat()
    }
}

/// A share as it is typed, in percent: `40` or `40 %`; more than 100 % is a markup one may take.
///
/// # Errors
/// The sentence that says what is wrong.
pub fn read_percent(text: &str, voice: Voice) -> Result<Exact, String> {
    let bare = text.trim().trim_end_matches('%').trim_end();
    let number = crate::quantity::read_number(bare, voice.locale).map_err(|e| e.to_string())?;
    if number.is_negative() || number > Exact::whole(1000) {
        return Err("Type a share from 0 to 1000 %.".to_owned());
    }
    Ok(number * Exact::ratio(1, 100))
}

/// The same, written to be changed.
pub fn say_percent(share: Exact, voice: Voice) -> String {
    voice.typed(Amount::<Share>::new(share * Exact::whole(100), ShareUnit::Percent))
}

/// What a candle's price is made of when an ingredient gets dearer by this share: the new cost of a candle, rounded up.
pub fn after_rise(cost: &Cost, name: &str, by: Exact) -> Money {
    let total = cost.total() + cost.rise(name, by);
    coins(Exact::whole((money(total) / Exact::whole(cost.candles.max(1).into())).ceil()))
}
