//! What a formula is refused for.

use super::{Doing, TemperatureRange};
use crate::quantity::{Amount, Share, ShareUnit, Voice};

/// Why a formula cannot be used as it stands. [`FormulaError::say`] is the sentence.
#[derive(Clone, PartialEq, Debug)]
pub enum FormulaError {
    NoName,
    NoWax,
    /// The wax at this place, counted from 1.
    WaxNoName {
        place: usize,
    },
    /// The part at this place, counted from 1.
    PartNoName {
        place: usize,
    },
    Twice {
        name: String,
    },
    WaxShare {
        name: String,
    },
    Blend {
        adds_to: Share,
    },
    NoAmount {
        part: String,
    },
    PerNoWax {
        part: String,
    },
    NoUsual {
        part: String,
    },
    EmptyUsual,
    /// Shares of the whole leave no room for wax.
    Full {
        adds_to: Share,
        largest: String,
    },
    UpsideDown {
        doing: Doing,
        range: Box<TemperatureRange>,
    },
    NothingToMake,
    NotInIt {
        name: String,
    },
    NotWeighed {
        name: String,
    },
}

impl FormulaError {
    /// True where names are missing or there twice, whatever the amounts are.
    pub(super) fn is_of_names(&self) -> bool {
        matches!(
            self,
            Self::NoName
                | Self::NoWax
                | Self::WaxNoName { .. }
                | Self::PartNoName { .. }
                | Self::Twice { .. }
        )
    }
}

impl FormulaError {
    /// The sentence, in this person's units and decimal sign.
    pub fn say(&self, voice: Voice) -> String {
        match self {
            Self::NoName => "This formula has no name yet. Give it one you will know it by.".to_owned(),
            Self::NoWax => "No wax yet: name at least one wax and its share of the blend.".to_owned(),
            Self::WaxNoName { place } => format!("Wax {place} of the blend has no name. Give it one, or remove it."),
            Self::PartNoName { place } => format!("Part {place} has no name. Give it one, or remove it."),
            Self::Twice { name } => format!("“{name}” is in this formula twice. Put its amounts together, or give one of them another name."
            ),
            Self::WaxShare { name } => {
                format!("“{name}” has no share of the blend. Type more than zero, or remove it.")
            }
            Self::Blend { adds_to } => format!("The wax blend adds up to {}, not 100 %. Change a share until the whole blend is 100 %.",
                voice.typed(Amount { value: *adds_to, unit: ShareUnit::Percent })
            ),
            Self::NoAmount { part } => format!("“{part}” has no amount. Type more than zero, or remove it."),
            Self::PerNoWax { part } => format!("“{part}” is so much for so much wax, but the wax is zero. Type how much wax the amount is for, like 1 lb."
            ),
            Self::NoUsual { part } => format!("“{part}” is written for one batch, but the formula does not say how large that is. Fill in the usual \
                 batch: how many vessels, and the fill of one."
            ),
            Self::EmptyUsual => "The usual batch is empty. Type at least one vessel and a fill above zero, or clear it if no part needs it.".to_owned(),
            Self::Full { adds_to, largest } => format!("The parts that are shares of the whole come to {} of it, which leaves no room for wax. Lower them, \
                 “{largest}” first, or make them shares of the wax.",
                voice.share(*adds_to)
            ),
            Self::UpsideDown { doing, range } => format!("The range for {} runs from {} down to {}. Type the lower temperature first.",
                doing.noun(),
                voice.typed(range.low),
                voice.typed(range.high)
            ),
            Self::NothingToMake => "The batch comes to nothing. Ask for at least one vessel, or a weight above zero.".to_owned(),
            Self::NotInIt { name } => format!("“{name}” is not in this formula. Choose one of its waxes or parts."),
            Self::NotWeighed { name } => format!("The weight of “{name}” in this formula is not known, so what is left of it cannot set the batch. Choose \
                 another wax or part, or weigh drops or level spoons of it at the Bench first."
            ),
        }
    }
}
