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
        match event {
            BurnEvent::Lit { at, mass, trimmed, throw } if course.burning().is_none_or(|s| *at < s.lit) => {
                let session = Session {
                    lit: *at,
                    mass: mass.value,
                    trimmed: *trimmed,
                    throw: *throw,
                    looks: Vec::new(),
                    out: None,
                    after: None,
                };
                course.sessions.push(session);
                course.sort();
            }
            BurnEvent::Looked(look) => {
                if let Some(session) = course.open(look.at) {
                    session.looks.push((**look).clone());
                }
            }
            BurnEvent::Out { at, mass, itself } => {
                // By a clock that is behind it may be out before it was lit.
                let at = if course.open(*at).is_some() { *at } else { u64::MAX };
                if let Some(session) = course.open(at) {
                    session.out = Some((if at == u64::MAX { session.lit } else { at }, *itself));
                    session.after = mass.map(|m| m.value);
                }
            }
            BurnEvent::Weighed { mass, lit: None } if course.burning().is_none() => {
                if let Some(session) = course.sessions.last_mut() {
                    session.after = Some(mass.value);
                }
            }
            BurnEvent::Weighed { mass, lit: Some(lit) } => {
                let burn = course.sessions.iter_mut().find(|s| s.lit == *lit && s.out.is_some());
                if let Some(session) = burn {
                    session.after = Some(mass.value);
                }
            }
            BurnEvent::Missed(steps) => {
                for burn in self::course(steps).sessions {
                    // Two may have written down the same one.
                    if burn.out.is_some_and(|(out, _)| !course.ended_within(burn.lit, out)) {
                        course.sessions.push(burn);
                        course.sort();
                    }
                }
            }
            BurnEvent::Closed { verdict, note } => course.closed = Some((*verdict, note.clone())),
            _ => {}
        }
    }
    // One that never ended, with a light after it, was a second tap for the same burn.
    let (mut kept, count) = (0, course.sessions.len());
    for place in 0..count {
        if place + 1 == count || course.sessions.get(place).is_some_and(|s| s.out.is_some()) {
            course.sessions.swap(kept, place);
            kept += 1;
        }
    }
    course.sessions.truncate(kept);
    course
}

impl Course {
    /// The burn that is on.
    pub fn burning(&self) -> Option<&Session> {
        self.sessions.last().filter(|s| s.out.is_none())
    }

    /// Puts the burn that was written last where it was lit.
    fn sort(&mut self) {
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
