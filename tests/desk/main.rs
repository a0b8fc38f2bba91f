//! The desk: what a candle costs, and its price.
#![cfg(not(target_arch = "wasm32"))]
// A helper of a test may fail as a test does.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

#[path = "../common/mod.rs"]
mod common;
mod cost;
mod price;
#[path = "../stores/shared.rs"]
#[allow(dead_code, reason = "shared with the tests of the stores")]
mod shared;
