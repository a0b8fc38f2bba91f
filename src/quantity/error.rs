//! What can be wrong with a typed amount, as the sentence the person reads.

use std::fmt;

/// Every way a typed amount is refused. `Display` is the sentence, with what to do next.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum AmountError {
    Empty {
        noun: &'static str,
    },
    NotANumber {
        text: String,
        noun: &'static str,
        example: &'static str,
    },
    UnknownUnit {
        text: String,
        unit: String,
        noun: &'static str,
        known: String,
    },
    /// The unit is known, but of another kind: `5 mL` where a weight is wanted.
    WrongUnit {
        text: String,
        of: &'static str,
        noun: &'static str,
        known: String,
    },
    /// `1,234` may be one and a bit or more than a thousand, `11/2` one and a half or five and a half.
    Ambiguous {
        text: String,
        small: String,
        large: String,
    },
    /// `2 lb 35 oz`: a pound has sixteen, and it may be 3.5.
    Spills {
        text: String,
        small: &'static str,
        large: &'static str,
    },
    ZeroBelow {
        text: String,
    },
    /// The lower number of a fraction is above a thousand.
    TooFine {
        text: String,
    },
    /// More decimal places than the currency has.
    TooManyPlaces {
        text: String,
        places: u32,
    },
    Negative {
        noun: &'static str,
    },
    NotAboveZero {
        noun: &'static str,
    },
    TooLarge {
        noun: &'static str,
        most: &'static str,
    },
    BelowAbsoluteZero,
    TooLong {
        noun: &'static str,
    },
    NotWhole {
        text: String,
    },
}

impl fmt::Display for AmountError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty { noun } => write!(f, "No {noun} yet: type a number."),
            Self::NotANumber { text, noun, example } => {
                write!(f, "“{text}” is not a {noun}. Type it like {example}.")
            }
            Self::UnknownUnit { text, unit, noun, known } => {
                write!(f, "“{unit}” in “{text}” is not a unit of {noun} here. Use {known}.")
            }
            Self::WrongUnit { text, of, noun, known } => {
                write!(f, "“{text}” is a {of}, and a {noun} is wanted here. Use {known}.")
            }
            Self::Ambiguous { text, small, large } => {
                write!(f, "“{text}” can mean {small} or {large}. Type the one you mean.")
            }
            Self::Spills { text, small, large } => {
                write!(
                    f,
                    "“{text}” has as many {small} as make one more {large}. Check it, or type it all in {small}."
                )
            }
            Self::ZeroBelow { text } => write!(f, "“{text}” divides by zero. Check the fraction."),
            Self::TooFine { text } => {
                write!(f, "“{text}” has a fraction finer than thousandths. Type a decimal number instead.")
            }
            Self::TooManyPlaces { text, places: 0 } => {
                write!(f, "“{text}” has decimals, and this currency has none. Type a whole number.")
            }
            Self::TooManyPlaces { text, places } => {
                write!(f, "“{text}” has more than {places} decimals. Type the price with {places}.")
            }
            Self::Negative { noun } => write!(f, "A {noun} cannot be below zero. Take the minus away."),
            Self::NotAboveZero { noun } => write!(f, "A {noun} must be above zero. Type a larger number."),
            Self::TooLarge { noun, most } => {
                write!(
                    f,
                    "That {noun} is more than {most}, the most there can be here. Check the number and its unit."
                )
            }
            Self::BelowAbsoluteZero => {
                f.write_str("That is below absolute zero (−273.15 °C). Check the number and its unit.")
            }
            Self::TooLong { noun } => write!(f, "Too many digits for a {noun}. Type a shorter number."),
            Self::NotWhole { text } => write!(f, "“{text}” is not a whole number. Type one, like 8."),
        }
    }
}

impl std::error::Error for AmountError {}
