//! What is being poured: candles that will be there once the pour that is on is done.

use super::Stand;
use crate::book::{Batch, State};
use crate::day::Day;
use crate::sort;

impl State {
    /// Batches begun and not ended, the first begun first. There is more than one where books were merged.
    pub fn pours_on(&self) -> Vec<&Batch> {
        let mut on: Vec<&Batch> = self.batches.values().filter(|b| b.ended.is_none()).collect();
        sort::by(&mut on, |a, b| a.began.cmp(&b.began).then_with(|| a.id.cmp(&b.id)));
        on
    }

    /// The candles they will bring, as if they stood there; ready when they can ship, the last vessel being filled today.
    pub(super) fn coming(&self, today: Day) -> Vec<Stand<'_>> {
        let mut coming = Vec::new();
        for batch in self.pours_on() {
            let number = i64::from(batch.run.vessels());
            let ready = self.comes(batch, None, today);
            coming.push(Stand { batch, poured: today, ready, left: number, free: number, held: Vec::new() });
        }
        coming
    }

    /// The day from which candles of a pour that is on can ship: poured today, solid, cured, finished.
    pub(super) fn comes(&self, batch: &Batch, cure_days: Option<u32>, today: Day) -> Day {
        let cure = cure_days.unwrap_or_else(|| batch.run.cure_days());
        self.lead_of(cure).from(today)
    }
}
