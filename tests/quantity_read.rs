//! Every spelling that is read. What is refused is in quantity_refused.rs.
#![allow(clippy::unwrap_used, clippy::panic)]

use potside::quantity::*;
use potside::wire;

use LengthUnit::*;
use Locale::{Comma, Point};
use MassUnit::*;
use ShareUnit::*;
use TemperatureUnit::*;
use VolumeUnit::*;

/// Reads `text`, wants `num/den` in `unit`, and that what is shown of it reads back the same in both locales.
#[track_caller]
fn reads_in<Q: Quantity>(locale: Locale, default: Q::Unit, text: &str, num: i128, den: i128, unit: Q::Unit) {
    let want = Amount::<Q>::new(Exact::ratio(num, den), unit);
    let got = read::<Q>(text, default, locale);
    assert_eq!(got, Ok(want), "“{text}”");
    for locale in [Point, Comma] {
        let shown = show_exact(want, locale);
        assert_eq!(read::<Q>(&shown, default, locale), Ok(want), "“{text}” shown as “{shown}”");
    }
    let kept = wire::write(&want);
    assert_eq!(wire::read::<Amount<Q>>(&kept).unwrap(), want, "“{text}” kept as {kept}");
}

#[track_caller]
fn weighs(text: &str, num: i128, den: i128, unit: MassUnit) {
    reads_in::<Mass>(Point, Gram, text, num, den, unit);
}
#[track_caller]
fn weighs_comma(text: &str, num: i128, den: i128, unit: MassUnit) {
    reads_in::<Mass>(Comma, Gram, text, num, den, unit);
}
#[track_caller]
fn fills(text: &str, num: i128, den: i128, unit: VolumeUnit) {
    reads_in::<Volume>(Point, Millilitre, text, num, den, unit);
}
#[track_caller]
fn is_long(text: &str, num: i128, den: i128, unit: LengthUnit) {
    reads_in::<Length>(Point, Millimetre, text, num, den, unit);
}
#[track_caller]
fn is_warm(text: &str, num: i128, den: i128, unit: TemperatureUnit) {
    reads_in::<Temperature>(Point, Celsius, text, num, den, unit);
}
#[track_caller]
fn is_part(text: &str, num: i128, den: i128, unit: ShareUnit) {
    reads_in::<Share>(Point, Percent, text, num, den, unit);
}

#[test]
fn whole_and_decimal() {
    weighs("61", 61, 1, Gram);
    weighs(" 61 ", 61, 1, Gram);
    weighs("+61 g", 61, 1, Gram);
    weighs("0", 0, 1, Gram);
    weighs("00.50 oz", 1, 2, Ounce);
    weighs("2.15oz", 215, 100, Ounce);
    weighs("2.15 OZ", 215, 100, Ounce);
    weighs("2,15 oz", 215, 100, Ounce);
    weighs("1,5 kg", 3, 2, Kilogram);
    weighs(".5", 1, 2, Gram);
    weighs(",5 lb", 1, 2, Pound);
    weighs("0.001 kg", 1, 1000, Kilogram);
    weighs("1.234 kg", 1234, 1000, Kilogram);
    weighs("0,234 kg", 234, 1000, Kilogram);
    weighs("1234,567 g", 1_234_567, 1000, Gram);
    weighs("1,2345 g", 12345, 10000, Gram);
    weighs("2\u{a0}oz", 2, 1, Ounce);
    weighs("2\u{202f}oz", 2, 1, Ounce);
    weighs("\u{2009}2\u{2003}oz\u{3000}", 2, 1, Ounce);
    weighs("999999.999999999 g", 999_999_999_999_999, 1_000_000_000, Gram);
    weighs(".000000000000001 g", 1, 1_000_000_000_000_000, Gram);
    weighs_comma("1,234", 1234, 1000, Gram);
    weighs_comma("1,234 kg", 1234, 1000, Kilogram);
    weighs_comma("2.15 oz", 215, 100, Ounce);
    weighs_comma("0.125 kg", 1, 8, Kilogram);
}

