//! The built app in real browsers: the whole pour by touch and by keyboard, offline, killed, in three engines, at three
//! sizes, and what axe finds. `tools/build` must have made `dist/`; `tools/test` does both.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod amiss;
mod beside;
mod book;
mod browser;
mod burn;
mod cleared;
mod copied;
mod day;
mod decade;
#[path = "../decade_shared/mod.rs"]
mod decade_shared;
mod engines;
mod fewer;
mod flow;
mod freeze;
mod grades;
mod heard;
#[path = "../../tools/host.rs"]
mod host;
mod hot;
mod kill;
mod label;
mod label_paper;
mod lists;
mod look;
mod page;
mod paper;
mod parts;
mod photo;
mod plan;
mod pour;
mod share;
mod shelf;
mod slips;
mod stores;
mod tabs;
mod tear;
mod trouble;
mod update;
mod water;
mod years;
