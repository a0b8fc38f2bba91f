//! What a vessel holds to the brim, by water or by geometry.

use super::water::{MEASURED, WATER_SOURCE};
use super::{Inside, Vessel, VesselError, Water, water_density};
use crate::quantity::{Exact, Length, Mass, Voice, Volume, VolumeUnit, Why};

/// π to fifteen decimal places: off by less than 10⁻¹⁵, a rule measures to 10⁻³.
const PI: Exact = Exact::ratio(3_141_592_653_589_793, 1_000_000_000_000_000);

/// What the vessel holds to the brim: by water where it was weighed, else by its inside; to 10⁻⁹ mL.
///
/// # Errors
/// Where neither water nor inside is known, or they make no volume.
pub fn capacity(vessel: &Vessel, voice: Voice) -> Result<(Volume, Why), VesselError> {
    match (&vessel.water, &vessel.inside) {
        (Some(water), _) => by_water(water, voice),
        (None, Some(inside)) => by_inside(inside, voice),
        (None, None) => Err(VesselError::NoCapacity),
    }
}

pub(crate) fn by_water(water: &Water, voice: Voice) -> Result<(Volume, Why), VesselError> {
    let outside = || VesselError::WaterTemperature { at: water.at };
    let density = water_density(water.at.value).ok_or_else(outside)?;
    let volume = density.volume_of(water.mean()).ok_or_else(outside)?.round_to(Volume::base(MEASURED));
    if water.masses().any(|m| m.value <= Mass::ZERO) || volume <= Volume::ZERO {
        return Err(VesselError::NoWater);
    }
    let known = Why::new("Density of water", "by its temperature", voice.density(density))
        .with("temperature", voice.typed(water.at))
        .from(WATER_SOURCE);
    let why = Why::new("Capacity", "water it holds ÷ density of water", shown(volume, voice))
        .with("water it holds", water.held(voice))
        .with_why("density of water", voice.density(density), known);
    Ok((volume, why))
}

pub(crate) fn by_inside(inside: &Inside, voice: Voice) -> Result<(Volume, Why), VesselError> {
    sound(inside)?;
    let volume = frustum(inside.top.value, inside.bottom.value, inside.height.value);
    let why = Why::new("Capacity", "π ÷ 12 × height × (top² + top × bottom + bottom²)", shown(volume, voice))
        .with("top", voice.typed(inside.top))
        .with("bottom", voice.typed(inside.bottom))
        .with("height", voice.typed(inside.height));
    Ok((volume, why))
}

/// Refuses an inside without extent.
pub(super) fn sound(inside: &Inside) -> Result<(), VesselError> {
    let all = [inside.top, inside.bottom, inside.height];
    if all.iter().all(|l| l.value > Length::ZERO) { Ok(()) } else { Err(VesselError::NoInside) }
}

/// The volume of a round vessel, straight or tapered: π h (D² + D d + d²) ÷ 12.
fn frustum(top: Length, bottom: Length, height: Length) -> Volume {
    let (top, bottom, height) = (top.in_base(), bottom.in_base(), height.in_base());
    let cubic_millimetres = PI * height * (top * top + top * bottom + bottom * bottom) / Exact::whole(12);
    Volume::base(cubic_millimetres / Exact::whole(1000)).round_to(Volume::base(MEASURED))
}

/// The space above the wax: the upper part of the inside, `headspace` high.
pub(super) fn space_above(inside: &Inside, headspace: Length) -> Volume {
    let part = headspace.over(inside.height.value).unwrap_or(Exact::ZERO);
    let (top, bottom) = (inside.top.value, inside.bottom.value);
    let level = top.times(Exact::ONE - part) + bottom.times(part);
    frustum(top, level, headspace)
}

pub(super) fn shown(volume: Volume, voice: Voice) -> String {
    voice.amount(volume, VolumeUnit::Millilitre)
}
