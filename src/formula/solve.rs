//! Solving a formula for a target: linear in every basis, so exact.

use super::{Caution, Formula, FormulaError};
use crate::quantity::{Density, Exact, Mass, Share, Voice, Volume, Why};

/// What weighing has told about the ingredients of a formula: looked up by name.
pub trait Recipe {
    /// The mass of one drop.
    fn drop_mass(&self, ingredient: &str) -> Option<Mass>;
    /// The bulk density of a powder or flakes, from level spoons.
    fn bulk_density(&self, ingredient: &str) -> Option<Density>;
}

/// A part whose measure is given but whose mass is not known: it counts as nothing in the total.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Unweighed {
    /// No bulk density: level spoons of it were never weighed.
    Spoon,
    /// No drop mass: drops of it were never weighed.
    Drops,
}

/// One wax or part of the solved batch, exact.
#[derive(Clone, PartialEq, Debug)]
pub struct PartShare {
    pub name: String,
    /// Zero for pieces, and where [`PartShare::unweighed`] says it is not known.
    pub mass: Mass,
    pub of_wax: Share,
    pub of_whole: Share,
    /// Of a part written as a spoon measure: the measure for this batch.
    pub volume: Option<Volume>,
    /// Of a part written in drops: how many for this batch, usually not whole.
    pub drops: Option<Exact>,
    /// Of a part that is counted: pieces in each vessel.
    pub pieces: Option<u32>,
    pub unweighed: Option<Unweighed>,
    pub why: Why,
}

/// A formula solved for a total: the waxes, and the parts in the formula's order.
#[derive(Clone, PartialEq, Debug)]
pub struct Solved {
    /// Waxes and parts add up to exactly this.
    pub total: Mass,
    pub wax: Mass,
    pub waxes: Vec<PartShare>,
    pub parts: Vec<PartShare>,
    /// This batch against the usual one: what spoons, drops and weights were multiplied by. None without a usual batch.
    pub scale: Option<Exact>,
    /// What must be read before making it.
    pub cautions: Vec<Caution>,
    /// How the mass of all wax came about.
    pub why: Why,
}

/// How much is made.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Makes {
    /// Of the mixture, with what stays in the pot.
    pub total: Mass,
    /// What would stay in the pot were the usual batch made: spoons, drops and weights are scaled by total ÷ (usual
    /// vessels × usual fill + this), so a batch of the usual size takes them exactly as written.
    pub usual_residue: Mass,
}

/// The exact mass of every wax and part.
///
/// # Errors
/// Where the formula cannot be made: the first of what [`super::check`] finds, see [`FormulaError`].
pub fn solve(
    formula: &Formula,
    makes: Makes,
    recipe: &dyn Recipe,
    voice: Voice,
) -> Result<Solved, FormulaError> {
    let _ = (formula, makes, recipe, voice);
    Err(FormulaError::NoWax)
}

/// The total that uses up `left` of the wax or part called `name`.
///
/// # Errors
/// As [`solve`], and where nothing of that name is weighed in this formula.
pub fn total_for(
    formula: &Formula,
    name: &str,
    left: Mass,
    usual_residue: Mass,
    recipe: &dyn Recipe,
    voice: Voice,
) -> Result<(Mass, Why), FormulaError> {
    let _ = (formula, name, left, usual_residue, recipe, voice);
    Err(FormulaError::NoWax)
}
