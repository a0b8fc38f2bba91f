//! The declaration in both unit systems, never more than there is.

use crate::quantity::{Exact, Length, Locale, Mass, Voice, decimal};

const SOURCE: &str =
    "16 CFR 500.9 (by the examples in 500.27), 500.11, 500.19 and 501.7, compared on 26 November 2026";

/// The factors that 16 CFR 500.19(a) orders, "these and none others". The two part in the seventh digit: the one that
/// declares less is taken.
const OUNCE: Exact = Exact::ratio(283_495, 10_000);
const OUNCES: Exact = Exact::ratio(352_740, 10_000_000);

/// A declaration as it stands on the label.
#[derive(Clone, PartialEq, Debug)]
pub struct Declaration {
    /// `Net wt. 6.34 oz (180 g)`
    pub text: String,
    /// What is enforced: the larger of the two, by the factors of the law. None for candles declared by count and length.
    pub enforced: Option<Mass>,
    pub source: &'static str,
}

/// Rounded down to a multiple of `step`.
fn down(number: Exact, step: Exact) -> Exact {
    Exact::whole((number / step).floor()) * step
}

/// Without zeros at the end: `8 oz`, `6.5 oz`.
pub(in crate::desk) fn plain(number: Exact, most: u32, locale: Locale) -> String {
    let places = number.places().unwrap_or(most).min(most);
    decimal(number, Exact::ratio(1, 10_i128.pow(places)), locale)
}

/// The declaration of a weight: ounces below a pound, then pounds with the remainder in ounces, to 0.01 oz; grams below
/// a kilogram, then kilograms. Both are rounded down, so neither says more than there is.
pub fn declare(mass: Mass) -> Declaration {
    let grams = mass.in_base().max(Exact::ZERO);
    let hundredth = Exact::ratio(1, 100);
    let ounces = down((grams * OUNCES).min(grams / OUNCE), hundredth);
    let sixteen = Exact::whole(16);
    let pounds = Exact::whole((ounces / sixteen).floor());
    let rest = ounces - pounds * sixteen;
    let oz = |ounces: Exact| [&plain(ounces, 2, Locale::Point), " oz"].concat();
    let inch_pound = match (pounds.is_zero(), rest.is_zero()) {
        (true, _) => oz(ounces),
        (false, true) => [&plain(pounds, 0, Locale::Point), " lb"].concat(),
        (false, false) => [&plain(pounds, 0, Locale::Point), " lb ", &oz(rest)].concat(),
    };
    let (metric, metric_grams) = metric(grams, Locale::Point);
    Declaration {
        text: ["Net wt. ", &inch_pound, " (", &metric, ")"].concat(),
        enforced: Some(enforced(ounces, metric_grams)),
        source: SOURCE,
    }
}

/// The nominal quantity by the rules of the European Union, which ask for no ounces.
pub fn declare_metric(mass: Mass) -> Declaration {
    let (text, grams) = metric(mass.in_base().max(Exact::ZERO), Locale::Point);
    let source = "Directive 76/211/EEC, Annex I, as gathered on 25 November 2026";
    Declaration { text, enforced: Some(Mass::base(grams)), source }
}

/// The larger of two declared quantities, in ounces and in grams: the one that is enforced.
pub fn enforced(ounces: Exact, grams: Exact) -> Mass {
    Mass::base(grams.max(ounces * OUNCE))
}

/// Why so little cannot be declared: rounded down, nothing would be left of it. None where it can.
pub fn nothing(mass: Mass) -> Option<&'static str> {
    let least = OUNCE * Exact::ratio(1, 100);
    (mass.in_base() < least)
        .then_some("less than 0.01 oz (0.3 g) cannot be declared. Leave it empty to have it reckoned.")
}

/// Why a candle so short cannot be declared by its length. None where it can.
pub fn no_length(length: Length) -> Option<&'static str> {
    (length.in_base() < Exact::ratio(254, 160))
        .then_some("less than 1/16 in (1.6 mm) is no candle. Measure it again.")
}

/// What is said of a declared weight that is more than the fill; none where it is not.
pub fn overstated(declared: Mass, fill: Mass, voice: Voice) -> Option<String> {
    (declared > fill).then(|| {
        let (declared, fill) = (voice.both(declared), voice.both(fill));
        let end = ". More than is in it may not stand on a label: declare less, or fill more.";
        ["It declares ", &declared, ", and the vessel is filled with ", &fill, end].concat()
    })
}

/// Grams or kilograms of at most three digits, two below 100 g (16 CFR 500.19(b)), rounded down; and how many grams that
/// is.
fn metric(grams: Exact, locale: Locale) -> (String, Exact) {
    let thousand = Exact::whole(1000);
    let (ten, hundred) = (Exact::whole(10), Exact::whole(100));
    let (tenth, hundredth) = (Exact::ratio(1, 10), Exact::ratio(1, 100));
    let (number, unit, size, step) = match (grams, grams / thousand) {
        (g, _) if g < ten => (g, " g", Exact::ONE, tenth),
        (g, _) if g < thousand => (g, " g", Exact::ONE, Exact::ONE),
        (_, kg) if kg < ten => (kg, " kg", thousand, hundredth),
        (_, kg) if kg < hundred => (kg, " kg", thousand, tenth),
        (_, kg) => (kg, " kg", thousand, Exact::ONE),
    };
    let shown = down(number, step);
    ([&plain(shown, 2, locale), unit].concat(), shown * size)
}

/// How many grams stand there where so much is declared.
pub(super) fn in_grams(mass: Mass) -> Exact {
    metric(mass.in_base(), Locale::Point).1
}

/// The same by count and length where no inches are asked for: in centimetres, to a millimetre, rounded down.
pub fn declare_tapers_metric(count: u32, length: Length) -> Declaration {
    let text = of_tapers(count) + &centimetres(length);
    let source = "Directive 76/211/EEC is for weight and volume, as gathered on 25 November 2026; count and length: common practice";
    Declaration { text, enforced: None, source }
}

fn of_tapers(count: u32) -> String {
    count.to_string() + if count == 1 { " candle, " } else { " candles, each " }
}

fn centimetres(length: Length) -> String {
    let tenth = Exact::ratio(1, 10);
    [&plain(down(length.in_base() * tenth, tenth), 1, Locale::Point), " cm"].concat()
}

/// Tapers and irregular decorative candles, dipped or moulded, go by count and length (16 CFR 501.7: they are excused
/// from the diameter). Below a foot in inches, from a foot on with the remainder; to a sixteenth, rounded down.
pub fn declare_tapers(count: u32, length: Length) -> Declaration {
    let inches = down(length.in_base() / Exact::ratio(254, 10), Exact::ratio(1, 16));
    let feet = (inches / Exact::whole(12)).floor();
    let rest = inches - Exact::whole(feet * 12);
    let mut said = String::new();
    if feet > 0 {
        said.push_str(&[&feet.to_string(), " ft"].concat());
    }
    if feet == 0 || !rest.is_zero() {
        let whole = rest.floor();
        let (above, below) = (rest - Exact::whole(whole)).parts();
        said.push_str(if feet > 0 { " " } else { "" });
        if whole > 0 || above == 0 {
            said.push_str(&whole.to_string());
        }
        if above > 0 {
            let gap = if whole > 0 { " " } else { "" };
            said.push_str(&[gap, &above.to_string(), "/", &below.to_string()].concat());
        }
        said.push_str(" in");
    }
    let text = [&of_tapers(count), &said, " (", &centimetres(length), ")"].concat();
    Declaration { text, enforced: None, source: SOURCE }
}
