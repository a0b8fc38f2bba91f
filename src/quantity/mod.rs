//! Amounts: exact inside, parsed as people type them, rounded once on showing.

mod any;
mod error;
mod exact;
mod kind;
mod money;
mod number;
mod read;
mod show;
mod split;
mod units;
mod voice;
mod why;
mod wide;
mod wire;

pub use any::{Any, Converted, read_any, symbols};
pub use error::AmountError;
pub use exact::Exact;
pub use kind::Quantity;
pub use money::{Currency, Money};
pub use read::{read, read_count, read_density, read_number};
pub use show::{Locale, Shown, decimal, show, show_both, show_density, show_exact};
pub use split::apportion;
pub use units::{DensityUnit, LengthUnit, MassUnit, Row, ShareUnit, TemperatureUnit, Unit, VolumeUnit, Way};
pub use voice::Voice;
pub use why::{Why, WhyValue};

/// An amount with the unit it was typed in. Kept as the text a person would type: `"2.15 oz"`.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Amount<Q: Quantity> {
    pub value: Q,
    pub unit: Q::Unit,
}

impl<Q: Quantity> Amount<Q> {
    pub fn new(number: Exact, unit: Q::Unit) -> Self {
        Self { value: Q::of(number, unit), unit }
    }
    /// The number as it stands before the unit.
    pub fn number(self) -> Exact {
        self.value.to(self.unit)
    }
}

macro_rules! linear {
    ($(#[$doc:meta])* $name:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
        pub struct $name(Exact);

        impl $name {
            pub const ZERO: Self = Self(Exact::ZERO);
            pub const fn base(number: Exact) -> Self { Self(number) }
            /// The number of base units (see the type).
            pub const fn in_base(self) -> Exact { self.0 }
            pub const fn is_zero(self) -> bool { self.0.is_zero() }
            pub fn times(self, by: Exact) -> Self { Self(self.0 * by) }
            /// The quotient of two of a kind, none where `by` is zero.
            pub fn over(self, by: Self) -> Option<Exact> { self.0.checked_div(by.0) }
            /// The difference, or zero where it would be negative.
            pub fn less(self, by: Self) -> Self { if by.0 > self.0 { Self::ZERO } else { Self(self.0 - by.0) } }
            /// The nearest multiple of `step`.
            pub fn round_to(self, step: Self) -> Self { Self(self.0.round_to(step.0)) }
        }
        impl std::ops::Add for $name { type Output = Self; fn add(self, o: Self) -> Self { Self(self.0 + o.0) } }
        impl std::ops::Sub for $name { type Output = Self; fn sub(self, o: Self) -> Self { Self(self.0 - o.0) } }
        impl std::iter::Sum for $name {
            fn sum<I: Iterator<Item = Self>>(i: I) -> Self { i.fold(Self::ZERO, |a, b| a + b) }
        }
    };
}

linear!(
    /// A mass, in grams.
    Mass
);
linear!(
    /// A volume, in millilitres.
    Volume
);
linear!(
    /// A length, in millimetres.
    Length
);
linear!(
    /// A share of a whole: 1 is all of it.
    Share
);

/// A temperature, in degrees Celsius.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct Temperature(Exact);

impl Temperature {
    pub const fn celsius(number: Exact) -> Self {
        Self(number)
    }
    pub const fn in_celsius(self) -> Exact {
        self.0
    }
}

/// Grams per millilitre.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct Density(Exact);

impl Density {
    pub const fn base(number: Exact) -> Self {
        Self(number)
    }
    pub const fn in_base(self) -> Exact {
        self.0
    }
    /// The density that this mass in this volume has, none where the volume is zero.
    pub fn from(mass: Mass, volume: Volume) -> Option<Self> {
        mass.in_base().checked_div(volume.in_base()).map(Self)
    }
    pub fn mass_of(self, volume: Volume) -> Mass {
        Mass::base(self.0 * volume.in_base())
    }
    pub fn volume_of(self, mass: Mass) -> Option<Volume> {
        mass.in_base().checked_div(self.0).map(Volume::base)
    }
}
