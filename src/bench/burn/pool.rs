//! The melt pool as it grows, and when it reaches the wall.

use super::{Course, Session, Trial, least_squares};
use crate::bench::duration;

/// A pool this near to the wall has reached it: what a rule beside a hot vessel tells (our own choice).
const REACHED: f64 = 0.97;
/// Where the fit puts the full pool beyond this, it is not coming, h (our own choice).
const FAR: f64 = 8.0;

/// When the pool is from wall to wall.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Full {
    /// It was, at a look so many seconds after the light, and was not at the one before.
    Reached { after: f64, by: f64 },
    /// It is to be, so many seconds after the light.
    Foretold { at: f64 },
    /// It grows so slowly that it will not be in a burn.
    Never,
    /// Too few looks.
    NotTold,
}

/// The pool of one burn.
#[derive(Clone, PartialEq, Debug)]
pub struct Pool {
    /// Seconds since the light, and mm across.
    pub seen: Vec<(f64, f64)>,
    pub full: Full,
}

/// Growth against the root of time, the law of a melting front that is fed evenly (Stefan's problem).
pub fn pool(trial: &Trial, session: &Session) -> Pool {
    let seen = seen(session);
    let full = reached(trial, &seen).unwrap_or_else(|| foretold(&seen, wall(trial)));
    Pool { seen, full }
}

fn wall(trial: &Trial) -> f64 {
    REACHED * trial.diameter.value.in_base().to_f64()
}

fn seen(session: &Session) -> Vec<(f64, f64)> {
    let looks = session.looks.iter();
    looks.filter_map(|l| Some((3600.0 * session.hours(l.at), l.pool?.value.in_base().to_f64()))).collect()
}

fn reached(trial: &Trial, seen: &[(f64, f64)]) -> Option<Full> {
    let wall = wall(trial);
    let at = seen.iter().position(|(_, across)| *across >= wall)?;
    let time = |place: usize| seen.get(place).map_or(0.0, |(t, _)| *t);
    Some(Full::Reached { after: at.checked_sub(1).map_or(0.0, time), by: time(at) })
}

/// Whether the pool was seen from wall to wall. It is asked in every room, so it fits nothing.
pub(super) fn is_full(trial: &Trial, session: &Session) -> bool {
    reached(trial, &seen(session)).is_some()
}

fn foretold(seen: &[(f64, f64)], wall: f64) -> Full {
    let roots = seen.iter().map(|(t, _)| t.sqrt()).collect();
    let across: Vec<f64> = seen.iter().map(|(_, across)| *across).collect();
    let line = least_squares(&[vec![1.0; across.len()], roots], &across);
    match line.as_ref().map(|l| l.values.as_slice()) {
        Some([first, growth]) => {
            let root = (wall - first) / growth;
            let soon = *growth > 0.0 && root > 0.0 && root * root < 3600.0 * FAR;
            if soon { Full::Foretold { at: root * root } } else { Full::Never }
        }
        _ => Full::NotTold,
    }
}

/// What the latest burn tells of a full pool that tells something; where none does, that. None before a pool was measured.
pub fn last_full(trial: &Trial, course: &Course) -> Option<Full> {
    let pools = || course.sessions.iter().rev().map(|s| pool(trial, s)).filter(|p| !p.seen.is_empty());
    pools().map(|p| p.full).find(|full| *full != Full::NotTold).or_else(|| pools().next().map(|p| p.full))
}

/// Seconds to a full pool as the trade counts it: an hour for each inch across. `common practice, no source`
pub fn usual_full(trial: &Trial) -> f64 {
    trial.diameter.value.in_base().to_f64() / 25.4 * 3600.0
}

impl Full {
    pub fn say(self) -> String {
        match self {
            Self::Reached { after, by } if after > 0.0 => {
                ["Full pool between ", &duration(after), " and ", &duration(by), "."].concat()
            }
            Self::Reached { by, .. } => ["Full pool within ", &duration(by), "."].concat(),
            Self::Foretold { at } => ["Full pool after about ", &duration(at), ", at this pace."].concat(),
            Self::Never => "At this pace the pool does not reach the wall in a burn.".to_owned(),
            Self::NotTold => {
                "Measure the pool twice in a burn: then the time to a full pool is told.".to_owned()
            }
        }
    }
}
