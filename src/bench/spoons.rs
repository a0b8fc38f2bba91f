//! Bulk density from level spoons.

use super::SpoonTrial;
use crate::quantity::{Density, Exact, Mass, Voice, Why};

/// The mass in one level spoon by its volume. None where no spoons were counted or their volume or mass is zero.
pub fn bulk_density(trial: &SpoonTrial, voice: Voice) -> Option<(Density, Why)> {
    let volume = trial.spoon.value.times(Exact::whole(trial.spoons.into()));
    let density = Density::from(trial.mass.value, volume).filter(|_| trial.mass.value > Mass::ZERO)?;
    let why = Why::new("Bulk density", "weighed ÷ (spoons × volume of one)", voice.density(density))
        .with("weighed", voice.typed(trial.mass))
        .with("level spoons", trial.spoons.to_string())
        .with("volume of one", voice.typed(trial.spoon));
    Some((density, why))
}
