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

    /// What was typed, where a person can work in it.
    ///
    /// # Errors
    /// A sentence for any other.
    pub fn typed(at: Temperature, voice: Voice) -> Result<Temperature, String> {
        let limits = [0, 45].map(|celsius| Temperature::celsius(Exact::whole(celsius)));
        let [least, most] = limits;
        if least <= at && at <= most {
            return Ok(at);
        }
        let [least, most] = limits.map(|limit| voice.amount(limit, voice.temperature));
        Err(format!("A workroom is between {least} and {most}. Check the number and its unit."))
    }

    /// `72 °F, assumed`.
    pub fn say(self, voice: Voice) -> String {
        let how = if self.typed { ", as typed" } else { ", assumed" };
        [&voice.amount(self.at, voice.temperature), how].concat()
    }
}
