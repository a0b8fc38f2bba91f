//! How amounts are said to one person in sentences and whys.

use super::{
    Amount, Density, Exact, LengthUnit, Locale, Mass, MassUnit, Quantity, Share, ShareUnit, TemperatureUnit,
    decimal, show, show_both, show_density, show_exact,
};

/// Which units come first for this person, and which decimal sign.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Voice {
    pub mass: MassUnit,
    pub temperature: TemperatureUnit,
    pub length: LengthUnit,
    pub locale: Locale,
}

impl Default for Voice {
    fn default() -> Self {
        Self {
            mass: MassUnit::Gram,
            temperature: TemperatureUnit::Celsius,
            length: LengthUnit::Millimetre,
            locale: Locale::Point,
        }
    }
}

impl Voice {
    /// A mass to the thousandth of the unit that comes first, as a why shows it before rounding: `60.951 g`.
    pub fn mass(self, value: Mass) -> String {
        show(value, self.mass, Some(Exact::ratio(1, 1000)), self.locale).to_string()
    }

    /// A mass in both systems: `61.0 g (2.15 oz)`.
    pub fn both(self, value: Mass) -> String {
        let (first, other) = show_both(value, self.mass, None, self.locale);
        format!("{first} ({other})")
    }

    /// A share in percent: `7.41 %`.
    pub fn share(self, value: Share) -> String {
        show(value, ShareUnit::Percent, None, self.locale).to_string()
    }

    /// Any amount in the given unit, rounded as that unit is: `188 °F`.
    pub fn amount<Q: Quantity>(self, value: Q, unit: Q::Unit) -> String {
        show(value, unit, None, self.locale).to_string()
    }

    /// An amount as it was typed: `2 1/4 oz`.
    pub fn typed<Q: Quantity>(self, amount: Amount<Q>) -> String {
        show_exact(amount, self.locale)
    }

    /// A mass in milligrams to the tenth, for drops: `20.9 mg`.
    pub fn milligrams(self, value: Mass) -> String {
        format!("{} mg", decimal(value.in_base() * Exact::whole(1000), Exact::ratio(1, 10), self.locale))
    }

    /// A density: `0.865 g/mL`.
    pub fn density(self, value: Density) -> String {
        show_density(value, self.locale).to_string()
    }

    /// A bare number to three decimal places.
    pub fn number(self, value: Exact) -> String {
        decimal(value, Exact::ratio(1, 1000), self.locale)
    }
}
