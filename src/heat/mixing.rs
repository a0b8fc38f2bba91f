//! What adding a part does to the temperature of the pot.

use super::error::{HeatError, within};

/// Something that goes into the mix: grams, °C, and specific heat in J/(g·K).
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Portion {
    pub grams: f64,
    pub celsius: f64,
    pub specific_heat: f64,
}

/// The pot itself, which warms and cools with what is in it: grams and J/(g·K) of its metal.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Pot {
    pub grams: f64,
    pub specific_heat: f64,
}

/// The pot after the part went in, in °C.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Mixed {
    pub after: f64,
    /// How far the pot falls; below zero where the part is the warmer one.
    pub fall: f64,
    /// What one kelvin of everything together takes, in J/K.
    pub heat_capacity: f64,
    added: Portion,
}

impl Mixed {
    /// How warm the pot must be before, in °C, to be at `goal` after the same part went in. None where what is
    /// in the pot holds no heat.
    pub fn before(&self, goal: f64) -> Option<f64> {
        let added = self.added.grams * self.added.specific_heat;
        let held = self.heat_capacity - added;
        (held > 0.0).then(|| goal + added * (goal - self.added.celsius) / held)
    }
}

/// Stirs `part` into a pot that holds `held`: calorimetry, the sum of m·c·T before and after being the same.
///
/// It holds while everything stays liquid, and for the moment after stirring: heat lost to the room meanwhile and
/// heat of melting (solid flakes, a part that chills the wax below its melting range) are not in it.
///
/// # Errors
/// Where a mass, a specific heat or a temperature is not one a bench can have, or nothing is there to mix.
pub fn mix(held: Portion, pot: Option<Pot>, part: Portion) -> Result<Mixed, HeatError> {
    let content = capacity(&held)?;
    let metal = match pot {
        Some(p) => capacity(&Portion { grams: p.grams, specific_heat: p.specific_heat, ..held })?,
        None => 0.0,
    };
    let added = capacity(&part)?;
    let total = content + metal + added;
    if total <= 0.0 {
        return Err(HeatError::NothingToMix);
    }
    // Written from the pot's side, so that a part of no weight leaves the temperature untouched to the last bit.
    let fall = (held.celsius - part.celsius) * (added / total);
    Ok(Mixed { after: held.celsius - fall, fall, heat_capacity: total, added: part })
}

fn capacity(p: &Portion) -> Result<f64, HeatError> {
    within("weight", p.grams, 0.0, 1e6, "g")?;
    within("temperature", p.celsius, -60.0, 300.0, "°C")?;
    within("specific heat", p.specific_heat, 0.05, 10.0, "J/(g·K)")?;
    Ok(p.grams * p.specific_heat)
}
