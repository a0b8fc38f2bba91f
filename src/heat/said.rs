//! Numbers in this module's sentences, written through whole numbers: the standard library's way for floating point is
//! larger than all the sentences.

use std::fmt;

/// With so many places behind the point.
pub(crate) struct Fixed(pub(crate) f64, pub(crate) u32);

/// With as many as it needs, three at most.
pub(crate) struct Plain(pub(crate) f64);

/// Whether it is below zero, the whole number and what is behind the point in so many places, halves to the even one.
fn parts(x: f64, places: u32) -> (bool, u64, u64) {
    let unit = 10_u64.pow(places);
    let scaled = (x.abs() * unit as f64).round_ties_even() as u64;
    (x < 0.0 && scaled > 0, scaled / unit, scaled % unit)
}

impl fmt::Display for Fixed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let (below, whole, rest) = parts(self.0, self.1);
        let sign = if below { "-" } else { "" };
        match self.1 {
            0 => write!(f, "{sign}{whole}"),
            places => write!(f, "{sign}{whole}.{rest:0places$}", places = places as usize),
        }
    }
}

impl fmt::Display for Plain {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let places =
            (0..3).find(|places| parts(self.0, 3).2.is_multiple_of(10_u64.pow(3 - places))).unwrap_or(3);
        Fixed(self.0, places).fmt(f)
    }
}
