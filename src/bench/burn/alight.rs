//! What is due of the candles that burn now, for whoever is at something else.

use super::{Session, reminders};
use crate::book::State;

impl State {
    /// Of each candle that burns what is due last, with its mark: `A1: It has burned as long as it should: put it out.`
    /// None where no candle burns.
    pub fn burning_due(&self, now: u64) -> Option<Vec<String>> {
        let mut due = Vec::new();
        let mut any = false;
        for kept in self.trials.values().filter(|k| !k.retired) {
            let Some(burns) = self.burns.get(&kept.id).filter(|b| b.burning()) else { continue };
            let Some(trial) = kept.body() else { continue };
            any = true;
            let all = reminders(trial, &burns.course(), &self.limits, now);
            let last = all.into_iter().rfind(|r| r.due);
            due.extend(last.map(|r| [&trial.name, ": ", &r.text].concat()));
        }
        any.then_some(due)
    }
}

const MINUTE: u64 = 60_000;

impl Session {
    /// When it was put out, so many minutes before now: for whoever comes to write it down later.
    ///
    /// # Errors
    /// The sentence where it did not burn then, or was seen burning after it.
    pub fn out_ago(&self, now: u64, minutes: u32) -> Result<u64, String> {
        let at = now.saturating_sub(u64::from(minutes).saturating_mul(MINUTE));
        if at <= self.lit {
            return Err("It was not lit yet then. Type fewer minutes.".to_owned());
        }
        if self.looks.iter().any(|l| l.at > at) {
            return Err("It was looked at burning after that. Type fewer minutes.".to_owned());
        }
        Ok(at)
    }
}
