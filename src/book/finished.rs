//! What stands on the shelf: poured batches.

use super::{Batch, Ending, State};
use crate::day::{Day, Zone};
use crate::sort;

impl Batch {
    /// How many vessels were filled.
    pub fn filled_vessels(&self) -> usize {
        self.run.fills().0
    }

    /// When the last vessel was filled, milliseconds since 1970. None where none was.
    pub fn poured_at(&self) -> Option<u64> {
        self.run.fills().1
    }

    /// The day on which it began: as it was written down, else by the calendar of this zone.
    pub fn begun_on(&self, zone: Zone) -> Day {
        self.day.unwrap_or_else(|| zone.day(self.began))
    }

    /// The day on which the last vessel was filled: so many days after the first, by the calendar of this zone. None where
    /// none was.
    pub fn poured_on(&self, zone: Zone) -> Option<Day> {
        let (began, poured) = (zone.day(self.began).0, zone.day(self.poured_at()?).0);
        Some(Day(self.begun_on(zone).0.saturating_add(poured).saturating_sub(began)))
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
