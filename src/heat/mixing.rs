//! What adding a part does to the temperature of the pot.

use super::error::{HeatError, within};

/// Something that goes into the mix: grams, °C, specific heat in J/(g·K), and what it takes up in melting, J/g: zero of
/// what is liquid already.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Portion {
    pub grams: f64,
    pub celsius: f64,
    pub specific_heat: f64,
    pub melting: f64,
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
        let taken = added * (goal - self.added.celsius) + self.added.grams * self.added.melting;
        (held > 0.0).then(|| goal + taken / held)
    }
}

/// Stirs `part` into a pot that holds `held`: calorimetry, the sum of m·c·T before and after being the same.
///
/// It holds while what is in the pot stays liquid, and for the moment after stirring, with the part melted through: heat
/// lost to the room meanwhile, and what a part gives back that chills the wax below its melting range, are not in it.
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
    let fall = (held.celsius - part.celsius) * (added / total) + part.grams * part.melting / total;
    Ok(Mixed { after: held.celsius - fall, fall, heat_capacity: total, added: part })
}

fn capacity(p: &Portion) -> Result<f64, HeatError> {
    within("weight", p.grams, 0.0, 1e6, "g")?;
    within("temperature", p.celsius, -60.0, 300.0, "°C")?;
    within("specific heat", p.specific_heat, 0.05, 10.0, "J/(g·K)")?;
    within("heat of melting", p.melting, 0.0, 1000.0, "J/g")?;
    Ok(p.grams * p.specific_heat)
}
