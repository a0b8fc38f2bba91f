//! One step of heat through the vessel: implicit, direction by direction, in terms of enthalpy.
#![allow(clippy::indexing_slicing, reason = "places run within the lists the grid was made with")]

use super::cell::Cell;
use super::curve::Curve;
use super::grid::{Axis, Grid};
use super::setup::Setup;
use std::ops::Range;

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
    /// Enthalpies before the step, and the axial flow of the one before, W/kg.
    before: Vec<(f64, f64)>,
    /// Carries the enthalpies from the radial order to the axial one.
    bus: Vec<f64>,
    /// How long the last step was, s.
    last: f64,
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
        let (before, bus) = (vec![(0.0, 0.0); cells], vec![0.0; cells]);
        let bounds = extremes(grid.axial.inner());
        Self { curve, grid, matter, before, bus, last: 0.0, bounds, lost: 0.0 }
    }

    /// Moves the clock by `dt` seconds, or by less where that would lead astray; how many it was.
    ///
    /// Heat flows from hot to cold, so no place gets hotter than the hottest nor colder than the coldest there was,
    /// the room among them. In a very thin metal wall, which holds next to no heat, the axial flow of the step before
    /// can be so far from this one's that the splitting breaks that. Then the step is put back and taken shorter,
    /// without it: the directions taking turns, each by itself implicit and in bounds.
    pub(crate) fn step(&mut self, dt: f64, fading: f64) -> f64 {
        let by = if self.last > 0.0 { fading / self.last } else { 0.0 };
        for (c, kept) in self.grid.axial.inner().iter().zip(self.before.iter_mut()) {
            *kept = (c.e, by * (c.e - c.old));
        }
        let (lost, mut dt) = (self.lost, dt);
        loop {
            self.turn(dt);
            let (cold, hot) = self.bounds;
            let (coldest, hottest) = extremes(self.grid.axial.inner());
            let astray = coldest < cold - ASTRAY || hottest > hot + ASTRAY;
            if !astray || dt < SHORTEST {
                self.bounds = (coldest.max(cold), hottest.min(hot));
                self.last = dt;
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
        let before = &self.before[..];
        radial.load(matter, |other, _| {
            let (e, flow) = before[other];
            (e, e + dt * flow)
        });
        self.lost += radial.sweep(dt, matter);
        for (c, slot) in radial.inner().iter().zip(self.bus.iter_mut()) {
            *slot = c.e;
        }
        let bus = &self.bus[..];
        axial.load(matter, |other, own| {
            let e = bus[other];
            (e, e - dt * before[own].1)
        });
        self.lost += axial.sweep(dt, matter);
    }
}

/// K above the room of the coldest and of the hottest, the room itself among them.
fn extremes(cells: &[Cell]) -> (f64, f64) {
    let (mut coldest, mut hottest) = (0.0, 0.0);
    for c in cells {
        coldest = if c.theta < coldest { c.theta } else { coldest };
        hottest = if c.theta > hottest { c.theta } else { hottest };
    }
    (coldest, hottest)
}

impl Axis {
    /// The cells without the empty ones at both ends.
    pub(crate) fn inner(&self) -> &[Cell] {
        &self.cells[self.lanes..(self.positions + 1) * self.lanes]
    }

    fn inner_mut(&mut self) -> &mut [Cell] {
        &mut self.cells[self.lanes..(self.positions + 1) * self.lanes]
    }

    /// Takes over the enthalpy, and what the solution starts from, by a cell's place in the other direction's order and
    /// in its own.
    #[inline(always)]
    fn load(&mut self, matter: &Matter, from: impl Fn(usize, usize) -> (f64, f64)) {
        let (positions, lanes) = (self.positions, self.lanes);
        let (cells, mut own) = (&mut self.cells[lanes..], 0);
        for p in 0..positions {
            let mut other = p;
            for _ in 0..lanes {
                let c = &mut cells[own];
                (c.e, c.old) = from(other, own);
                matter.settle(c);
                own += 1;
                other += positions;
            }
        }
    }

    /// Implicit conduction along every line of this direction for `dt` seconds; the J that left for the room.
    ///
    /// The enthalpy curve is replaced by its tangent, the lines solved, the tangent moved to where the enthalpy came
    /// to, until both agree; lines beyond the first and the last that do not agree are left as they are. Whatever the
    /// agreement, the change of enthalpy is exactly the heat that passed between the cells and to the room, so no heat
    /// is made or lost.
    fn sweep(&mut self, dt: f64, matter: &Matter) -> f64 {
        let mut lines = 0..self.lanes;
        for _ in 0..CORRECTIONS {
            self.fronts(&lines, dt, matter.solid_resist, matter.liquid_resist);
            self.forward(&lines, dt);
            lines = self.back(&lines, &matter.curve);
            if lines.is_empty() {
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

    /// Forward elimination, arranged for one division a cell: what a cell hands to the next is what it would hold and
    /// pass to the room for each kelvin, J/K, and what it brings, J, both times its `carry`.
    fn forward(&mut self, lines: &Range<usize>, dt: f64) {
        // Slices of one length, so that no place is checked again: for size a list's own indexing becomes a call.
        let (n, many) = (self.lanes, lines.len());
        let factors = &self.factors[lines.start..][..many];
        let handed = &mut self.handed[lines.start..][..many];
        for h in &mut *handed {
            *h = (0.0, 0.0);
        }
        for (p, (near, far)) in self.gaps.iter().enumerate() {
            let (row, next) = self.cells[(p + 1) * n + lines.start..].split_at_mut(n);
            let (row, next) = (&mut row[..many], &next[..many]);
            for i in 0..many {
                let (c, h) = (&mut row[i], &mut handed[i]);
                let resist = factors[i] * (near * c.after + far * next[i].before);
                let holds = c.mass * c.heat + c.loss + h.0;
                let brings = c.mass * (c.heat * c.theta - (c.e - c.old)) + h.1;
                let by = 1.0 / (resist * holds + dt);
                c.carry = dt * by;
                c.solved = brings * (resist * by);
                *h = (holds * c.carry, brings * c.carry);
            }
        }
    }

    /// Back substitution, and the enthalpies that follow; from the first to the last line that disagrees with the
    /// curve.
    fn back(&mut self, lines: &Range<usize>, curve: &Curve) -> Range<usize> {
        let (n, many) = (self.lanes, lines.len());
        let (mut first, mut end) = (n, 0);
        for p in (1..=self.positions).rev() {
            let (row, next) = self.cells[p * n + lines.start..].split_at_mut(n);
            let (row, next) = (&mut row[..many], &next[..many]);
            for i in 0..many {
                let c = &mut row[i];
                let solved = c.solved + c.carry * next[i].solved;
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
                if apart >= SETTLED {
                    let line = lines.start + i;
                    first = if line < first { line } else { first };
                    end = if line < end { end } else { line + 1 };
                }
            }
        }
        first..end
    }
}
