//! What stands on the shelf: poured batches, and when they have cured.

use super::{Batch, Ending, State};
use crate::sort;

/// A day, in milliseconds.
const DAY: u64 = 24 * 60 * 60 * 1000;

/// How far a poured batch has cured.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Cure {
    /// Full days still to wait, a begun one counted.
    Curing {
        days: u64,
    },
    Ready,
}

impl Batch {
    /// How many vessels were filled.
    pub fn filled_vessels(&self) -> usize {
        self.run.fills().0
    }

    /// When the last vessel was filled, milliseconds since 1970. None where none was.
    pub fn poured_at(&self) -> Option<u64> {
        self.run.fills().1
    }

    /// When the last vessel has stood for the formula's cure days of 24 hours, milliseconds since 1970.
    pub fn ready_at(&self) -> Option<u64> {
        Some(self.poured_at()?.saturating_add(u64::from(self.run.cure_days()).saturating_mul(DAY)))
    }

    /// How far it has cured at `now`, milliseconds since 1970.
    pub fn cure(&self, now: u64) -> Option<Cure> {
        let ready = self.ready_at()?;
        Some(if ready <= now { Cure::Ready } else { Cure::Curing { days: (ready - now).div_ceil(DAY) } })
    }
}

impl State {
    /// Batches with vessels poured, the latest poured first.
    pub fn finished(&self) -> Vec<&Batch> {
        let poured = |b: &&Batch| matches!(b.ended, Some((Ending::Poured, _, _))) && b.poured_at().is_some();
        let mut finished: Vec<&Batch> = self.batches.values().filter(poured).collect();
        sort::by(&mut finished, |a, b| b.poured_at().cmp(&a.poured_at()).then_with(|| b.id.cmp(&a.id)));
        finished
    }
}
