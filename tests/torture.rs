//! The book under faults, in short; `tools/torture` does the same for long.
#![cfg(not(target_arch = "wasm32"))]

mod decade_shared;
mod torture_shared;

use potside::book::{Damage, Entry, Journal};
use potside::quantity::Voice;
use torture_shared::{Length, damage, faults, laws, parsers, three, work};

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
fn three_devices_come_to_the_same_book() {
    three::apart(Length::of(60)).good();
}

#[test]
fn no_reader_of_what_comes_from_outside_panics() {
    parsers::panics(Length::of(100_000)).good();
}

/// Entries with which a reader once panicked or filled the memory: a label of more places than any page has, and days far
/// past the end of their month. Each is read or set aside with its reason, and a book that holds it can be looked at.
#[test]
fn what_once_stopped_a_reader_stops_none() {
    for line in include_str!("fixtures/crashers.journal").lines() {
        match Entry::from_line(line) {
            Ok(_) | Err(Damage::Unknown { .. }) => {}
            Err(other) => panic!("the fixture is as it was written, but: {other}"),
        }
        let lines: Vec<String> =
            torture_shared::deal::BOOK.lines().chain([line]).map(str::to_owned).collect();
        assert!(work::all(&Journal::open(lines, "tablet"), Voice::default()) > 0);
    }
}
