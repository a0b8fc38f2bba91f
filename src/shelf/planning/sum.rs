//! Sums of ways, and which of them no other beats.

use super::bound::Regret;
use super::choice::fits;
use super::front::Points;
use super::round::Stage;
use super::units::Units;
use crate::sort;
use std::cmp::Ordering;

/// So many of those that have beaten others are compared with each sum first.
const SCAN: usize = 100;

/// A sum of ways, one of each unit so far.
#[derive(Clone)]
pub(super) struct Sum {
    pub(super) rank: [u32; 6],
    pub(super) regret: Regret,
    /// The same with what is ahead.
    pub(super) ahead: Regret,
    /// Units poured of the kind that is gone through.
    pub(super) poured: u8,
    /// Nothing is poured.
    pub(super) idle: bool,
    /// The sum before, and the way added.
    pub(super) from: (u32, u32),
}

/// The sums that no other beats: none of better rank takes as little of every supply that may still run out.
pub(super) fn undominated(
    units: &Units,
    stage: &Stage,
    sums: &[Sum],
    uses: &[u64],
    busy: bool,
) -> Vec<usize> {
    let wide = units.left.len();
    let by_rank = sort::order(sums.len(), &|a, b| match (sums.get(a), sums.get(b)) {
        (Some(a), Some(b)) => a.rank.cmp(&b.rank),
        _ => Ordering::Equal,
    });
    // Below this the later units have all they can use.
    let floor: Vec<u64> =
        units.left.iter().zip(&stage.later).map(|(left, later)| left.saturating_sub(*later)).collect();
    let row = |at: usize| uses.get(at * wide..(at + 1) * wide).unwrap_or_default();
    let scarce: Vec<usize> = (0..wide)
        .filter(|s| (0..sums.len()).any(|at| row(at).get(*s).copied() > floor.get(*s).copied()))
        .collect();
    let beat = |a: usize, b: usize| match (sums.get(a), sums.get(b)) {
        (Some(a), Some(b)) => beats(a, b, units.changes, busy),
        _ => false,
    };
    // The last coordinate is the place by rank.
    let wide = scarce.len() + 1;
    let mut points = Vec::new();
    let mut few: Vec<usize> = Vec::new();
    let mut best: Vec<usize> = Vec::new();
    for at in by_rank {
        let first = points.len();
        for supply in &scarce {
            let of = row(at).get(*supply).zip(floor.get(*supply));
            points.push(of.map_or(0, |(used, floor)| *used.max(floor)));
        }
        points.push(few.len() as u64);
        // Most are beaten by one of those that have beaten others.
        let point = points.get(first..).unwrap_or_default();
        let by = best.iter().position(|other| {
            let of = points.get(other * wide..(other + 1) * wide).unwrap_or_default();
            fits(of, point) && few.get(*other).is_some_and(|other| beat(*other, at))
        });
        match by {
            Some(place) => {
                best.swap(place, place / 2);
                points.truncate(first);
            }
            None => {
                if best.len() < SCAN {
                    best.push(few.len());
                }
                few.push(at);
            }
        }
    }
    let points = Points { coordinates: &points, wide };
    let beat_at = |a: usize, b: usize| few.get(a).zip(few.get(b)).is_some_and(|(a, b)| beat(*a, *b));
    points.front(&beat_at).into_iter().filter_map(|at| few.get(at).copied()).collect()
}

/// Whether a sum of no worse rank stays so whatever comes after.
fn beats(a: &Sum, b: &Sum, changes: usize, busy: bool) -> bool {
    // Nothing poured is no change, as one kind is none: the two are not compared here.
    if busy && a.idle && !b.idle {
        return false;
    }
    if a.poured > 0 || b.poured == 0 {
        return true;
    }
    // The kind that the other has poured already may cost this one a change.
    let mut rank = a.rank;
    if let Some(cell) = rank.get_mut(changes) {
        *cell += 1;
    }
    rank <= b.rank
}
