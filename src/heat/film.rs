//! How well a surface gives its heat to the room: correlations for still and moving air, radiation, and what it stands on.

use super::error::{HeatError, within};
use super::setup::{Film, Shape};
use super::wax::{Material, Wax};

/// What the vessel stands on.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Base {
    Wood,
    Metal,
    /// A wire rack: air beneath.
    Rack,
}

/// Where a vessel sets.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Place {
    /// °C.
    pub room: f64,
    pub base: Base,
    /// Under a lid or a board.
    pub covered: bool,
    /// To the neighbours in a tray, m; none where it stands alone.
    pub gap: Option<f64>,
    /// Speed of the air, m/s; zero in a still room.
    pub air: f64,
}

/// Stefan and Boltzmann's constant, W/(m²·K⁴) (CODATA 2018).
const SIGMA: f64 = 5.670_374_419e-8;
const GRAVITY: f64 = 9.81;
/// Emissivity of wax and of most lids: of lacquers and paints 0.8 to 0.95 (tables of thermography after Bramson); of wax
/// `from memory`.
const DULL: f64 = 0.9;
/// Surfaces are taken this share of the way from the room to the middle of the melting range: where they are while
/// most of the heat leaves. The coefficients go as the fourth root of it, so a tenth more or less does little.
const SURFACE: f64 = 0.55;
/// Air under a hollow base, m; a board's thickness, m, and conductivity, W/(m·K), between pine's 0.15 and oak's 0.17
/// (ASHRAE Handbook, Fundamentals, 2013); what a plate or a board passes on to the room, W/(m²·K) of the base, the plate
/// being many times as large. Our own estimates but for the wood.
const HOLLOW: f64 = 0.0003;
const BOARD: (f64, f64) = (0.02, 0.16);
const BOARD_ON: f64 = 8.0;
const PLATE_ON: f64 = 80.0;

/// Dry air at 1 atm by °C: W/(m·K), m²/s, Prandtl number. Çengel & Ghajar, Table A-15, compared line by line; at 22 °C
/// it gives what their worked solution 9-97 prints. The newer equations of Lemmon and Jacobsen (CoolProp 8.0.0) differ
/// from it by up to 0.7 % in the viscosity, 3 % in the conductivity and 4 % in Pr, most of it in the cold; the table is
/// used because the published examples are.
const AIR: [(f64, f64, f64, f64); 8] = [
    (-20.0, 0.02211, 1.169e-5, 0.7408),
    (0.0, 0.02364, 1.338e-5, 0.7362),
    (20.0, 0.02514, 1.516e-5, 0.7309),
    (40.0, 0.02662, 1.702e-5, 0.7255),
    (60.0, 0.02808, 1.896e-5, 0.7202),
    (80.0, 0.02953, 2.097e-5, 0.7154),
    (100.0, 0.03095, 2.306e-5, 0.7111),
    (120.0, 0.03235, 2.522e-5, 0.7073),
];

/// Air between a surface and a room.
#[derive(Clone, Copy, Debug)]
pub struct Air {
    pub conduct: f64,
    pub viscosity: f64,
    pub prandtl: f64,
    /// g·β·ΔT/(ν·α): times a length cubed it is the Rayleigh number.
    lift: f64,
}

impl Air {
    /// At the mean of the two temperatures, °C, straight between the lines of the table.
    pub fn between(surface: f64, room: f64) -> Self {
        let mean = (0.5 * (surface + room)).clamp(-20.0, 120.0);
        let mut found = AIR[0];
        for (a, b) in AIR.iter().zip(AIR.iter().skip(1)) {
            if mean >= a.0 {
                let t = ((mean - a.0) / (b.0 - a.0)).min(1.0);
                let on = |x: f64, y: f64| x + t * (y - x);
                found = (mean, on(a.1, b.1), on(a.2, b.2), on(a.3, b.3));
            }
        }
        let (_, conduct, viscosity, prandtl) = found;
        let lift = GRAVITY * (surface - room).abs() * prandtl / ((mean + 273.15) * viscosity * viscosity);
        Self { conduct, viscosity, prandtl, lift }
    }

    /// Ra of a length.
    pub fn rayleigh(&self, length: f64) -> f64 {
        self.lift * length.powi(3)
    }

    /// Nu of a vertical plate of this height: Churchill and Chu (1975), any Ra. A vessel is nearly one while its
    /// diameter is not below 35·height/Gr^¼.
    pub fn upright(&self, height: f64) -> f64 {
        let by = (1.0 + (0.492 / self.prandtl).powf(9.0 / 16.0)).powf(8.0 / 27.0);
        (0.825 + 0.387 * self.rayleigh(height).powf(1.0 / 6.0) / by).powi(2)
    }

    /// Nu of a warm round plate that looks up, by a quarter of its diameter (area over edge): McAdams (Heat Transmission,
    /// 3rd edition).
    pub fn up(&self, quarter: f64) -> f64 {
        let ra = self.rayleigh(quarter);
        (if ra < 1e7 { 0.54 * ra.powf(0.25) } else { 0.15 * ra.cbrt() }).max(1.0)
    }

    /// Nu of a warm round plate that looks down: McAdams, likewise.
    pub fn down(&self, quarter: f64) -> f64 {
        (0.27 * self.rayleigh(quarter).powf(0.25)).max(1.0)
    }

    /// Nu by the gap between two upright walls that are equally warm: Bar-Cohen and Rohsenow (1984). Some print 2.873
    /// for 2.87: less than a thousandth.
    pub fn channel(&self, gap: f64, height: f64) -> f64 {
        let x = self.rayleigh(gap) * gap / height;
        (576.0 / (x * x) + 2.87 / x.sqrt()).powf(-0.5)
    }

