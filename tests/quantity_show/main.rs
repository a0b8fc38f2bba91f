//! Showing: rounded once, halves to even, in the person's own decimal sign; and keeping amounts as text.
#![allow(clippy::unwrap_used)]

mod laws;

use potside::quantity::*;
use potside::wire::{self, write};

use Locale::{Comma, Point};
use MassUnit::*;
use TemperatureUnit::*;
use VolumeUnit::*;

#[track_caller]
fn decimals(num: i128, den: i128, places: u32, want: &str) {
    assert_eq!(decimal(Exact::ratio(num, den), Exact::ratio(1, 10_i128.pow(places)), Point), want);
}

#[track_caller]
fn shows<Q: Quantity>(num: i128, den: i128, unit: Q::Unit, want: &str) {
    assert_eq!(show(Q::of(Exact::ratio(num, den), unit), unit, None, Point).to_string(), want);
}

#[track_caller]
fn shows_exactly<Q: Quantity>(num: i128, den: i128, unit: Q::Unit, point: &str, comma: &str) {
    let amount = Amount::<Q>::new(Exact::ratio(num, den), unit);
    assert_eq!(show_exact(amount, Point), point);
    assert_eq!(show_exact(amount, Comma), comma);
}

/// NIST SP 811 (2008), B.7.1.
#[test]
fn rounding_as_published() {
    decimals(69_749_515, 10_000_000, 2, "6.97");
    decimals(69_749_515, 10_000_000, 1, "7.0");
    decimals(69_749_515, 10_000_000, 4, "6.9750");
    decimals(69_749_515, 10_000_000, 6, "6.974952");
    decimals(69_749_505, 10_000_000, 6, "6.974950");
}

#[test]
fn halves_go_to_the_even_digit() {
    for (num, want) in
        [(5, "0"), (15, "2"), (25, "2"), (35, "4"), (-5, "0"), (-15, "−2"), (-25, "−2"), (24, "2"), (26, "3")]
    {
        decimals(num, 10, 0, want);
    }
    // Once: 0.2449 would become 0.3 by way of 0.245 and 0.25.
    decimals(2449, 10_000, 1, "0.2");
    // To a division that is no power of ten, in whole divisions.
    let fifths = |num| decimal(Exact::ratio(num, 100), Exact::ratio(5, 10), Point);
    assert_eq!([fifths(25), fifths(75), fifths(26), fifths(1024)], ["0.0", "1.0", "0.5", "10.0"]);
    assert_eq!(decimal(Exact::whole(7), Exact::whole(2), Point), "8");
    assert_eq!(decimal(Exact::whole(5), Exact::whole(2), Point), "4");
    // SP 1038, 4.4.1.3 would have 79.5 °C: not a display rule here.
    assert_eq!(
        show(Temperature::of(Exact::whole(175), Fahrenheit), Celsius, None, Point).to_string(),
        "79.4 °C"
    );
}

#[test]
fn signs_and_groups() {
    decimals(12345, 10, 1, "1234.5");
    decimals(123_456, 10, 1, "12\u{202f}345.6");
    decimals(-1_234_567, 1, 0, "−1\u{202f}234\u{202f}567");
    decimals(1, 3, 12, "0.333333333333");
    decimals(0, 1, 2, "0.00");
    decimals(-1, 1000, 2, "0.00");
    decimals(5, 1000, 3, "0.005");
    assert_eq!(decimal(Exact::ratio(123_456, 10), Exact::ratio(1, 10), Comma), "12\u{202f}345,6");
    // A step without an end, or none: the digits that the result needs.
    assert_eq!(decimal(Exact::ratio(5, 4), Exact::ZERO, Point), "1.25");
    assert_eq!(decimal(Exact::ONE, Exact::ratio(1, 3), Point), "1");
    assert_eq!(decimal(Exact::whole(i128::MAX), Exact::ratio(1, 10), Point).chars().next(), Some('1'));
}

#[test]
fn every_unit_has_its_own_step() {
    shows::<Mass>(61, 1, Gram, "61.0 g");
    shows::<Mass>(1234, 1000, Kilogram, "1.234 kg");
    shows::<Mass>(215, 100, Ounce, "2.15 oz");
    shows::<Temperature>(1879, 10, Fahrenheit, "188 °F");
    shows::<Temperature>(8642, 100, Celsius, "86.4 °C");
    shows::<Temperature>(-5, 1, Celsius, "−5.0 °C");
    shows::<Temperature>(4, 100, Celsius, "0.0 °C");
    shows::<Share>(8, 1, ShareUnit::Percent, "8.00 %");
    shows::<Length>(65, 20, LengthUnit::Inch, "3.25 in");
    shows::<Volume>(1, 2, UsFluidOunce, "0.50 fl oz");
}

