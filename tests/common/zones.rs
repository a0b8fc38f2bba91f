//! Clocks on the walls of a few places, with their changes as the time zone database of IANA has them; `tests/day.rs`
//! holds them against it.

use potside::day::Zone;

const HOUR: u64 = 3_600_000;

/// Eight hours behind; seven in the summer of 2026, from 8 March to 1 November.
pub(crate) const LOS_ANGELES: Zone = Zone(|at| {
    let summer = (1_772_964_000_000..1_793_523_600_000).contains(&at);
    at.saturating_sub(if summer { 7 } else { 8 } * HOUR)
});

/// Thirteen hours ahead; twelve in the winter of 2026, from 5 April to 27 September.
pub(crate) const AUCKLAND: Zone = Zone(|at| {
    let winter = (1_775_311_200_000..1_790_431_200_000).contains(&at);
    at.saturating_add(if winter { 12 } else { 13 } * HOUR)
});
