//! How near a candle that was tried is to the one that a wick is sought for.

use super::{Heavy, Trial};
use crate::text;

/// Percent of the wax that the fragrance's share may differ by before a trial is worth half as much (our own choice).
const SHARES: f64 = 4.0;
/// mm that the vessel may be wider or narrower before it counts as a step away (our own choice).
const WIDE: f64 = 10.0;

/// How near it is.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Near {
    /// Of a trial of the same candle it is worth this much, 0 to 1: with another fragrance, share, wax or vessel half, with
    /// another wax half of that, and by the shares ever less. The vessel's width and the fragrance's weight are no part of
    /// it: those are in the model, and what is far off in them tells less by itself.
    pub worth: f64,
    /// Steps away in all that is known, to say which is nearest.
    pub away: f64,
}

impl Near {
    /// `same`: it differs in nothing but the wick.
    pub fn of(asked: &Trial, tried: &Trial, same: bool) -> Self {
        if same {
            return Self { worth: 1.0, away: 0.0 };
        }
        let other = |a: &str, b: &str| f64::from(u8::from(!text::same(a, b)));
        let steps = other(&asked.wax, &tried.wax) + shares(asked, tried) / SHARES;
        let wider = (across(tried) - across(asked)).abs() / WIDE;
        let heavier = (weight(tried) - weight(asked)).abs();
        let scent = 0.5 * other(&asked.fragrance, &tried.fragrance);
        Self { worth: 0.5_f64.powf(1.0 + steps), away: steps + wider + heavier + scent }
    }
}

/// Percent between the two shares; where one is not known, as much as makes it worth half.
fn shares(a: &Trial, b: &Trial) -> f64 {
    let share = |trial: &Trial| trial.load.map(|load| 100.0 * load.value.in_base().to_f64());
    match (share(a), share(b)) {
        (Some(a), Some(b)) => (a - b).abs(),
        (None, None) => 0.0,
        _ => SHARES,
    }
}

/// mm across the vessel inside.
pub fn across(trial: &Trial) -> f64 {
    trial.diameter.value.in_base().to_f64()
}

/// How heavy the fragrance of a candle is; without one it is lighter than any.
pub fn weight(trial: &Trial) -> f64 {
    if trial.fragrance.is_empty() { 2.0 * Heavy::Light.rank() } else { trial.heavy.rank() }
}
