//! What is kept: entries, the journal, the state it folds to, stores and the writer, old books, the demo workshop.
#![cfg(not(target_arch = "wasm32"))]
// A helper of a test may fail as a test does.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod again;
mod aside;
mod bundle;
mod burden;
mod clash;
mod day;
#[path = "../decade_shared/mod.rs"]
mod decade_shared;
mod demo;
mod entry;
mod feeds;
mod find;
mod fixture;
mod fork;
mod fork_undone;
mod hostile;
mod journal;
mod label;
mod label_fill;
mod label_left_out;
mod label_market;
mod map;
mod merge;
mod overpour;
mod remind;
mod removed;
mod renew;
mod sample;
mod second;
mod settings;
mod silence;
mod size;
mod state;
mod store;
mod tied;
mod took;
mod tying;
mod undo;
mod whole;
mod wish;
#[path = "../common/zones.rs"]
mod zones;
