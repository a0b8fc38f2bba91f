//! The units, their exact sizes, and every spelling that is read.
//!
//! Sizes: NIST SP 811 (2008) App. B and NIST Handbook 44 App. C; °F by definition. To add a unit, add a line.

use super::Exact;
use crate::wire::wire_enum;

/// What is known of a unit, in one table for reading and showing.
#[derive(Debug)]
pub struct Row {
    /// As shown.
    pub symbol: &'static str,
    /// Every spelling that is read: lower case, without spaces and points.
    pub spellings: &'static [&'static str],
    /// How much of the kind's base unit it is.
    pub size: Exact,
    /// Where its zero lies, in itself: 32 for °F.
    pub zero: Exact,
    /// The smallest step that is shown, in this unit: the default rounding on a screen.
    pub step: Exact,
    pub way: Way,
    /// The unit that may follow it in one amount: `1 lb 3.5 oz`.
    pub then: Option<&'static str>,
}

impl Row {
    /// So many of this unit, in base units.
    pub(super) fn base(&self, number: Exact) -> Exact {
        (number - self.zero) * self.size
    }
    /// So many base units, in this one.
    pub(super) fn number(&self, base: Exact) -> Exact {
        base / self.size + self.zero
    }
}

/// How an amount in a unit is written.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Way {
    /// To the step.
    Plain,
    /// To the step; less than ten steps in finer ones, so that two digits still tell.
    Fine,
    /// As spoons are marked: `1½`.
    Eighths,
}

/// A unit people type and read.
pub trait Unit: Copy + PartialEq + std::fmt::Debug + 'static {
    /// All that is known of it.
    fn row(self) -> &'static Row;
    /// All units of this kind.
    fn all() -> &'static [Self];
    /// What is known of each, in the same order.
    const ROWS: &'static [&'static Row];
    /// The one at this place, the first where there is none.
    fn at(place: usize) -> Self;

    /// As shown: `g`, `fl oz`, `°F`.
    fn symbol(self) -> &'static str {
        self.row().symbol
    }
    /// The smallest step that is shown, in this unit.
    fn step(self) -> Exact {
        self.row().step
    }
}

/// `a` or `a/b` as an exact number.
macro_rules! exact {
    ($n:literal) => {
        Exact::whole($n)
    };
    ($n:literal / $d:literal) => {
        Exact::ratio($n, $d)
    };
}

macro_rules! then {
    () => {
        None
    };
    ($symbol:literal) => {
        Some($symbol)
    };
}

macro_rules! unit {
    ($(#[$doc:meta])* $name:ident { $(
        $variant:ident $symbol:literal $spellings:tt
        is $sn:literal $(/ $sd:literal)?, step $n:literal $(/ $d:literal)?, $way:ident $(, zero $zero:literal)? $(, then $then:literal)?;
    )* }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
        pub enum $name { $($variant),* }

        wire_enum!($name { $($variant),* });

        impl $name {
            const fn table(self) -> &'static Row {
                match self {
                    $(Self::$variant => const { &Row {
                        symbol: $symbol,
                        spellings: &$spellings,
                        size: exact!($sn $(/ $sd)?),
                        zero: Exact::whole(0 $(+ $zero)?),
                        step: exact!($n $(/ $d)?),
                        way: Way::$way,
                        then: then!($($then)?),
                    } },)*
                }
            }
        }

        impl Unit for $name {
            fn row(self) -> &'static Row { self.table() }
            fn all() -> &'static [Self] { &[$(Self::$variant),*] }
            const ROWS: &'static [&'static Row] = &[$(Self::$variant.table()),*];
            fn at(place: usize) -> Self {
                const FIRST: $name = [$($name::$variant),*][0];
                Self::all().get(place).copied().unwrap_or(FIRST)
            }
        }
    };
}

