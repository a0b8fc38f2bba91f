//! A picture as pixels: the vessel cut through its axis, left half and right half the same.

use super::picture::Picture;

/// From the coldest to the hottest, and the wall where it is as cold as the room; red, green, blue.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Colours {
    /// Evenly spaced from the coldest to the hottest.
    pub scale: [[u8; 3]; 5],
    /// The line where wax is half solid.
    pub front: [u8; 3],
    /// °C at both ends of the scale.
    pub from: f32,
    pub to: f32,
}

/// Paints one picture into `pixels` (red, green, blue, opacity; `width` × `height` of them, the top row first). Where
/// there is neither wax nor wall nothing is painted. The whole vessel fills the height or the width, whichever is
/// reached first, in its own proportions.
pub fn paint(
    picture: &Picture,
    at: usize,
    colours: &Colours,
    width: usize,
    height: usize,
    pixels: &mut [u8],
) {
    pixels.fill(0);
    let (Some(celsius), Some(solid)) = (picture.celsius(at), picture.solid(at)) else { return };
    let (Some(outer), Some(top)) = (picture.radii.last(), picture.heights.last()) else { return };
    if width == 0 || height == 0 || *outer <= 0.0 || *top <= 0.0 {
        return;
    }
    let metres = (2.0 * outer / width as f64).max(top / height as f64);
    let rings = picture.rings();
    // Which ring each column lies in and which layer each row: the same for every pixel of one.
    let middle = 0.5 * width as f64;
    let ring = |x: usize| place(&picture.radii, (x as f64 + 0.5 - middle).abs() * metres);
    let layer = |y: usize| place(&picture.heights, (height as f64 - y as f64 - 0.5) * metres);
    let columns: Vec<Option<usize>> = (0..width).map(ring).collect();
    let lines: Vec<Option<usize>> = (0..height).map(layer).collect();
    let wax = |z: usize, r: usize| r < picture.wax_rings && picture.wax_layers.contains(&z);
    // Whether wax is more solid than liquid there; none where there is no wax.
    let set = |z: Option<usize>, r: Option<usize>| {
        let (z, r) = (z?, r?);
        let share = solid.get(z * rings + r).filter(|_| wax(z, r))?;
        Some(*share >= 128)
    };
    let line = |y: usize| lines.get(y).copied().flatten();
    let column = |x: usize| columns.get(x).copied().flatten();
    // The left half from the axis outwards; the right is the same.
    let colour = |z: usize, under: Option<usize>, x: usize| {
        let r = column(x)?;
        if r < picture.wax_rings && z >= picture.wax_layers.end {
            return None;
        }
        let cell = z * rings + r;
        let (t, share) = (celsius.get(cell)?, solid.get(cell)?);
        let here = set(Some(z), Some(r));
        // The next pixels to the outside and below.
        let beside = [set(Some(z), x.checked_sub(1).and_then(column)), set(under, Some(r))];
        if here.is_some() && beside.iter().any(|other| other.is_some() && *other != here) {
            let [red, green, blue] = colours.front;
            return Some([red, green, blue, 255]);
        }
        let [red, green, blue] = colours.of(*t);
        // Solid wax is drawn denser, liquid clearer: told apart without colour too.
        let dense = if wax(z, r) { 150 + (u16::from(*share) * 105 / 255) as u8 } else { 255 };
        Some([red, green, blue, dense])
    };
    let stride = 4 * width;
    let mut drawn = None;
    for y in 0..height.min(pixels.len() / stride) {
        let Some(z) = line(y) else { continue };
        // Many rows lie in one layer: they look as the one before does.
        let like = (z, line(y + 1));
        if drawn == Some(like) && y > 0 {
            pixels.copy_within((y - 1) * stride..y * stride, y * stride);
            continue;
        }
        drawn = Some(like);
        let Some(row) = pixels.get_mut(y * stride..(y + 1) * stride) else { continue };
        let row = row.as_chunks_mut::<4>().0;
        // Columns of one ring look alike too, but for the first of them, which has another beside it.
        let mut before = None;
        for x in 0..width.div_ceil(2) {
            let beside = (column(x), x.checked_sub(1).and_then(column));
            let painted = match before {
                Some((is, painted)) if is == beside => painted,
                _ => colour(z, like.1, x),
            };
            before = Some((beside, painted));
            let Some(painted) = painted else { continue };
            for at in [x, width - 1 - x] {
                if let Some(pixel) = row.get_mut(at) {
                    *pixel = painted;
                }
            }
        }
    }
}

/// The cell between the edges around `x`; none outside them.
fn place(edges: &[f64], x: f64) -> Option<usize> {
    let at = edges.partition_point(|edge| *edge <= x);
    (at > 0 && at < edges.len()).then(|| at - 1)
}

impl Colours {
    fn of(&self, celsius: f32) -> [u8; 3] {
        let along = ((celsius - self.from) / (self.to - self.from).max(0.1)).clamp(0.0, 1.0) * 4.0;
        let low = (along as usize).min(3);
        let part = along - low as f32;
        let (Some(a), Some(b)) = (self.scale.get(low), self.scale.get(low + 1)) else { return self.front };
        let mut mixed = [0; 3];
        for ((to, a), b) in mixed.iter_mut().zip(a).zip(b) {
            *to = (f32::from(*a) * (1.0 - part) + f32::from(*b) * part + 0.5) as u8;
        }
        mixed
    }
}
