//! Money: read, shown, added and shared out to the last minor unit.
#![allow(clippy::panic)]

use potside::quantity::*;
use potside::wire;
use proptest::prelude::*;

use Locale::{Comma, Point};

fn currency(symbol: &str, digits: u32) -> Currency {
    Currency { symbol: symbol.into(), digits }
}

#[track_caller]
fn reads(symbol: &str, digits: u32, locale: Locale, text: &str, units: i64) {
    let currency = currency(symbol, digits);
    assert_eq!(currency.read(text, locale), Ok(Money(units)), "“{text}”");
    for locale in [Point, Comma] {
        let shown = currency.show(Money(units), locale);
        assert_eq!(currency.read(&shown, locale), Ok(Money(units)), "“{text}” shown as “{shown}”");
    }
}

#[test]
fn prices_as_people_type_them() {
    for text in
        ["12.50", "12,50", "12.5", "$12.50", "$ 12.50", "12.50 $", "12.50$", " 12½ ", "12 1/2", "+12.5"]
    {
        reads("$", 2, Point, text, 1250);
        reads("$", 2, Comma, text, 1250);
    }
    reads("$", 2, Point, "0", 0);
    reads("$", 2, Point, ".05", 5);
    reads("€", 2, Comma, "12,50 €", 1250);
    reads("EUR", 2, Comma, "12,50\u{a0}EUR", 1250);
    reads("eur", 2, Point, "EUR 12.50", 1250);
    reads("kr", 2, Comma, "1 234,50 kr", 123_450);
    reads("¥", 0, Point, "¥1200", 1200);
    reads("KD", 3, Point, "1.234 KD", 1234);
    reads("", 2, Point, "12.50", 1250);
    // Three digits cannot be decimals of a currency with two.
    reads("$", 2, Point, "1,234", 123_400);
    reads("$", 2, Point, "$1,234.50", 123_450);
    reads("€", 2, Comma, "1.234", 123_400);
    reads("¥", 0, Point, "1,234", 1234);
}

#[track_caller]
fn refuses(symbol: &str, digits: u32, text: &str, sentence: &str) {
    match currency(symbol, digits).read(text, Point) {
        Ok(money) => panic!("“{text}” is read as {money:?}"),
        Err(error) => assert_eq!(error.to_string(), sentence),
    }
}

#[test]
fn refusals() {
    refuses("$", 2, "", "No price yet: type a number.");
    refuses("$", 2, "$", "No price yet: type a number.");
    refuses("$", 2, "cheap", "“cheap” is not a price. Type it like 12.");
    refuses("$", 2, "$12 €", "“$12 €” is not a price. Type it like 12.");
    refuses("$", 2, "$$12", "“$$12” is not a price. Type it like 12.");
    refuses("$", 2, "1.234", "“1.234” has more than 2 decimals. Type the price with 2.");
    refuses("$", 2, "⅓", "“⅓” has more than 2 decimals. Type the price with 2.");
    refuses("¥", 0, "1.5", "“1.5” has decimals, and this currency has none. Type a whole number.");
    refuses("KD", 3, "1,234 KD", "“1,234 KD” can mean 1.234 or 1234. Type the one you mean.");
    refuses("$", 2, "-5", "A price cannot be below zero. Take the minus away.");
    refuses("$", 2, "$-5", "A price cannot be below zero. Take the minus away.");
    refuses("$", 2, "-$5", "A price cannot be below zero. Take the minus away.");
    refuses(
        "$",
        2,
        "1000000001",
        "That price is more than 1\u{202f}000\u{202f}000\u{202f}000, the most there can be here. Check the number and its unit.",
    );
}

#[test]
fn shown_in_the_currencys_own_way() {
    for (symbol, digits, units, point, comma) in [
        ("$", 2, 1250, "$12.50", "12,50\u{a0}$"),
        ("€", 2, 5, "€0.05", "0,05\u{a0}€"),
        ("CA$", 2, -1250, "−CA$12.50", "−12,50\u{a0}CA$"),
        ("EUR", 2, 1_234_567, "12\u{202f}345.67\u{a0}EUR", "12\u{202f}345,67\u{a0}EUR"),
        ("¥", 0, 1200, "¥1200", "1200\u{a0}¥"),
        ("", 2, 1250, "12.50", "12,50"),
        (
            "$",
            2,
            i64::MIN,
            "−$92\u{202f}233\u{202f}720\u{202f}368\u{202f}547\u{202f}758.08",
            "−92\u{202f}233\u{202f}720\u{202f}368\u{202f}547\u{202f}758,08\u{a0}$",
        ),
    ] {
        let currency = currency(symbol, digits);
        assert_eq!([currency.show(Money(units), Point), currency.show(Money(units), Comma)], [point, comma]);
    }
}

