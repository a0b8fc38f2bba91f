//! Spoon measures to the nearest eighth of a teaspoon that keeps within tolerance.

use crate::quantity::{Exact, Quantity, Share, Volume, VolumeUnit};

#[derive(Clone, PartialEq, Debug)]
pub struct SpoonChoice {
    /// Eighths of a US teaspoon.
    pub eighths: u32,
    /// How far the measure is off, as a share of what was wanted (absolute).
    pub off: Share,
    pub within: bool,
}

/// The volume of one eighth of a US customary teaspoon.
pub fn eighth() -> Volume {
    Volume::of(Exact::ratio(1, 8), VolumeUnit::Teaspoon)
}

/// The nearest eighth of a level US customary teaspoon, at least one where anything is wanted; a half goes to the
/// even eighth.
pub fn choose_spoon(volume: Volume, tolerance: Share) -> SpoonChoice {
    let wanted = volume.over(eighth()).unwrap_or(Exact::ZERO);
    let eighths = u32::try_from(wanted.round()).unwrap_or(0).max(u32::from(wanted > Exact::ZERO));
    let off =
        Share::base((Exact::whole(eighths.into()) - wanted).abs().checked_div(wanted).unwrap_or(Exact::ZERO));
    SpoonChoice { eighths, off, within: off <= tolerance }
}
