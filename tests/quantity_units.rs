//! Every conversion factor against its published value, and all of them against a general-purpose units crate.
#![allow(clippy::indexing_slicing, clippy::unwrap_used)]

use potside::quantity::*;
use proptest::prelude::*;
use uom::si::{f64 as si, length, mass, thermodynamic_temperature as temperature, volume};

use LengthUnit::*;
use MassUnit::*;
use ShareUnit::*;
use TemperatureUnit::*;
use VolumeUnit::*;

/// One of `from` is exactly `num/den` of `to`, and back.
#[track_caller]
fn is<Q: Quantity>(from: Q::Unit, to: Q::Unit, num: i128, den: i128) {
    assert_eq!(Q::of(Exact::ONE, from).to(to), Exact::ratio(num, den));
    assert_eq!(Q::of(Exact::ratio(num, den), to).to(from), Exact::ONE);
}

/// One of `from`, written with as many digits as the published value has, is that value.
#[track_caller]
fn is_printed<Q: Quantity>(from: Q::Unit, to: Q::Unit, printed: &str) {
    let places = printed.split_once('.').map_or(0, |p| p.1.len() as u32);
    let step = Exact::ratio(1, 10_i128.pow(places));
    assert_eq!(decimal(Q::of(Exact::ONE, from).to(to), step, Locale::Point), printed);
}

#[test]
fn exact_factors() {
    // NIST Handbook 44 (2014), App. C, section 4, p. C-14/15.
    is::<Mass>(Ounce, Gram, 45_359_237, 1_600_000);
    is_printed::<Mass>(Ounce, Gram, "28.349523125");
    // The same, section 5, p. C-20, "(exactly)".
    is::<Mass>(Pound, Gram, 45_359_237, 100_000);
    is_printed::<Mass>(Pound, Gram, "453.59237");
    is::<Mass>(Pound, Ounce, 16, 1);
    is::<Mass>(Kilogram, Gram, 1000, 1);
    // A pound is 7000 grains of 64.79891 mg: the same, section 5.
    assert_eq!(Mass::of(Exact::ONE, Pound), Mass::base(Exact::ratio(7000 * 6_479_891, 100_000_000)));
    // A gallon of 231 in³ (HB44, App. C), by the inch of 25.4 mm (16 CFR 500.19(a)), is 128 fl oz.
    is::<Volume>(UsFluidOunce, Millilitre, 231 * 127 * 127 * 127, 128 * 125 * 1000);
    is::<Volume>(UsFluidOunce, Millilitre, 473_176_473, 16_000_000);
    is_printed::<Volume>(UsFluidOunce, Millilitre, "29.5735295625");
    // The imperial gallon of 4546.09 mL is 160 imp fl oz: SP 811, B.8.
    is::<Volume>(ImperialFluidOunce, Millilitre, 454_609, 100 * 160);
    is_printed::<Volume>(ImperialFluidOunce, Millilitre, "28.4130625");
    is::<Volume>(Teaspoon, Millilitre, 157_725_491, 32_000_000);
    is::<Volume>(Tablespoon, Millilitre, 473_176_473, 32_000_000);
    is_printed::<Volume>(Tablespoon, Millilitre, "14.78676478125");
    is::<Volume>(Cup, Millilitre, 473_176_473, 2_000_000);
    // NIST Handbook 44, Appendix C: a gallon is 231 cubic inches.
    is::<Volume>(Gallon, Millilitre, 473_176_473, 125_000);
    is_printed::<Volume>(Cup, Millilitre, "236.5882365");
    is::<Volume>(Litre, Millilitre, 1000, 1);
    // Marked exact in 16 CFR 500.19(a).
    is::<Length>(Inch, Millimetre, 254, 10);
    is::<Length>(Foot, Millimetre, 3048, 10);
    is::<Length>(Centimetre, Millimetre, 10, 1);
    is::<Share>(Percent, PerThousand, 10, 1);
    is::<Density>(DensityUnit::GramPerMillilitre, DensityUnit::KilogramPerCubicMetre, 1000, 1);
}

