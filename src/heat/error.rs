//! Why heat cannot be reckoned, as the sentence the person reads.

use super::said::{Fixed, Plain};
use std::fmt;

/// Every way an input of this module is refused. Temperatures in °C, times in seconds. `Display` is the
/// sentence, with what to do next.
#[derive(Clone, PartialEq, Debug)]
pub enum HeatError {
    /// Not a finite number.
    NotANumber {
        what: &'static str,
    },
    /// Zero or less, or beyond what can be at a bench.
    OutOfRange {
        what: &'static str,
        value: f64,
        least: f64,
        most: f64,
        unit: &'static str,
    },
    NothingToMix,
    TooFewReadings {
        have: usize,
        need: usize,
    },
    /// The times do not differ, or run backwards.
    SameTime {
        minutes: f64,
    },
    /// The readings do not fall.
    NotCooling,
    /// A reading is at or below the room.
    BelowRoom {
        reading: f64,
        room: f64,
    },
    /// The curve is too straight to tell the room temperature from it.
    RoomNotTold,
    /// The wax is melted below where it is solid.
    MeltingRange {
        solidus: f64,
        liquidus: f64,
    },
    /// kg/m³; the liquid must be the lighter one.
    DensitiesSwapped {
        liquid: f64,
        solid: f64,
    },
    PourTooCold {
        pour: f64,
        liquidus: f64,
    },
    RoomTooWarm {
        room: f64,
        solidus: f64,
    },
    /// No film coefficient lays the curve over the log.
    LogDoesNotFit,
}

impl fmt::Display for HeatError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotANumber { what } => write!(f, "The {what} is not a number. Type it again."),
            Self::OutOfRange { what, value, least, most, unit } => {
                write!(f, "The {what} is {value} {unit}; it has to be between {least} and {most} {unit}. Check the number and its unit.", value = Plain(*value), least = Plain(*least), most = Plain(*most))
            }
            Self::NothingToMix => f.write_str("There is nothing to mix yet: give at least one weight."),
            Self::TooFewReadings { have, need } => {
                write!(f, "{have} readings so far; the times can be told from {need} on. Take another in a few minutes.")
            }
            Self::SameTime { minutes } => {
                write!(f, "Two readings carry the same time ({minutes} min) or run backwards. Check the times.", minutes = Fixed(*minutes, 1))
            }
            Self::NotCooling => f.write_str(
                "The readings do not fall, so there is nothing to foretell yet. Check that the heater is off, stir, and read again in a few minutes.",
            ),
            Self::BelowRoom { reading, room } => write!(f, "A reading of {reading} °C is not above the room's {room} °C. Check the reading and the room temperature.", reading = Fixed(*reading, 1), room = Fixed(*room, 1)),
            Self::RoomNotTold => f.write_str(
                "The readings do not yet tell how warm the room is. Type the room temperature, or take a few more readings.",
            ),
            Self::MeltingRange { solidus, liquidus } => write!(f, "The wax cannot be melted at {liquidus} °C and still solid at {solidus} °C. Swap the two temperatures.", liquidus = Fixed(*liquidus, 1), solidus = Fixed(*solidus, 1)),
            Self::DensitiesSwapped { liquid, solid } => write!(f, "Liquid wax ({liquid} kg/m³) is lighter than solid wax ({solid} kg/m³) once it has set. Check which density is which.", liquid = Fixed(*liquid, 0), solid = Fixed(*solid, 0)),
            Self::PourTooCold { pour, liquidus } => write!(f, "At {pour} °C this wax is not wholly melted ({liquidus} °C). Pour hotter, or check the wax.", pour = Fixed(*pour, 1), liquidus = Fixed(*liquidus, 1)),
            Self::LogDoesNotFit => f.write_str(
                "This log and this vessel do not go together, whatever the air does. Check the pour temperature, the times and where the thermometer hung.",
            ),
            Self::RoomTooWarm { room, solidus } => write!(f, "In a room of {room} °C this wax never sets (it is solid below {solidus} °C). Check the room temperature and the wax.", room = Fixed(*room, 1), solidus = Fixed(*solidus, 1)),
        }
    }
}

impl std::error::Error for HeatError {}

/// Refuses what is not finite or not within `least..=most`.
pub(crate) fn within(
    what: &'static str,
    value: f64,
    least: f64,
    most: f64,
    unit: &'static str,
) -> Result<f64, HeatError> {
    if !value.is_finite() {
        return Err(HeatError::NotANumber { what });
    }
    if value < least || value > most {
        return Err(HeatError::OutOfRange { what, value, least, most, unit });
    }
    Ok(value)
}
