//! A map over pour and vessel temperatures: what it goes over, what is least on it, and its picture.

use crate::heat::Setup;

/// So many temperatures each way.
const SIDE: usize = 20;
/// °C: wax is not poured hotter, nor is a vessel warmed more. `common practice, no source`
const HOTTEST: (f64, f64) = (95.0, 80.0);

/// What a map goes over, °C, from the lowest up.
#[derive(Clone, PartialEq, Debug)]
pub struct Sweep {
    pub setup: Setup,
    pub pours: Vec<f64>,
    pub vessels: Vec<f64>,
}

impl Sweep {
    /// From just melted, and from the room.
    pub fn over(setup: &Setup) -> Self {
        let steps = |from: f64, to: f64| {
            let to = to.max(from + 10.0);
            (0..SIDE).map(|i| from + (to - from) * i as f64 / (SIDE - 1) as f64).collect()
        };
        Self {
            setup: *setup,
            pours: steps(setup.wax.liquidus + 1.0, HOTTEST.0),
            vessels: steps(setup.room, HOTTEST.1),
        }
    }

    /// The temperatures at a place of the picture, in shares of its width from the left and of its height from the top.
    pub fn at(&self, across: f64, down: f64) -> Option<(f64, f64)> {
        let place =
            |of: &[f64], share: f64| of.get((share.clamp(0.0, 1.0) * of.len() as f64) as usize).copied();
        Some((place(&self.pours, across.min(0.999))?, place(&self.vessels, (1.0 - down).min(0.999))?))
    }

    /// Where the result is least, that and the most: pour, vessel, least, most.
    pub fn least(&self, rows: &[Vec<f32>]) -> Option<(f64, f64, f64, f64)> {
        let mut found: Option<(f64, f64, f64, f64)> = None;
        for (vessel, row) in self.vessels.iter().zip(rows) {
            for (pour, value) in self.pours.iter().zip(row).filter(|(_, v)| !v.is_nan()) {
                let value = f64::from(*value);
                found = Some(match found {
                    Some((p, v, least, most)) if least <= value => (p, v, least, most.max(value)),
                    Some((.., most)) => (*pour, *vessel, value, most),
                    None => (*pour, *vessel, value, value),
                });
            }
        }
        found
    }

    /// One pixel for each value, the first row at the bottom, from the first colour at the least to the second at the
    /// most; nothing where there is no value yet.
    pub fn paint(rows: &[Vec<f32>], scale: [[u8; 3]; 2], columns: usize, lines: usize, pixels: &mut [u8]) {
        let values = || rows.iter().flatten().filter(|v| !v.is_nan());
        let least = values().copied().fold(f32::INFINITY, f32::min);
        let most = values().copied().fold(f32::NEG_INFINITY, f32::max);
        let wide = (most - least).max(f32::MIN_POSITIVE);
        pixels.fill(0);
        for (line, row) in rows.iter().enumerate().take(lines) {
            let start = 4 * columns * (lines - 1 - line);
            let pixels = pixels.get_mut(start..start + 4 * columns).unwrap_or_default();
            for (pixel, value) in
                pixels.as_chunks_mut::<4>().0.iter_mut().zip(row).filter(|(_, v)| !v.is_nan())
            {
                let part = (value - least) / wide;
                let [a, b] = scale;
                for ((to, a), b) in pixel.iter_mut().zip(a).zip(b) {
                    *to = (f32::from(a) * (1.0 - part) + f32::from(b) * part + 0.5) as u8;
                }
                pixel[3] = 255;
            }
        }
    }
}
