//! The enthalpy of a wax over its melting range.

use super::setup::Setup;

/// A melting range narrower than this is widened to it, K.
const NARROWEST: f64 = 0.02;

/// Temperature by enthalpy, above the room: J/kg counted from the solid at `solidus`.
#[derive(Clone, Copy)]
pub(crate) struct Curve {
    solidus: f64,
    liquidus: f64,
    latent: f64,
    /// Heat capacity of the solid, of what melts, and of the liquid; and one over each, for speed.
    solid: (f64, f64),
    melting: (f64, f64),
    liquid: (f64, f64),
    by_latent: f64,
}

impl Curve {
    pub(crate) fn new(setup: &Setup) -> Self {
        let w = &setup.wax;
        let (solidus, liquidus) =
            (w.solidus - setup.room, w.liquidus.max(w.solidus + NARROWEST) - setup.room);
        let latent = w.latent + 0.5 * (w.heat_solid + w.heat_liquid) * (liquidus - solidus);
        let both = |c: f64| (c, 1.0 / c);
        Self {
            solidus,
            liquidus,
            latent,
            solid: both(w.heat_solid),
            melting: both(latent / (liquidus - solidus)),
            liquid: both(w.heat_liquid),
            by_latent: 1.0 / latent,
        }
    }

    /// Temperature and heat capacity J/(kg·K) at an enthalpy.
    #[inline(always)]
    pub(crate) fn at(&self, e: f64) -> (f64, f64) {
        let (c, by) = if e < 0.0 { self.solid } else { self.melting };
        let below = (self.solidus + e * by, c);
        if e > self.latent {
            return (self.liquidus + (e - self.latent) * self.liquid.1, self.liquid.0);
        }
        below
    }

    pub(crate) fn enthalpy(&self, theta: f64) -> f64 {
        if theta < self.solidus {
            (theta - self.solidus) * self.solid.0
        } else if theta <= self.liquidus {
            (theta - self.solidus) * self.melting.0
        } else {
            self.latent + (theta - self.liquidus) * self.liquid.0
        }
    }

    #[inline(always)]
    pub(crate) fn melts(&self, e: f64) -> bool {
        e > 0.0 && e < self.latent
    }

    #[inline(always)]
    pub(crate) fn solid_share(&self, e: f64) -> f64 {
        (1.0 - e * self.by_latent).clamp(0.0, 1.0)
    }
}
