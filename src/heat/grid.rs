//! The vessel cut into rings: where they lie, what they weigh, and what lies between them.

use super::cell::{Cell, EMPTY, SHUT};
use super::setup::{Detail, Setup};
use std::f64::consts::PI;
use std::ops::Range;

/// Finer cells, m, from the wall inwards and from the surface down: the first minutes happen there, and what is told of
/// the wall layer and of the skin then does not depend on the grid.
pub(crate) const SKIN: [f64; 4] = [0.0005, 0.0005, 0.001, 0.001];
/// Largest cell across a wall or a base, m.
const WALL: f64 = 0.002;
/// A wall or a base thinner than this, m, is left out, and so is a rim lower than it.
///
/// A third of kitchen foil: no vessel is so thin. It holds as little heat as 0.01 mm of wax, and what it carries along
/// itself is, in glass, nothing beside the wax; but the less a cell holds, the shorter the steps must be.
const FOIL: f64 = 5e-6;

/// One direction of heat flow. Cells lie `lanes` to a position, after one empty position and before another: in the
/// radial direction a position is a ring and a lane a layer, in the axial one the other way about.
pub(crate) struct Axis {
    pub(crate) positions: usize,
    pub(crate) lanes: usize,
    pub(crate) cells: Vec<Cell>,
    /// From each position to the next: half-lengths over areas on both sides of the face, to be multiplied by the
    /// resistivities, and by the factor of the lane: that is 1/m together.
    pub(crate) gaps: Vec<(f64, f64)>,
    pub(crate) factors: Vec<f64>,
    /// Cells that lose heat to the room in this direction: place, half-length over area, film's resistance K/W. A
    /// cell with two such faces stands in it twice, one after the other.
    pub(crate) edges: Vec<(usize, f64, f64)>,
    /// What each lane's elimination hands on from one position to the next.
    pub(crate) handed: Vec<(f64, f64)>,
    /// Positions and lanes of the wax.
    wax: (Range<usize>, Range<usize>),
}

/// The cell edges, m: radii from the axis, heights from the underside of the base.
pub(crate) struct Grid {
    pub(crate) radii: Vec<f64>,
    pub(crate) heights: Vec<f64>,
    pub(crate) wax_rings: usize,
    pub(crate) wax_layers: Range<usize>,
    pub(crate) radial: Axis,
    pub(crate) axial: Axis,
}

/// `length` cut into equal parts of at most `cell`, added to the edges.
fn cut(edges: &mut Vec<f64>, length: f64, cell: f64) -> usize {
    if length < FOIL {
        return 0;
    }
    let n = ((length / cell - 1e-6).ceil() as usize).max(1);
    let from = edges.last().copied().unwrap_or(0.0);
    edges.extend((1..=n).map(|i| from + length * i as f64 / n as f64));
    n
}

/// The same with the finer cells at its far end, where they are finer.
fn graded(edges: &mut Vec<f64>, length: f64, cell: f64) -> usize {
    let skin: f64 = SKIN.iter().sum();
    if length < 2.0 * skin || cell < skin / 3.0 {
        return cut(edges, length, cell);
    }
    let n = cut(edges, length - skin, cell);
    n + SKIN.iter().rev().map(|d| cut(edges, *d, *d)).sum::<usize>()
}

impl Grid {
    pub(crate) fn new(setup: &Setup, detail: &Detail) -> Self {
        let (s, cell) = (&setup.shape, detail.cell);
        let mut radii = vec![0.0];
        let wax_rings = graded(&mut radii, s.radius, cell);
        let rings = wax_rings + cut(&mut radii, s.wall, cell.min(WALL));
        let mut heights = vec![0.0];
        let base = cut(&mut heights, s.base, cell.min(WALL));
        let fill = graded(&mut heights, s.fill, cell);
        let rim = if rings > wax_rings { cut(&mut heights, s.rim, cell) } else { 0 };
        let layers = base + fill + rim;
        let wax_layers = base..base + fill;
        let (mut radial, mut axial) = (Axis::new(rings, layers), Axis::new(layers, rings));
        radial.wax = (0..wax_rings, wax_layers.clone());
        axial.wax = (wax_layers.clone(), 0..wax_rings);
        Self { radii, heights, wax_rings, wax_layers, radial, axial }.measured(setup)
    }

