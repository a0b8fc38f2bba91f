//! Looking at the state between steps.
#![allow(clippy::indexing_slicing, reason = "places come from the grid the state was allotted for")]

use super::flow::Flow;
use super::grid::Grid;

/// Depth of the skin that is looked at, m, and a hair less.
const THIN: f64 = 0.001 - 1e-6;

/// What one look over the vessel finds.
pub(crate) struct Survey {
    /// Solid share of the skin where it is softest.
    pub(crate) skin: f64,
    /// Ring and layer of the softest cell of all.
    pub(crate) softest: (usize, usize),
    /// K above the room.
    pub(crate) hottest: f64,
    /// Share of the wax that is liquid.
    pub(crate) liquid: f64,
    /// J above solid wax and wall at the room's temperature.
    pub(crate) held: f64,
}

impl Flow {
    /// Enthalpy and temperature above the room of one cell.
    pub(crate) fn cell(&self, ring: usize, layer: usize) -> (f64, f64) {
        let axis = &self.grid.axial;
        let c = &axis.cells[(layer + 1) * axis.lanes + ring];
        (c.e, c.theta)
    }

    /// Solid share of the uppermost millimetre over one ring, or of the top layer where that is thicker.
    fn skin(&self, ring: usize) -> f64 {
        let grid = &self.grid;
        let surface = grid.heights[grid.wax_layers.end];
        let (mut share, mut deep) = (0.0, 0.0);
        for layer in grid.wax_layers.clone().rev() {
            let thick = grid.heights[layer + 1] - grid.heights[layer];
            share += thick * self.curve.solid_share(self.cell(ring, layer).0);
            deep = surface - grid.heights[layer];
            if deep > THIN {
                break;
            }
        }
        share / deep
    }

    pub(crate) fn survey(&self) -> Survey {
        let axis = &self.grid.axial;
        let (mut most, mut at, mut hottest) = (f64::NEG_INFINITY, 0, 0.0);
        let (mut liquid, mut mass, mut held) = (0.0, 0.0, 0.0);
        for (i, c) in axis.cells.iter().enumerate() {
            held += c.mass * c.e;
            if c.wax {
                if c.e > most {
                    (most, at, hottest) = (c.e, i, c.theta);
                }
                liquid += c.mass * (1.0 - self.curve.solid_share(c.e));
                mass += c.mass;
            }
        }
        Survey {
            skin: (0..self.grid.wax_rings).map(|r| self.skin(r)).fold(f64::INFINITY, f64::min),
            softest: (at % axis.lanes, (at / axis.lanes).saturating_sub(1)),
            hottest,
            liquid: liquid / mass,
            held: held - mass * self.curve.enthalpy(0.0),
        }
    }

    /// K above the room at a place in the wax (m from the axis, m above the inside of the base), straight between
    /// the middles of the cells around it.
    pub(crate) fn between(&self, r: f64, z: f64) -> f64 {
        let grid = &self.grid;
        let z = z + grid.heights[grid.wax_layers.start];
        let (i, a) = bracket(&grid.radii[..=grid.wax_rings], r);
        let (j, b) = bracket(&grid.heights[grid.wax_layers.start..=grid.wax_layers.end], z);
        let j = j + grid.wax_layers.start;
        let (i2, j2) = ((i + 1).min(grid.wax_rings - 1), (j + 1).min(grid.wax_layers.end - 1));
        let t = |i, j| self.cell(i, j).1;
        (1.0 - b) * ((1.0 - a) * t(i, j) + a * t(i2, j)) + b * ((1.0 - a) * t(i, j2) + a * t(i2, j2))
    }
}

impl Grid {
    /// The middle of a cell: m from the axis, m below the surface of the wax.
    pub(crate) fn place(&self, (ring, layer): (usize, usize)) -> (f64, f64) {
        let surface = self.heights[self.wax_layers.end];
        let height = 0.5 * (self.heights[layer] + self.heights[layer + 1]);
        (0.5 * (self.radii[ring] + self.radii[ring + 1]), surface - height)
    }
}

/// The cell whose middle lies at or before `x`, and how far on towards the next middle `x` lies, 0 to 1.
fn bracket(edges: &[f64], x: f64) -> (usize, f64) {
    let mid = |i: usize| 0.5 * (edges[i] + edges[i + 1]);
    let cells = edges.len() - 1;
    let mut i = 0;
    while i + 1 < cells && mid(i + 1) <= x {
        i += 1;
    }
    if i + 1 >= cells {
        return (i, 0.0);
    }
    (i, ((x - mid(i)) / (mid(i + 1) - mid(i))).clamp(0.0, 1.0))
}
