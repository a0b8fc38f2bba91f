//! The converter: which kind a text is of, and the amount in every unit of it.

#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

use potside::bench::{DropTrial, DropWeighing, Ingredient, SpoonTrial, measures};
use potside::formula::conventions;
use potside::quantity::{
    Amount, Any, Density, Exact, Locale, MassUnit, Share, TemperatureUnit, Voice, VolumeUnit, Why, read_any,
    symbols,
};

/// Each conversion in order, `=` before an exact one and `≈` before a rounded one.
#[track_caller]
fn everywhere(text: &str, locale: Locale, wanted: &str) {
    let all = read_any(text, locale).unwrap().everywhere(locale);
    let said: Vec<String> =
        all.iter().map(|c| format!("{}{}", if c.exact { "=" } else { "≈" }, c.shown)).collect();
    assert_eq!(said.join(", "), wanted, "{text}");
    // What is exact reads back as the same amount.
    for exact in all.iter().filter(|c| c.exact) {
        let again = read_any(&exact.shown.to_string(), locale).unwrap();
        let same: Vec<_> = again.everywhere(locale).into_iter().map(|c| c.shown.number).collect();
        assert_eq!(same, all.iter().map(|c| c.shown.number.clone()).collect::<Vec<_>>(), "{text}");
    }
}

#[track_caller]
fn refused(text: &str, sentence: &str) {
    assert_eq!(read_any(text, Locale::Point).unwrap_err().to_string(), sentence, "{text}");
}

// Sizes: NIST Handbook 44 App. C (1 oz = 28.349523125 g, 1 US fl oz = 29.5735295625 mL, 1 tbsp = 3 tsp = 1/2 fl oz,
// 1 cup = 16 tbsp, 1 in = 25.4 mm, 1 ft = 12 in); NIST SP 811 App. B.8 for temperatures. Worked by hand from these.
#[test]
fn every_kind_in_all_its_units() {
    let point = Locale::Point;
    everywhere("2 1/4 oz", point, "≈63.8 g, ≈0.064 kg, =2.25 oz, ≈0.141 lb");
    everywhere("1 lb 3.5 oz", point, "≈552.8 g, ≈0.553 kg, =19.5 oz, ≈1.219 lb");
    everywhere("86,4 C", Locale::Comma, "=86,4 °C, =187,52 °F");
    everywhere("-40 C", point, "=−40 °C, =−40 °F");
    everywhere("188F", point, "≈86.7 °C, =188 °F");
    everywhere(
        "¾ tbsp",
        point,
        "≈11.1 mL, ≈0.011 L, =0.375 fl oz, ≈0.39 imp fl oz, =2¼ tsp, =¾ tbsp, ≈0.047 cup, ≈0.0029 gal",
    );
    everywhere(
        "1/3 cup",
        point,
        "≈78.9 mL, ≈0.079 L, ≈2.67 fl oz, ≈2.78 imp fl oz, =16 tsp, =5⅓ tbsp, =⅓ cup, ≈0.021 gal",
    );
    everywhere("3 1/4 in", point, "=82.55 mm, =8.255 cm, =3.25 in, ≈0.27 ft");
    everywhere("5' 2 1/2\"", point, "=1587.5 mm, =158.75 cm, =62.5 in, ≈5.21 ft");
    everywhere("8 %", point, "=8 %, =80 ‰");
    everywhere("0.9 g/mL", point, "=0.9 g/mL, =900 kg/m³");
}

/// Each tells how it came about: with its own values one comes to its result.
#[test]
fn how_a_conversion_came_about() {
    let whys = |text: &str| {
        let all = read_any(text, Locale::Point).unwrap().everywhere(Locale::Point);
        all.into_iter().map(|c| c.why).collect::<Vec<_>>()
    };
    let values = |why: &Why| {
        why.values.iter().map(|v| format!("{}: {}", v.name, v.shown)).collect::<Vec<_>>().join(", ")
    };
    let ounces = &whys("2 1/4 oz")[0];
    assert_eq!(values(ounces), "number: 2.25, 1 oz: 28.349523125 g");
    assert_eq!((ounces.result.as_str(), ounces.rounding.as_str()), ("63.78642703125 g", "63.8 g"));
    assert_eq!(values(&whys("8 %")[1]), "number: 8, 1 %: 10 ‰");
    assert_eq!((whys("8 %")[1].source.as_str(), ounces.source.is_empty()), ("", false));
    let celsius = &whys("188 F")[0];
    assert_eq!(
        values(celsius),
        "number: 188, zero of its scale: 32, size of its degree in the other: 0.555556, zero of the other: 0"
    );
    assert_eq!((celsius.result.as_str(), celsius.rounding.as_str()), ("86.666667 °C", "86.7 °C"));
}

