//! Capacity and fill.

use super::Vessel;
use crate::quantity::{Density, Mass, Voice, Volume, Why};
use std::fmt;

/// Why a vessel's capacity or fill cannot be told. `Display` is the sentence.
#[derive(Clone, PartialEq, Debug)]
pub enum VesselError {
    NoCapacity,
}

impl fmt::Display for VesselError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoCapacity => f.write_str(
                "This vessel has no capacity yet: weigh the water it holds, measure its inside, or type the fill weight.",
            ),
        }
    }
}

impl std::error::Error for VesselError {}

/// What the vessel holds to the brim.
///
/// # Errors
/// Where neither water nor inside is known, or they make no volume.
pub fn capacity(vessel: &Vessel, voice: Voice) -> Result<(Volume, Why), VesselError> {
    let _ = (vessel, voice);
    Err(VesselError::NoCapacity)
}

/// The mass of mixture that makes the fill. `density` is that of the liquid wax as poured, needed unless the fill
/// is a weight.
///
/// # Errors
/// Where the capacity or the density is not known, or the headspace is more than the height.
pub fn fill(vessel: &Vessel, density: Option<Density>, voice: Voice) -> Result<(Mass, Why), VesselError> {
    let _ = (vessel, density, voice);
    Err(VesselError::NoCapacity)
}
