//! Prices: margin and markup, fees, break-even.

use super::shared::whole;
use potside::desk::{
    Aim, Channel, Cost, Item, Kind, PriceError, Rates, after_rise, margin_of, markup_of, read_percent,
    say_percent,
};
use potside::quantity::{Exact, Money, Voice};
use proptest::prelude::*;

fn channel(aim: Aim, fee: (i128, i128), fee_each: i64, shipping: i64) -> Channel {
    Channel { aim, fee: Exact::ratio(fee.0, fee.1), fee_each: Money(fee_each), shipping: Money(shipping) }
}

/// Identities: markup = margin ÷ (1 − margin), margin = markup ÷ (1 + markup). 20 % ↔ 25 %, 50 % ↔ 100 %.
#[test]
fn margin_and_markup_are_not_the_same() {
    for (margin, markup) in [((1, 5), (1, 4)), ((1, 2), (1, 1)), ((2, 5), (2, 3)), ((0, 1), (0, 1))] {
        let [margin, markup] = [margin, markup].map(|(a, b)| Exact::ratio(a, b));
        assert_eq!((markup_of(margin), margin_of(markup)), (Some(markup), Some(margin)));
    }
    assert_eq!(markup_of(Exact::ONE), None);
}

/// By hand: 6.00 at a margin of 40 % is 10.00; at a markup of 40 % 8.40. With 10 % fee, 0.30 each and 1.20 shipping, at a
/// margin of 40 % it is 7.50 ÷ 0.5 = 15.00: fees 1.80, profit 6.00.
#[test]
fn prices_by_hand() {
    let plain = channel(Aim::Margin(Exact::ratio(2, 5)), (0, 1), 0, 0).price(Money(600)).unwrap();
    assert_eq!((plain.price, plain.profit), (Money(1000), Money(400)));
    assert_eq!(plain.say(Voice::default()), "margin 40.0 % of the price = markup 66.7 % on the cost");
    let other = channel(Aim::Markup(Exact::ratio(2, 5)), (0, 1), 0, 0).price(Money(600)).unwrap();
    assert_eq!((other.price, other.profit), (Money(840), Money(240)));
    let market = channel(Aim::Margin(Exact::ratio(2, 5)), (1, 10), 30, 120).price(Money(600)).unwrap();
    assert_eq!((market.price, market.fees, market.profit), (Money(1500), Money(180), Money(600)));
    assert_eq!((market.margin, market.markup), (Some(Exact::ratio(2, 5)), Some(Exact::ratio(2, 3))));
    let none = channel(Aim::Margin(Exact::ratio(9, 10)), (1, 10), 0, 0).price(Money(600));
    assert_eq!(none, Err(PriceError::NothingLeft));
    assert!(PriceError::NothingLeft.to_string().ends_with('.'));
    let loss = market.price;
    assert!(channel(Aim::Margin(Exact::ZERO), (0, 1), 0, 0).at(loss, Money(2000)).profit < Money::ZERO);
}

/// A batch of 72.00, sold at 15.00 less 1.80 and 1.20: 12.00 each, so the sixth pays it; 100.00 a month at 6.00 profit takes 17.
#[test]
fn how_many_pay_it() {
    let item = Item { kind: Kind::Material, name: "Wax".into(), cost: Money(7200), average: Money(0) };
    let batch = Cost { items: vec![item], candles: 12, fixed: Money(0), unpriced: vec![] };
    let price = channel(Aim::Margin(Exact::ratio(2, 5)), (1, 10), 30, 120).price(batch.dearest()).unwrap();
    assert_eq!(
        (price.price, price.pays(&batch), price.covers_month(Money(10_000))),
        (Money(1500), Some(6), Some(17))
    );
    assert_eq!(
        channel(Aim::Margin(Exact::ZERO), (0, 1), 0, 0).at(Money::ZERO, Money(600)).pays(&batch),
        None
    );
    // Wax up by a tenth: 79.20 ÷ 12 = 6.60.
    assert_eq!(after_rise(&batch, "Wax", Exact::ratio(1, 10)), Money(660));
    assert_eq!(after_rise(&batch, "Dye", Exact::ratio(1, 10)), Money(600));
}