unit!(
    /// Units of mass; the base is the gram.
    MassUnit {
        // "gr" is the grain in the trade of gunpowder; at a pot people mean grams by it.
        Gram "g" ["g", "gr", "gm", "gms", "gram", "grams", "gramme", "grammes"] is 1, step 1 / 10, Fine;
        Kilogram "kg" ["kg", "kgs", "kilo", "kilos", "kilogram", "kilograms", "kilogramme", "kilogrammes"]
            is 1000, step 1 / 1000, Fine, then "g";
        Ounce "oz" ["oz", "ozs", "ounce", "ounces"] is 45_359_237 / 1_600_000, step 1 / 100, Fine;
        Pound "lb" ["lb", "lbs", "pound", "pounds", "#"] is 45_359_237 / 100_000, step 1 / 1000, Fine, then "oz";
    }
);
unit!(
    /// Units of volume; the base is the millilitre. Spoons and cups are the US customary ones, not the rounded
    /// ones of food labels (21 CFR 101.9(b)(5)(viii)).
    VolumeUnit {
        Millilitre "mL" ["ml", "mls", "cc", "cm3", "cm³", "millilitre", "millilitres", "milliliter", "milliliters"]
            is 1, step 1 / 10, Fine;
        Litre "L" ["l", "litre", "litres", "liter", "liters"] is 1000, step 1 / 1000, Fine, then "mL";
        UsFluidOunce "fl oz" ["floz", "usfloz", "fluidounce", "fluidounces", "usfluidounce", "usfluidounces"]
            is 473_176_473 / 16_000_000, step 1 / 100, Fine;
        ImperialFluidOunce "imp fl oz" ["impfloz", "imperialfloz", "ukfloz", "imperialfluidounce", "imperialfluidounces"]
            is 454_609 / 16_000, step 1 / 100, Fine;
        Teaspoon "tsp" ["tsp", "tsps", "ts", "teaspoon", "teaspoons"]
            is 157_725_491 / 32_000_000, step 1 / 8, Eighths;
        Tablespoon "tbsp" ["tbsp", "tbsps", "tbs", "tbl", "tblsp", "tablespoon", "tablespoons"]
            is 473_176_473 / 32_000_000, step 1 / 8, Eighths, then "tsp";
        Cup "cup" ["cup", "cups"] is 473_176_473 / 2_000_000, step 1 / 8, Eighths, then "tbsp";
        Gallon "gal" ["gal", "gals", "gallon", "gallons", "usgal", "usgallon", "usgallons"]
            is 473_176_473 / 125_000, step 1 / 1000, Fine;
    }
);
unit!(
    /// Units of length; the base is the millimetre.
    LengthUnit {
        Millimetre "mm" ["mm", "millimetre", "millimetres", "millimeter", "millimeters"] is 1, step 1 / 10, Fine;
        Centimetre "cm" ["cm", "centimetre", "centimetres", "centimeter", "centimeters"] is 10, step 1 / 100, Fine;
        Inch "in" ["in", "ins", "inch", "inches", "\"", "″", "”", "''"] is 127 / 5, step 1 / 100, Fine;
        Foot "ft" ["ft", "foot", "feet", "'", "′"] is 1524 / 5, step 1 / 100, Fine, then "in";
    }
);
unit!(
    /// Units of temperature; the base is the degree Celsius.
    TemperatureUnit {
        Celsius "°C" ["°c", "c", "℃", "celsius", "degc", "degreesc", "°celsius", "degreescelsius"]
            is 1, step 1 / 10, Plain;
        Fahrenheit "°F" ["°f", "f", "℉", "fahrenheit", "degf", "degreesf", "°fahrenheit", "degreesfahrenheit"]
            is 5 / 9, step 1, Plain, zero 32;
    }
);
unit!(
    /// Shares of a whole; the base is the whole.
    ShareUnit {
        Percent "%" ["%", "percent", "pct"] is 1 / 100, step 1 / 100, Fine;
        PerThousand "‰" ["‰", "permille", "permil", "perthousand"] is 1 / 1000, step 1 / 10, Fine;
    }
);
unit!(
    /// Units of density; the base is the gram per millilitre.
    DensityUnit {
        GramPerMillilitre "g/mL" ["g/ml", "g/cc", "g/cm3", "g/cm³", "kg/l", "gperml"] is 1, step 1 / 1000, Fine;
        KilogramPerCubicMetre "kg/m³" ["kg/m3", "kg/m³", "g/l"] is 1 / 1000, step 1, Fine;
    }
);
