//! What a formula is refused for, and what the person must be told about it.

use std::fmt;

/// Why a formula cannot be used as it stands. `Display` is the sentence.
#[derive(Clone, PartialEq, Debug)]
pub enum FormulaError {
    NoWax,
}

impl fmt::Display for FormulaError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoWax => f.write_str("No wax yet: name at least one wax and its share of the blend."),
        }
    }
}

impl std::error::Error for FormulaError {}

/// Something that must be read but does not block. `Display` is the sentence.
#[derive(Clone, PartialEq, Debug)]
pub enum Caution {
    Placeholder,
}
