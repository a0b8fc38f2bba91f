//! What this person prefers, and how amounts are said to them.

use super::workshop::Workshop;
use crate::dom::*;
use crate::keep::{Prefs, Which};
use crate::pot::Air;
use crate::quantity::{LengthUnit, Locale, MassUnit, TemperatureUnit, Voice};

impl Workshop {
    pub fn prefs(self) -> Derived<Prefs> {
        self.prefs.into()
    }
    /// Changes what this device prefers and keeps it.
    pub fn change_prefs(self, change: impl FnOnce(&mut Prefs)) {
        self.prefs.update(|p| {
            change(p);
            p.save();
        });
    }
    pub fn locale(self) -> Locale {
        self.prefs.with(Prefs::locale)
    }
    pub fn mass_unit(self) -> MassUnit {
        self.prefs.with(|p| p.mass)
    }
    pub fn temperature_unit(self) -> TemperatureUnit {
        self.prefs.with(|p| p.temperature)
    }
    /// How amounts are said to this person.
    pub fn voice(self) -> Voice {
        let length = match self.mass_unit() {
            MassUnit::Ounce | MassUnit::Pound => LengthUnit::Inch,
            MassUnit::Gram | MassUnit::Kilogram => LengthUnit::Millimetre,
        };
        Voice { mass: self.mass_unit(), temperature: self.temperature_unit(), length, locale: self.locale() }
    }
    /// The air around the pot.
    pub fn air(self) -> Air {
        let now = self.now().get();
        Air::of(self.prefs.with(|p| p.room_at(now)), self.voice())
    }
    pub fn which(self) -> Which {
        self.prefs.with(|p| p.workshop)
    }
}
