//! Sharing whole units out by weights.

use super::{Exact, Money};
use crate::sort;

/// `total` shared out in whole units by `weights`: largest remainder, ties to the earlier one.
///
/// The parts add up to `total`, and each is less than one unit from its exact share. None where a weight is
/// negative or none is above zero.
pub fn apportion(total: i64, weights: &[Exact]) -> Option<Vec<i64>> {
    let sum: Exact = weights.iter().copied().sum();
    if sum.is_zero() || weights.iter().any(|w| w.is_negative()) {
        return None;
    }
    let size = Exact::whole(total.unsigned_abs().into());
    let mut parts = Vec::with_capacity(weights.len());
    let mut rests = Vec::with_capacity(weights.len());
    for (at, weight) in weights.iter().enumerate() {
        let quota = size * (*weight / sum);
        parts.push(quota.floor());
        rests.push((Exact::whole(quota.floor()) - quota, at));
    }
    // The rests are negated, so that the largest comes first and ties stay in order.
    sort::by(&mut rests, |a, b| a.cmp(b));
    let mut missing = size.floor() - parts.iter().sum::<i128>();
    for (_, at) in rests {
        if let Some(part) = parts.get_mut(at).filter(|_| missing > 0) {
            *part += 1;
            missing -= 1;
        }
    }
    let sign = if total < 0 { -1 } else { 1 };
    parts.into_iter().map(|part| i64::try_from(sign * part).ok()).collect()
}

impl Money {
    /// Shared out by weights to the last minor unit, as [`apportion`] does.
    pub fn split(self, weights: &[Exact]) -> Option<Vec<Self>> {
        Some(apportion(self.0, weights)?.into_iter().map(Self).collect())
    }
}
