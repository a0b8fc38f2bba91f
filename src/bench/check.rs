//! Looking over what is typed at the bench.

use super::{DropTrial, MeltingPot, Scale, SpoonTrial};
use crate::quantity::{Amount, Exact, Mass, Voice};

/// Why something of the bench cannot be used as it stands. [`BenchError::say`] is the sentence.
#[derive(Clone, PartialEq, Debug)]
pub enum BenchError {
    ScaleNoName,
    NoDivision,
    LeastBelowDivision {
        least: Amount<Mass>,
        division: Amount<Mass>,
    },
    CapacityBelowLeast {
        capacity: Amount<Mass>,
        least: Amount<Mass>,
    },
    PotNoName,
    PotHoldsNothing,
    PotWeighsNothing,
    NoWeighing,
    /// The weighing at this place, counted from 1.
    EmptyWeighing {
        place: usize,
    },
    NoSpoons,
    SpoonsWeighNothing,
}

impl BenchError {
    /// The sentence, in this person's units and decimal sign.
    pub fn say(&self, voice: Voice) -> String {
        match self {
            Self::ScaleNoName => "This scale has no name yet. Give it one, like “small scale”.".to_owned(),
            Self::NoDivision => "The division of the scale is zero. Type the smallest step its display shows, like 0.1 g.".to_owned(),
            Self::LeastBelowDivision { least, division } => format!("The smallest load worth weighing, {}, is below one division, {}. A load is good to 1 % only from about 40 \
                 divisions up: type a larger one.",
                voice.typed(*least),
                voice.typed(*division)
            ),
            Self::CapacityBelowLeast { capacity, least } => format!("The scale carries {} at most, no more than its smallest load worth weighing, {}. Check both.",
                voice.typed(*capacity),
                voice.typed(*least)
            ),
            Self::PotNoName => "This pot has no name yet. Give it one you will know it by.".to_owned(),
            Self::PotHoldsNothing => {
                "This pot holds nothing. Type the weight of wax it safely holds, with room to stir.".to_owned()
            }
            Self::PotWeighsNothing => {
                "The empty pot weighs nothing. Weigh it, or leave its weight out.".to_owned()
            }
            Self::NoWeighing => "No drops weighed yet. Count some drops into a cup on the scale and type both.".to_owned(),
            Self::EmptyWeighing { place } => format!("Weighing {place} has no drops or no weight. Type both, or remove it; where the scale shows nothing, weigh \
                 more drops."
            ),
            Self::NoSpoons => "No spoons counted. Type the spoon and how many level ones were weighed.".to_owned(),
            Self::SpoonsWeighNothing => {
                "The spoons weigh nothing. Type what the scale shows; where it shows nothing, weigh more spoons.".to_owned()
            }
        }
    }
}

fn none_of(errors: Vec<BenchError>) -> Result<(), Vec<BenchError>> {
    if errors.is_empty() { Ok(()) } else { Err(errors) }
}

impl Scale {
    /// Looks the scale over.
    ///
    /// # Errors
    /// Every reason why nothing can be weighed on it.
    pub fn check(&self) -> Result<(), Vec<BenchError>> {
        let mut errors = Vec::new();
        if self.name.trim().is_empty() {
            errors.push(BenchError::ScaleNoName);
        }
        if self.division.value <= Mass::ZERO {
            errors.push(BenchError::NoDivision);
        }
        if self.least.value < self.division.value {
            errors.push(BenchError::LeastBelowDivision { least: self.least, division: self.division });
        }
        if self.capacity.value <= self.least.value {
            errors.push(BenchError::CapacityBelowLeast { capacity: self.capacity, least: self.least });
        }
        none_of(errors)
    }
}

impl MeltingPot {
    /// Looks the pot over.
    ///
    /// # Errors
    /// Every reason why nothing can be melted in it.
    pub fn check(&self) -> Result<(), Vec<BenchError>> {
        let mut errors = Vec::new();
        if self.name.trim().is_empty() {
            errors.push(BenchError::PotNoName);
        }
        if self.capacity.value <= Mass::ZERO {
            errors.push(BenchError::PotHoldsNothing);
        }
        if self.body.as_ref().is_some_and(|body| body.weight.value <= Mass::ZERO) {
            errors.push(BenchError::PotWeighsNothing);
        }
        none_of(errors)
    }
}

impl DropTrial {
    /// Looks the trial over.
    ///
    /// # Errors
    /// Every reason why it tells no drop mass.
    pub fn check(&self) -> Result<(), Vec<BenchError>> {
        let mut errors = Vec::new();
        if self.weighings.is_empty() {
            errors.push(BenchError::NoWeighing);
        }
        if self.division.value <= Mass::ZERO {
            errors.push(BenchError::NoDivision);
        }
        for (index, weighing) in self.weighings.iter().enumerate() {
            if weighing.drops == 0 || weighing.mass.value <= Mass::ZERO {
                errors.push(BenchError::EmptyWeighing { place: index + 1 });
            }
        }
        none_of(errors)
    }
}

impl SpoonTrial {
    /// Looks the trial over.
    ///
    /// # Errors
    /// Every reason why it tells no bulk density.
    pub fn check(&self) -> Result<(), Vec<BenchError>> {
        let mut errors = Vec::new();
        if self.spoons == 0 || self.spoon.value.in_base() <= Exact::ZERO {
            errors.push(BenchError::NoSpoons);
        }
        if self.masses().any(|m| m.value <= Mass::ZERO) {
            errors.push(BenchError::SpoonsWeighNothing);
        }
        none_of(errors)
    }
}
