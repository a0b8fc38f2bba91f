//! Vessels: how much they hold, by water or by geometry, and how much wax makes the fill.

mod capacity;
mod draft;
mod error;
mod fill;
mod water;

pub use capacity::capacity;
pub(crate) use capacity::{by_inside, by_water};
pub use draft::{Draft, FillKind, read_weighings, unit_of};
pub use error::VesselError;
pub use fill::{blend_density, check, fill, overflow};
pub use water::{WATER_SOURCE, water_density};

use crate::quantity::{Amount, Length, Mass, Share, Temperature};
use crate::wire::{wire_enum, wire_struct};

#[derive(Clone, PartialEq, Debug)]
pub struct Vessel {
    pub name: String,
    /// The inside, where measured with a rule: for capacity by geometry, for headspace, and for how it cools.
    pub inside: Option<Inside>,
    /// The water it holds to the brim, where weighed: better than geometry, and used first.
    pub water: Option<Water>,
    pub fill: FillRule,
    /// Wall thickness, for how it cools.
    pub wall: Option<Amount<Length>>,
    pub note: String,
}

wire_struct!(Vessel { name, inside, water, fill, wall, note [default] });

/// A round vessel's inside; top and bottom differ where it tapers.
#[derive(Clone, PartialEq, Debug)]
pub struct Inside {
    pub top: Amount<Length>,
    pub bottom: Amount<Length>,
    pub height: Amount<Length>,
}

wire_struct!(Inside { top, bottom, height });

/// Water weighed into the vessel, at its temperature, several times if one likes.
#[derive(Clone, PartialEq, Debug)]
pub struct Water {
    pub mass: Amount<Mass>,
    pub at: Amount<Temperature>,
    /// What it held filled again, each time weighed on its own.
    pub again: Vec<Amount<Mass>>,
}

wire_struct!(Water { mass, at, again [skip] });

/// How full it is made.
#[derive(Clone, PartialEq, Debug)]
pub enum FillRule {
    /// This weight of mixture, whatever the wax.
    Weight(Amount<Mass>),
    /// This share of the capacity, by the wax's density.
    Share(Amount<Share>),
    /// To this far below the rim, by the wax's density; needs the inside.
    Headspace(Amount<Length>),
}

wire_enum!(FillRule { Weight(it), Share(it), Headspace(it) });
