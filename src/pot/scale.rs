//! Which scale a part is sent to.

use crate::bench::Scale;
use crate::quantity::{Exact, Mass, Share};
use std::cmp::Reverse;

#[derive(Clone, PartialEq, Debug)]
pub enum ScaleChoice {
    /// Index into the scales; the load is weighed in `loads` equal goes where it exceeds the capacity. `error` is
    /// that of the weighing, as a share of the mass.
    On { scale: usize, loads: u32, error: Share },
    /// None weighs it within tolerance: the least mass that one would.
    None { from: Option<Mass> },
}

/// The scale on which the error of weighing `mass` is smallest; of equals the one with the larger capacity.
///
/// The error taken is half a division for each load: what the last digit leaves open. Wear, levelness and a scale
/// out of adjustment come on top, and every further load is one more to miscount or spill: so a mass is split only
/// where no scale takes it in one go. A scale is out where a load is below its least load or the error is beyond
/// `tolerance`, and where its capacity or division is zero.
pub fn choose_scale(mass: Mass, scales: &[Scale], tolerance: Share) -> ScaleChoice {
    let on = scales.iter().enumerate().filter_map(|(index, scale)| {
        let (loads, error) = weighing(mass, scale)?;
        let each = mass.times(Exact::ratio(1, loads.into()));
        (error <= tolerance && each >= scale.least.value).then_some((index, scale, loads, error))
    });
    // The first of equals is kept, so the choice does not hang on the order beyond that.
    let best = on.reduce(|best, next| {
        let rank = |loads: u32, error: Share, larger: Mass| (loads > 1, error, Reverse(larger));
        let (_, a, loads, error) = best;
        let kept = rank(loads, error, a.capacity.value);
        if rank(next.2, next.3, next.1.capacity.value) < kept { next } else { best }
    });
    match best {
        Some((scale, _, loads, error)) => ScaleChoice::On { scale, loads, error },
        None => ScaleChoice::None { from: scales.iter().filter_map(|s| least(s, tolerance)).min() },
    }
}

/// Loads and the error of weighing `mass` in them; none where the scale cannot.
fn weighing(mass: Mass, scale: &Scale) -> Option<(u32, Share)> {
    if scale.division.value <= Mass::ZERO || scale.capacity.value <= Mass::ZERO {
        return None;
    }
    let loads = u32::try_from(mass.over(scale.capacity.value)?.ceil()).ok()?.max(1);
    let error = scale.division.value.times(Exact::ratio(loads.into(), 2)).over(mass)?;
    Some((loads, Share::base(error)))
}

/// The least mass this scale weighs within tolerance; none where even a full load is not.
fn least(scale: &Scale, tolerance: Share) -> Option<Mass> {
    let by_division = scale.division.value.times(Exact::ratio(1, 2).checked_div(tolerance.in_base())?);
    let least = by_division.max(scale.least.value);
    (scale.division.value > Mass::ZERO && least <= scale.capacity.value).then_some(least)
}
