//! Showing amounts: rounded once, halves to the even digit (NIST SP 811, B.7.1), in the person's own decimal sign.
//!
//! Celsius is shown to 0.1 and Fahrenheit whole. (NIST SP 1038, 4.4.1.3 rounds whole Fahrenheit to the nearest
//! 0.5 °C; that is a rule for printed limits, and too coarse for a thermometer beside a pot.)

use super::number::vulgar_char;
use super::read::written;
use super::{Amount, Density, DensityUnit, Exact, Mass, MassUnit, Quantity, Row, Unit, Way};
use crate::wire::wire_enum;

/// How numbers are written for this person.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub enum Locale {
    /// `12 345.6`
    #[default]
    Point,
    /// `12 345,6`
    Comma,
}

wire_enum!(Locale { Point, Comma });

impl Locale {
    /// The decimal sign.
    pub const fn sign(self) -> char {
        match self {
            Self::Point => '.',
            Self::Comma => ',',
        }
    }
}

/// An amount as shown: the number and its unit apart, so that a view can set them in different sizes.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Shown {
    pub number: String,
    pub unit: &'static str,
}

impl std::fmt::Display for Shown {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.number)?;
        f.write_str(" ")?;
        f.write_str(self.unit)
    }
}

/// Between groups of three digits, from five digits on: the narrow no-break space.
const GROUP: char = '\u{202f}';
pub(super) const MINUS: &str = "−";
/// Most decimal places that are shown.
const MOST: u32 = 12;

/// `number` rounded to a multiple of `step`, written with the digits that `step` has; halves go to the even
/// multiple. A step that never ends as a decimal, or is zero, is written with the digits the result needs, twelve at most.
pub fn decimal(number: Exact, step: Exact, locale: Locale) -> String {
    let rounded = number.round_to(step);
    let places = [step, rounded]
        .into_iter()
        .filter(|n| !n.is_zero())
        .find_map(Exact::places)
        .unwrap_or(MOST)
        .min(MOST);
    sign_and_digits((rounded * Exact::whole(10_i128.pow(places))).round(), places, locale)
}

/// `digits / 10^places`, with minus, groups and the decimal sign.
pub(super) fn sign_and_digits(digits: i128, places: u32, locale: Locale) -> String {
    let text = digits.unsigned_abs().to_string();
    let places = places as usize;
    let zeros = "0".repeat((places + 1).saturating_sub(text.len()));
    let whole = (zeros.len() + text.len()).saturating_sub(places);
    let mut out = String::from(if digits < 0 { MINUS } else { "" });
    for (at, c) in zeros.chars().chain(text.chars()).enumerate() {
        if at == whole {
            out.push(locale.sign());
        } else if at > 0 && at < whole && whole > 4 && (whole - at).is_multiple_of(3) {
            out.push(GROUP);
        }
        out.push(c);
    }
    out
}

/// The value in `unit`, rounded once to `step` (a scale's division in that unit) or else to the unit's own step.
///
/// Spoons and cups are shown in eighths, `1½ tbsp`. Without a step, less than ten steps of a weight, volume, length
/// or share is shown finer, so that two digits still tell.
pub fn show<Q: Quantity>(value: Q, unit: Q::Unit, step: Option<Exact>, locale: Locale) -> Shown {
    shown(value.to_base(), unit.row(), step, locale)
}

fn shown(base: Exact, row: &Row, step: Option<Exact>, locale: Locale) -> Shown {
    Shown { number: number(row.number(base), row, step, locale), unit: row.symbol }
}

