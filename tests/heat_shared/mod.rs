//! Slabs with a front that is known exactly, for tests and for what is measured.
#![allow(dead_code, clippy::unwrap_used, clippy::indexing_slicing, reason = "each user takes a part of it")]

use potside::heat::{Detail, Film, GLASS, Setup, Shape, Wax, freeze};

/// As good as a fixed temperature.
pub const PERFECT: f64 = 1e7;

/// A wax with one density, melted and solid within a fiftieth of a kelvin.
pub fn sharp(melts: f64, latent: f64, density: f64, heat: (f64, f64), conduct: (f64, f64)) -> Wax {
    Wax {
        solidus: melts - 0.02,
        liquidus: melts,
        latent,
        heat_solid: heat.0,
        heat_liquid: heat.1,
        conduct_solid: conduct.0,
        conduct_liquid: conduct.1,
        density_liquid: density,
        expansion_liquid: 0.0,
        density_solid: density,
        expansion_solid: 0.0,
    }
}

/// A slab cooled from below only, without wall or base.
pub fn slab(wax: Wax, deep: f64, cold: f64, pour: f64) -> Setup {
    Setup {
        shape: Shape { radius: 0.005, fill: deep, rim: 0.0, wall: 0.0, base: 0.0 },
        wax,
        material: GLASS,
        film: Film { side: 0.0, top: 0.0, bottom: PERFECT },
        room: cold,
        pour,
        vessel: cold,
        stirring: 1.0,
    }
}

/// The front of a slab at each picture: (seconds, m), and the size of its cells.
pub fn front(setup: &Setup, detail: &Detail) -> (Vec<(f64, f64)>, f64) {
    let f = freeze(setup, detail).unwrap();
    assert!(f.imbalance < 1e-3, "energy is off by {}", f.imbalance);
    let p = &f.picture;
    let size = p.heights[1] - p.heights[0];
    let fronts = (0..p.seconds.len()).map(|i| {
        let rings = p.rings();
        let depth: f64 = (0..p.layers())
            .map(|z| f64::from(p.solid(i).unwrap()[z * rings]) / 255.0 * (p.heights[z + 1] - p.heights[z]))
            .sum();
        (f64::from(p.seconds[i]), depth)
    });
    (fronts.collect(), size)
}

/// Largest error of the front: in cells at any time, and as a share once ten cells are crossed.
pub fn front_error(setup: &Setup, detail: &Detail, lambda: f64) -> (f64, f64) {
    let w = &setup.wax;
    let spread = w.conduct_solid / (w.density_solid * w.heat_solid);
    let (fronts, size) = front(setup, detail);
    let (mut cells, mut share): (f64, f64) = (0.0, 0.0);
    for (t, s) in fronts {
        let exact = 2.0 * lambda * (spread * t).sqrt();
        if exact > 0.75 * setup.shape.fill {
            break;
        }
        cells = cells.max((s - exact).abs() / size);
        if exact > 10.0 * size {
            share = share.max((s / exact - 1.0).abs());
        }
    }
    (cells, share)
}

pub fn fine(cell: f64, seconds: f64) -> Detail {
    Detail { cell, seconds, frames: 200, ..Detail::FINE }
}

/// Wax-like, two phases: k 0.24/0.15, c 2200/2400, ρ 880, L 190 000, melts at 55, wall 20, poured at 80; with its λ of the
/// two-phase equation (Carslaw & Jaeger §11.2), computed to six digits.
pub fn neumann_wax() -> (Setup, f64) {
    (slab(sharp(55.0, 190_000.0, 880.0, (2200.0, 2400.0), (0.24, 0.15)), 0.08, 20.0, 80.0), 0.340520)
}
