//! Showing amounts: rounded once, halves to the even digit, in the person's own decimal sign.

use super::{Amount, Exact, Mass, MassUnit, Quantity};
use serde::{Deserialize, Serialize};

/// How numbers are written for this person.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default, Serialize, Deserialize)]
pub enum Locale {
    /// `1 234.5`
    #[default]
    Point,
    /// `1 234,5`
    Comma,
}

/// An amount as shown: the number and its unit apart, so that a view can set them in different sizes.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Shown {
    pub number: String,
    pub unit: &'static str,
}

impl std::fmt::Display for Shown {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} {}", self.number, self.unit)
    }
}

/// `number` rounded to a multiple of `step`, written with the digits that `step` has.
pub fn decimal(number: Exact, step: Exact, locale: Locale) -> String {
    let _ = (number, step, locale);
    String::new()
}

/// The value in `unit`, rounded once to the unit's step (or a scale's division, in that unit, where given).
pub fn show<Q: Quantity>(value: Q, unit: Q::Unit, step: Option<Exact>, locale: Locale) -> Shown {
    let _ = (value, unit, step, locale);
    Shown { number: String::new(), unit: "" }
}

/// A mass in the unit the person likes first, with the other one beside it: `("61.0 g", "2.15 oz")`.
pub fn show_both(value: Mass, first: MassUnit, division: Option<Mass>, locale: Locale) -> (Shown, Shown) {
    let _ = division;
    (show(value, first, None, locale), show(value, first, None, locale))
}

/// The amount as it was typed, exactly: a terminating decimal or a mixed fraction. Read back it is the same amount.
pub fn show_exact<Q: Quantity>(amount: Amount<Q>, locale: Locale) -> String {
    let _ = (amount, locale);
    String::new()
}
