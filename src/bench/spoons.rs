//! Bulk density from level spoons.

use super::SpoonTrial;
use super::drops::{GOOD, needed};
use crate::quantity::{Density, Exact, Mass, Share, Unit, Voice, Volume, Why};

impl SpoonTrial {
    /// Each weighing.
    pub fn weighings(&self) -> impl Iterator<Item = &Self> {
        [self].into_iter().chain(&self.again)
    }

    fn volume(&self) -> Volume {
        self.spoon.value.times(Exact::whole(self.spoons.into()))
    }

    /// What it means, in sentences: `One level tbsp weighs 8.4 g (0.30 oz): 0.568 g/mL. …` None where [`bulk_density`]
    /// has none.
    pub fn say(&self, voice: Voice) -> Option<String> {
        let (density, _) = bulk_density(self, voice)?;
        let one = voice.both(density.mass_of(self.spoon.value));
        let spoon = match (self.spoon.number() == Exact::ONE, self.spoon.unit.symbol()) {
            (true, unit) => unit.to_owned(),
            (false, _) => voice.typed(self.spoon),
        };
        let good = match self.stray(density) {
            None => "Weigh some more on their own: that tells how far your spoons stray.".to_owned(),
            Some((error, more)) => {
                let share = voice.share(Share::base(Exact::near(error)?));
                let good = match more {
                    0 => "That is good to 5 %.".to_owned(),
                    1 => "1 more spoon, weighed on its own, makes it good to 5 %.".to_owned(),
                    more => [&more.to_string(), " more spoons make it good to 5 %."].concat(),
                };
                ["Give or take ", &share, ". ", &good].concat()
            }
        };
        Some(["One level ", &spoon, " weighs ", &one, ": ", &voice.density(density), ". ", &good].concat())
    }

    /// The standard error of the density as a share of it, and how many more spoons make that 5 %. None from one weighing.
    /// As for drops, s² = Σ N (mean − m)² ÷ (k − 1), without the reading of the scale: beside spoons it is small.
    fn stray(&self, density: Density) -> Option<(f64, u32)> {
        let more_than_one = u32::try_from(self.again.len()).ok().filter(|more| *more > 0)?;
        let (mut spoons, mut squares) = (0.0, 0.0);
        for weighing in self.weighings() {
            let n = f64::from(weighing.spoons);
            let mean = density.mass_of(weighing.volume());
            spoons += n;
            squares += n * (weighing.mass.value.over(mean)?.to_f64() - 1.0).powi(2);
        }
        let scatter = squares / f64::from(more_than_one);
        let error = (scatter / spoons).sqrt();
        let more = if error <= GOOD { 0.0 } else { (needed(scatter, 0.0, GOOD) - spoons).ceil().max(1.0) };
        Some((error, more as u32))
    }
}

/// The mass in one level spoon by its volume, over all that was weighed. None where no spoons were counted or their volume
/// or mass is zero.
pub fn bulk_density(trial: &SpoonTrial, voice: Voice) -> Option<(Density, Why)> {
    let mass: Mass = trial.weighings().map(|w| w.mass.value).sum();
    let volume = trial.weighings().map(SpoonTrial::volume).sum();
    let density = Density::from(mass, volume).filter(|_| mass > Mass::ZERO)?;
    let spoons: u64 = trial.weighings().map(|w| u64::from(w.spoons)).sum();
    let weighed = if trial.again.is_empty() { voice.typed(trial.mass) } else { voice.mass(mass) };
    let why = Why::new("Bulk density", "weighed ÷ (spoons × volume of one)", voice.density(density))
        .with("weighed", weighed)
        .with("level spoons", spoons.to_string())
        .with("volume of one", voice.typed(trial.spoon));
    Some((density, why))
}
