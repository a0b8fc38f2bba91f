//! The units, their exact factors, and every spelling that is read.
//!
//! Factors: NIST SP 811 (2008) App. B and NIST Handbook 44 App. C; °F by definition.

use super::{AmountError, Exact, Length, Mass, Quantity, Share, Temperature, Unit, Volume};
use serde::{Deserialize, Serialize};

macro_rules! unit {
    ($(#[$doc:meta])* $name:ident { $($variant:ident $symbol:literal $spellings:expr, step $sn:literal / $sd:literal;)* }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, Serialize, Deserialize)]
        pub enum $name { $($variant),* }
        impl Unit for $name {
            fn symbol(self) -> &'static str { match self { $(Self::$variant => $symbol),* } }
            fn spellings(self) -> &'static [&'static str] { match self { $(Self::$variant => $spellings),* } }
            fn all() -> &'static [Self] { &[$(Self::$variant),*] }
            fn step(self) -> Exact { match self { $(Self::$variant => Exact::ratio($sn, $sd)),* } }
        }
    };
}

unit!(
    /// Units of mass.
    MassUnit {
        Gram "g" &["g", "gr", "gm", "gms", "gram", "grams", "gramme", "grammes"], step 1 / 10;
        Kilogram "kg" &["kg", "kgs", "kilo", "kilos", "kilogram", "kilograms"], step 1 / 1000;
        Ounce "oz" &["oz", "ozs", "ounce", "ounces"], step 1 / 100;
        Pound "lb" &["lb", "lbs", "pound", "pounds", "#"], step 1 / 1000;
    }
);
unit!(
    /// Units of volume. Spoons and cups are the US customary ones, not the rounded ones of food labels.
    VolumeUnit {
        Millilitre "mL" &["ml", "mls", "cc", "millilitre", "millilitres", "milliliter", "milliliters"], step 1 / 10;
        Litre "L" &["l", "litre", "litres", "liter", "liters"], step 1 / 1000;
        UsFluidOunce "fl oz" &["fl oz", "floz", "fl. oz", "us fl oz", "fluid ounce", "fluid ounces"], step 1 / 100;
        ImperialFluidOunce "imp fl oz" &["imp fl oz", "uk fl oz", "imperial fl oz"], step 1 / 100;
        Teaspoon "tsp" &["tsp", "tsps", "teaspoon", "teaspoons", "ts"], step 1 / 8;
        Tablespoon "tbsp" &["tbsp", "tbsps", "tbs", "tbl", "tablespoon", "tablespoons"], step 1 / 8;
        Cup "cup" &["cup", "cups"], step 1 / 8;
    }
);
unit!(
    /// Units of length.
    LengthUnit {
        Millimetre "mm" &["mm", "millimetre", "millimetres", "millimeter", "millimeters"], step 1 / 10;
        Centimetre "cm" &["cm", "centimetre", "centimetres", "centimeter", "centimeters"], step 1 / 100;
        Inch "in" &["in", "inch", "inches", "\"", "″"], step 1 / 100;
    }
);
unit!(
    /// Units of temperature.
    TemperatureUnit {
        Celsius "°C" &["°c", "c", "celsius", "º c", "ºc", "° c", "deg c"], step 1 / 10;
        Fahrenheit "°F" &["°f", "f", "fahrenheit", "ºf", "º f", "° f", "deg f"], step 1 / 1;
    }
);
unit!(
    /// Shares of a whole.
    ShareUnit {
        Percent "%" &["%", "percent", "per cent", "pct"], step 1 / 100;
        PerThousand "‰" &["‰", "per mille", "permille", "per thousand"], step 1 / 10;
    }
);

impl MassUnit {
    const fn grams(self) -> Exact {
        match self {
            Self::Gram => Exact::ONE,
            Self::Kilogram => Exact::whole(1000),
            Self::Ounce => Exact::ratio(45_359_237, 1_600_000),
            Self::Pound => Exact::ratio(45_359_237, 100_000),
        }
    }
}

impl VolumeUnit {
    const fn millilitres(self) -> Exact {
        match self {
            Self::Millilitre => Exact::ONE,
            Self::Litre => Exact::whole(1000),
            Self::UsFluidOunce => Exact::ratio(473_176_473, 16_000_000),
            Self::ImperialFluidOunce => Exact::ratio(454_609, 16_000),
            Self::Teaspoon => Exact::ratio(157_725_491, 32_000_000),
            Self::Tablespoon => Exact::ratio(473_176_473, 32_000_000),
            Self::Cup => Exact::ratio(473_176_473, 2_000_000),
        }
    }
}

impl LengthUnit {
    const fn millimetres(self) -> Exact {
        match self {
            Self::Millimetre => Exact::ONE,
            Self::Centimetre => Exact::whole(10),
            Self::Inch => Exact::ratio(127, 5),
        }
    }
}

