//! The desk: what a candle costs, and its price; what its label must say.

pub mod hazard;
pub mod net;
mod rates;

pub use rates::{Aim, Channel, Rates};
