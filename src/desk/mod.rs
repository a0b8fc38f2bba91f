//! The desk: what a candle costs, and its price; what its label must say.

mod bars;
pub mod code;
mod cost;
mod draft;
mod expect;
pub mod hazard;
pub mod label;
pub mod net;
mod price;
mod rates;

pub use bars::Bar;
pub use cost::{Cost, Item, Kind};
pub use draft::{Ask, CHANNELS, FIELDS};
pub use price::{Price, PriceError, after_rise, margin_of, markup_of, read_percent, say_percent};
pub use rates::{Aim, Channel, Rates};
