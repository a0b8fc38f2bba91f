//! Why a vessel cannot be used as it stands.

use crate::quantity::{Amount, Length, Mass, Temperature, Voice, Volume, VolumeUnit};
use std::fmt;

/// Why a vessel's capacity or fill cannot be told. `Display` is the sentence.
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

impl fmt::Display for VesselError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let voice = Voice::default();
        match self {
            Self::NoName => f.write_str("This vessel has no name yet. Give it one you will know it by."),
            Self::NoCapacity => f.write_str(
                "This vessel has no capacity yet: weigh the water it holds, measure its inside, or type the fill weight.",
            ),
            Self::NoWater => {
                f.write_str("The weight of water is zero. Fill the vessel to the brim with water and type what that weighs.")
            }
            Self::WaterTemperature { at } => write!(
                f,
                "The density of water is known here from 0 to 40 °C (32 to 104 °F), and {} is outside it. Weigh water at \
                 room temperature.",
                voice.typed(*at)
            ),
            Self::NoInside => f.write_str(
                "The inside needs a diameter at the top, one at the bottom and a height, each above zero. Measure them again.",
            ),
            Self::NoFill => f.write_str("The fill is zero. Type how much goes into one vessel."),
            Self::OverFull => f.write_str("The fill is more than the vessel holds. Type a share of 100 % or less."),
            Self::RunsOver { fill, capacity } => write!(
                f,
                "A fill of {} does not go into a vessel that holds {}: wax is lighter than water. Check both; an ounce of \
                 weight is not a fluid ounce.",
                voice.typed(*fill),
                voice.amount(*capacity, VolumeUnit::Millilitre)
            ),
            Self::NoHeight => f.write_str(
                "A headspace needs the inside of the vessel. Measure its diameters and height, or fill by share or weight.",
            ),
            Self::Headspace { headspace, height } => write!(
                f,
                "A headspace of {} leaves nothing in a vessel {} high. Type a smaller headspace.",
                voice.typed(*headspace),
                voice.typed(*height)
            ),
            Self::LessThanHeadspace { capacity, headspace } => write!(
                f,
                "By its water the vessel holds {}, but the space to leave empty is {} by its inside. Check the weight of \
                 water and the inside.",
                voice.amount(*capacity, VolumeUnit::Millilitre),
                voice.amount(*headspace, VolumeUnit::Millilitre)
            ),
            Self::NoDensity { wax: Some(wax) } => write!(
                f,
                "The density of “{wax}” as it is poured is not known, so its weight in this vessel cannot be told. Type the \
                 density at the Bench, or type the fill weight of the vessel."
            ),
            Self::NoDensity { wax: None } => f.write_str(
                "The density of the wax as it is poured is not known, so its weight in this vessel cannot be told. Type \
                 the density at the Bench, or type the fill weight of the vessel.",
            ),
        }
    }
}

impl std::error::Error for VesselError {}
