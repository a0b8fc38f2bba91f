//! Reading amounts as people type them.

use super::{Amount, AmountError, Exact, Quantity};

/// Reads an amount: `2 1/4 oz`, `2.15oz`, `¾ tbsp`, `1 lb 3.5 oz`, `1,5 kg`, `188F`. Without a unit, `default` is meant.
///
/// # Errors
/// A sentence that says what is wrong with the text and what to do; also for what cannot be at a pot.
pub fn read<Q: Quantity>(text: &str, default: Q::Unit) -> Result<Amount<Q>, AmountError> {
    let _ = (text, default);
    Err(AmountError::Empty { noun: Q::NOUN })
}

/// Reads a plain number, with fractions, comma or point.
///
/// # Errors
/// As [`read`].
pub fn read_number(text: &str) -> Result<Exact, AmountError> {
    let _ = text;
    Err(AmountError::Empty { noun: "number" })
}

/// Reads a whole number above zero.
///
/// # Errors
/// As [`read`], and where it is not whole or is zero.
pub fn read_count(text: &str) -> Result<u32, AmountError> {
    let _ = text;
    Err(AmountError::Empty { noun: "number" })
}
