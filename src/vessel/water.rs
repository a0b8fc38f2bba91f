//! The density of water by temperature.

use super::Water;
use crate::quantity::{Amount, Density, Exact, Mass, Temperature, Voice};

/// Where [`water_density`] is from.
pub const WATER_SOURCE: &str = "M. Tanaka et al., Metrologia 38 (2001) 301–309 (the CIPM formula)";

/// Densities and volumes found by measuring are kept to this step: none is known better.
pub(crate) const MEASURED: Exact = Exact::ratio(1, 1_000_000_000);

/// The density of air-free water at normal pressure, to 10⁻⁹ g/mL; none outside 0–40 °C.
///
/// a5 × (1 − (t + a1)² (t + a2) ÷ (a3 (t + a4))), t in °C: Tanaka et al. (2001), equation 1.
pub fn water_density(at: Temperature) -> Option<Density> {
    const A1: Exact = Exact::ratio(-3_983_035, 1_000_000);
    const A2: Exact = Exact::ratio(301_797, 1_000);
    const A3: Exact = Exact::ratio(5_225_289, 10);
    const A4: Exact = Exact::ratio(6_934_881, 100_000);
    const A5: Exact = Exact::ratio(99_997_495, 100_000_000);
    // A thermometer reads no finer than this, and a short fraction keeps the cube exact.
    let t = at.in_celsius().round_to(Exact::ratio(1, 10_000));
    if t.is_negative() || t > Exact::whole(40) {
        return None;
    }
    let away = (t + A1) * (t + A1) * (t + A2) / (A3 * (t + A4));
    Some(Density::base((A5 * (Exact::ONE - away)).round_to(MEASURED)))
}

impl Water {
    /// What each weighing showed.
    pub fn masses(&self) -> impl Iterator<Item = Amount<Mass>> {
        [self.mass].into_iter().chain(self.again.iter().copied())
    }

    /// What it holds on the mean of all weighings, exactly.
    pub fn mean(&self) -> Mass {
        let sum: Mass = self.masses().map(|m| m.value).sum();
        sum.times(Exact::ratio(1, self.again.len() as i128 + 1))
    }

    /// As it was typed where it was weighed once, else the mean: `301.2 g, the mean of 3`.
    pub fn held(&self, voice: Voice) -> String {
        if self.again.is_empty() {
            return voice.typed(self.mass);
        }
        let weighings = (self.again.len() + 1).to_string();
        [&voice.amount(self.mean(), self.mass.unit), ", the mean of ", &weighings].concat()
    }
}
