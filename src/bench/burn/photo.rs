//! The photos of a candle, each with the burn it was taken in.

use super::BurnEvent;
use crate::bench::duration;

/// A photo, when it was taken (milliseconds since 1970), and where in the candle's life that was.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Shot {
    /// The name of the photo.
    pub photo: String,
    pub at: u64,
    pub said: String,
}

/// Every photo, with what the events before it tell of it.
pub fn shots<'a, T>(events: impl IntoIterator<Item = (T, &'a BurnEvent)>) -> Vec<(T, Shot)> {
    let (mut shots, mut burns, mut lit) = (Vec::new(), 0, None);
    for (of, event) in events {
        match event {
            BurnEvent::Lit { at, .. } if lit.is_none() => {
                burns += 1;
                lit = Some(*at);
            }
            BurnEvent::Out { .. } => lit = None,
            BurnEvent::Pictured { at, photo } => {
                let number = u32::to_string(&burns);
                let said = match (lit, burns) {
                    (Some(lit), _) => {
                        let since = duration(at.saturating_sub(lit) as f64 / 1000.0);
                        ["Burn ", &number, ", after ", &since].concat()
                    }
                    (None, 0) => "Before its first burn".to_owned(),
                    (None, _) => ["After burn ", &number].concat(),
                };
                shots.push((of, Shot { photo: photo.clone(), at: *at, said }));
            }
            _ => {}
        }
    }
    shots
}
