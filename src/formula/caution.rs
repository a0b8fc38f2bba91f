//! What must be read about a formula before it is made.

use crate::quantity::{Amount, Share, Temperature, Voice, Volume};
use std::fmt;

/// Something done to the pot at a temperature.
#[derive(Clone, PartialEq, Debug)]
pub enum Doing {
    Melting,
    Adding(String),
    PouringWarmed,
    PouringUnwarmed,
}

impl Doing {
    /// As it stands in a sentence: `adding “Lavender”`.
    pub fn noun(&self) -> String {
        match self {
            Self::Melting => "melting".to_owned(),
            Self::Adding(part) => format!("adding “{part}”"),
            Self::PouringWarmed => "pouring into warmed vessels".to_owned(),
            Self::PouringUnwarmed => "pouring into vessels not warmed".to_owned(),
        }
    }

    fn opening(&self) -> String {
        match self {
            Self::Melting => "Melting".to_owned(),
            Self::Adding(part) => format!("Adding “{part}”"),
            Self::PouringWarmed => "Pouring into warmed vessels".to_owned(),
            Self::PouringUnwarmed => "Pouring into vessels not warmed".to_owned(),
        }
    }
}

/// Something that must be read but does not block. `Display` is the sentence; [`Caution::say`] says it in the
/// person's own decimal sign.
#[derive(Clone, PartialEq, Debug)]
pub enum Caution {
    /// A part above its highest load.
    Load {
        part: String,
        of_wax: Share,
        of_whole: Share,
        highest: Amount<Share>,
    },
    /// Each fragrance within its load, together above the lowest of them.
    LoadTogether {
        of_wax: Share,
        part: String,
        highest: Amount<Share>,
    },
    /// At or above the flash point of what is in the pot.
    Flash {
        of: String,
        doing: Doing,
        at: Amount<Temperature>,
        flash: Amount<Temperature>,
    },
    FlashUnknown {
        part: String,
    },
    /// Above 130 °C.
    Hot {
        doing: Doing,
        at: Amount<Temperature>,
    },
    /// The sheet takes `first` before `then`, the formula does not.
    Order {
        first: String,
        then: String,
    },
    /// The pour range lies wholly above the last range to add in.
    PourAboveAdd {
        doing: Doing,
        low: Amount<Temperature>,
        part: String,
        high: Amount<Temperature>,
    },
    /// A range lies wholly above what the wax is melted to.
    AboveMelt {
        doing: Doing,
        low: Amount<Temperature>,
        melt_to: Amount<Temperature>,
    },
    /// A spoon measure without a bulk density.
    SpoonUnweighed {
        part: String,
        measure: Amount<Volume>,
    },
    /// Drops without a drop mass.
    DropsUnweighed {
        part: String,
    },
}

impl Caution {
    /// The sentence.
    pub fn say(&self, voice: Voice) -> String {
        match self {
            Self::Load { part, of_wax, of_whole, highest } => format!(
                "“{part}” is {} of the wax ({} of the whole), above its highest load of {} of the wax. Too much can weep, \
                 smoke and burn too high. Lower it, or ask the supplier.",
                voice.share(*of_wax),
                voice.share(*of_whole),
                voice.typed(*highest)
            ),
            Self::LoadTogether { of_wax, part, highest } => format!(
                "The fragrances together are {} of the wax, above the highest load of “{part}”, {} of the wax. What a wax \
                 holds counts for all of them together: lower them, or ask the supplier.",
                voice.share(*of_wax),
                voice.typed(*highest)
            ),
            Self::Flash { of, doing, at, flash } => format!(
                "{} at {} is at or above the flash point of “{of}”, {}: its vapour can catch fire from a flame or a spark. \
                 Keep below it: choose a lower temperature.",
                doing.opening(),
                voice.typed(*at),
                voice.typed(*flash)
            ),
            Self::FlashUnknown { part } => format!(
                "The flash point of “{part}” is not known here. Find it on the supplier's safety data sheet, type it in, \
                 and keep below it."
            ),
            Self::Hot { doing, at } => format!(
                "{} at {} is above 130 °C (266 °F). Wax has no need to be so hot: it can smoke and catch fire. Check the \
                 number and its unit.",
                doing.opening(),
                voice.typed(*at)
            ),
            Self::Order { first, then } => format!(
                "“{first}” goes in hotter than “{then}” but stands after it. The sheet takes the hotter first, because a \
                 cooling pot does not come back up."
            ),
            Self::PourAboveAdd { doing, low, part, high } => format!(
                "{} starts at {}, above the {} at which “{part}” goes in last: the pot would have to be heated again. Check \
                 both ranges.",
                doing.opening(),
                voice.typed(*low),
                voice.typed(*high)
            ),
            Self::AboveMelt { doing, low, melt_to } => format!(
                "{} needs {} or more, but the wax is melted to {} only. Melt hotter, or lower that range.",
                doing.opening(),
                voice.typed(*low),
                voice.typed(*melt_to)
            ),
            Self::SpoonUnweighed { part, measure } => format!(
                "What a spoon of “{part}” weighs is not known, so its {} comes on top of the total and its share is not \
                 known. Weigh level spoons of it at the Bench.",
                voice.typed(*measure)
            ),
            Self::DropsUnweighed { part } => format!(
                "What a drop of “{part}” weighs is not known, so its drops count as nothing in the total. They weigh very \
                 little; to count them, weigh some drops at the Bench."
            ),
        }
    }
}

impl fmt::Display for Caution {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.say(Voice::default()))
    }
}