#[test]
fn fractions() {
    weighs("2 1/4 oz", 9, 4, Ounce);
    weighs("2-1/4 oz", 9, 4, Ounce);
    weighs("2 1 / 4oz", 9, 4, Ounce);
    weighs("2\u{a0}1⁄4 oz", 9, 4, Ounce);
    weighs("1/3", 1, 3, Gram);
    weighs("1/2lb", 1, 2, Pound);
    weighs("9/4 oz", 9, 4, Ounce);
    weighs("2¼ oz", 9, 4, Ounce);
    weighs("2 ¼ oz", 9, 4, Ounce);
    weighs("2-¼ oz", 9, 4, Ounce);
    weighs("⅓ oz", 1, 3, Ounce);
    weighs("1 999/1000 g", 1999, 1000, Gram);
    weighs("12345 1/3 g", 37036, 3, Gram);
    weighs("123456 789/997 g", 123_456 * 997 + 789, 997, Gram);
    weighs("1 234 1/3 g", 3703, 3, Gram);
    weighs("1 100/700 g", 8, 7, Gram);
    fills("¾ tbsp", 3, 4, Tablespoon);
    fills("½ tsp", 1, 2, Teaspoon);
    fills("1½ tbsp", 3, 2, Tablespoon);
    fills("1 ⅞ cups", 15, 8, Cup);
    // The characters' names in the Unicode Standard (Latin-1 Supplement and Number Forms) say what they are.
    for (c, n, d) in [
        ('¼', 1, 4),
        ('½', 1, 2),
        ('¾', 3, 4),
        ('⅓', 1, 3),
        ('⅔', 2, 3),
        ('⅛', 1, 8),
        ('⅜', 3, 8),
        ('⅝', 5, 8),
        ('⅞', 7, 8),
        ('⅕', 1, 5),
        ('⅖', 2, 5),
        ('⅗', 3, 5),
        ('⅘', 4, 5),
        ('⅙', 1, 6),
        ('⅚', 5, 6),
        ('⅐', 1, 7),
        ('⅑', 1, 9),
        ('⅒', 1, 10),
    ] {
        weighs(&format!("{c} oz"), n, d, Ounce);
        fills(&format!("3{c} tsp"), 3 * d + n, d, Teaspoon);
    }
}

#[test]
fn thousands() {
    weighs("1,234.5", 12345, 10, Gram);
    weighs("1.234,5", 12345, 10, Gram);
    weighs("1 234", 1234, 1, Gram);
    weighs("1 234,5 g", 12345, 10, Gram);
    weighs("1\u{202f}234 g", 1234, 1, Gram);
    weighs("12\u{a0}345 g", 12345, 1, Gram);
    weighs("1'234.5 g", 12345, 10, Gram);
    weighs("1’234 g", 1234, 1, Gram);
    weighs("123,456.25 g", 12_345_625, 100, Gram);
    weighs("0,123,456 g", 123_456, 1, Gram);
    weighs("0.123.456 g", 123_456, 1, Gram);
    weighs("1 000 000 g", 1_000_000, 1, Gram);
    weighs("1,234.567 g", 1_234_567, 1000, Gram);
    weighs("1 234.567 g", 1_234_567, 1000, Gram);
    weighs("1234", 1234, 1, Gram);
    weighs("1234.5", 12345, 10, Gram);
}

#[test]
fn compounds() {
    weighs("1 lb 3.5 oz", 195, 10, Ounce);
    weighs("1lb3oz", 19, 1, Ounce);
    weighs("1 lb, 3 oz", 19, 1, Ounce);
    weighs("1 lb .5 oz", 165, 10, Ounce);
    weighs("1 lb. 3 oz.", 19, 1, Ounce);
    weighs("2 Pounds 4 ½ Ounces", 73, 2, Ounce);
    weighs("1# 3oz", 19, 1, Ounce);
    weighs("1 lb ⅓ oz", 49, 3, Ounce);
    weighs("1 kg 250 g", 1250, 1, Gram);
}

#[test]
fn more_compounds() {
    weighs("1KG250G", 1250, 1, Gram);
    weighs("1 234 lb 1 oz", 1234 * 16 + 1, 1, Ounce);
    fills("1 L 250 mL", 1250, 1, Millilitre);
    fills("1 tbsp 1½ tsp", 9, 2, Teaspoon);
    fills("1 cup 2 tbsp", 18, 1, Tablespoon);
}

