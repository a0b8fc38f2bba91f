//! How much mixture makes the fill.

use super::capacity::{shown, sound, space_above};
use super::water::MEASURED;
use super::{FillRule, Vessel, VesselError, capacity};
use crate::formula::WaxShare;
use crate::quantity::{Amount, Density, Exact, Length, Mass, Share, Voice, Volume, Why};

/// The mass of mixture that makes the fill. `density` is that of the liquid wax as poured, needed unless the fill
/// is a weight.
///
/// # Errors
/// Where the capacity or the density is not known, or the fill is nothing or more than the vessel holds.
pub fn fill(vessel: &Vessel, density: Option<Density>, voice: Voice) -> Result<(Mass, Why), VesselError> {
    let (volume, volume_why) = match &vessel.fill {
        FillRule::Weight(weight) => return by_weight(*weight, voice),
        FillRule::Share(share) => by_share(vessel, *share, voice)?,
        FillRule::Headspace(headspace) => by_headspace(vessel, *headspace, voice)?,
    };
    let density =
        density.filter(|d| d.in_base() > Exact::ZERO).ok_or(VesselError::NoDensity { wax: None })?;
    let mass = density.mass_of(volume);
    let why = Why::new("Fill of one vessel", "volume filled × density of the wax", voice.mass(mass))
        .with_why("volume filled", shown(volume, voice), volume_why)
        .with("density of the wax", voice.density(density));
    Ok((mass, why))
}

/// Looks a vessel over without a wax.
///
/// # Errors
/// Every reason why it cannot be filled, so that a form can show them all.
pub fn check(vessel: &Vessel) -> Result<(), Vec<VesselError>> {
    let mut errors = Vec::new();
    if vessel.name.trim().is_empty() {
        errors.push(VesselError::NoName);
    }
    if vessel.water.is_some()
        && let Err(e) = capacity(vessel, Voice::default())
    {
        errors.push(e);
    }
    if let Some(inside) = &vessel.inside
        && let Err(e) = sound(inside)
    {
        errors.push(e);
    }
    if let Err(e) = fill(vessel, Some(WATER), Voice::default())
        && !errors.contains(&e)
    {
        errors.push(e);
    }
    if let FillRule::Weight(fill) = &vessel.fill
        && let Ok((capacity, _)) = capacity(vessel, Voice::default())
        && fill.value > WATER.mass_of(capacity)
    {
        errors.push(VesselError::RunsOver { fill: *fill, capacity });
    }
    if errors.is_empty() { Ok(()) } else { Err(errors) }
}

/// No wax and no mixture of it is as dense.
const WATER: Density = Density::base(Exact::ONE);

/// The sentence where a weight that was typed in takes more room as poured than the vessel has. `density` is that of the
/// liquid wax; where it is not known, the room that as much water takes, which is less. None where it goes in, or that is not
/// known.
pub fn overflow(vessel: &Vessel, density: Option<Density>, voice: Voice) -> Option<String> {
    let FillRule::Weight(fill) = &vessel.fill else { return None };
    let (holds, _) = capacity(vessel, voice).ok()?;
    let takes = density.unwrap_or(WATER).volume_of(fill.value)?;
    let of = if density.is_some() { " of this wax is " } else { " of any wax is more than " };
    (takes > holds).then(|| {
        let end = " to the brim: it would run over. Check its fill and its measures in the Book.";
        let (fill, takes, holds) = (voice.typed(*fill), shown(takes, voice), shown(holds, voice));
        [&fill, of, &takes, " as it is poured, and “", &vessel.name, "” holds ", &holds, end].concat()
    })
}

fn by_weight(weight: Amount<Mass>, voice: Voice) -> Result<(Mass, Why), VesselError> {
    if weight.value <= Mass::ZERO {
        return Err(VesselError::NoFill);
    }
    Ok((
        weight.value,
        Why::new("Fill of one vessel", "typed for this vessel, whatever the wax", voice.typed(weight)),
    ))
}

fn by_share(vessel: &Vessel, share: Amount<Share>, voice: Voice) -> Result<(Volume, Why), VesselError> {
    let (whole, whole_why) = capacity(vessel, voice)?;
    if share.value <= Share::ZERO {
        return Err(VesselError::NoFill);
    }
    if share.value.in_base() > Exact::ONE {
        return Err(VesselError::OverFull);
    }
    let volume = whole.times(share.value.in_base());
    let why = Why::new("Volume filled", "capacity × share filled", shown(volume, voice))
        .with_why("capacity", shown(whole, voice), whole_why)
        .with("share filled", voice.typed(share));
    Ok((volume, why))
}

fn by_headspace(
    vessel: &Vessel,
    headspace: Amount<Length>,
    voice: Voice,
) -> Result<(Volume, Why), VesselError> {
    let (whole, whole_why) = capacity(vessel, voice)?;
    let inside = vessel.inside.as_ref().ok_or(VesselError::NoHeight)?;
    sound(inside)?;
    if headspace.value >= inside.height.value {
        return Err(VesselError::Headspace { headspace, height: inside.height });
    }
    let above = space_above(inside, headspace.value);
    if above >= whole {
        return Err(VesselError::LessThanHeadspace { capacity: whole, headspace: above });
    }
    let volume = whole - above;
    let above_why = Why::new(
        "Space above the wax",
        "π ÷ 12 × headspace × (top² + top × level + level²), level between top and bottom by height",
        shown(above, voice),
    )
    .with("headspace", voice.typed(headspace))
    .with("top", voice.typed(inside.top))
    .with("bottom", voice.typed(inside.bottom))
    .with("height", voice.typed(inside.height));
    let why = Why::new("Volume filled", "capacity − space above the wax", shown(volume, voice))
        .with_why("capacity", shown(whole, voice), whole_why)
        .with_why("space above the wax", shown(above, voice), above_why);
    Ok((volume, why))
}

/// The density of a wax blend as poured, from that of each wax: 1 ÷ Σ (share ÷ density), to 10⁻⁹ g/mL. What else is
/// in it is taken to be as dense.
///
/// # Errors
/// Where the density of a wax is not known: it is named.
pub fn blend_density(
    blend: &[WaxShare],
    density_of: impl Fn(&str) -> Option<Density>,
    voice: Voice,
) -> Result<(Density, Why), VesselError> {
    let mut volume = Exact::ZERO;
    let mut why = Why::new("Density of the wax", "1 ÷ Σ (share of the blend ÷ density)", "");
    for wax in blend {
        let unknown = || VesselError::NoDensity { wax: Some(wax.name.clone()) };
        let density = density_of(&wax.name).ok_or_else(unknown)?;
        volume = volume + wax.share.value.in_base().checked_div(density.in_base()).ok_or_else(unknown)?;
        why = why.with(&wax.name, format!("{} of {}", voice.typed(wax.share), voice.density(density)));
    }
    let density = Exact::ONE.checked_div(volume).ok_or(VesselError::NoDensity { wax: None })?;
    let density = Density::base(density.round_to(MEASURED));
    why.result = voice.density(density);
    Ok((density, why))
}
