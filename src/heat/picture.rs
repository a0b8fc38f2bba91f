//! The freezing as a series of pictures.

use super::flow::Flow;
use std::ops::Range;

/// Cross-sections through the vessel over time, from the axis outwards and from the underside upwards.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Picture {
    /// Edges of the rings and of the layers, m: one more than there are.
    pub radii: Vec<f64>,
    pub heights: Vec<f64>,
    /// The wax is the first so many rings of these layers; above it, inside the wall, is air.
    pub wax_rings: usize,
    pub wax_layers: Range<usize>,
    /// Of each picture, s.
    pub seconds: Vec<f32>,
    celsius: Vec<f32>,
    solid: Vec<u8>,
}

impl Picture {
    pub(crate) fn new(flow: &Flow, room_for: usize) -> Self {
        let grid = &flow.grid;
        let cells = (grid.radii.len() - 1) * (grid.heights.len() - 1);
        Self {
            radii: grid.radii.clone(),
            heights: grid.heights.clone(),
            wax_rings: grid.wax_rings,
            wax_layers: grid.wax_layers.clone(),
            seconds: Vec::with_capacity(room_for),
            celsius: Vec::with_capacity(room_for * cells),
            solid: Vec::with_capacity(room_for * cells),
        }
    }

    pub(crate) fn empty(
        radii: Vec<f64>,
        heights: Vec<f64>,
        wax_rings: usize,
        wax_layers: Range<usize>,
    ) -> Self {
        let (seconds, celsius, solid) = Default::default();
        Self { radii, heights, wax_rings, wax_layers, seconds, celsius, solid }
    }

    /// One more, as it was taken elsewhere: solid shares in 255ths.
    pub(crate) fn add(&mut self, seconds: f32, celsius: &[f32], solid: &[f32]) {
        self.seconds.push(seconds);
        self.celsius.extend(celsius);
        self.solid.extend(solid.iter().map(|share| *share as u8));
    }

    pub(crate) fn take(&mut self, flow: &Flow, seconds: f64, room: f64) {
        self.seconds.push(seconds as f32);
        for c in flow.grid.axial.inner() {
            self.celsius.push((room + c.theta) as f32);
            let share = if c.wax { flow.curve.solid_share(c.e) } else { 0.0 };
            self.solid.push((share * 255.0 + 0.5) as u8);
        }
    }

    pub fn rings(&self) -> usize {
        self.radii.len().saturating_sub(1)
    }

    pub fn layers(&self) -> usize {
        self.heights.len().saturating_sub(1)
    }

    /// Temperatures of one picture, °C, ring by ring within layer by layer; none past the last.
    pub fn celsius(&self, picture: usize) -> Option<&[f32]> {
        let cells = self.rings() * self.layers();
        self.celsius.chunks_exact(cells.max(1)).nth(picture)
    }

    /// Solid shares of one picture in 255ths, in the same order; zero outside the wax.
    pub fn solid(&self, picture: usize) -> Option<&[u8]> {
        let cells = self.rings() * self.layers();
        self.solid.chunks_exact(cells.max(1)).nth(picture)
    }

    /// The coldest and the hottest of all pictures, °C.
    pub fn span(&self) -> (f32, f32) {
        self.celsius.iter().fold((f32::MAX, f32::MIN), |(low, high), t| (low.min(*t), high.max(*t)))
    }

    /// The last picture not after `seconds`, for scrubbing.
    pub fn at(&self, seconds: f64) -> usize {
        self.seconds.partition_point(|s| f64::from(*s) <= seconds).saturating_sub(1)
    }
}
