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

    /// How it ends: where no vessel was filled nothing was poured.
    pub fn ends(&self, how: Ending) -> Ending {
        if self.filled_vessels() == 0 { Ending::GivenUp } else { how }
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
        let poured = self.batches.values().filter(|b| matches!(b.ended, Some((Ending::Poured, _, _))));
        // When it was is asked of the events of each once: comparing asks many times.
        let mut finished: Vec<(u64, &Batch)> = poured.filter_map(|b| Some((b.poured_at()?, b))).collect();
        sort::by(&mut finished, |a, b| b.0.cmp(&a.0).then_with(|| b.1.id.cmp(&a.1.id)));
        finished.into_iter().map(|(_, batch)| batch).collect()
    }
}