/// Above this nobody's pot, jar or vessel goes; the sentence says so.
const HEAVIEST: Mass = Mass::base(Exact::whole(1_000_000));

impl Quantity for Mass {
    type Unit = MassUnit;
    const NOUN: &'static str = "weight";
    fn of(number: Exact, unit: MassUnit) -> Self {
        Self::base(number * unit.grams())
    }
    fn to(self, unit: MassUnit) -> Exact {
        self.in_base() / unit.grams()
    }
    fn check(self) -> Result<Self, AmountError> {
        if self.in_base().is_negative() {
            return Err(AmountError::Negative { noun: Self::NOUN });
        }
        if self > HEAVIEST {
            return Err(AmountError::TooLarge { noun: Self::NOUN, most: "1,000 kg" });
        }
        Ok(self)
    }
}

impl Quantity for Volume {
    type Unit = VolumeUnit;
    const NOUN: &'static str = "volume";
    fn of(number: Exact, unit: VolumeUnit) -> Self {
        Self::base(number * unit.millilitres())
    }
    fn to(self, unit: VolumeUnit) -> Exact {
        self.in_base() / unit.millilitres()
    }
    fn check(self) -> Result<Self, AmountError> {
        if self.in_base().is_negative() {
            return Err(AmountError::Negative { noun: Self::NOUN });
        }
        if self.in_base() > Exact::whole(1_000_000) {
            return Err(AmountError::TooLarge { noun: Self::NOUN, most: "1,000 L" });
        }
        Ok(self)
    }
}

impl Quantity for Length {
    type Unit = LengthUnit;
    const NOUN: &'static str = "length";
    fn of(number: Exact, unit: LengthUnit) -> Self {
        Self::base(number * unit.millimetres())
    }
    fn to(self, unit: LengthUnit) -> Exact {
        self.in_base() / unit.millimetres()
    }
    fn check(self) -> Result<Self, AmountError> {
        if self.in_base().is_negative() {
            return Err(AmountError::Negative { noun: Self::NOUN });
        }
        if self.in_base() > Exact::whole(2_000) {
            return Err(AmountError::TooLarge { noun: Self::NOUN, most: "2 m" });
        }
        Ok(self)
    }
}

impl Quantity for Share {
    type Unit = ShareUnit;
    const NOUN: &'static str = "share";
    fn of(number: Exact, unit: ShareUnit) -> Self {
        Self::base(number / unit.per_whole())
    }
    fn to(self, unit: ShareUnit) -> Exact {
        self.in_base() * unit.per_whole()
    }
    fn check(self) -> Result<Self, AmountError> {
        if self.in_base().is_negative() {
            return Err(AmountError::Negative { noun: Self::NOUN });
        }
        if self.in_base() > Exact::ONE {
            return Err(AmountError::TooLarge { noun: Self::NOUN, most: "100 %" });
        }
        Ok(self)
    }
}

impl ShareUnit {
    const fn per_whole(self) -> Exact {
        match self {
            Self::Percent => Exact::whole(100),
            Self::PerThousand => Exact::whole(1000),
        }
    }
}

impl Temperature {
    /// Absolute zero, −273.15 °C (the SI definition).
    pub const ABSOLUTE_ZERO: Self = Self::celsius(Exact::ratio(-27_315, 100));
    /// Above this wax has no business: a caution, not a refusal.
    pub const CAUTION: Self = Self::celsius(Exact::whole(130));
    /// Above this nothing at a pot can be.
    pub const HOTTEST: Self = Self::celsius(Exact::whole(400));

    pub fn wants_caution(self) -> bool {
        self > Self::CAUTION
    }
}

impl Quantity for Temperature {
    type Unit = TemperatureUnit;
    const NOUN: &'static str = "temperature";
    fn of(number: Exact, unit: TemperatureUnit) -> Self {
        Self::celsius(match unit {
            TemperatureUnit::Celsius => number,
            TemperatureUnit::Fahrenheit => (number - Exact::whole(32)) * Exact::ratio(5, 9),
        })
    }
    fn to(self, unit: TemperatureUnit) -> Exact {
        match unit {
            TemperatureUnit::Celsius => self.in_celsius(),
            TemperatureUnit::Fahrenheit => self.in_celsius() * Exact::ratio(9, 5) + Exact::whole(32),
        }
    }
    fn check(self) -> Result<Self, AmountError> {
        if self < Self::ABSOLUTE_ZERO {
            return Err(AmountError::BelowAbsoluteZero);
        }
        if self > Self::HOTTEST {
            return Err(AmountError::TooLarge { noun: Self::NOUN, most: "400 °C (752 °F)" });
        }
        Ok(self)
    }
}