/// Less than ten steps is shown finer: a quarter of a gram of dye is not 0.2 g.
#[test]
fn little_amounts_keep_two_digits() {
    shows::<Mass>(1, 1, Gram, "1.0 g");
    shows::<Mass>(25, 100, Gram, "0.25 g");
    shows::<Mass>(3, 100, Gram, "0.030 g");
    shows::<Mass>(0, 1, Gram, "0.0 g");
    shows::<Mass>(5, 100, Ounce, "0.050 oz");
    assert_eq!(
        show(Mass::base(Exact::ratio(1, 4)), Gram, Some(Exact::ratio(1, 10)), Point).to_string(),
        "0.2 g"
    );
}

#[test]
fn spoons_in_eighths() {
    shows::<Volume>(3, 2, Tablespoon, "1½ tbsp");
    shows::<Volume>(3, 4, Tablespoon, "¾ tbsp");
    shows::<Volume>(2, 1, Teaspoon, "2 tsp");
    shows::<Volume>(19, 8, Cup, "2⅜ cup");
    shows::<Volume>(30, 100, Teaspoon, "¼ tsp");
    // A half of an eighth goes to the even eighth.
    shows::<Volume>(3, 16, Teaspoon, "¼ tsp");
    shows::<Volume>(5, 16, Teaspoon, "¼ tsp");
    shows::<Volume>(0, 1, Teaspoon, "0 tsp");
    shows::<Volume>(3, 100, Teaspoon, "0.030 tsp");
}

#[test]
fn both_systems() {
    let ounces = |num, den| Mass::of(Exact::ratio(num, den), Ounce);
    #[track_caller]
    fn both(mass: Mass, first: MassUnit, division: Option<Mass>, want: [&str; 2]) {
        let (one, other) = show_both(mass, first, division, Point);
        assert_eq!([one.to_string(), other.to_string()], want);
    }
    let tenth = Some(Mass::base(Exact::ratio(1, 10)));
    both(ounces(215, 100), Gram, None, ["61.0 g", "2.15 oz"]);
    // 2.15 oz is 61 g to the gram: common practice, no source.
    both(ounces(215, 100), Gram, Some(Mass::base(Exact::ONE)), ["61 g", "2.15 oz"]);
    both(ounces(215, 100), Ounce, None, ["2.15 oz", "61.0 g"]);
    both(ounces(215, 100), Gram, Some(Mass::base(Exact::ratio(1, 100))), ["60.95 g", "2.15 oz"]);
    both(ounces(215, 100), Gram, Some(Mass::base(Exact::ratio(5, 10))), ["61.0 g", "2.15 oz"]);
    // 0.1 g is 0.0035 oz: to the thousandth.
    both(ounces(215, 100), Ounce, tenth, ["2.150 oz", "61.0 g"]);
    // Beside ounces to the division of a scale that shows grams: that is what is read on it.
    both(
        Mass::base(Exact::ratio(322, 100)),
        Ounce,
        Some(Mass::base(Exact::ratio(1, 100))),
        ["0.1136 oz", "3.22 g"],
    );
    both(ounces(215, 100), Ounce, Some(Mass::base(Exact::ONE)), ["2.15 oz", "61 g"]);
    both(
        Mass::base(Exact::whole(12_005)),
        Ounce,
        Some(Mass::base(Exact::whole(5))),
        ["423.5 oz", "12.005 kg"],
    );
    both(ounces(215, 100), Ounce, Some(ounces(5, 1000)), ["2.150 oz", "61.0 g"]);
    // 0.005 oz is 0.141747615625 g: to the tenth, and beside to what the scale shows.
    both(ounces(215, 100), Gram, Some(ounces(5, 1000)), ["61.0 g", "2.150 oz"]);
    both(
        Mass::base(Exact::whole(12_000)),
        Gram,
        Some(Mass::base(Exact::ONE)),
        ["12\u{202f}000 g", "26.455 lb"],
    );
    both(Mass::of(Exact::whole(30), Pound), Pound, None, ["30.000 lb", "13.608 kg"]);
    both(Mass::ZERO, Gram, tenth, ["0.0 g", "0.00 oz"]);
}

