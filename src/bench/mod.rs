//! What weighing trials tell: the mass of a drop, the bulk density of a powder; and the scales themselves.

mod check;
mod drops;
mod measure;
mod spoons;

pub use check::BenchError;
pub use drops::{DropMass, drop_mass};
pub use measure::measures;
pub use spoons::bulk_density;

use crate::quantity::{Amount, Density, Mass, Volume};
use serde::{Deserialize, Serialize};

/// A scale of the workshop.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct Scale {
    pub name: String,
    pub capacity: Amount<Mass>,
    pub division: Amount<Mass>,
    /// The smallest load worth weighing on it.
    pub least: Amount<Mass>,
}

/// A melting pot or pouring jug, by what it safely holds.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct MeltingPot {
    pub name: String,
    pub capacity: Amount<Mass>,
}

/// N drops weighed together, several times if one likes.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct DropTrial {
    pub weighings: Vec<DropWeighing>,
    /// The division of the scale used.
    pub division: Amount<Mass>,
}

#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct DropWeighing {
    pub drops: u32,
    pub mass: Amount<Mass>,
}

/// Level spoons weighed together.
#[derive(Clone, PartialEq, Debug, Serialize, Deserialize)]
pub struct SpoonTrial {
    pub spoon: Amount<Volume>,
    pub spoons: u32,
    pub mass: Amount<Mass>,
}

/// What is known of an ingredient from the supplier or from weighing; formulas refer to it by name.
#[derive(Clone, PartialEq, Debug, Default, Serialize, Deserialize)]
pub struct Ingredient {
    pub name: String,
    /// Of a wax, liquid as poured: grams per millilitre.
    #[serde(default)]
    pub density: Option<Density>,
    #[serde(default)]
    pub drops: Option<DropTrial>,
    #[serde(default)]
    pub spoons: Option<SpoonTrial>,
}
