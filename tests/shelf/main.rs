//! Orders and what stands on the shelf.
#![cfg(not(target_arch = "wasm32"))]
// A helper of a test may fail as a test does.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod accounted;
mod agenda;
mod coming;
#[path = "../common/mod.rs"]
mod common;
mod day;
mod fit;
mod lack;
mod orders;
mod pins;
mod shared;
mod tally;
mod told;
mod went;
mod whole;
#[path = "../common/zones.rs"]
mod zones;
