//! What is written down late, and what is hardly meant as it was typed.

use super::{BurnEvent, Course, Look, Trial};
use crate::quantity::{Amount, Exact, Length, Mass, Voice};

/// The entry of a burn that nobody tapped; the looks come in any order.
pub fn missed(lit: BurnEvent, mut looks: Vec<Look>, out: BurnEvent) -> BurnEvent {
    crate::sort::by(&mut looks, |a, b| a.at.cmp(&b.at));
    let mut steps = vec![lit];
    steps.extend(looks.into_iter().map(|look| BurnEvent::Looked(Box::new(look))));
    steps.push(out);
    BurnEvent::Missed(steps)
}

/// Milliseconds: a burn is hardly longer; the day was mistaken (our own choice).
const LONGEST: u64 = 2 * crate::day::DAY;
/// Grams that two scales, or one on two days, may differ by (our own choice).
const STRAY: Exact = Exact::whole(5);

impl Course {
    /// Whether a burn that nobody tapped fits among the others, as it is written down afterwards. Times are milliseconds
    /// since 1970.
    ///
    /// # Errors
    /// The sentence that says which time cannot be.
    pub fn missed(&self, lit: u64, out: u64, now: u64) -> Result<(), String> {
        let why = if out <= lit {
            "It ended before it was lit. Check both times."
        } else if out > now {
            "That is still to come. A burn is written down here when it is over."
        } else if out - lit > LONGEST {
            "That would be a burn of more than two days. Check the days."
        } else if self.sessions.iter().any(|s| lit < s.out.map_or(u64::MAX, |(end, _)| end) && s.lit < out) {
            "Another burn of this candle is written down for some of that time. Check both times."
        } else {
            return Ok(());
        };
        Err(why.to_owned())
    }
}

impl Trial {
    /// Whether the scale can show this with the candle on it: no more than at first, no less than with all the wax gone.
    ///
    /// # Errors
    /// The sentence that says what it cannot be.
    pub fn shows(&self, mass: Amount<Mass>, voice: Voice) -> Result<(), String> {
        let (start, fill) = (self.start.value.in_base(), self.fill.value.in_base());
        let shown = mass.value.in_base();
        let than = if shown > start + STRAY {
            [" is more than the whole candle weighed at first, ", &voice.typed(self.start)]
        } else if shown < start - fill - STRAY {
            [" is less than the candle weighs without its wax; there was ", &voice.typed(self.fill)]
        } else {
            return Ok(());
        };
        let end = ". Is it this candle, with its vessel and without a lid? Weigh it again, or put the candle right.";
        Err([&voice.typed(mass), &than.concat(), end].concat())
    }
}

/// A pool is not read closer than to this share of the vessel's width (our own choice).
const WIDER: Exact = Exact::ratio(11, 10);

impl Trial {
    /// Whether the melted wax can be so wide.
    ///
    /// # Errors
    /// The sentence where the vessel is narrower.
    pub fn holds(&self, pool: Amount<Length>, voice: Voice) -> Result<(), String> {
        if pool.value <= self.diameter.value.times(WIDER) {
            return Ok(());
        }
        let wall = [" is wider than the vessel inside, ", &voice.typed(self.diameter)].concat();
        Err([&voice.typed(pool), &wall, ". Measure it again, or put the candle right."].concat())
    }
}

/// Whether a candle that weighed so much can weigh so much after a burn.
///
/// # Errors
/// The sentence where it would have become heavier.
pub fn lost(before: Mass, after: Amount<Mass>, voice: Voice) -> Result<(), String> {
    if after.value.in_base() <= before.in_base() + STRAY {
        return Ok(());
    }
    let was = voice.amount(before, voice.mass);
    Err([&voice.typed(after), " is more than before the burn, ", &was, ". Weigh it again."].concat())
}
