//! The stores: lots, what became of them, where they are, and when to buy again.
#![cfg(not(target_arch = "wasm32"))]
// A helper of a test may fail as a test does.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod buying;
#[path = "../common/mod.rs"]
mod common;
mod day;
mod kept;
mod ledger;
mod measured;
mod named;
mod shared;
mod trace;
mod typed;
#[path = "../common/zones.rs"]
mod zones;
