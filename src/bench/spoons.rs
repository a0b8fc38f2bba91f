//! Bulk density from level spoons.

use super::SpoonTrial;
use crate::quantity::{Density, Why};

/// None where no spoons were counted or their volume or mass is zero.
pub fn bulk_density(trial: &SpoonTrial) -> Option<(Density, Why)> {
    let _ = trial;
    None
}
