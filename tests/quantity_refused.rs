//! What is refused when amounts are typed, and the sentence that says why and what to do.
#![allow(clippy::unwrap_used, clippy::panic)]

use potside::quantity::*;

use LengthUnit::*;
use Locale::{Comma, Point};
use MassUnit::*;
use ShareUnit::*;
use TemperatureUnit::*;
use VolumeUnit::*;

#[track_caller]
fn refused<T: std::fmt::Debug>(result: Result<T, AmountError>, sentence: &str) {
    match result {
        Ok(read) => panic!("read as {read:?}, wanted: {sentence}"),
        Err(error) => assert_eq!(error.to_string(), sentence),
    }
}

#[track_caller]
fn no_weight(text: &str, sentence: &str) {
    refused(read::<Mass>(text, Gram, Point), sentence);
}

#[test]
fn what_could_mean_two_things_is_asked() {
    let ask = |text, locale, sentence| refused(read::<Mass>(text, Ounce, locale), sentence);
    ask("1,234", Point, "“1,234” can mean 1.234 oz or 1234 oz. Type the one you mean.");
    ask("12,345 g", Point, "“12,345 g” can mean 12.345 g or 12345 g. Type the one you mean.");
    ask("1.234 kg", Comma, "“1.234 kg” can mean 1,234 kg or 1234 kg. Type the one you mean.");
    ask("1 lb 3,500 oz", Point, "“3,500 oz” can mean 3.500 oz or 3500 oz. Type the one you mean.");
    refused(
        read::<Temperature>("-1,234 °F", Celsius, Point),
        "“-1,234 °F” can mean −1.234 °F or −1234 °F. Type the one you mean.",
    );
    refused(read_number("1,234", Point), "“1,234” can mean 1.234 or 1234. Type the one you mean.");
    refused(
        read_density("1.234 kg/m³", Comma),
        "“1.234 kg/m³” can mean 1,234 kg/m³ or 1234 kg/m³. Type the one you mean.",
    );
}

/// The second part of a compound amount is less than one of the first: else a point may be missing in it.
#[test]
fn more_ounces_than_a_pound_has_are_asked_about() {
    no_weight(
        "2 lb 35 oz",
        "“2 lb 35 oz” has as many oz as make one more lb. Check it, or type it all in oz.",
    );
    assert!(read::<Mass>("1 lb 16 oz", Gram, Point).is_err());
    assert!(read::<Mass>("1 kg 1000 g", Gram, Point).is_err());
    assert!(read::<Length>("1 ft 12 in", Inch, Point).is_err());
    assert!(read::<Volume>("1 tbsp 3 tsp", Teaspoon, Point).is_err());
    assert_eq!(read::<Mass>("1 lb 15.99 oz", Gram, Point).map(|m| m.unit), Ok(Ounce));
    assert_eq!(read::<Mass>("35 oz", Gram, Point).map(|m| m.unit), Ok(Ounce));
}

/// Copied from a page that sets fractions small, `1 1/2` has lost its space.
#[test]
fn a_mixed_fraction_run_together_is_asked() {
    no_weight("11/2 lb", "“11/2 lb” can mean 1 1/2 lb or 5 1/2 lb. Type the one you mean.");
    no_weight("21/4oz", "“21/4oz” can mean 2 1/4 oz or 5 1/4 oz. Type the one you mean.");
    no_weight("113/16 oz", "“113/16 oz” can mean 1 13/16 oz or 7 1/16 oz. Type the one you mean.");
    no_weight("1 lb 21/2 oz", "“21/2 oz” can mean 2 1/2 oz or 10 1/2 oz. Type the one you mean.");
    no_weight("21/3", "“21/3” can mean 2 1/3 g or 7 g. Type the one you mean.");
    // What nobody writes as a mixed fraction is clear: less than one, another lower number, not in lowest terms.
    for (text, num, den) in
        [("11/16", 11, 16), ("22/7", 22, 7), ("12/8", 3, 2), ("10/4", 5, 2), ("100/3", 100, 3), ("9/4", 9, 4)]
    {
        let got = read::<Mass>(text, Gram, Point).map(|amount| amount.value);
        assert_eq!(got, Ok(Mass::base(Exact::ratio(num, den))), "{text}");
    }
}

/// Both readings that are offered are clear when typed.
#[test]
fn what_is_offered_is_clear() {
    for (locale, text) in [(Point, "1,234 oz"), (Point, "12,345"), (Comma, "1.234 lb"), (Comma, "999.000 g")]
    {
        let Err(AmountError::Ambiguous { small, large, .. }) = read::<Mass>(text, Ounce, locale) else {
            panic!("{text} is not asked about");
        };
        let (small, large) = (read::<Mass>(&small, Gram, locale), read::<Mass>(&large, Gram, locale));
        let (small, large) = (small.unwrap(), large.unwrap().number());
        assert_eq!(small.number() * Exact::whole(1000), large, "{text}");
    }
}

