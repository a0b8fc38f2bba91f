//! One step of heat through the vessel: implicit, direction by direction, in terms of enthalpy.
#![allow(clippy::indexing_slicing, reason = "places run within the lists the grid was made with")]

use super::cell::Cell;
use super::curve::Curve;
use super::grid::{Axis, Grid};
use super::setup::Setup;

/// Corrections within one sweep at most, and the temperature they settle to, K.
const CORRECTIONS: usize = 4;
const SETTLED: f64 = 0.1;
/// K that a change of the whole solid share counts as where the front is sharp.
const SETTLED_SHARE: f64 = 2.0;

/// Matter, as a cell needs it: the wax's curve, kg·K/J of the wall and m·K/W of the wax.
#[derive(Clone, Copy)]
struct Matter {
    curve: Curve,
    by_wall_heat: f64,
    liquid_resist: f64,
    solid_resist: f64,
}

impl Matter {
    /// What follows from a cell's enthalpy.
    #[inline(always)]
    fn settle(&self, c: &mut Cell) {
        if c.wax {
            (c.theta, c.heat) = self.curve.at(c.e);
            c.share = self.curve.solid_share(c.e);
            c.sharp = 0.0;
            let pure = if c.share > 0.5 { self.solid_resist } else { self.liquid_resist };
            (c.before, c.after) = (pure, pure);
        } else {
            c.theta = c.e * self.by_wall_heat;
        }
    }
}

/// K by which a step may leave what it started between; beyond it is taken again.
const ASTRAY: f64 = 0.25;
/// The shortest step that is still taken again, s.
const SHORTEST: f64 = 0.01;
/// By how much it is taken shorter.
const SHORTER: f64 = 0.25;

/// The state. Everything is allotted once; a step allots nothing.
pub(crate) struct Flow {
    pub(crate) curve: Curve,
    pub(crate) grid: Grid,
    matter: Matter,
    /// Enthalpies and axial flows before the step.
    before: Vec<(f64, f64)>,
    /// Carries the enthalpies, and the flow to be taken off again, from the radial order to the axial one.
    bus: Vec<(f64, f64)>,
    /// K above the room of the coldest and the hottest place there may still be: both draw in towards the room.
    bounds: (f64, f64),
    /// J that left for the room since the pour.
    pub(crate) lost: f64,
}

impl Flow {
    pub(crate) fn new(setup: &Setup, mut grid: Grid) -> Self {
        let curve = Curve::new(setup);
        let (solid, liquid) =
            (1.0 / setup.wax.conduct_solid, 1.0 / (setup.wax.conduct_liquid * setup.stirring));
        let matter = Matter {
            curve,
            by_wall_heat: 1.0 / setup.material.heat,
            liquid_resist: liquid,
            solid_resist: solid,
        };
        let wall = (setup.vessel - setup.room) * setup.material.heat;
        let poured = curve.enthalpy(setup.pour - setup.room);
        let filled = grid.wax_layers.end;
        for (layer, row) in grid.axial.inner_mut().chunks_exact_mut(grid.radii.len() - 1).enumerate() {
            for (ring, c) in row.iter_mut().enumerate() {
                let air = ring < grid.wax_rings && layer >= filled;
                c.e = if c.wax {
                    poured
                } else if air {
                    0.0
                } else {
                    wall
                };
                matter.settle(c);
            }
        }
        let cells = grid.axial.positions * grid.axial.lanes;
        let (before, bus) = (vec![(0.0, 0.0); cells], vec![(0.0, 0.0); cells]);
        let bounds = extremes(grid.axial.inner());
        Self { curve, grid, matter, before, bus, bounds, lost: 0.0 }
    }

    /// Moves the clock by `dt` seconds, or by less where that would lead astray; how many it was.
    ///
    /// Heat flows from hot to cold, so no place gets hotter than the hottest nor colder than the coldest there was,
    /// the room among them. In a very thin metal wall, which holds next to no heat, the axial flow of the step before
    /// can be so far from this one's that the splitting breaks that. Then the step is put back and taken shorter,
    /// without it: the directions taking turns, each by itself implicit and in bounds.
    pub(crate) fn step(&mut self, dt: f64, fading: f64) -> f64 {
        for (c, kept) in self.grid.axial.inner().iter().zip(self.before.iter_mut()) {
            *kept = (c.e, fading * c.flow);
        }
        let (lost, mut dt) = (self.lost, dt);
        loop {
            self.turn(dt);
            let (cold, hot) = self.bounds;
            let (coldest, hottest) = extremes(self.grid.axial.inner());
            let astray = coldest < cold - ASTRAY || hottest > hot + ASTRAY;
            if !astray || dt < SHORTEST {
                self.bounds = (coldest.max(cold), hottest.min(hot));
                return dt;
            }
            self.lost = lost;
            for kept in &mut self.before {
                kept.1 = 0.0;
            }
            dt *= SHORTER;
        }
    }

