//! How much smaller the wax gets from the pour to the room.

use super::setup::Setup;

/// Shares of the volume poured, and what it takes to make them good.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Contraction {
    /// While it cools as a liquid, as it sets, and while it cools as a solid.
    pub liquid: f64,
    pub setting: f64,
    pub solid: f64,
    /// Wax to keep back for topping up and the second pour, g: what fills the hollow once it is cold.
    pub keep_back: f64,
}

impl Contraction {
    /// Everything together.
    pub fn total(&self) -> f64 {
        self.liquid + self.setting + self.solid
    }
}

/// From the densities and expansions of the wax alone: it says how large the hollow is, not where it opens.
///
/// # Errors
/// As [`Setup::check`].
pub fn contraction(setup: &Setup) -> Result<Contraction, super::HeatError> {
    setup.check()?;
    let wax = &setup.wax;
    let poured = 1.0 / wax.liquid_at(setup.pour);
    let melted = 1.0 / wax.liquid_at(wax.liquidus);
    let set = 1.0 / wax.solid_at(wax.solidus);
    let cold = 1.0 / wax.solid_at(setup.room);
    Ok(Contraction {
        liquid: (poured - melted) / poured,
        setting: (melted - set) / poured,
        solid: (set - cold) / poured,
        keep_back: 1e3 * setup.mass() * (poured - cold) / cold,
    })
}