#[test]
fn numbers_without_a_unit_and_drops() {
    let read = |text: &str| read_any(text, Locale::Point).unwrap();
    assert_eq!(read("86"), Any::Bare(Exact::whole(86)));
    assert_eq!(read("-5"), Any::Bare(Exact::whole(-5)));
    assert_eq!(read(" 2 1/2"), Any::Bare(Exact::ratio(5, 2)));
    for text in ["6 drops", "6drops", "6 Drop"] {
        assert_eq!(read(text), Any::Drops(Exact::whole(6)), "{text}");
    }
    assert_eq!(read("6 drops").everywhere(Locale::Point), []);
    assert!(matches!(read("5 ml"), Any::Volume(a) if a.unit == VolumeUnit::Millilitre));
    assert!(matches!(read("5 G"), Any::Mass(a) if a.unit == MassUnit::Gram));
    assert!(matches!(read("5 c"), Any::Temperature(a) if a.unit == TemperatureUnit::Celsius));
}

#[test]
fn what_cannot_be_read_is_told() {
    refused("", "No measure yet: type a number.");
    refused("wax", "“wax” is not a measure. Type it like 2 1/4 oz, ¾ tbsp or 86 °C.");
    refused("1,234", "“1,234” can mean 1.234 or 1234. Type the one you mean.");
    refused("1,234 mL", "“1,234 mL” can mean 1.234 mL or 1234 mL. Type the one you mean.");
    refused("-3 drops", "A measure cannot be below zero. Take the minus away.");
    refused("-1 g", "A weight cannot be below zero. Take the minus away.");
    refused("-300 C", "That is below absolute zero (−273.15 °C). Check the number and its unit.");
    refused("1/0 oz", "“1/0 oz” divides by zero. Check the fraction.");
    refused(
        "5 stone",
        "“stone” in “5 stone” is not a unit of measure here. Use g, kg, oz, lb, mL, L, fl oz, imp fl oz, tsp, tbsp, cup, gal, \
         mm, cm, in, ft, °C, °F, %, ‰, g/mL or kg/m³.",
    );
}

/// What the amount is of an ingredient whose drops and level spoons were weighed.
#[track_caller]
fn of_one(text: &str, wanted: &[&str]) {
    let mass = |g: i128, per: i128| Amount::new(Exact::ratio(g, per), MassUnit::Gram);
    let red = Ingredient {
        name: "Red".into(),
        density: None,
        drops: Some(DropTrial {
            weighings: vec![DropWeighing { drops: 50, mass: mass(105, 100) }],
            division: mass(1, 100),
        }),
        spoons: Some(SpoonTrial {
            spoon: Amount::new(Exact::ONE, VolumeUnit::Tablespoon),
            spoons: 4,
            mass: mass(36, 1),
            again: Vec::new(),
        }),
        supply: None,
    };
    let amount = read_any(text, Locale::Point).unwrap();
    let said: Vec<String> = measures(&red, &amount, Voice::default()).into_iter().map(|m| m.0).collect();
    assert_eq!(said, wanted, "{text}");
}

// 50 drops of 1.05 g are 21 mg each; 4 tbsp of 36 g are 9 g each, so 3 g a teaspoon: by hand.
#[test]
fn drops_spoons_and_grams_of_one_ingredient() {
    of_one("6 drops", &["0.13 g (0.0044 oz)"]);
    of_one("1/2 tbsp", &["4.5 g (0.16 oz)"]);
    of_one("9 g", &["428.571 drops", "14.8 mL", "3 tsp", "1 tbsp"]);
    of_one("8 %", &[]);
    let wax = Ingredient { density: Some(Density::base(Exact::ratio(9, 10))), ..Ingredient::default() };
    let pint = read_any("100 mL", Locale::Point).unwrap();
    assert_eq!(measures(&wax, &pint, Voice::default())[0].0, "90.0 g (3.17 oz)");
    assert_eq!(measures(&Ingredient::default(), &pint, Voice::default()), []);
}

// 8/108 and 8/92.
#[test]
fn a_share_is_said_in_the_other_convention_both_ways_round() {
    let said = |percent: i128| -> Vec<String> {
        let share = Share::base(Exact::ratio(percent, 100));
        conventions(share, Voice::default()).into_iter().map(|c| c.0).collect()
    };
    assert_eq!(
        said(8),
        ["8.00 % of the wax = 7.41 % of the whole", "8.00 % of the whole = 8.70 % of the wax"]
    );
    // Nothing is left for the wax.
    assert_eq!(said(100), ["100.00 % of the wax = 50.00 % of the whole"]);
}

#[test]
fn units_that_mean_different_things_are_said() {
    let remark = |text: &str| read_any(text, Locale::Point).unwrap().remark().unwrap_or_default();
    assert!(remark("2 oz").contains("fl oz"));
    assert!(remark("2 fl oz").contains("imp fl oz"));
    assert!(remark("2 tsp").contains("US"));
    assert_eq!(remark("2 g"), "");
    assert_eq!(symbols().len(), 22);
}