/// NIST SP 811 (2008), B.8, prints seven digits.
#[test]
fn printed_factors() {
    is_printed::<Mass>(Ounce, Gram, "28.34952");
    is_printed::<Mass>(Pound, Kilogram, "0.4535924");
    is_printed::<Volume>(UsFluidOunce, Millilitre, "29.57353");
    is_printed::<Volume>(ImperialFluidOunce, Millilitre, "28.41306");
    is_printed::<Volume>(Teaspoon, Millilitre, "4.928922");
    is_printed::<Volume>(Tablespoon, Millilitre, "14.78676");
    is_printed::<Volume>(Cup, Millilitre, "236.5882");
    // 1 oz/US gal = 7.489152 kg/m³, 1 oz/in³ = 1729.994 kg/m³: the same.
    let ounce = |fluid_ounces, millilitres: Exact| {
        let volume = Volume::of(Exact::whole(fluid_ounces), UsFluidOunce) + Volume::base(millilitres);
        Density::from(Mass::of(Exact::ONE, Ounce), volume).unwrap().to(DensityUnit::KilogramPerCubicMetre)
    };
    assert_eq!(decimal(ounce(128, Exact::ZERO), Exact::ratio(1, 1_000_000), Locale::Point), "7.489152");
    let cubic_inch = Exact::ratio(16_387_064, 1_000_000);
    assert_eq!(decimal(ounce(0, cubic_inch), Exact::ratio(1, 1000), Locale::Point), "1729.994");
}

#[test]
fn household_measures() {
    // HB44, App. C, p. C-19: a tablespoon is 3 teaspoons and half a fluid ounce, exactly.
    is::<Volume>(Tablespoon, Teaspoon, 3, 1);
    is::<Volume>(Tablespoon, UsFluidOunce, 1, 2);
    // HB44, App. C, section 5, p. C-17: a cup is 8 fl oz, exactly; so it is 16 tbsp and 48 tsp.
    is::<Volume>(Cup, UsFluidOunce, 8, 1);
    is::<Volume>(Gallon, UsFluidOunce, 128, 1);
    is::<Volume>(Cup, Tablespoon, 16, 1);
    is::<Volume>(Cup, Teaspoon, 48, 1);
    // HB44, App. C, p. C-18: an imperial fluid ounce is 0.961 of a US one.
    is_printed::<Volume>(ImperialFluidOunce, UsFluidOunce, "0.961");
    // HB44, App. C, section 5, p. C-15 and C-19 rounds the spoons to the millilitre.
    is_printed::<Volume>(Teaspoon, Millilitre, "5");
    is_printed::<Volume>(Tablespoon, Millilitre, "15");
    // The spoons of food labels are other ones: 21 CFR 101.9(b)(5)(viii).
    assert_ne!(Volume::of(Exact::ONE, Teaspoon), Volume::base(Exact::whole(5)));
    assert_ne!(Volume::of(Exact::ONE, Tablespoon), Volume::base(Exact::whole(15)));
    assert_ne!(Volume::of(Exact::ONE, Cup), Volume::base(Exact::whole(240)));
}

/// The factors of 16 CFR 500.19(a) have six digits and are not the exact ones; the exact ones round to them.
#[test]
fn the_legal_factors_are_rounded() {
    assert_eq!(Mass::of(Exact::whole(1000), Ounce), Mass::base(Exact::ratio(28_349_523_125, 1_000_000)));
    assert_ne!(Mass::of(Exact::whole(1000), Ounce), Mass::base(Exact::ratio(283_495, 10)));
    assert_ne!(Mass::of(Exact::ONE, Pound), Mass::base(Exact::ratio(453_592, 1000)));
    is_printed::<Mass>(Ounce, Gram, "28.3495");
    is_printed::<Mass>(Pound, Gram, "453.592");
    is_printed::<Mass>(Gram, Ounce, "0.0352740");
    is_printed::<Mass>(Kilogram, Pound, "2.20462");
    is_printed::<Volume>(UsFluidOunce, Millilitre, "29.5735");
    is_printed::<Volume>(Millilitre, UsFluidOunce, "0.0338140");
    // 1 in³ = 16.3871 cm³.
    let inch = Length::of(Exact::ONE, Inch).to(Centimetre);
    assert_eq!(decimal(inch * inch * inch, Exact::ratio(1, 10_000), Locale::Point), "16.3871");
    assert_eq!(inch * inch, Exact::ratio(64_516, 10_000));
}

#[test]
fn temperatures() {
    // NIST SP 811 (2008), B.8: (F − 32) / 1.8; the fixed points of water and where the two scales meet.
    for (f, num, den) in [
        (32, 0, 1),
        (212, 100, 1),
        (-40, -40, 1),
        (140, 60, 1),
        (185, 85, 1),
        (120, 440, 9),
        (160, 640, 9),
        (175, 715, 9),
    ] {
        let temperature = Temperature::of(Exact::whole(f), Fahrenheit);
        assert_eq!(temperature.to(Celsius), Exact::ratio(num, den), "{f} °F");
        assert_eq!(temperature.to(Fahrenheit), Exact::whole(f));
    }
}

