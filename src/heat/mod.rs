//! Heat at the pot and in the vessel: mixing, cooling from readings, the vessel as it freezes.
//!
//! Inside this module temperatures are `f64` degrees Celsius, times seconds, lengths metres and masses grams,
//! as each field says: everything here is measured or fitted, nothing is exact.

mod cooling;
mod error;
mod fit;
mod mixing;
mod student;

pub use cooling::{Band, Cooling, Odd, READING_ERROR, Reading, Room, Until, cooling};
pub use error::HeatError;
pub use mixing::{Mixed, Portion, Pot, mix};
