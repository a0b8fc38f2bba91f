//! Why a vessel cannot be used as it stands.

use crate::quantity::{Amount, Length, Mass, Temperature, Voice, Volume, VolumeUnit};

/// Why a vessel's capacity or fill cannot be told. [`VesselError::say`] is the sentence.
#[derive(Clone, PartialEq, Debug)]
pub enum VesselError {
    NoName,
    NoCapacity,
    NoWater,
    /// Outside the 0–40 °C the density of water is known for.
    WaterTemperature {
        at: Amount<Temperature>,
    },
    /// A diameter or the height of the inside is zero.
    NoInside,
    NoFill,
    /// A share of the capacity above all of it.
    OverFull,
    /// A weight that not even water would have in it.
    RunsOver {
        fill: Amount<Mass>,
        capacity: Volume,
    },
    NoHeight,
    Headspace {
        headspace: Amount<Length>,
        height: Amount<Length>,
    },
    /// The water it holds is less than the space to leave empty: one of the measures is wrong.
    LessThanHeadspace {
        capacity: Volume,
        headspace: Volume,
    },
    NoDensity {
        wax: Option<String>,
    },
}

impl VesselError {
    /// The sentence, in this person's units and decimal sign.
    pub fn say(&self, voice: Voice) -> String {
        match self {
            Self::NoName => "This vessel has no name yet. Give it one you will know it by.".to_owned(),
            Self::NoCapacity => "This vessel has no capacity yet: weigh the water it holds, measure its inside, or type the fill weight.".to_owned(),
            Self::NoWater => {
                "The weight of water is zero. Fill the vessel to the brim with water and type what that weighs.".to_owned()
            }
            Self::WaterTemperature { at } => format!("The density of water is known here from 0 to 40 °C (32 to 104 °F), and {} is outside it. Weigh water at \
                 room temperature.",
                voice.typed(*at)
            ),
            Self::NoInside => "The inside needs a diameter at the top, one at the bottom and a height, each above zero. Measure them again.".to_owned(),
            Self::NoFill => "No fill yet. Type how much goes into one vessel.".to_owned(),
            Self::OverFull => "The fill is more than the vessel holds. Type a share of 100 % or less.".to_owned(),
            Self::RunsOver { fill, capacity } => format!("A fill of {} does not go into a vessel that holds {}: wax is lighter than water. Check both; an ounce of \
                 weight is not a fluid ounce.",
                voice.typed(*fill),
                voice.amount(*capacity, VolumeUnit::Millilitre)
            ),
            Self::NoHeight => "A headspace needs the inside of the vessel. Measure its diameters and height, or fill by share or weight.".to_owned(),
            Self::Headspace { headspace, height } => format!("A headspace of {} leaves nothing in a vessel {} high. Type a smaller headspace.",
                voice.typed(*headspace),
                voice.typed(*height)
            ),
            Self::LessThanHeadspace { capacity, headspace } => format!("By its water the vessel holds {}, but the space to leave empty is {} by its inside. Check the weight of \
                 water and the inside.",
                voice.amount(*capacity, VolumeUnit::Millilitre),
                voice.amount(*headspace, VolumeUnit::Millilitre)
            ),
            Self::NoDensity { wax: Some(wax) } => format!("The density of “{wax}” as it is poured is not known, so its weight in this vessel cannot be told. Type the \
                 density at the Bench, or type the fill weight of the vessel."
            ),
            Self::NoDensity { wax: None } => "The density of the wax as it is poured is not known, so its weight in this vessel cannot be told. Type \
                 the density at the Bench, or type the fill weight of the vessel.".to_owned(),
        }
    }
}