    fn measured(mut self, setup: &Setup) -> Self {
        let density = setup.wax.liquid_at(setup.pour);
        let (layers, rings) = (self.axial.positions, self.radial.positions);
        let filled = self.wax_layers.end;
        let resist = 1.0 / setup.material.conduct;
        let wall = Cell { heat: setup.material.heat, before: resist, after: resist, ..EMPTY };
        let film = |h: f64, area: f64| if h * area > 0.0 { 1.0 / (h * area) } else { SHUT };
        let spans = |edges: &[f64]| -> Vec<(f64, f64)> {
            edges.iter().zip(edges.iter().skip(1)).map(|(a, b)| (*a, *b)).collect()
        };
        let (across, up) = (spans(&self.radii), spans(&self.heights));
        // The half rings' own resistances: exact for steady flow through a cylinder. Nothing passes to the air, whose
        // resistivity is without end.
        for (gap, pair) in self.radial.gaps.iter_mut().zip(across.windows(2)) {
            if let [(inner, edge), (_, outer)] = *pair {
                *gap = ((2.0 * edge / (inner + edge)).ln(), (0.5 * (edge + outer) / edge).ln());
            }
        }
        for (gap, pair) in self.axial.gaps.iter_mut().zip(up.windows(2)) {
            if let [(low, edge), (_, high)] = *pair {
                *gap = (0.5 * (edge - low), 0.5 * (high - edge));
            }
        }
        self.radial.factors = up.iter().map(|(low, high)| 1.0 / (2.0 * PI * (high - low))).collect();
        self.axial.factors =
            across.iter().map(|(inner, outer)| 1.0 / (PI * (outer * outer - inner * inner))).collect();
        for (z, &(low, high)) in up.iter().enumerate() {
            let tall = high - low;
            for (r, &(inner, outer)) in across.iter().enumerate() {
                let face = PI * (outer * outer - inner * inner);
                let wax = r < self.wax_rings && self.wax_layers.contains(&z);
                let air = r < self.wax_rings && z >= filled;
                let (along, over) = (r * layers + z, z * rings + r);
                let matter = if wax { density } else { setup.material.density };
                let mass = matter * face * tall;
                let cell = if air { EMPTY } else { Cell { mass, wax, ..wall } };
                self.radial.put(along, cell);
                self.axial.put(over, cell);
                if air {
                    continue;
                }
                let mid = 0.5 * (inner + outer);
                let outward = (outer / mid).ln() / (2.0 * PI * tall);
                if r + 1 == rings {
                    self.radial.edge(along, outward, film(setup.film.side, 2.0 * PI * outer * tall));
                }
                if r == self.wax_rings && z >= filled {
                    // The inside of the rim looks at the still air over the wax.
                    let inward = (mid / inner).ln() / (2.0 * PI * tall);
                    self.radial.edge(along, inward, film(setup.film.top, 2.0 * PI * inner * tall));
                }
                let half = 0.5 * tall / face;
                if z + 1 == layers || (wax && z + 1 == filled) {
                    self.axial.edge(over, half, film(setup.film.top, face));
                }
                if z == 0 {
                    self.axial.edge(over, half, film(setup.film.bottom, face));
                }
            }
        }
        self
    }
}

impl Axis {
    fn new(positions: usize, lanes: usize) -> Self {
        let (cells, handed) = (vec![EMPTY; (positions + 2) * lanes], vec![(0.0, 0.0); lanes]);
        let (gaps, factors) = (vec![(1.0, 1.0); positions], vec![1.0; lanes]);
        Self { positions, lanes, cells, gaps, factors, edges: Vec::new(), handed, wax: (0..0, 0..0) }
    }

    fn put(&mut self, at: usize, cell: Cell) {
        if let Some(c) = self.cells.get_mut(at + self.lanes) {
            *c = cell;
        }
    }

    fn edge(&mut self, at: usize, half: f64, film: f64) {
        if film < SHUT {
            self.edges.push((at + self.lanes, half, film));
        }
    }

    /// The resistivities of the cells a front runs through, and what passes to the room for each kelvin in `dt`, J/K.
    #[allow(clippy::indexing_slicing, reason = "places come from this very list")]
    pub(crate) fn fronts(&mut self, lines: &Range<usize>, dt: f64, solid: f64, liquid: f64) {
        let (cells, n) = (&mut self.cells[..], self.lanes);
        let lanes = lines.start.max(self.wax.1.start)..lines.end.min(self.wax.1.end);
        for p in self.wax.0.clone() {
            for i in (p + 1) * n + lanes.start..(p + 1) * n + lanes.end.max(lanes.start) {
                let share = cells[i].share;
                if share <= 0.0 || share >= 1.0 {
                    continue;
                }
                let (before, after) = (&cells[i - n], &cells[i + n]);
                let (one, two) = match (before.wax, after.wax) {
                    (true, true) => (before.share, after.share),
                    (true, false) => (before.share, 1.0 - before.share),
                    (false, true) => (1.0 - after.share, after.share),
                    (false, false) => (0.0, 0.0),
                };
                cells[i].halves(one - two, solid, liquid);
            }
        }
        for &(at, ..) in &self.edges {
            cells[at].loss = 0.0;
        }
        for &(at, half, film) in &self.edges {
            let c = &mut cells[at];
            let resist = if at < 2 * n { c.before } else { c.after };
            c.loss += dt / (half * resist + film);
        }
    }
}
