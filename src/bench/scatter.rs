//! How far several weighings of one thing stray, and how many more there should be.

use super::drops::needed;
use crate::quantity::{Amount, Exact, Mass};

/// The standard error of the mean, s ÷ √k, as a share of the mean, and how many more weighings make that `good`. None from
/// one weighing. The reading of the scale is left out: it is in the scatter, and beside it small.
pub(super) fn stray(masses: &[Amount<Mass>], good: f64) -> Option<(f64, u32)> {
    let weighings = u32::try_from(masses.len()).ok()?;
    let freedom = weighings.checked_sub(1).filter(|more| *more > 0)?;
    let sum = masses.iter().map(|m| m.value).sum::<Mass>();
    let mean = sum.in_base().checked_div(Exact::whole(weighings.into()))?;
    let off = |mass: &Amount<Mass>| Some(mass.value.in_base().checked_div(mean)?.to_f64() - 1.0);
    let scatter = masses.iter().filter_map(off).map(|x| x * x).sum::<f64>() / f64::from(freedom);
    let weighed = f64::from(weighings);
    let error = (scatter / weighed).sqrt();
    let more = if error <= good { 0.0 } else { (needed(scatter, 0.0, good) - weighed).ceil().max(1.0) };
    Some((error, more as u32))
}
