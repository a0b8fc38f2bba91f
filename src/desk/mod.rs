//! The desk: what a candle costs, and its price; what its label must say.

mod bars;
mod cost;
mod expect;
mod price;
mod rates;

pub mod hazard;
pub mod net;

pub use bars::{Bar, ROW};
pub use cost::{Cost, Item, Kind};
pub use price::{Price, PriceError, after_rise, margin_of, markup_of, read_percent, say_percent};
pub use rates::{Aim, Channel, Rates};
