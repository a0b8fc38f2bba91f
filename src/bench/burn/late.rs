//! What is written down late, and what is hardly meant as it was typed.

use super::{BurnEvent, Course, Look, Trial};
use crate::quantity::{Amount, Exact, Mass, Voice};
use crate::wire::wire_struct;

/// A burn that nobody tapped: one entry, so that it is taken back in one. Times are milliseconds since 1970.
#[derive(Clone, PartialEq, Debug)]
pub struct Missed {
    pub lit: u64,
    /// The candle with its vessel before it.
    pub before: Amount<Mass>,
    pub trimmed: bool,
    /// Cold throw before lighting, 1 to 5.
    pub throw: Option<u32>,
    /// In any order.
    pub looks: Vec<Look>,
    pub out: u64,
    pub itself: bool,
    pub after: Option<Amount<Mass>>,
}

wire_struct!(Missed { lit, before, trimmed, throw [skip], looks [default], out, itself, after [skip] });

impl Missed {
    /// What happened, as if each had been tapped when it was.
    pub fn steps(&self) -> Vec<BurnEvent> {
        let mut looks = self.looks.clone();
        crate::sort::by(&mut looks, |a, b| a.at.cmp(&b.at));
        let (trimmed, throw) = (self.trimmed, self.throw);
        let mut steps = vec![BurnEvent::Lit { at: self.lit, mass: self.before, trimmed, throw }];
        steps.extend(looks.into_iter().map(|look| BurnEvent::Looked(Box::new(look))));
        steps.push(BurnEvent::Out { at: self.out, mass: self.after, itself: self.itself });
        steps
    }
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
