//! Bulk density from level spoons.

use super::SpoonTrial;
use super::drops::GOOD;
use super::scatter::stray;
use crate::quantity::{Amount, Density, Exact, Mass, Share, Unit, Voice, Why};

impl SpoonTrial {
    /// What each weighing showed.
    pub fn masses(&self) -> impl Iterator<Item = Amount<Mass>> {
        [self.mass].into_iter().chain(self.again.iter().copied())
    }

    /// How often they were weighed.
    fn weighings(&self) -> Exact {
        Exact::whole(self.again.len() as i128 + 1)
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
        let good = match self.stray() {
            None => "Weigh as many again: that tells how far your spoons stray.".to_owned(),
            Some((error, more)) => {
                let share = voice.share(Share::base(Exact::near(error)?));
                let good = match more {
                    0 => "That is good to 5 %.".to_owned(),
                    1 => "Weighed once more, it is good to 5 %.".to_owned(),
                    more => ["Weighed ", &more.to_string(), " times more, it is good to 5 %."].concat(),
                };
                ["Give or take ", &share, ". ", &good].concat()
            }
        };
        Some(["One level ", &spoon, " weighs ", &one, ": ", &voice.density(density), ". ", &good].concat())
    }

    fn stray(&self) -> Option<(f64, u32)> {
        stray(&self.masses().collect::<Vec<_>>(), GOOD)
    }
}

/// The density alone, as [`bulk_density`] has it.
pub fn spoon_density(trial: &SpoonTrial) -> Option<Density> {
    let mass: Mass = trial.masses().map(|m| m.value).sum();
    let spoons = Exact::whole(trial.spoons.into()) * trial.weighings();
    Density::from(mass, trial.spoon.value.times(spoons)).filter(|_| mass > Mass::ZERO)
}

/// The mass in one level spoon by its volume, over all that was weighed. None where no spoons were counted or their volume
/// or mass is zero.
pub fn bulk_density(trial: &SpoonTrial, voice: Voice) -> Option<(Density, Why)> {
    let mass: Mass = trial.masses().map(|m| m.value).sum();
    let spoons = Exact::whole(trial.spoons.into()) * trial.weighings();
    let density = spoon_density(trial)?;
    let weighed = if trial.again.is_empty() { voice.typed(trial.mass) } else { voice.mass(mass) };
    let why = Why::new("Bulk density", "weighed ÷ (spoons × volume of one)", voice.density(density))
        .with("weighed", weighed)
        .with("level spoons", voice.number(spoons))
        .with("volume of one", voice.typed(trial.spoon));
    Some((density, why))
}
