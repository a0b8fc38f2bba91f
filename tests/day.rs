//! Days and clocks of places: held against the time zone database of IANA, as Python's zoneinfo reads it.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::panic)]

#[path = "common/zones.rs"]
mod zones;

use potside::day::{DAY, Day, Zone};
use proptest::prelude::*;
use zones::{AUCKLAND, LOS_ANGELES};

const HOUR: u64 = 3_600_000;

/// The clocks are put forward at midnight, in the west and in the east: that hour is on no clock.
const SAO_PAULO: Zone = Zone(|at| at - if at < 1_541_300_400_000 { 3 } else { 2 } * HOUR);
const BEIRUT: Zone = Zone(|at| at + if at < 1_521_928_800_000 { 2 } else { 3 } * HOUR);

#[test]
fn days_and_times_are_those_of_the_place() {
    let mut counted = [0, 0];
    for row in include_str!("tables/days.tsv").lines() {
        let row: Vec<&str> = row.split('\t').collect();
        let [kind, place, at, day, ..] = row[..] else { panic!("{row:?}") };
        let zone = match place {
            "America/Los_Angeles" => LOS_ANGELES,
            "Pacific/Auckland" => AUCKLAND,
            "America/Sao_Paulo" => SAO_PAULO,
            "Asia/Beirut" => BEIRUT,
            other => panic!("{other}"),
        };
        let at: u64 = at.parse().unwrap();
        if kind == "start" {
            assert_eq!(zone.start(Day::read(day).unwrap()), at, "{row:?}");
            counted[1] += 1;
        } else {
            let found = [zone.day(at).to_string(), zone.clock(at)];
            assert_eq!(found.as_slice(), &row[3..], "{row:?}");
            counted[0] += 1;
        }
    }
    assert!(counted[0] > 300 && counted[1] > 190, "{counted:?}");
}

#[test]
fn at_the_ends_of_time_nothing_stops() {
    for zone in [Zone::GREENWICH, LOS_ANGELES, Zone(|at| at.saturating_add(14 * HOUR))] {
        for at in [0, 1, DAY, u64::MAX - 1, u64::MAX] {
            let _ = (zone.day(at), zone.clock(at));
        }
        for day in [0, 1, u32::MAX] {
            let _ = zone.start(Day(day));
        }
    }
    assert_eq!(LOS_ANGELES.day(HOUR), Day(0), "before 1970 there is no day");
}

proptest! {
    /// A day begins with its first moment.
    #[test]
    fn a_day_begins_where_the_one_before_ends(day in 20_440_u32..20_900) {
        for zone in [Zone::GREENWICH, LOS_ANGELES, AUCKLAND] {
            let start = zone.start(Day(day));
            prop_assert_eq!(zone.day(start), Day(day));
            prop_assert_eq!(zone.day(start - 1), Day(day - 1));
            prop_assert_eq!(zone.clock(start), "00:00");
        }
    }
}
