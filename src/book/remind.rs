//! When a copy of the book is due.

use super::{Ending, Journal};
use crate::day::DAY;

/// After how many days, or how many pours, a copy is asked for; zero: never for that reason.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Reminder {
    pub days: u32,
    pub pours: u32,
}

impl Default for Reminder {
    fn default() -> Self {
        Self { days: 14, pours: 10 }
    }
}

const AHEAD: &str = "By its date the last copy of your book is of a day to come: the clock was wrong then, or it is \
                     now. Keep one where this device is not.";

impl Reminder {
    /// The sentence that asks for a copy; none while none is due. `copied` is when the last one was made, all times in
    /// milliseconds since 1970. A book without an entry since then asks for none; where the clock was set back since, nobody
    /// knows how long ago that was.
    pub fn said(self, copied: Option<u64>, journal: &Journal, now: u64) -> Option<String> {
        if copied.is_some_and(|copied| copied > now.saturating_add(DAY)) && (self.days > 0 || self.pours > 0)
        {
            return Some(AHEAD.to_owned());
        }
        // By a clock that is ahead a pour would be one since every copy, until that day comes.
        let fresh = |at: u64| copied.is_none_or(|copied| at > copied && at <= now);
        let first = journal.first_since(copied)?;
        let days = now.saturating_sub(copied.unwrap_or(first)) / DAY;
        let ended = journal.state().batches.values().filter_map(|b| b.ended.as_ref());
        let pours = ended.filter(|(how, at, _)| *how == Ending::Poured && fresh(*at)).count();
        let due = |after: u32, is: u64| after > 0 && is >= u64::from(after);
        if !due(self.days, days) && !due(self.pours, pours as u64) {
            return None;
        }
        let poured = match pours {
            0 => String::new(),
            1 => " 1 pour is in it since.".to_owned(),
            n => format!(" {n} pours are in it since."),
        };
        let when = match (copied, days) {
            (None, _) => "There is no copy of your book yet.".to_owned(),
            (_, 0) => "The last copy of your book is of today.".to_owned(),
            (_, 1) => "The last copy of your book is a day old.".to_owned(),
            (_, n) => format!("The last copy of your book is {n} days old."),
        };
        let poured = if copied.is_none() { poured.replace(" since", "") } else { poured };
        Some([&when, &poured, " Keep one where this device is not."].concat())
    }
}