    /// One step from what stands in `before` (Douglas and Gunn's splitting, fully implicit).
    ///
    /// The radial direction is solved with the axial flow of the step before standing in for this one's; the axial
    /// direction then puts its own in place of it. So the two together are what one implicit step in both would be,
    /// but for the change within a step: a steady flow up a metal wall is not broken by taking turns.
    fn turn(&mut self, dt: f64) {
        let (matter, Grid { radial, axial, .. }) = (&self.matter, &mut self.grid);
        radial.load(&self.before, dt, matter);
        self.lost += radial.sweep(dt, matter);
        for (c, slot) in radial.inner().iter().zip(self.bus.iter_mut()) {
            *slot = (c.e, -c.flow);
        }
        axial.load(&self.bus, dt, matter);
        self.lost += axial.sweep(dt, matter);
        let by = 1.0 / dt;
        for c in axial.inner_mut() {
            c.flow = (c.e - c.old) * by;
        }
    }
}

/// K above the room of the coldest and of the hottest, the room itself among them.
fn extremes(cells: &[Cell]) -> (f64, f64) {
    cells.iter().fold((0.0, 0.0), |(cold, hot), c| (c.theta.min(cold), c.theta.max(hot)))
}

impl Axis {
    /// The cells without the empty ones at both ends.
    pub(crate) fn inner(&self) -> &[Cell] {
        &self.cells[self.lanes..(self.positions + 1) * self.lanes]
    }

    fn inner_mut(&mut self) -> &mut [Cell] {
        &mut self.cells[self.lanes..(self.positions + 1) * self.lanes]
    }

    /// Takes over enthalpies from the other direction's order, each with a flow to start from.
    fn load(&mut self, bus: &[(f64, f64)], dt: f64, matter: &Matter) {
        let (positions, lanes) = (self.positions, self.lanes);
        let mut i = lanes;
        for p in 0..positions {
            let mut from = p;
            for _ in 0..lanes {
                let c = &mut self.cells[i];
                (c.e, c.flow) = bus[from];
                c.old = c.e + dt * c.flow;
                matter.settle(c);
                i += 1;
                from += positions;
            }
        }
    }

    /// Implicit conduction along every line of this direction for `dt` seconds; the J that left for the room.
    ///
    /// The enthalpy curve is replaced by its tangent, the lines solved, the tangent moved to where the enthalpy came
    /// to, until both agree. Whatever the agreement, the change of enthalpy is exactly the heat that passed between
    /// the cells and to the room, so no heat is made or lost.
    fn sweep(&mut self, dt: f64, matter: &Matter) -> f64 {
        for _ in 0..CORRECTIONS {
            self.fronts(dt, matter.solid_resist, matter.liquid_resist);
            self.forward(dt);
            if self.back(&matter.curve) < SETTLED {
                break;
            }
        }
        let (mut lost, mut last) = (0.0, 0);
        for &(at, ..) in &self.edges {
            if at != last {
                lost += self.cells[at].loss * self.cells[at].solved;
            }
            last = at;
        }
        lost
    }

    fn forward(&mut self, dt: f64) {
        let (cells, n) = (&mut self.cells[..], self.lanes);
        for i in n..cells.len() - n {
            let far = cells[i + n].before;
            let last = &cells[i - n];
            let (pull, reached, carried) = (last.link, last.solved, last.carry);
            let c = &mut cells[i];
            c.link = dt / (c.near * c.after + c.far * far);
            let by = 1.0 / (c.mass * c.heat + c.link + c.loss + pull * (1.0 - carried));
            c.carry = c.link * by;
            c.solved = (c.mass * (c.heat * c.theta - (c.e - c.old)) + pull * reached) * by;
        }
    }

    /// Back substitution, and the enthalpies that follow; the largest disagreement with the curve, K.
    fn back(&mut self, curve: &Curve) -> f64 {
        let (cells, n) = (&mut self.cells[..], self.lanes);
        let mut worst = 0.0;
        for i in (n..cells.len() - n).rev() {
            let above = cells[i + n].solved;
            let c = &mut cells[i];
            let solved = c.solved + c.carry * above;
            c.solved = solved;
            c.e += c.heat * (solved - c.theta);
            if !c.wax {
                c.theta = solved;
                continue;
            }
            (c.theta, c.heat) = curve.at(c.e);
            let mut apart = (c.theta - solved).abs();
            if c.sharp > 0.0 || curve.melts(c.e) {
                // Half way, because the front goes as the root of what its own depth lets through: so the rounds
                // draw near to it instead of swinging about it.
                let by = 0.5 * (curve.solid_share(c.e) - c.share);
                c.share += by;
                apart += SETTLED_SHARE * c.sharp * by.abs();
            }
            worst = if apart > worst { apart } else { worst };
        }
        worst
    }
}