    /// Nu of a cylinder across a stream: Churchill and Bernstein (1977).
    pub fn across(&self, speed: f64, diameter: f64) -> f64 {
        let re = speed * diameter / self.viscosity;
        let pr = self.prandtl;
        let head = 0.62 * re.sqrt() * pr.cbrt() / (1.0 + (0.4 / pr).powf(2.0 / 3.0)).powf(0.25);
        0.3 + head * (1.0 + (re / 282_000.0).powf(5.0 / 8.0)).powf(0.8)
    }

    /// Nu of a plate along a stream, laminar: Blasius and Pohlhausen.
    pub fn along(&self, speed: f64, length: f64) -> f64 {
        0.664 * (speed * length / self.viscosity).sqrt() * self.prandtl.cbrt()
    }
}

/// Radiation to a room, W/(m²·K): εσ(T² + T₀²)(T + T₀), temperatures in °C.
pub fn radiation(emissivity: f64, surface: f64, room: f64) -> f64 {
    let (a, b) = (surface + 273.15, room + 273.15);
    emissivity * SIGMA * (a * a + b * b) * (a + b)
}

/// The share of what a side radiates that gets out between two walls `gap` apart and `height` high: one less the view
/// factor between them (crossed strings).
pub fn open_share(gap: f64, height: f64) -> f64 {
    let x = gap / height;
    1.0 - ((1.0 + x * x).sqrt() - x)
}

/// Still and moving air together: the cubes add up (Nellis & Klein, Introduction to Engineering Heat Transfer, 2021).
fn both(still: f64, moving: f64) -> f64 {
    (still.powi(3) + moving.powi(3)).cbrt()
}

/// The film coefficients of a vessel in its place.
///
/// # Errors
/// A sentence where a size, a gap or the air's speed cannot be.
pub fn film(shape: &Shape, wax: &Wax, material: &Material, place: &Place) -> Result<Film, HeatError> {
    within("room temperature", place.room, -40.0, 100.0, "°C")?;
    within("speed of the air", place.air, 0.0, 20.0, "m/s")?;
    if let Some(gap) = place.gap {
        within("gap to the next vessel", gap * 1e3, 1.0, 1000.0, "mm")?;
    }
    within("inside radius of the vessel", shape.radius * 1e3, 4.0, 200.0, "mm")?;
    within("height of the wax", shape.fill * 1e3, 4.0, 400.0, "mm")?;
    wax.check()?;
    material.check()?;
    let room = place.room;
    let surface = room + SURFACE * (0.5 * (wax.solidus + wax.liquidus) - room).max(1.0);
    let air = Air::between(surface, room);
    let high = shape.fill + shape.rim.max(0.0) + shape.base.max(0.0);
    let wide = 2.0 * (shape.radius + shape.wall.max(0.0));

    let mut still = air.conduct * air.upright(high) / high;
    let mut out = 1.0;
    if let Some(gap) = place.gap {
        still = still.min(air.conduct * air.channel(gap, high) / gap);
        out = open_share(gap, high);
    }
    // Neighbours shut out a draught as they shut out the view of the room, for want of a better figure.
    let moving = out * air.conduct * air.across(place.air, wide) / wide;
    let moving = if place.air > 0.0 { moving } else { 0.0 };
    let side = both(still, moving) + out * radiation(material.emissivity, surface, room);

    let quarter = 0.25 * wide;
    let still = air.conduct * air.up(quarter) / quarter;
    let moving = air.conduct * air.along(place.air, wide) / wide;
    let open = both(still, moving) + radiation(DULL, surface, room);
    let top = if place.covered {
        let depth = shape.rim.max(0.005);
        let beneath = air.conduct / depth + radiation(DULL * DULL, surface, room);
        1.0 / (1.0 / beneath + 1.0 / open)
    } else {
        open
    };

    let contact = HOLLOW / air.conduct;
    let bottom = match place.base {
        Base::Wood => 1.0 / (contact + BOARD.0 / BOARD.1 + 1.0 / BOARD_ON),
        Base::Metal => 1.0 / (contact + 1.0 / PLATE_ON),
        Base::Rack => {
            let still = air.conduct * air.down(quarter) / quarter;
            let moving = air.conduct * air.along(place.air, wide) / wide;
            both(still, moving) + radiation(material.emissivity, surface, room)
        }
    };
    Ok(Film { side, top, bottom })
}

/// The temperature, °C, of an empty vessel after `minutes` in an oven: both faces of the wall take heat up, as one body.
///
/// # Errors
/// A sentence where the wall or a temperature cannot be.
pub fn warmed(material: &Material, wall: f64, minutes: f64, oven: f64, room: f64) -> Result<f64, HeatError> {
    material.check()?;
    within("thickness of the wall", wall * 1e3, 0.1, 50.0, "mm")?;
    within("time in the oven", minutes, 0.0, 1440.0, "min")?;
    within("oven temperature", oven, 0.0, 200.0, "°C")?;
    within("room temperature", room, -40.0, 100.0, "°C")?;
    let mean = 0.5 * (oven + room);
    let air = Air::between(oven, mean);
    let h = air.conduct * air.upright(0.1) / 0.1 + radiation(material.emissivity, oven, mean);
    let rate = 2.0 * h / (material.density * material.heat * wall);
    Ok(oven - (oven - room) * (-rate * minutes * 60.0).exp())
}
