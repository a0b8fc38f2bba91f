//! Why heat cannot be reckoned, as the sentence the person reads.

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
}

impl fmt::Display for HeatError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NotANumber { what } => write!(f, "The {what} is not a number. Type it again."),
            Self::OutOfRange { what, value, least, most, unit } => {
                write!(
                    f,
                    "The {what} is {value} {unit}; it has to be between {least} and {most} {unit}. Check the number and its unit."
                )
            }
            Self::NothingToMix => f.write_str("There is nothing to mix yet: give at least one weight."),
            Self::TooFewReadings { have, need } => {
                write!(f, "{have} readings so far; the times can be told from {need} on. Take another in a few minutes.")
            }
            Self::SameTime { minutes } => {
                write!(
                    f,
                    "Two readings carry the same time ({minutes:.1} min) or run backwards. Check the times."
                )
            }
            Self::NotCooling => f.write_str(
                "The readings do not fall, so there is nothing to foretell yet. Check that the heater is off, stir, and read again in a few minutes.",
            ),
            Self::BelowRoom { reading, room } => write!(
                f,
                "A reading of {reading:.1} °C is not above the room's {room:.1} °C. Check the reading and the room temperature."
            ),
            Self::RoomNotTold => f.write_str(
                "The readings do not yet tell how warm the room is. Type the room temperature, or take a few more readings.",
            ),
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
