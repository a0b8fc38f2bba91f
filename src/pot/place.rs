//! Where one stands in a run: the place of a step, the thermometer's last word, the time that is left.

use super::{Event, Run, StepKey};
use crate::quantity::Temperature;

/// What goes in and is less than this share of what is in the pot leaves its temperature as it was, to what a
/// thermometer tells: half a per cent at 60 °C less is a third of a degree.
const NOTHING: f64 = 0.005;

/// A reading older than this says nothing of the pot as it is now, in milliseconds: five minutes (common practice,
/// no source).
const FRESH: u64 = 5 * 60_000;

impl Run {
    /// The place of a step among all, from 1, and how many there are.
    pub fn place(&self, step: StepKey) -> Option<(usize, usize)> {
        let keys = self.course();
        let index = keys.iter().position(|k| *k == step)?;
        Some((index + 1, keys.len()))
    }

    /// The last reading of the thermometer in the pot of a pour and when it was taken (milliseconds since 1970). What
    /// does not say of which it is may be of any.
    pub fn last_reading(&self, pour: u32) -> Option<(u64, Temperature)> {
        self.events().iter().rev().find_map(|event| match event {
            Event::Read { temperature, at, pour: of } if of.is_none_or(|of| of == pour) => {
                Some((*at, *temperature))
            }
            _ => None,
        })
    }

    /// The temperature of the pot at `now`, as far as a reading of the last five minutes tells it and nothing that changes
    /// it has gone in since.
    pub fn pot_at(&self, pour: u32, now: u64) -> Option<Temperature> {
        let (at, last) = self.read_since(pour).last().copied()?;
        (now.saturating_sub(at) <= FRESH).then_some(last)
    }

    /// The readings of a pour since something that changes its warmth went in, in their order: those before it tell of
    /// another pot. One that does not say of which it is counts where nothing went into any of them since.
    pub(super) fn read_since(&self, pour: u32) -> Vec<(u64, Temperature)> {
        let (of_any, of_it) = (self.last_change(&|_| true), self.last_change(&|of| of == pour));
        let mut readings = Vec::new();
        for (index, event) in self.events().iter().enumerate().skip(of_it) {
            if let Event::Read { temperature, at, pour: of } = event
                && of.map_or(index >= of_any, |of| of == pour)
            {
                readings.push((*at, *temperature));
            }
        }
        readings
    }

    /// How many events there are up to the last that changed what is in one of these pots.
    fn last_change(&self, of: &dyn Fn(u32) -> bool) -> usize {
        let changes = |event: &Event| {
            let Event::Did { step, .. } = event else { return false };
            let Some(pour) = step.pour().filter(|pour| step.goes_in() && of(*pour)) else { return false };
            let more = self.fold.went_in(*step, self.events()).map_or(0.0, |m| m.in_base().to_f64());
            more > 0.0 && more >= NOTHING * self.in_pot(pour).0
        };
        self.events().iter().rposition(changes).map_or(0, |at| at + 1)
    }

    /// The vessels of a pour that are not filled yet, in their order.
    pub fn unfilled(&self, pour: u32) -> Vec<StepKey> {
        let of_pour = |k: &StepKey| matches!(k, StepKey::Fill { pour: p, .. } if *p == pour);
        self.keys().into_iter().filter(|k| of_pour(k) && self.done(*k).is_none()).collect()
    }
}

/// Time left as it is counted down, rounded up to the second so that it ends on zero: `1:05`.
pub fn countdown(milliseconds: u64) -> String {
    let seconds = milliseconds.div_ceil(1000);
    format!("{}:{:02}", seconds / 60, seconds % 60)
}