#[test]
fn units_in_every_spelling() {
    for text in ["5 g", "5G", "5 gr", "5 gram", "5 Grams", "5g.", "5 gm", "5 grammes"] {
        weighs(text, 5, 1, Gram);
    }
    for text in ["5 kg", "5KG", "5 kilos", "5 kilograms", "5 Kgs"] {
        weighs(text, 5, 1, Kilogram);
    }
    for text in ["5 oz", "5oz.", "5 ounces", "5 Ounce"] {
        weighs(text, 5, 1, Ounce);
    }
    for text in ["5 lb", "5lbs", "5 lbs.", "5#", "5 pounds"] {
        weighs(text, 5, 1, Pound);
    }
    for text in ["5 ml", "5 mL", "5ML", "5 cc", "5 cm³", "5 millilitres"] {
        fills(text, 5, 1, Millilitre);
    }
    fills("5 cm3", 5, 1, Millilitre);
    fills("5 l", 5, 1, Litre);
    for text in ["5 fl oz", "5 FL. OZ.", "5floz", "5 US fl oz", "5 fluid ounces"] {
        fills(text, 5, 1, UsFluidOunce);
    }
    for text in ["5 imp fl oz", "5 UK fl. oz", "5 imperial fluid ounces"] {
        fills(text, 5, 1, ImperialFluidOunce);
    }
    for text in ["5 tsp", "5 Teaspoons", "5 tsps"] {
        fills(text, 5, 1, Teaspoon);
    }
    for text in ["5 tbsp", "5 Tbsp.", "5 tbs", "5 tablespoons"] {
        fills(text, 5, 1, Tablespoon);
    }
    fills("5 cups", 5, 1, Cup);
    is_long("75", 75, 1, Millimetre);
    is_long("7,5 cm", 15, 2, Centimetre);
    for text in ["3 1/4 in", "3 1/4\"", "3¼”", "3¼ ″", "3.25 inches"] {
        is_long(text, 13, 4, Inch);
    }
    for text in ["1 ft", "1 foot", "1'", "1 ′", "1’", "1 Ft."] {
        is_long(text, 1, 1, Foot);
    }
    for text in ["1 1/2 feet", "1.5'", "1½ ft"] {
        is_long(text, 3, 2, Foot);
    }
    for text in ["1 ft 2 1/2 in", "1' 2 1/2\"", "1'2½″", "1’2.5”", "1 ft, 2.5 inches"] {
        is_long(text, 29, 2, Inch);
    }
    // Three digits after an apostrophe are thousands, as ever.
    is_long("1'250 mm", 1250, 1, Millimetre);
    for text in
        ["188F", "188 °F", "188 ºf", "188° F", "188 deg F", "188 ℉", "188 Fahrenheit", "188 degrees F"]
    {
        is_warm(text, 188, 1, Fahrenheit);
    }
    for text in ["86,4 °C", "86.4C", "86.4 ℃", "86.4 celsius", "86.4 ˚C"] {
        is_warm(text, 432, 5, Celsius);
    }
    for text in ["-5 °C", "−5", "– 5 °C", "-5.0"] {
        is_warm(text, -5, 1, Celsius);
    }
    is_warm("-0.5", -1, 2, Celsius);
    is_warm("-1 1/3 °C", -4, 3, Celsius);
    for text in ["8", "8%", "8 %", "8 percent", "8 per cent", "8 pct"] {
        is_part(text, 8, 1, Percent);
    }
    is_part("80 ‰", 80, 1, PerThousand);
    is_part("1/3 %", 1, 3, Percent);
    is_part("100 %", 100, 1, Percent);
}

#[test]
fn the_default_unit_is_the_fields() {
    reads_in::<Mass>(Point, Ounce, "2 1/4", 9, 4, Ounce);
    reads_in::<Temperature>(Point, Fahrenheit, "188", 188, 1, Fahrenheit);
    reads_in::<Volume>(Comma, Tablespoon, "¾", 3, 4, Tablespoon);
}

#[test]
fn densities() {
    for text in [
        "0.9",
        "0,9 g/ml",
        ".9 g/cc",
        "0.9 g/cm3",
        "0.9 g / cm³",
        "9/10",
        "900 kg/m³",
        "900 kg/m3",
        "900 g/L",
    ] {
        assert_eq!(read_density(text, Point), Ok(Density::base(Exact::ratio(9, 10))), "{text}");
    }
}

/// Copied from a page, or typed where characters are full-width: what is not seen is not read.
#[test]
fn characters_of_other_widths_and_of_none() {
    for text in [
        "５ ｇ",
        "５g",
        "5\u{200b} g",
        "\u{feff}5 g",
        "\u{200e}5\u{2060} g\u{200f}",
        "5\u{ad} g",
        "\u{202a}5 g\u{202c}",
    ] {
        weighs(text, 5, 1, Gram);
    }
    weighs("２．１５ ｏｚ", 215, 100, Ounce);
    weighs("２ １／４ ｏｚ", 9, 4, Ounce);
    is_part("８％", 8, 1, Percent);
    is_warm("－５ ℃", -5, 1, Celsius);
    assert_eq!(read_count("１２", Point), Ok(12));
    assert!(
        read::<Mass>("\u{200b}\u{feff}", Gram, Point)
            .is_err_and(|e| e == AmountError::Empty { noun: "weight" })
    );
}

#[test]
fn numbers_and_counts() {
    for (text, num, den) in
        [("2 1/4", 9, 4), ("1,5", 3, 2), (".5", 1, 2), ("⅓", 1, 3), ("1 234", 1234, 1), ("0", 0, 1)]
    {
        assert_eq!(read_number(text, Point), Ok(Exact::ratio(num, den)), "{text}");
    }
    // A count has no decimals, so `1,234` can only be above a thousand.
    for (text, count) in [
        ("8", 8),
        (" 12 ", 12),
        ("1,234", 1234),
        ("1 234", 1234),
        ("100000", 100_000),
        ("4/2", 2),
        ("8.0", 8),
    ] {
        assert_eq!(read_count(text, Point), Ok(count), "{text}");
    }
    assert_eq!(read_count("1.234", Comma), Ok(1234));
}

/// The most that a pot can be, and absolute zero.
#[test]
fn the_edge_of_what_can_be_is_read() {
    weighs("1000 kg", 1000, 1, Kilogram);
    is_warm("-273.15", -27315, 100, Celsius);
    is_warm("-459.67 °F", -45967, 100, Fahrenheit);
}
