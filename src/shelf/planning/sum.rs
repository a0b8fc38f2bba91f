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
    among: &[usize],
) -> Vec<usize> {
    let wide = units.left.len();
    // Below this the later units have all they can use.
    let floor: Vec<u64> =
        units.left.iter().zip(&stage.later).map(|(left, later)| left.saturating_sub(*later)).collect();
    let row = |at: usize| uses.get(at * wide..(at + 1) * wide).unwrap_or_default();
    let scarce: Vec<usize> = (0..wide)
        .filter(|s| among.iter().any(|at| row(*at).get(*s).copied() > floor.get(*s).copied()))
        .collect();
    let beat = |a: usize, b: usize| match (sums.get(a), sums.get(b)) {
        (Some(a), Some(b)) => beats(a, b, units.changes, busy),
        _ => false,
    };
    let taken = |at: usize| {
        let (row, floor) = (row(at), &floor);
        let of = move |supply: &usize| row.get(*supply).zip(floor.get(*supply)).map_or(0, |(a, b)| *a.max(b));
        scarce.iter().map(of)
    };
    // Of even rank those first that take less.
    let by_rank = sort::order(among.len(), &|a, b| match (among.get(a), among.get(b)) {
        (Some(a), Some(b)) => {
            let rank = |at: usize| sums.get(at).map(|sum| &sum.rank);
            rank(*a).cmp(&rank(*b)).then_with(|| taken(*a).cmp(taken(*b)))
        }
        _ => Ordering::Equal,
    });
    // The last coordinate is the place by rank.
    let wide = scarce.len() + 1;
    let mut points = Vec::new();
    let mut few: Vec<usize> = Vec::new();
    let mut best: Vec<usize> = Vec::new();
    for at in by_rank.iter().filter_map(|at| among.get(*at)).copied() {
        let first = points.len();
        points.extend(taken(at));
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
    // In the order in which they were given.
    let mut front =
        points.front(&beat_at).into_iter().filter_map(|at| few.get(at).copied()).collect::<Vec<_>>();
    front.sort_unstable();
    let is_in = |at: &&usize| front.binary_search(at).is_ok();
    among.iter().filter(is_in).copied().collect()
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
