//! Why a vessel's freezing cannot be followed, as the person reads it.

use crate::heat::HeatError;
use crate::quantity::{Exact, Quantity, Temperature, Unit, Voice, decimal};

/// Why there is nothing to show.
#[derive(Clone, PartialEq, Debug)]
pub enum SceneError {
    /// Measured with water alone, or not at all.
    NoInside,
    NoWall,
    /// Filled above the rim, or not at all.
    NoRoom,
    Heat(HeatError),
}

impl SceneError {
    /// The sentence, with numbers as this person reads them, temperatures to a tenth of a degree.
    pub fn say(&self, voice: Voice) -> String {
        let t = |celsius: f64| {
            let t = Temperature::celsius(Exact::near(celsius).unwrap_or_default());
            let shown = t.to(voice.temperature).round_to(Exact::ratio(1, 10));
            [&decimal(shown, Exact::ratio(1, 10), voice.locale), " ", voice.temperature.symbol()].concat()
        };
        match self {
            Self::NoInside => "How this vessel cools needs its inside: measure the width at the top and the bottom and the \
                               height, and add them in the Book."
                .to_owned(),
            Self::NoWall => "How this vessel cools needs the thickness of its wall: measure it at the rim, and add it in the \
                             Book."
                .to_owned(),
            Self::NoRoom => "The fill of this vessel leaves no room below the rim. Check it in the Book.".to_owned(),
            Self::Heat(HeatError::OutOfRange { what, value, least, most, unit: "°C" }) => format!(
                "The {what} is {}; it has to be between {} and {}. Check the number and its unit.",
                t(*value),
                t(*least),
                t(*most)
            ),
            Self::Heat(HeatError::MeltingRange { solidus, liquidus }) => format!(
                "The wax cannot be melted at {} and still solid at {}. Swap the two temperatures.",
                t(*liquidus),
                t(*solidus)
            ),
            Self::Heat(HeatError::PourTooCold { pour, liquidus }) => format!(
                "At {} this wax is not wholly melted ({}). Pour hotter, or check the wax.",
                t(*pour),
                t(*liquidus)
            ),
            Self::Heat(HeatError::RoomTooWarm { room, solidus }) => format!(
                "In a room of {} this wax never sets (it is solid below {}). Check the room temperature and the wax.",
                t(*room),
                t(*solidus)
            ),
            Self::Heat(HeatError::OutOfRange { what, value, least, most, unit }) => {
                // With as many places as it needs, three at most.
                let n = |x: f64| {
                    let x = Exact::near(x).unwrap_or_default().round_to(Exact::ratio(1, 1000));
                    let steps = [1, 10, 100].map(|n| Exact::ratio(1, n));
                    let step = steps.into_iter().find(|step| (x / *step).is_whole());
                    decimal(x, step.unwrap_or(Exact::ratio(1, 1000)), voice.locale)
                };
                format!(
                    "The {what} is {} {unit}; it has to be between {} and {} {unit}. Check the number and its unit.",
                    n(*value),
                    n(*least),
                    n(*most)
                )
            }
            Self::Heat(other) => other.to_string(),
        }
    }
}

impl From<HeatError> for SceneError {
    fn from(e: HeatError) -> Self {
        Self::Heat(e)
    }
}