#[test]
fn exactly_as_typed() {
    shows_exactly::<Mass>(215, 100, Ounce, "2.15 oz", "2,15 oz");
    shows_exactly::<Mass>(7, 3, Ounce, "2⅓ oz", "2⅓ oz");
    shows_exactly::<Mass>(25, 11, Ounce, "2 3/11 oz", "2 3/11 oz");
    shows_exactly::<Mass>(3, 11, Ounce, "3/11 oz", "3/11 oz");
    shows_exactly::<Mass>(123_456, 10, Gram, "12\u{202f}345.6 g", "12\u{202f}345,6 g");
    shows_exactly::<Mass>(1234, 1000, Kilogram, "1.234 kg", "1,234 kg");
    shows_exactly::<Temperature>(-40, 1, Fahrenheit, "−40 °F", "−40 °F");
    shows_exactly::<Volume>(3, 4, Tablespoon, "¾ tbsp", "¾ tbsp");
    shows_exactly::<Volume>(13, 10, Tablespoon, "1.3 tbsp", "1,3 tbsp");
    shows_exactly::<Share>(8, 1, ShareUnit::Percent, "8 %", "8 %");
    assert_eq!(show_density(Density::base(Exact::ratio(9, 10)), Comma).to_string(), "0,900 g/mL");
}

#[track_caller]
fn keeps<Q: Quantity>(amount: Amount<Q>, text: &str) {
    assert_eq!(write(&amount), format!("\"{text}\""));
    assert_eq!(wire::read::<Amount<Q>>(&format!("\"{text}\"")).unwrap(), amount);
}

#[test]
fn kept_as_a_person_would_type() {
    keeps(Amount::<Mass>::new(Exact::ratio(215, 100), Ounce), "2.15 oz");
    keeps(Amount::<Mass>::new(Exact::ratio(1, 3), Ounce), "1/3 oz");
    keeps(Amount::<Temperature>::new(Exact::whole(188), Fahrenheit), "188 °F");
    keeps(Amount::<Temperature>::new(Exact::ratio(-81, 2), Celsius), "-40.5 °C");
    keeps(Amount::<Volume>::new(Exact::ratio(3, 4), UsFluidOunce), "0.75 fl oz");
    keeps(Amount::<Share>::new(Exact::whole(250), ShareUnit::Percent), "250 %");
    keeps(Amount::<Temperature>::new(Exact::ZERO, Celsius), "0 °C");
    // As the factor of the unit would not fit beside it.
    let odd = Mass::base(Exact::ratio(1, i128::MAX));
    keeps(Amount { value: odd, unit: Ounce }, &format!("base 1/{} oz", i128::MAX));
    assert_eq!(write(&Mass::base(Exact::ratio(121_903, 2000))), "\"60.9515\"");
    assert_eq!(write(&Share::base(Exact::ratio(2, 27))), "\"2/27\"");
}

#[test]
fn hostile_text_is_an_error() {
    for text in [
        "",
        " ",
        "1/0",
        "1/-2",
        "--1",
        "-",
        "1.",
        ".5",
        "1.2.3",
        "1/2/3",
        "1e9",
        "0x1",
        "+1",
        "1 /2",
        "NaN",
        "inf",
        "½",
        "1,5",
        "1_000",
        "170141183460469231731687303715884105728",
        "0.000000000000000000000000000000000000001",
        &"9".repeat(10_000),
        &format!("1/{}", "9".repeat(60)),
        &format!("0.{}", "1".repeat(5000)),
    ] {
        let json = serde_json::to_string(text).unwrap();
        assert!(wire::read::<Exact>(&json).is_err(), "{text:.60}");
        assert!(wire::read::<Amount<Mass>>(&json).is_err(), "{text:.60}");
        let json = serde_json::to_string(&format!("{text} g")).unwrap();
        assert!(wire::read::<Amount<Mass>>(&json).is_err(), "{text:.60} g");
    }
    for json in [
        "1",
        "1.5",
        "null",
        "{}",
        "[1,2]",
        "true",
        "\"5 mL\"",
        "\"5\"",
        "\"5 G\"",
        "\"5  g\"",
        "\"base 5\"",
        "\"g\"",
    ] {
        assert!(wire::read::<Amount<Mass>>(json).is_err(), "{json}");
    }
}
