//! The photos of a candle, each with the burn it was taken in.

use super::{BurnEvent, course};
use crate::bench::duration;

/// A photo, when it was taken (milliseconds since 1970), and where in the candle's life that was.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Shot {
    /// The name of the photo.
    pub photo: String,
    pub at: u64,
    pub said: String,
}

/// Every photo, with what the burns tell of it.
pub fn shots<'a, T>(events: impl IntoIterator<Item = (T, &'a BurnEvent)>) -> Vec<(T, Shot)> {
    let events: Vec<(T, &BurnEvent)> = events.into_iter().collect();
    let sessions = course(events.iter().map(|(_, event)| *event)).sessions;
    let shot = |(of, event): (T, &BurnEvent)| {
        let BurnEvent::Pictured { at, photo } = event else { return None };
        let burns = sessions.partition_point(|s| s.lit < *at);
        let number = burns.to_string();
        let said = match burns.checked_sub(1).and_then(|last| sessions.get(last)) {
            None => "Before its first burn".to_owned(),
            Some(session) if session.out.is_none_or(|(end, _)| *at < end) => {
                ["Burn ", &number, ", after ", &duration(3600.0 * session.hours(*at))].concat()
            }
            Some(_) => ["After burn ", &number].concat(),
        };
        Some((of, Shot { photo: photo.clone(), at: *at, said }))
    };
    events.into_iter().filter_map(shot).collect()
}
