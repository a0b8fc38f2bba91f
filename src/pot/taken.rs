//! What went in at a step, as it is typed and told: a weight; of drops and spoons also how many.

use super::said::spoons;
use super::{Dose, Run, StepKey, eighth};
use crate::quantity::{
    AmountError, Any, Exact, Mass, Quantity, Voice, Volume, VolumeUnit, read, read_any, read_count,
};

impl Dose {
    /// Of drops and spoons what one of them weighs, a drop or an eighth of a teaspoon. None where that is not known,
    /// and of all that is weighed.
    fn one(&self) -> Option<Mass> {
        match self {
            Self::Drops { .. } | Self::Spoon { .. } => {
                Some(self.division()).filter(|division| *division > Mass::ZERO)
            }
            Self::Weigh { .. } | Self::Unweighable { .. } | Self::Count { .. } => None,
        }
    }

    /// True where it is counted at the pot and not weighed, and what one weighs is known.
    pub fn is_counted(&self) -> bool {
        self.one().is_some()
    }

    /// What is asked for: the label of the field, and how it may be typed.
    pub fn asks(&self) -> (&'static str, &'static str) {
        match self {
            Self::Drops { .. } if self.is_counted() => ("How many drops went in", "14"),
            Self::Spoon { .. } if self.is_counted() => ("How much went in", "1 1/2 tsp"),
            _ => ("It weighed", "61 g or 2 1/4 oz"),
        }
    }

    /// Reads what went in: of drops `16`, of spoons `1 1/2 tsp`, of each also a weight.
    ///
    /// # Errors
    /// A sentence where it is none of these.
    pub fn read(&self, text: &str, voice: Voice) -> Result<Mass, AmountError> {
        let weight = || read::<Mass>(text, voice.mass, voice.locale).map(|amount| amount.value);
        let Some(one) = self.one() else { return weight() };
        let drops = matches!(self, Self::Drops { .. });
        let spoons = |volume: Volume| one.times(volume.over(eighth()).unwrap_or(Exact::ZERO)).check();
        match read_any(text, voice.locale)? {
            Any::Bare(_) | Any::Drops(_) if drops => {
                let digits = text.trim_end_matches(|c: char| c.is_alphabetic() || c == ' ');
                one.times(Exact::whole(read_count(digits, voice.locale)?.into())).check()
            }
            Any::Bare(number) => spoons(Volume::of(number, VolumeUnit::Teaspoon)),
            Any::Volume(volume) if !drops => spoons(volume.value),
            _ => weight(),
        }
    }

    /// So much of it, in drops or spoons where it comes to whole ones: `16 drops`.
    pub(super) fn measure(&self, mass: Mass, voice: Voice) -> Option<String> {
        let count = mass.over(self.one()?).filter(|n| n.is_whole())?;
        let count = u32::try_from(count.floor()).ok()?;
        Some(match self {
            Self::Spoon { .. } => {
                let (number, unit) = spoons(count, voice);
                [&number, " ", unit].concat()
            }
            _ => [count.to_string().as_str(), if count == 1 { " drop" } else { " drops" }].concat(),
        })
    }

    /// So much of it with what it weighs: `16 drops (0.34 g)`, `61.0 g (2.15 oz)`.
    pub fn tell(&self, mass: Mass, voice: Voice) -> String {
        match self.measure(mass, voice) {
            Some(measure) => [&measure, " (", &voice.amount(mass, voice.mass), ")"].concat(),
            None => voice.both(mass),
        }
    }
}

impl Run {
    /// That less went in at a step than was asked, by more than a division and more than the tolerance, and what to do.
    /// None where it was not less, and where what drops or a spoon weigh is not known.
    pub fn short(&self, step: StepKey, weighed: Mass, voice: Voice) -> Option<String> {
        let dose = self.fold.dose(step)?;
        let short = dose.mass().less(weighed);
        let much = short > dose.division() && short > dose.mass().times(self.plan.tolerance.in_base());
        much.then(|| {
            let short = dose.tell(short, voice);
            format!("{short} less than asked. Add it and type what is in by then, or go on with less.")
        })
    }
}
