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

/// The course that the events make. What does not fit (a look at a candle that is out, a second light) is passed over: two
/// devices may have written at once.
pub fn course<'a>(events: impl IntoIterator<Item = &'a BurnEvent>) -> Course {
    let mut course = Course::default();
    for event in events {
        let burning = course.burning().is_some();
        let last = course.sessions.last_mut();
        match (event, last) {
            (BurnEvent::Lit { at, mass, trimmed, throw }, _) if !burning => course.sessions.push(Session {
                lit: *at,
                mass: mass.value,
                trimmed: *trimmed,
                throw: *throw,
                looks: Vec::new(),
                out: None,
                after: None,
            }),
            (BurnEvent::Looked(look), Some(session)) if burning && look.at >= session.lit => {
                session.looks.push((**look).clone());
            }
            (BurnEvent::Out { at, mass, itself }, Some(session)) if burning => {
                session.out = Some(((*at).max(session.lit), *itself));
                session.after = mass.map(|m| m.value);
            }
            (BurnEvent::Weighed { mass }, Some(session)) if !burning => session.after = Some(mass.value),
            (BurnEvent::Closed { verdict, note }, _) => course.closed = Some((*verdict, note.clone())),
            _ => {}
        }
    }
    course
}

impl Course {
    /// The burn that is on.
    pub fn burning(&self) -> Option<&Session> {
        self.sessions.last().filter(|s| s.out.is_none())
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
