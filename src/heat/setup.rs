//! Everything the freezing of one vessel is reckoned from, and what of it is refused.

use super::error::{HeatError, within};
use super::wax::{Material, Wax};

/// A round vessel with straight sides, in metres. A tapered one is taken at its mean diameter.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Shape {
    /// Inside radius.
    pub radius: f64,
    /// Height of the wax.
    pub fill: f64,
    /// Wall that stands above the wax.
    pub rim: f64,
    /// Thickness of the wall; zero for none.
    pub wall: f64,
    /// Thickness of the base; zero for none.
    pub base: f64,
}

/// Heat lost through a surface for each kelvin above the room, W/(m²·K).
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Film {
    pub side: f64,
    pub top: f64,
    pub bottom: f64,
}

/// One vessel and what it is poured with; temperatures in °C.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Setup {
    pub shape: Shape,
    pub wax: Wax,
    pub material: Material,
    pub film: Film,
    pub room: f64,
    pub pour: f64,
    /// Of the empty vessel when the wax goes in.
    pub vessel: f64,
    /// How many times better the liquid carries heat for its slow stirring; 1 for none.
    ///
    /// 1 is the default: the stirring dies out as the wax thickens and what it does depends on the vessel's
    /// corners, so any one number would be a guess. Real vessels therefore cool faster at first than is shown.
    pub stirring: f64,
}

/// How finely it is reckoned.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Detail {
    /// Largest cell, m.
    pub cell: f64,
    /// Of process to follow, s.
    pub seconds: f64,
    /// Largest share of the heat above the room that leaves in one step.
    pub share: f64,
    /// Largest growth of the clock in one step, as a share of the time since the pour.
    pub growth: f64,
    /// Pictures kept, spread over the time.
    pub frames: usize,
    /// Where a thermometer hangs: m from the axis, and m above the inside of the base.
    pub probe: Option<(f64, f64)>,
}

impl Detail {
    /// For one vessel and its picture.
    pub const FINE: Self =
        Self { cell: 0.002, seconds: 43_200.0, share: 0.012, growth: 0.05, frames: 72, probe: None };
    /// For a map of many vessels: within 3 % of the fine one.
    pub const COARSE: Self =
        Self { cell: 0.005, seconds: 43_200.0, share: 0.02, growth: 0.15, frames: 0, probe: None };
}

impl Setup {
    /// # Errors
    /// A sentence for the first size, property or temperature that cannot be; see [`HeatError`].
    pub fn check(&self) -> Result<(), HeatError> {
        let s = &self.shape;
        let mm = |what, metres: f64, least: f64, most: f64| within(what, metres * 1e3, least, most, "mm");
        mm("inside radius of the vessel", s.radius, 4.0, 200.0)?;
        mm("height of the wax", s.fill, 4.0, 400.0)?;
        mm("wall above the wax", s.rim, 0.0, 200.0)?;
        mm("thickness of the wall", s.wall, 0.0, 50.0)?;
        mm("thickness of the base", s.base, 0.0, 50.0)?;
        self.wax.check()?;
        self.material.check()?;
        for film in [self.film.side, self.film.top, self.film.bottom] {
            within("film coefficient", film, 0.0, 1e7, "W/(m²·K)")?;
        }
        within("stirring of the liquid", self.stirring, 1.0, 100.0, "times")?;
        within("room temperature", self.room, -40.0, 100.0, "°C")?;
        within("pour temperature", self.pour, -40.0, 250.0, "°C")?;
        within("vessel temperature", self.vessel, -40.0, 250.0, "°C")?;
        if self.pour < self.wax.liquidus {
            return Err(HeatError::PourTooCold { pour: self.pour, liquidus: self.wax.liquidus });
        }
        if self.room >= self.wax.solidus {
            return Err(HeatError::RoomTooWarm { room: self.room, solidus: self.wax.solidus });
        }
        Ok(())
    }

    /// Mass of the wax, kg: the liquid at the pour temperature, up to the fill line.
    pub fn mass(&self) -> f64 {
        let s = &self.shape;
        std::f64::consts::PI * s.radius * s.radius * s.fill * self.wax.liquid_at(self.pour)
    }
}

impl Detail {
    pub(crate) fn check(&self) -> Result<(), HeatError> {
        within("cell of the grid", self.cell * 1e3, 0.1, 50.0, "mm")?;
        within("time to follow", self.seconds / 3600.0, 0.001, 240.0, "h")?;
        within("share for each step", self.share, 1e-5, 0.2, "of the heat")?;
        within("growth of each step", self.growth, 1e-4, 0.5, "of the time")?;
        within("number of pictures", self.frames as f64, 0.0, 1000.0, "")?;
        Ok(())
    }
}
