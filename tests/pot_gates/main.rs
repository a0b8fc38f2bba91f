//! Minutes until each gate, told from the readings of a run; what does not fit; the picture.
#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod always;
#[path = "../common/mod.rs"]
mod common;
mod picture;
mod readings;
mod shared;
mod times;
