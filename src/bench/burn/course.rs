//! What happened to one candle, burn by burn.

use super::{BurnEvent, Look, Verdict};
use crate::quantity::Mass;

/// One burn, from the light to the end. Times are milliseconds since 1970.
#[derive(Clone, PartialEq, Debug)]
pub struct Session {
    pub lit: u64,
    pub mass: Mass,
    pub trimmed: bool,
    /// Cold throw.
    pub throw: Option<u32>,
    pub looks: Vec<Look>,
    /// When it ended, and whether by itself. None while it burns.
    pub out: Option<(u64, bool)>,
    pub after: Option<Mass>,
}

/// All burns of a candle in their order, and what came of it.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Course {
    pub sessions: Vec<Session>,
    pub closed: Option<(Verdict, String)>,
}

/// The course that the events make, its burns by their lights: one may be written down long after it was. What does not
/// fit (a look at a candle that is out, a second light) is passed over: two devices may have written at once.
pub fn course<'a>(events: impl IntoIterator<Item = &'a BurnEvent>) -> Course {
    let mut course = Course::default();
    for event in events {
        course.add(event);
    }
    course.settle();
    course
}

impl Course {
    pub(super) fn add(&mut self, event: &BurnEvent) {
        match event {
            BurnEvent::Lit { at, mass, trimmed, throw } if self.burning().is_none_or(|s| *at < s.lit) => {
                self.put(Session {
                    lit: *at,
                    mass: mass.value,
                    trimmed: *trimmed,
                    throw: *throw,
                    looks: Vec::new(),
                    out: None,
                    after: None,
                });
            }
            BurnEvent::Looked(look) => {
                if let Some(session) = self.open(look.at) {
                    session.looks.push((**look).clone());
                }
            }
            BurnEvent::Out { at, mass, itself } => {
                // By a clock that is behind it may be out before it was lit.
                let at = if self.open(*at).is_some() { *at } else { u64::MAX };
                if let Some(session) = self.open(at) {
                    session.out = Some((if at == u64::MAX { session.lit } else { at }, *itself));
                    session.after = mass.map(|m| m.value);
                }
            }
            BurnEvent::Weighed { mass, lit } => {
                let burn = self.sessions.iter_mut().rfind(|s| lit.is_none_or(|lit| s.lit == lit));
                if let Some(session) = burn.filter(|s| s.out.is_some()) {
                    session.after = Some(mass.value);
                }
            }
            BurnEvent::Missed(steps) => {
                let mut missed = Self::default();
                for step in steps {
                    missed.add(step);
                }
                // Two may have written down the same one.
                let new = |s: &Session| s.out.is_some_and(|(out, _)| !self.ended_within(s.lit, out));
                if let Some(burn) = missed.sessions.pop().filter(new) {
                    self.put(burn);
                }
            }
            BurnEvent::Closed { verdict, note } => self.closed = Some((*verdict, note.clone())),
            _ => {}
        }
    }

    /// One that never ended, with a light after it, was a second tap for the same burn.
    fn settle(&mut self) {
        let (mut kept, count) = (0, self.sessions.len());
        for place in 0..count {
            if place + 1 == count || self.sessions.get(place).is_some_and(|s| s.out.is_some()) {
                self.sessions.swap(kept, place);
                kept += 1;
            }
        }
        self.sessions.truncate(kept);
    }

    /// The burn that is on.
    pub fn burning(&self) -> Option<&Session> {
        self.sessions.last().filter(|s| s.out.is_none())
    }

    /// Puts a burn where it was lit.
    fn put(&mut self, burn: Session) {
        self.sessions.push(burn);
        let mut rest = self.sessions.as_mut_slice();
        while let [before @ .., a, b] = rest
            && a.lit > b.lit
        {
            std::mem::swap(a, b);
            let end = before.len() + 1;
            rest = rest.get_mut(..end).unwrap_or_default();
        }
    }

    /// Whether a burn that is over was on for some of that time.
    fn ended_within(&self, lit: u64, out: u64) -> bool {
        self.sessions.iter().any(|s| s.out.is_some_and(|(end, _)| lit < end) && s.lit < out)
    }

    /// The burn that was lit by then and has not ended.
    fn open(&mut self, by: u64) -> Option<&mut Session> {
        self.sessions.iter_mut().rfind(|s| s.out.is_none() && s.lit <= by)
    }

    /// Out, but not weighed since.
    pub fn unweighed(&self) -> bool {
        self.sessions.last().is_some_and(|s| s.out.is_some() && s.after.is_none())
    }

    /// How long it has burned in all, seconds; a burn that is on counts to `now`.
    pub fn seconds(&self, now: u64) -> f64 {
        self.sessions.iter().map(|s| s.seconds(now)).sum()
    }

    /// All that was seen.
    pub fn looks(&self) -> impl Iterator<Item = &Look> {
        self.sessions.iter().flat_map(|s| &s.looks)
    }
}

impl Session {
    /// How long it burned, seconds; to `now` while it burns.
    pub fn seconds(&self, now: u64) -> f64 {
        let end = self.out.map_or(now, |(at, _)| at);
        end.saturating_sub(self.lit) as f64 / 1000.0
    }

    /// Hours since the light and grams on the scale.
    pub(super) fn weighings(&self) -> Vec<(f64, f64)> {
        let grams = |mass: Mass| mass.in_base().to_f64();
        let mut all = vec![(0.0, grams(self.mass))];
        all.extend(self.looks.iter().filter_map(|l| Some((self.hours(l.at), grams(l.mass?.value)))));
        if let (Some((at, _)), Some(mass)) = (self.out, self.after) {
            all.push((self.hours(at), grams(mass)));
        }
        all
    }

    pub(super) fn hours(&self, at: u64) -> f64 {
        at.saturating_sub(self.lit) as f64 / 3_600_000.0
    }
}
