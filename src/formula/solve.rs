//! Solving a formula for a target: linear in every basis, so exact.

use super::{Formula, FormulaError};
use crate::quantity::{Density, Mass, Share, Why};

/// What weighing has told about the ingredients of a formula: looked up by name.
pub trait Recipe {
    /// The mass of one drop.
    fn drop_mass(&self, ingredient: &str) -> Option<Mass>;
    /// The bulk density of a powder or flakes, from level spoons.
    fn bulk_density(&self, ingredient: &str) -> Option<Density>;
}

/// One part of the solved batch, exact.
#[derive(Clone, PartialEq, Debug)]
pub struct PartShare {
    pub name: String,
    pub mass: Mass,
    pub of_wax: Share,
    pub of_whole: Share,
    pub why: Why,
}

/// A formula solved for a total: waxes first, then parts in the formula's order.
#[derive(Clone, PartialEq, Debug)]
pub struct Solved {
    pub total: Mass,
    pub wax: Mass,
    pub waxes: Vec<PartShare>,
    pub parts: Vec<PartShare>,
}

/// The exact mass of every wax and part in `total` of the mixture.
///
/// # Errors
/// Where the formula cannot be made: see [`FormulaError`].
pub fn solve(formula: &Formula, total: Mass, recipe: &dyn Recipe) -> Result<Solved, FormulaError> {
    let _ = (formula, total, recipe);
    Err(FormulaError::NoWax)
}
