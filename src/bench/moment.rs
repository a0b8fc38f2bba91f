//! One moment of a freezing in words.

use super::freezing::{decimal_of, temperature};
use crate::heat::Freezing;
use crate::quantity::Voice;

/// How warm it is in the middle and by the wall, and how much has set: for who does not see the picture, and for who
/// does.
pub fn moment(f: &Freezing, seconds: f64, voice: Voice) -> String {
    let p = &f.picture;
    let at = p.at(seconds);
    let (Some(celsius), Some(solid)) = (p.celsius(at), p.solid(at)) else { return String::new() };
    let rings = p.rings();
    let half = p.wax_layers.start + p.wax_layers.len() / 2;
    let there = |ring: usize| celsius.get(half * rings + ring).map_or(0.0, |t| f64::from(*t));
    let (mut set, mut all) = (0.0, 0.0);
    for (z, (low, high)) in p.heights.iter().zip(p.heights.iter().skip(1)).enumerate() {
        if !p.wax_layers.contains(&z) {
            continue;
        }
        for (r, (inner, outer)) in p.radii.iter().zip(p.radii.iter().skip(1)).enumerate().take(p.wax_rings) {
            let room = (outer * outer - inner * inner) * (high - low);
            all += room;
            set += room * solid.get(z * rings + r).map_or(0.0, |s| f64::from(*s) / 255.0);
        }
    }
    let set = if all > 0.0 { 100.0 * set / all } else { 0.0 };
    [
        "Middle ",
        &temperature(there(0), voice),
        ", by the wall ",
        &temperature(there(p.wax_rings.saturating_sub(1)), voice),
        ", ",
        &decimal_of(set, 0, voice),
        " % solid.",
    ]
    .concat()
}
