//! The plan of the pours: held against every plan there is where these are few, and against a general solver where not.
#![cfg(not(target_arch = "wasm32"))]
// A helper of a test may fail as a test does.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod examples;
mod kept;
mod knapsack;
mod library;
mod packing;
#[path = "../planning_shared/mod.rs"]
mod planning_shared;
mod shared;
mod small;
mod solver;
