//! What can be at a pot: the range of each kind of amount, and the sentence where a number is outside it.

use super::units::Row;
use super::{
    AmountError, Density, DensityUnit, Exact, Length, LengthUnit, Mass, MassUnit, Share, ShareUnit,
    Temperature, TemperatureUnit, Unit, Volume, VolumeUnit,
};

/// A kind of amount: its units and its range.
pub trait Quantity: Copy + PartialEq + PartialOrd + std::fmt::Debug + 'static {
    type Unit: Unit;
    /// What the sentence calls it: "weight", "temperature" …
    const NOUN: &'static str;
    /// How one may be typed, for the sentence.
    const EXAMPLE: &'static str;
    /// All that is known of the kind.
    const KIND: &'static Kind;

    /// From a number of base units, unchecked.
    fn from_base(number: Exact) -> Self;
    /// The number of base units.
    fn to_base(self) -> Exact;
    /// Refuses what cannot be at a pot.
    ///
    /// # Errors
    /// The sentence names the limit.
    fn check(self) -> Result<Self, AmountError> {
        (Self::KIND.check)(self.to_base()).map(|()| self)
    }

    /// From a number in the given unit, unchecked.
    fn of(number: Exact, unit: Self::Unit) -> Self {
        Self::from_base(unit.row().base(number))
    }
    /// The number of the given unit, exact.
    fn to(self, unit: Self::Unit) -> Exact {
        unit.row().number(self.to_base())
    }
}

/// What is known of a kind of amount, for the code that is the same for all of them.
#[derive(Debug)]
pub struct Kind {
    pub(super) noun: &'static str,
    pub(super) example: &'static str,
    pub(super) rows: &'static [&'static Row],
    /// Refuses a number of base units that cannot be at a pot.
    pub(super) check: fn(Exact) -> Result<(), AmountError>,
}

/// Refuses a number below zero or above `most` base units, which the sentence calls `words`.
fn within(number: Exact, most: i128, noun: &'static str, words: &'static str) -> Result<(), AmountError> {
    if number.is_negative() {
        Err(AmountError::Negative { noun })
    } else if number > Exact::whole(most) {
        Err(AmountError::TooLarge { noun, most: words })
    } else {
        Ok(())
    }
}

macro_rules! kind {
    ($name:ident, $unit:ty, $noun:literal, $example:literal, $check:expr) => {
        impl Quantity for $name {
            type Unit = $unit;
            const NOUN: &'static str = $noun;
            const EXAMPLE: &'static str = $example;
            const KIND: &'static Kind =
                &Kind { noun: $noun, example: $example, rows: <$unit>::ROWS, check: $check };
            fn from_base(number: Exact) -> Self {
                Self(number)
            }
            fn to_base(self) -> Exact {
                self.0
            }
        }
    };
}

kind!(Mass, MassUnit, "weight", "61 g or 2 1/4 oz", |g| within(g, 1_000_000, "weight", "1000 kg"));
kind!(Volume, VolumeUnit, "volume", "250 mL or 1 1/2 tbsp", |ml| within(ml, 1_000_000, "volume", "1000 L"));
kind!(Length, LengthUnit, "length", "75 mm or 3 1/4 in", |mm| within(mm, 2_000, "length", "2 m"));
kind!(Share, ShareUnit, "share", "8 %", |part| within(part, 1, "share", "100 %"));
kind!(Temperature, TemperatureUnit, "temperature", "185 °F or 85 °C", |celsius| {
    if celsius < Temperature::ABSOLUTE_ZERO.0 {
        Err(AmountError::BelowAbsoluteZero)
    } else if celsius > Temperature::HOTTEST.0 {
        Err(AmountError::TooLarge { noun: "temperature", most: "400 °C (752 °F)" })
    } else {
        Ok(())
    }
});
kind!(Density, DensityUnit, "density", "900 kg/m³ or 0.9 g/mL", |density| {
    if density.is_zero() {
        return Err(AmountError::NotAboveZero { noun: "density" });
    }
    // Osmium, the densest element, has 22.6 g/mL.
    within(density, 23, "density", "23 g/mL")
});

impl Temperature {
    /// Absolute zero, −273.15 °C (the SI definition).
    pub const ABSOLUTE_ZERO: Self = Self(Exact::ratio(-27_315, 100));
    /// Above this wax has no business: a caution, not a refusal.
    pub const CAUTION: Self = Self(Exact::whole(130));
    /// Above this nothing at a pot can be.
    pub const HOTTEST: Self = Self(Exact::whole(400));

    pub fn wants_caution(self) -> bool {
        self > Self::CAUTION
    }
}

/// Every kind, for saying what kind a misplaced unit is of.
pub(super) const KINDS: [&Kind; 6] =
    [Mass::KIND, Volume::KIND, Length::KIND, Temperature::KIND, Share::KIND, Density::KIND];