/// No chain of conversions changes a value.
fn round_and_round<Q: Quantity>(number: Exact, order: &[usize]) {
    let pick = |at: usize| Q::Unit::all()[at % Q::Unit::all().len()];
    let start = pick(order[0]);
    let mut value = Q::of(number, start);
    for &at in order {
        let unit = pick(at);
        value = Q::of(value.to(unit), unit);
    }
    assert_eq!(value.to(start), number);
}

/// The crate takes its factors from the seven digits that SP 811 prints, so they agree to half a unit of the seventh.
#[track_caller]
fn agrees(ours: Exact, theirs: f64) {
    let ours = ours.to_f64();
    assert!((ours - theirs).abs() <= 5e-7 * theirs, "{ours} here, {theirs} there");
}

/// Mass = density × volume, each way; the kilogram in a litre of water of 1795 is a gram in a millilitre.
#[test]
fn mass_density_and_volume() {
    let (mass, volume) = (Mass::of(Exact::whole(5), Gram), Volume::of(Exact::whole(4), Millilitre));
    let density = Density::from(mass, volume).unwrap();
    assert_eq!(density.to(DensityUnit::GramPerMillilitre), Exact::ratio(5, 4));
    assert_eq!(density.mass_of(Volume::of(Exact::whole(8), Millilitre)), Mass::of(Exact::whole(10), Gram));
    assert_eq!(
        density.volume_of(Mass::of(Exact::whole(10), Gram)),
        Some(Volume::of(Exact::whole(8), Millilitre))
    );
    assert_eq!(Density::from(mass, Volume::ZERO), None);
    assert_eq!(Density::base(Exact::ZERO).volume_of(mass), None);
    let litre = Volume::of(Exact::ONE, Litre);
    assert_eq!(Density::from(Mass::of(Exact::ONE, Kilogram), litre).unwrap().in_base(), Exact::ONE);
    assert_eq!(Amount::<Mass>::new(Exact::ratio(7, 2), Ounce).number(), Exact::ratio(7, 2));
}

proptest! {
    #[test]
    fn conversions_come_back(num in -10_i128.pow(12)..10_i128.pow(12), den in 1_i128..1000, order in prop::collection::vec(0_usize..8, 1..12)) {
        let number = Exact::ratio(num, den);
        round_and_round::<Mass>(number, &order);
        round_and_round::<Volume>(number, &order);
        round_and_round::<Length>(number, &order);
        round_and_round::<Temperature>(number, &order);
        round_and_round::<Share>(number, &order);
        round_and_round::<Density>(number, &order);
    }

    #[test]
    fn a_second_oracle_agrees(thousandths in 1_i64..10_000_000) {
        let (n, x) = (Exact::ratio(thousandths.into(), 1000), thousandths as f64 / 1000.0);
        agrees(Mass::of(n, Ounce).to(Gram), si::Mass::new::<mass::ounce>(x).get::<mass::gram>());
        agrees(Mass::of(n, Pound).to(Ounce), si::Mass::new::<mass::pound>(x).get::<mass::ounce>());
        agrees(Mass::of(n, Gram).to(Pound), si::Mass::new::<mass::gram>(x).get::<mass::pound>());
        let litres = |v: si::Volume| v.get::<volume::milliliter>();
        agrees(Volume::of(n, UsFluidOunce).to(Millilitre), litres(si::Volume::new::<volume::fluid_ounce>(x)));
        agrees(Volume::of(n, ImperialFluidOunce).to(Millilitre), litres(si::Volume::new::<volume::fluid_ounce_imperial>(x)));
        agrees(Volume::of(n, Teaspoon).to(Millilitre), litres(si::Volume::new::<volume::teaspoon>(x)));
        agrees(Volume::of(n, Tablespoon).to(Millilitre), litres(si::Volume::new::<volume::tablespoon>(x)));
        agrees(Volume::of(n, Cup).to(Millilitre), litres(si::Volume::new::<volume::cup>(x)));
        agrees(Length::of(n, Inch).to(Millimetre), si::Length::new::<length::inch>(x).get::<length::millimeter>());
        agrees(Length::of(n, Foot).to(Millimetre), si::Length::new::<length::foot>(x).get::<length::millimeter>());
        let warm = si::ThermodynamicTemperature::new::<temperature::degree_fahrenheit>(x);
        let off = Temperature::of(n, Fahrenheit).to(Celsius).to_f64() - warm.get::<temperature::degree_celsius>();
        prop_assert!(off.abs() < 1e-9 * x.max(1.0), "off by {off} °C");
    }
}
