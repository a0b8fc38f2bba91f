//! From a formula, a vessel and a number to the plan of the pours.

use super::{Note, Pour};
use crate::bench::{MeltingPot, Scale};
use crate::formula::{Formula, FormulaError, PourRanges, Recipe, TemperatureRange};
use crate::quantity::{Amount, Locale, Mass, MassUnit, Share, Temperature, TemperatureUnit, Why};
use serde::{Deserialize, Serialize};
use std::fmt;

/// What the batch is to reach.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub enum Target {
    Vessels(u32),
    Total(Amount<Mass>),
    /// As far as what is left of one wax or part goes.
    Left {
        ingredient: String,
        mass: Amount<Mass>,
    },
}

/// What stays behind in the pot.
#[derive(Clone, PartialEq, Debug, Default, Serialize, Deserialize)]
pub enum Residue {
    #[default]
    None,
    /// This much in each pot.
    Each(Amount<Mass>),
    /// This share of what is filled into vessels.
    OfFilled(Amount<Share>),
}

/// Everything a plan is made from.
pub struct Ask<'a> {
    pub formula: &'a Formula,
    pub vessel: &'a str,
    pub wick: &'a str,
    /// The mass in one vessel, from [`crate::vessel::fill`], and how it came about.
    pub fill: (Mass, Why),
    pub target: Target,
    pub residue: &'a Residue,
    /// Vessels warmed beforehand.
    pub warmed: bool,
    pub scales: &'a [Scale],
    /// None: one pour, whatever its size.
    pub pot: Option<&'a MeltingPot>,
    pub recipe: &'a dyn Recipe,
    /// How far a dose may be off before the person is told: 2 % by default.
    pub tolerance: Share,
    /// For the sentences and whys: which unit first.
    pub unit: MassUnit,
    pub temperature: TemperatureUnit,
    pub locale: Locale,
}

/// A plan, kept whole in the record so that a later version of the app shows what was said then.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct Plan {
    pub formula: String,
    pub vessel: String,
    pub wick: String,
    pub vessels: u32,
    /// In one vessel.
    pub fill: Mass,
    pub total: Mass,
    /// Left behind in all pots together.
    pub residue: Mass,
    pub melt_to: Amount<Temperature>,
    pub pour: TemperatureRange,
    pub ranges: PourRanges,
    pub warmed: bool,
    pub pot: Option<String>,
    pub pot_capacity: Option<Mass>,
    pub cure_days: u32,
    pub pours: Vec<Pour>,
    /// Cautions and remarks about the whole.
    pub notes: Vec<Note>,
    pub why: Why,
}

/// Why no plan can be made. `Display` is the sentence.
#[derive(Clone, PartialEq, Debug)]
pub enum PlanError {
    Formula(FormulaError),
    NoVessels,
}

impl fmt::Display for PlanError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Formula(e) => e.fmt(f),
            Self::NoVessels => f.write_str("That fills no vessel. Ask for at least one."),
        }
    }
}

impl std::error::Error for PlanError {}

/// The plan for what is asked.
///
/// # Errors
/// Where the formula cannot be solved or the target fills no vessel; see [`PlanError`].
pub fn plan(ask: &Ask) -> Result<Plan, PlanError> {
    let _ = ask;
    Err(PlanError::NoVessels)
}
