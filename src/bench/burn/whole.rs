//! Everything that was done of one burn, so that it can be taken back in one.

use super::{BurnEvent, Course, Session, course};

/// Which events, each with what it is called by, make the burn that was lit at this time (milliseconds since 1970): without
/// them the other burns are as they are, and this one is gone. A second tap for its light and a second writing-down are
/// among them, since they would count in its place.
pub fn of_burn<'a, T>(events: impl IntoIterator<Item = (T, &'a BurnEvent)>, lit: u64) -> Vec<T> {
    let events: Vec<(T, &BurnEvent)> = events.into_iter().collect();
    let whole = course(events.iter().map(|(_, event)| *event)).sessions;
    let mut so_far = Course::default();
    let mut of = Vec::new();
    for (name, event) in events {
        let burn = touched(&so_far, event);
        so_far.add(event);
        // One that never ended goes with the burn it was a second tap for: the one after it.
        let burn = burn.and_then(|lit| whole.iter().map(|s| s.lit).find(|own| *own >= lit));
        let photo = matches!(event, BurnEvent::Pictured { at, .. } if taken_in(&whole, *at) == Some(lit));
        if burn == Some(lit) || photo {
            of.push(name);
        }
    }
    of
}

/// The light of the burn that an event is written to, among those so far.
fn touched(so_far: &Course, event: &BurnEvent) -> Option<u64> {
    let open = |by: u64| so_far.sessions.iter().rfind(|s| s.out.is_none() && s.lit <= by).map(|s| s.lit);
    match event {
        BurnEvent::Lit { at, .. } => match so_far.burning() {
            Some(burn) if *at >= burn.lit => Some(burn.lit),
            _ => Some(*at),
        },
        BurnEvent::Looked(look) => open(look.at),
        BurnEvent::Out { at, .. } => open(*at).or_else(|| open(u64::MAX)),
        BurnEvent::Weighed { lit, .. } => {
            so_far.sessions.iter().rfind(|s| lit.is_none_or(|lit| s.lit == lit)).map(|s| s.lit)
        }
        BurnEvent::Missed(steps) => {
            let burn = course(steps).sessions.pop()?;
            let (out, _) = burn.out?;
            let same = |s: &&Session| s.out.is_some_and(|(end, _)| burn.lit < end) && s.lit < out;
            Some(so_far.sessions.iter().find(same).map_or(burn.lit, |s| s.lit))
        }
        BurnEvent::Pictured { .. } | BurnEvent::Closed { .. } => None,
    }
}

/// The light of the burn in which a photo was taken.
fn taken_in(whole: &[Session], at: u64) -> Option<u64> {
    let within = |s: &&Session| s.lit < at && s.out.is_none_or(|(end, _)| at < end);
    whole.iter().find(within).map(|s| s.lit)
}
