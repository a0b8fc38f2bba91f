//! The properties of a wax that a supplier's sheet may give: typed, they take the place of those of its kind.

use super::freezing::decimal_of;
use crate::heat::{PARAFFIN_LIKE, VEGETABLE_LIKE, Wax};
use crate::quantity::Voice;

/// One of them, in the unit that sheets give it in.
pub struct Property {
    pub words: &'static str,
    pub unit: &'static str,
    /// How many of the SI unit one of `unit` is.
    size: f64,
    of: fn(&mut Wax) -> &mut f64,
}

pub const PROPERTIES: [Property; 7] = [
    Property { words: "Heat of melting", unit: "kJ/kg", size: 1e3, of: |w| &mut w.latent },
    Property { words: "Specific heat, solid", unit: "kJ/(kg·K)", size: 1e3, of: |w| &mut w.heat_solid },
    Property { words: "Specific heat, liquid", unit: "kJ/(kg·K)", size: 1e3, of: |w| &mut w.heat_liquid },
    Property { words: "Conductivity, solid", unit: "W/(m·K)", size: 1.0, of: |w| &mut w.conduct_solid },
    Property { words: "Conductivity, liquid", unit: "W/(m·K)", size: 1.0, of: |w| &mut w.conduct_liquid },
    Property { words: "Density, liquid at 80 °C", unit: "g/mL", size: 1e3, of: |w| &mut w.density_liquid },
    Property { words: "Density, solid at 20 °C", unit: "g/mL", size: 1e3, of: |w| &mut w.density_solid },
];

/// Which of them a wax of the book is known by: its density as it is poured.
pub const POURED: usize = 5;

/// What was typed for each of [`PROPERTIES`].
pub type Properties = [Option<f64>; PROPERTIES.len()];

/// The wax of a kind with what was typed in the place of the usual. What no wax has is refused by [`Wax::check`].
pub(super) fn wax(vegetable: bool, typed: &Properties) -> Wax {
    let mut wax = if vegetable { VEGETABLE_LIKE } else { PARAFFIN_LIKE };
    for (property, typed) in PROPERTIES.iter().zip(typed) {
        if let Some(typed) = typed {
            *(property.of)(&mut wax) = typed * property.size;
        }
    }
    wax
}

impl Property {
    /// What holds where nothing is typed: `130 kJ/kg`.
    pub fn usual(&self, vegetable: bool, voice: Voice) -> String {
        let mut wax = wax(vegetable, &Properties::default());
        let value = *(self.of)(&mut wax) / self.size;
        let places = if value < 10.0 { 3 } else { 0 };
        [&decimal_of(value, places, voice), " ", self.unit].concat()
    }
}
