//! How warm the room is: typed in for the day, or assumed.

use crate::quantity::{Exact, Temperature, TemperatureUnit, Voice};

/// The air around the pot, and what comes cold from the shelf.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Air {
    pub at: Temperature,
    pub typed: bool,
}

impl Air {
    /// As typed; else a usual workroom, 72 °F or 21 °C as the person counts (common practice, no source).
    pub fn of(typed: Option<Temperature>, voice: Voice) -> Self {
        let usual = match voice.temperature {
            TemperatureUnit::Celsius => Exact::whole(21),
            TemperatureUnit::Fahrenheit => Exact::ratio(200, 9),
        };
        Self { at: typed.unwrap_or(Temperature::celsius(usual)), typed: typed.is_some() }
    }

    /// `72 °F, assumed`.
    pub fn say(self, voice: Voice) -> String {
        let how = if self.typed { ", as typed" } else { ", assumed" };
        [&voice.amount(self.at, voice.temperature), how].concat()
    }
}
