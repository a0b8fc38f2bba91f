//! The book under faults, in short; `tools/torture` does the same for long.
#![cfg(not(target_arch = "wasm32"))]

mod decade_shared;
mod torture_shared;

use torture_shared::{Length, damage, faults, laws, parsers};

#[test]
fn no_schedule_of_faults_loses_what_was_acknowledged() {
    faults::lost(Length::of(150)).good();
}

#[test]
fn no_damage_to_a_journal_counts_or_takes_what_is_good_with_it() {
    damage::wrong(151, Length::of(60)).good();
}

#[test]
fn merging_keeps_to_its_laws() {
    laws::broken(Length::of(2_000)).good();
}

#[test]
fn no_reader_of_what_comes_from_outside_panics() {
    parsers::panics(Length::of(100_000)).good();
}
