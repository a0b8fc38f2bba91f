//! The desk: what a candle costs, and its price.

mod rates;

pub use rates::{Aim, Channel, Rates};