/// By hand: 100.00 were paid for ten candles of which half cannot be sold, so each of the other five costs 20.00. At 25.00 four
/// of them bring the 100.00 back; at 19.00 all five bring 95.00.
#[test]
fn candles_that_cannot_be_sold_are_not_paid_twice() {
    let item = |kind, cost| Item { kind, name: String::new(), cost: Money(cost), average: Money(cost) };
    let items = vec![item(Kind::Material, 10_000), item(Kind::Loss, 10_000)];
    let batch = Cost { items, candles: 10, fixed: Money(0), unpriced: vec![] };
    assert_eq!(batch.dearest(), Money(2000));
    let at = |price| {
        let plain = channel(Aim::Margin(Exact::ZERO), (0, 1), 0, 0);
        plain.at(Money(price), batch.dearest()).pays(&batch)
    };
    assert_eq!([at(2500), at(2000), at(1999), at(1900)], [Some(4), Some(5), None, None]);
}

/// ISO 4217: no decimals for the yen, three for the Kuwaiti dinar.
#[test]
fn currencies_without_decimals_and_with_too_many() {
    let voice = Voice::default();
    let read = |digits: &str| {
        let mut texts = Rates::default().texts(voice);
        texts.iter_mut().filter(|t| t.starts_with('$')).for_each(|t| "0".clone_into(t));
        (texts[0], texts[1], texts[2]) = ("¥".to_owned(), digits.to_owned(), "1200".to_owned());
        Rates::read(&texts, false, [false; 2], voice)
    };
    let yen = read(" 0 ").unwrap();
    assert_eq!((yen.currency.digits, yen.hour), (0, Money(1200)));
    assert_eq!(Rates::read(&yen.texts(voice), false, [false; 2], voice), Ok(yen));
    assert_eq!(read("3").unwrap().hour, Money(1_200_000));
    assert_eq!(read("7").unwrap_err(), ["Decimals: type 0 to 6."]);
}

#[test]
fn shares_as_they_are_typed() {
    let voice = Voice::default();
    for (text, share) in [("40", (2, 5)), ("40 %", (2, 5)), ("150%", (3, 2)), ("0", (0, 1))] {
        assert_eq!(read_percent(text, voice), Ok(Exact::ratio(share.0, share.1)), "{text}");
    }
    assert!(
        read_percent("1001", voice).is_err()
            && read_percent("x", voice).is_err()
            && read_percent("-1", voice).is_err()
    );
    assert_eq!(say_percent(Exact::ratio(3, 8), voice), "37.5 %");
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_price_is_the_sum_of_what_it_is_for_and_meets_its_aim(
        cost in 1..100_000_i64, percent in 0..80_i128, fee in 0..15_i128, each in 0..500_i64, shipping in 0..2000_i64, markup in any::<bool>(),
    ) {
        let share = Exact::ratio(percent, 100);
        let aim = if markup { Aim::Markup(share) } else { Aim::Margin(share) };
        let channel = channel(aim, (fee, 100), each, shipping);
        let price = channel.price(Money(cost)).unwrap();
        prop_assert_eq!(price.cost + price.fees + price.shipping + price.profit, price.price);
        let (margin, on_cost) = (price.margin.unwrap(), price.markup.unwrap());
        // The fee is rounded to the minor unit, so the aim is met to within one of them.
        let slack = Exact::whole(1).checked_div(whole(price.price.0.into())).unwrap();
        let reached = if markup { on_cost } else { margin };
        prop_assert!(reached >= share - slack * whole(2));
        prop_assert_eq!(markup_of(margin), Some(on_cost));
        prop_assert_eq!(margin_of(on_cost), Some(margin));
        // A unit less would miss it.
        let less = channel.at(Money(price.price.0 - 1), Money(cost));
        let missed = if markup { less.markup } else { less.margin };
        prop_assert!(missed.is_none_or(|m| m < share + slack * whole(2)));
    }
}
