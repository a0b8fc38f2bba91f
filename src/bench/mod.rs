//! What trials tell: the mass of a drop, the bulk density of a powder, how a candle burns; and the scales themselves.

pub mod burn;
mod check;
mod drops;
mod freezing;
mod log;
mod measure;
mod moment;
mod property;
mod reckoned;
mod refusal;
mod scatter;
mod spoons;
mod steady;
mod stuff;
mod sweep;
mod water;

pub use check::BenchError;
pub use drops::{DropMass, drop_mass, mean_drop};
pub use freezing::{Scene, Start, differences, duration, fitted, results, said, temperature};
pub use log::{Hung, keep_log, kept_log, log_chart, read_log, write_log};
pub use measure::measures;
pub use moment::moment;
pub use property::{POURED, PROPERTIES, Properties, Property};
pub use reckoned::reckoned;
pub use refusal::SceneError;
pub use spoons::{bulk_density, spoon_density};
pub use steady::Steady;
pub use stuff::Stuff;
pub use sweep::Sweep;
pub use water::{Beside, beside, held};

use crate::quantity::{Amount, Density, Mass, MassUnit, Volume};
use crate::stores::Supply;
use crate::wire::wire_struct;

/// A scale of the workshop.
#[derive(Clone, PartialEq, Debug)]
pub struct Scale {
    pub name: String,
    pub capacity: Amount<Mass>,
    pub division: Amount<Mass>,
    /// The smallest load worth weighing on it.
    pub least: Amount<Mass>,
    /// How it was tried, where it was.
    pub trial: Option<ScaleTrial>,
}

wire_struct!(Scale { name, capacity, division, least, trial [skip] });

/// What a scale shows whose capacity or division is written in this unit: grams or ounces.
pub const fn shows(written: MassUnit) -> MassUnit {
    match written {
        MassUnit::Gram | MassUnit::Kilogram => MassUnit::Gram,
        MassUnit::Ounce | MassUnit::Pound => MassUnit::Ounce,
    }
}

/// One thing weighed several times on a scale.
#[derive(Clone, PartialEq, Debug)]
pub struct ScaleTrial {
    pub readings: Vec<Amount<Mass>>,
    /// What it really weighs, where that is known: a check weight, a new coin.
    pub known: Option<Amount<Mass>>,
}

wire_struct!(ScaleTrial { readings, known [skip] });

/// A melting pot or pouring jug, by what it safely holds.
#[derive(Clone, PartialEq, Debug)]
pub struct MeltingPot {
    pub name: String,
    pub capacity: Amount<Mass>,
    /// The empty pot, where it was weighed.
    pub body: Option<PotBody>,
}

wire_struct!(MeltingPot { name, capacity, body [skip] });

/// The pot itself: it is as warm as what is in it, and gives of its heat when something cold goes in.
#[derive(Clone, PartialEq, Debug)]
pub struct PotBody {
    pub weight: Amount<Mass>,
    pub stuff: Stuff,
}

wire_struct!(PotBody { weight, stuff });

/// N drops weighed together, several times if one likes.
#[derive(Clone, PartialEq, Debug)]
pub struct DropTrial {
    pub weighings: Vec<DropWeighing>,
    /// The division of the scale used.
    pub division: Amount<Mass>,
}

wire_struct!(DropTrial { weighings, division });

#[derive(Clone, PartialEq, Debug)]
pub struct DropWeighing {
    pub drops: u32,
    pub mass: Amount<Mass>,
}

wire_struct!(DropWeighing { drops, mass });

/// Level spoons weighed together, several times if one likes.
#[derive(Clone, PartialEq, Debug)]
pub struct SpoonTrial {
    pub spoon: Amount<Volume>,
    pub spoons: u32,
    pub mass: Amount<Mass>,
    /// What as many weighed again, each time on their own.
    pub again: Vec<Amount<Mass>>,
}

wire_struct!(SpoonTrial { spoon, spoons, mass, again [skip] });

/// What is known of an ingredient from the supplier or from weighing; formulas refer to it by name.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Ingredient {
    pub name: String,
    /// Of a wax, liquid as poured: grams per millilitre.
    pub density: Option<Density>,
    pub drops: Option<DropTrial>,
    pub spoons: Option<SpoonTrial>,
    /// How it is bought.
    pub supply: Option<Supply>,
}

wire_struct!(Ingredient { name, density, drops, spoons, supply [skip] });
