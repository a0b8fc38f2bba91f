//! Prices, retail and wholesale, with both ways of saying the profit.

use crate::desk::{Channel, Cost, Price};
use crate::dom::*;
use crate::quantity::Money;
use crate::rooms::parts::{coins, sentence};
use crate::rooms::workshop::Workshop;

fn ways(shop: Workshop) -> [(&'static str, Channel); 2] {
    shop.state(|s| [("Retail", s.rates.retail.clone()), ("Wholesale", s.rates.wholesale.clone())])
}

/// The two prices of a candle of this batch, with what they come to.
pub(super) fn prices(shop: Workshop, cost: &Cost) -> View {
    let month = shop.state(|s| s.rates.month);
    let one = |(name, channel): (&'static str, Channel)| {
        let told = match channel.price(cost.dearest()) {
            Err(why) => sentence(why.to_string()),
            Ok(price) => told(shop, &price, cost, month),
        };
        group![el("h3").child(name), told]
    };
    ways(shop).into_iter().map(one).views().view()
}

fn told(shop: Workshop, price: &Price, cost: &Cost, month: Money) -> View {
    let row = |name: &'static str, money| group![el("dt").child(name), el("dd").child(coins(money))];
    let pays = match price.pays(cost) {
        Some(n) => format!("Of {} candles, number {n} pays for the batch.", cost.candles),
        None => "At this price the batch does not pay for itself.".to_owned(),
    };
    let monthly = (month > Money::ZERO).then(|| match price.covers_month(month) {
        Some(n) => format!(" {n} a month cover what is paid every month."),
        None => " No number of them covers what is paid every month.".to_owned(),
    });
    group![
        el("p").class("found").child(coins(price.price)).child(": ").child(price.say(shop.voice())),
        el("dl")
            .class("needs")
            .child(row("Making it", price.cost))
            .child(row("Fees", price.fees))
            .child(row("Shipping", price.shipping))
            .child(row("Profit", price.profit)),
        el("p").child(pays).child(monthly)
    ]
}

/// The prices that a dearer candle asks for.
pub(super) fn after(shop: Workshop, cost: Money) -> View {
    let one = |(name, channel): (&'static str, Channel)| {
        let price = channel.price(cost).ok()?;
        Some(el("p").child(name).child(" for the same profit: ").child(coins(price.price)).child("."))
    };
    ways(shop).into_iter().filter_map(one).views().view()
}