pub(super) fn number(number: Exact, row: &Row, step: Option<Exact>, locale: Locale) -> String {
    if let Some(step) = step {
        return decimal(number, step, locale);
    }
    let mut step = row.step;
    if row.way == Way::Eighths {
        let rounded = number.round_to(step);
        if number.is_zero() || !rounded.is_zero() {
            return mixed(rounded, locale);
        }
        // Less than half an eighth: the decimals still tell.
        step = Exact::ratio(1, 100);
    }
    if row.way != Way::Plain && !number.is_zero() {
        let ten = Exact::whole(10);
        let smallest = Exact::ratio(1, 1_000_000);
        while number.abs() < step * ten && step > smallest {
            step = step / ten;
        }
    }
    decimal(number, step, locale)
}

/// A mixed fraction: `1½` where the fraction has a character of its own, otherwise `2 3/11`.
pub(super) fn mixed(number: Exact, locale: Locale) -> String {
    let whole = number.abs().floor();
    let rest = number.abs() - Exact::whole(whole);
    let mut out = String::from(if number.is_negative() { MINUS } else { "" });
    if whole != 0 || rest.is_zero() {
        out.push_str(&sign_and_digits(whole, 0, locale));
    }
    if let Some(c) = vulgar_char(rest) {
        out.push(c);
    } else if !rest.is_zero() {
        let (above, below) = rest.parts();
        out.push_str(if whole != 0 { " " } else { "" });
        out.push_str(&[&above.to_string(), "/", &below.to_string()].concat());
    }
    out
}

/// A mass in the unit the person likes first, with the other system's beside it: `("61.0 g", "2.15 oz")`.
///
/// The first is rounded to the scale's division where one is given and that ends as a decimal in this unit; where it
/// does not (0.1 g in ounces), to the power of ten below it, and the other, in which it ends, to the division: that is what
/// the scale shows. Else the other is a reading aid, to its own step: grams or ounces, from 10 kg on kilograms or pounds.
pub fn show_both(value: Mass, first: MassUnit, division: Option<Mass>, locale: Locale) -> (Shown, Shown) {
    let division = division.filter(|d| !d.is_zero());
    let ends = |d: &Exact| d.places().is_some_and(|places| places <= 6);
    let step = division.map(|d| d.to(first));
    let own = step.filter(ends);
    let heavy = value.in_base().abs() >= Exact::whole(10_000);
    let other = match (first, heavy) {
        (MassUnit::Gram | MassUnit::Kilogram, false) => MassUnit::Ounce,
        (MassUnit::Gram | MassUnit::Kilogram, true) => MassUnit::Pound,
        (MassUnit::Ounce | MassUnit::Pound, false) => MassUnit::Gram,
        (MassUnit::Ounce | MassUnit::Pound, true) => MassUnit::Kilogram,
    };
    let beside = division.filter(|_| own.is_none()).map(|d| d.to(other)).filter(ends);
    let step = own.or_else(|| step.map(power_of_ten_below));
    (show(value, first, step, locale), show(value, other, beside, locale))
}

fn power_of_ten_below(limit: Exact) -> Exact {
    let mut power = Exact::ONE;
    while power > limit && power > Exact::ratio(1, 1_000_000) {
        power = power / Exact::whole(10);
    }
    power
}

/// A density in g/mL, to 0.001.
pub fn show_density(density: Density, locale: Locale) -> Shown {
    show(density, DensityUnit::GramPerMillilitre, None, locale)
}

/// The amount as it was typed, exactly: a terminating decimal (for spoons in eighths, a fraction) or a mixed fraction. Read back in the same locale it is
/// the same amount, wherever it is one that can be typed (15 digits, fractions down to thousandths).
pub fn show_exact<Q: Quantity>(amount: Amount<Q>, locale: Locale) -> String {
    exact(amount.value.to_base(), amount.unit.row(), locale)
}

fn exact(base: Exact, row: &Row, locale: Locale) -> String {
    let number = row.number(base);
    let mut out = match written(number) {
        Some((digits, places)) if row.way != Way::Eighths || number.round_to(row.step) != number => {
            sign_and_digits(digits, places, locale)
        }
        _ => mixed(number, locale),
    };
    out.push(' ');
    out.push_str(row.symbol);
    out
}