#[test]
fn sums_and_products() {
    assert_eq!([Money(1250), Money(-250), Money(5)].into_iter().sum::<Money>(), Money(1005));
    assert_eq!(Money(i64::MAX) + Money(1), Money(i64::MAX));
    assert_eq!(Money(i64::MIN) - Money(1), Money(i64::MIN));
    // Rounded once, a half to the even unit.
    for (units, num, den, want) in
        [(5, 1, 2, 2), (15, 1, 2, 8), (-5, 1, 2, -2), (100, 1, 3, 33), (i64::MAX, 2, 1, i64::MAX)]
    {
        assert_eq!(Money(units).times(Exact::ratio(num, den)), Money(want));
    }
}

#[track_caller]
fn shares(total: i64, weights: &[i128], want: &[i64]) {
    let weights: Vec<Exact> = weights.iter().copied().map(Exact::whole).collect();
    assert_eq!(apportion(total, &weights).as_deref(), Some(want));
}

#[test]
fn largest_remainder() {
    // Quotas 3.5, 2.1, 1.4: infinitelexicon.com.
    shares(7, &[50, 30, 20], &[4, 2, 1]);
    // archipel-des-libertes.fr.
    shares(4, &[500, 300, 110, 20], &[2, 1, 1, 0]);
    // Votes of Wikipedia's “Highest averages method”; the seats worked by the rule.
    shares(10, &[47_000, 16_000, 15_900, 12_000, 6_000, 3_100], &[5, 2, 1, 1, 1, 0]);
    // The Alabama paradox: one more to share, and the last gets one less. Computed by the rule.
    shares(10, &[6, 6, 2], &[4, 4, 2]);
    shares(11, &[6, 6, 2], &[5, 5, 1]);
    // Ties go to the earlier.
    shares(100, &[1, 1, 1], &[34, 33, 33]);
    shares(-100, &[1, 1, 1], &[-34, -33, -33]);
    shares(0, &[1, 2], &[0, 0]);
    shares(5, &[0, 1], &[0, 5]);
    for weights in
        [&[][..], &[Exact::ZERO], &[Exact::ONE, Exact::whole(-1)], &[Exact::whole(2), Exact::whole(-1)]]
    {
        assert_eq!(apportion(7, weights), None, "{weights:?}");
        assert_eq!(Money(7).split(weights), None);
    }
    assert_eq!(Money(1000).split(&[Exact::ONE; 3]), Some(vec![Money(334), Money(333), Money(333)]));
}

#[test]
fn kept_as_a_whole_number() {
    for (money, kept) in [(Money(1299), "1299"), (Money(-5), "-5"), (Money(i64::MIN), "-9223372036854775808")]
    {
        assert_eq!(wire::write(&money), kept);
        assert_eq!(wire::read(kept), Ok(money));
    }
    for other in ["\"1299\"", "12.99", "1e3", "9223372036854775808", "null", "[1]"] {
        assert!(wire::read::<Money>(other).is_err(), "{other}");
    }
}

proptest! {
    #[test]
    fn the_parts_add_up_and_stay_near(total in any::<i64>(), weights in prop::collection::vec((0_i128..1_000_000, 1_i128..1000), 1..12)) {
        let weights: Vec<Exact> = weights.into_iter().map(|(n, d)| Exact::ratio(n, d)).collect();
        let sum: Exact = weights.iter().copied().sum();
        match apportion(total, &weights) {
            None => prop_assert!(sum.is_zero()),
            Some(parts) => {
                prop_assert_eq!(parts.iter().map(|&part| i128::from(part)).sum::<i128>(), i128::from(total));
                for (part, weight) in parts.iter().zip(&weights) {
                    let quota = Exact::whole(total.into()) * (*weight / sum);
                    prop_assert!((Exact::whole((*part).into()) - quota).abs() < Exact::ONE);
                }
            }
        }
    }

    #[test]
    fn read_after_show_is_the_identity(units in 0_i64..1_000_000_000, digits in 0_u32..5, symbol in "[$€£¥]|EUR|kr|CA\\$|") {
        let currency = currency(&symbol, digits);
        for locale in [Point, Comma] {
            let shown = currency.show(Money(units), locale);
            prop_assert_eq!(currency.read(&shown, locale), Ok(Money(units)), "{}", shown);
        }
    }

    #[test]
    fn no_text_panics(text in ".{0,40}|[-$ 0-9.,'/½]{0,20}", digits in any::<u32>(), symbol in ".{0,4}") {
        let _ = currency(&symbol, digits).read(&text, Point);
    }
}
