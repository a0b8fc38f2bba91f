//! The mass of one drop, from N drops weighed.

use super::DropTrial;
use crate::quantity::{Mass, Voice, Why};

/// What a drop trial tells.
#[derive(Clone, PartialEq, Debug)]
pub struct DropMass {
    pub mean: Mass,
    /// Standard error of the mean.
    pub error: Mass,
    /// How many more drops would make the mean good to 5 % (zero where it is).
    pub more_for_5_percent: u32,
    pub why: Why,
}

/// None where nothing was weighed, or no drops were counted.
pub fn drop_mass(trial: &DropTrial, voice: Voice) -> Option<DropMass> {
    let _ = (trial, voice);
    None
}
