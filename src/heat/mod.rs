//! Heat at the pot and in the vessel: mixing, cooling from readings, the vessel as it freezes.
//!
//! Inside this module temperatures are `f64` degrees Celsius, times seconds, lengths metres and masses grams,
//! as each field says: everything here is measured or fitted, nothing is exact.

mod cell;
mod compare;
mod contraction;
mod cooling;
mod curve;
mod error;
mod film;
mod fit;
mod flow;
mod freezing;
mod grid;
mod mixing;
mod overlay;
mod pack;
mod paint;
mod picture;
mod said;
mod setup;
mod survey;
mod wax;

pub use compare::{Difference, Measure, compare, map};
pub use contraction::{Contraction, contraction};
pub use cooling::{Band, Cooling, Odd, READING_ERROR, Reading, Room, Until, cooling};
pub use error::HeatError;
pub use film::{Air, Base, Place, film, open_share, radiation, warmed};
pub use freezing::{Freezing, freeze};
pub use mixing::{Mixed, Portion, Pot, mix};
pub use overlay::{Fitted, lay_over};
pub use pack::{Job, job, reckon};
pub use paint::{Colours, paint};
pub use picture::Picture;
pub use setup::{Detail, Film, Setup, Shape};
pub use wax::{ALUMINIUM, CERAMIC, GLASS, Material, PARAFFIN_LIKE, STEEL, VEGETABLE_LIKE, Wax};
