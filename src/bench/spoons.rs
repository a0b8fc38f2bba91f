//! Bulk density from level spoons.

use super::SpoonTrial;
use crate::quantity::{Density, Exact, Mass, Unit, Voice, Why};

impl SpoonTrial {
    /// What it means, in a sentence: `One level tbsp weighs 8.4 g (0.30 oz): 0.568 g/mL.` None where [`bulk_density`]
    /// has none.
    pub fn say(&self, voice: Voice) -> Option<String> {
        let (density, _) = bulk_density(self, voice)?;
        let one = voice.both(density.mass_of(self.spoon.value));
        let spoon = match (self.spoon.number() == Exact::ONE, self.spoon.unit.symbol()) {
            (true, unit) => unit.to_owned(),
            (false, _) => voice.typed(self.spoon),
        };
        Some(format!("One level {spoon} weighs {one}: {}.", voice.density(density)))
    }
}

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