#[test]
fn nonsense_gets_a_sentence() {
    no_weight("", "No weight yet: type a number.");
    no_weight(" \u{a0} ", "No weight yet: type a number.");
    for text in [
        "abc",
        "oz",
        "g 5",
        "-",
        ".",
        ",",
        "5.",
        "5,",
        "5. g",
        "1.2.3",
        "1,2,3",
        "1,23,456",
        "1,234 567",
        "1 lb 3",
        "1 lb 3.5",
        "1 oz 3 lb",
        "1 lb 3 g",
        "1 lb,3 oz!",
        "1 lb ,3 oz",
        "1.5 lb 3 oz",
        "2.5 1/4",
        "2 9/4 oz",
        "2 1/",
        "1/",
        "/2",
        "5 $",
        "5 g 3",
        "175-180",
        "½5",
        "--5",
        "1'23 g",
        "5 + 5",
        "5*2",
        "1:2",
        "⅓⅓",
        "1 lb 2 lb",
        "1 lb 3 oz 2 oz",
    ] {
        no_weight(text, &format!("“{text}” is not a weight. Type it like 61 g or 2 1/4 oz."));
    }
    no_weight("12 stone", "“stone” in “12 stone” is not a unit of weight here. Use g, kg, oz or lb.");
    no_weight("1e3", "“e” in “1e3” is not a unit of weight here. Use g, kg, oz or lb.");
    no_weight("5 mL", "“5 mL” is a volume, and a weight is wanted here. Use g, kg, oz or lb.");
    no_weight("5 fl oz", "“5 fl oz” is a volume, and a weight is wanted here. Use g, kg, oz or lb.");
    no_weight("188F", "“188F” is a temperature, and a weight is wanted here. Use g, kg, oz or lb.");
    no_weight("8 %", "“8 %” is a share, and a weight is wanted here. Use g, kg, oz or lb.");
    refused(
        read::<Volume>("8 oz", Millilitre, Point),
        "“8 oz” is a weight, and a volume is wanted here. Use mL, L, fl oz, imp fl oz, tsp, tbsp, cup or gal.",
    );
    refused(
        read::<Length>("5 banana", Millimetre, Point),
        "“banana” in “5 banana” is not a unit of length here. Use mm, cm, in or ft.",
    );
    no_weight("1/0", "“1/0” divides by zero. Check the fraction.");
    no_weight("2 1/0 oz", "“2 1/0 oz” divides by zero. Check the fraction.");
    no_weight(
        "1/1001 oz",
        "“1/1001 oz” has a fraction finer than thousandths. Type a decimal number instead.",
    );
    no_weight("1234567890123456", "Too many digits for a weight. Type a shorter number.");
    no_weight("0.1234567890123456", "Too many digits for a weight. Type a shorter number.");
    no_weight(&"9".repeat(65), "Too many digits for a weight. Type a shorter number.");
    no_weight("1 lb 0.12345678901234 oz", "Too many digits for a weight. Type a shorter number.");
    refused(read_number("12 g", Point), "“12 g” is not a number. Type it like 2 1/4 or 15.");
    refused(read_number("-1", Point), "A number cannot be below zero. Take the minus away.");
    refused(read_count("1.5", Point), "“1.5” is not a whole number. Type one, like 8.");
    refused(read_count("0", Point), "A number must be above zero. Type a larger number.");
    refused(read_count("", Point), "No number yet: type a number.");
    refused(
        read_count("100001", Point),
        "That number is more than 100\u{202f}000, the most there can be here. Check the number and its unit.",
    );
}

#[test]
fn what_cannot_be_at_a_pot_is_refused() {
    no_weight("-5 g", "A weight cannot be below zero. Take the minus away.");
    no_weight("−1 lb 3 oz", "A weight cannot be below zero. Take the minus away.");
    no_weight(
        "1000.001 kg",
        "That weight is more than 1000 kg, the most there can be here. Check the number and its unit.",
    );
    refused(
        read::<Volume>("1000.1 L", Litre, Point),
        "That volume is more than 1000 L, the most there can be here. Check the number and its unit.",
    );
    refused(
        read::<Length>("2001", Millimetre, Point),
        "That length is more than 2 m, the most there can be here. Check the number and its unit.",
    );
    refused(
        read::<Share>("101", Percent, Point),
        "That share is more than 100 %, the most there can be here. Check the number and its unit.",
    );
    for text in ["-273.16", "-459.68 F"] {
        refused(
            read::<Temperature>(text, Celsius, Point),
            "That is below absolute zero (−273.15 °C). Check the number and its unit.",
        );
    }
    refused(
        read::<Temperature>("753 F", Celsius, Point),
        "That temperature is more than 400 °C (752 °F), the most there can be here. Check the number and its unit.",
    );
    refused(read_density("0", Point), "A density must be above zero. Type a larger number.");
    refused(
        read_density("900", Point),
        "That density is more than 23 g/mL, the most there can be here. Check the number and its unit.",
    );
    let warm = |c| Temperature::celsius(Exact::whole(c)).wants_caution();
    assert!(warm(131) && !warm(130));
}
