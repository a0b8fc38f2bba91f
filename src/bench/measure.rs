//! Drops, spoons and grams of one ingredient, through what weighing has told.

use super::{Ingredient, bulk_density, drop_mass};
use crate::quantity::{Any, Density, Exact, Mass, Voice, Volume, VolumeUnit, Why};

/// An amount of this ingredient in every other way of measuring it that its trials allow: what it comes to, and how.
/// Nothing where they allow none.
pub fn measures(of: &Ingredient, amount: &Any, voice: Voice) -> Vec<(String, Why)> {
    let drop = of.drops.as_ref().and_then(|trial| drop_mass(trial, voice));
    let drop = drop.map(|d| (d.mean, d.why));
    let bulk = of.spoons.as_ref().and_then(|trial| bulk_density(trial, voice));
    let density = bulk.or_else(|| of.density.map(|d| (d, liquid(d, voice))));
    let mut found = Vec::new();
    match amount {
        Any::Drops(count) => found.extend(drop.map(|d| drops_weigh(*count, &d, voice))),
        Any::Volume(volume) => found.extend(density.map(|d| volume_weighs(volume.value, &d, voice))),
        Any::Mass(mass) => {
            found.extend(drop.and_then(|d| as_drops(mass.value, &d, voice)));
            if let Some(density) = density {
                as_volumes(mass.value, &density, voice, &mut found);
            }
        }
        _ => {}
    }
    found
}

fn liquid(density: Density, voice: Voice) -> Why {
    Why::new("Density as poured", "typed in for this wax", voice.density(density))
}

fn drops_weigh(count: Exact, (one, why): &(Mass, Why), voice: Voice) -> (String, Why) {
    let mass = one.times(count);
    let said = voice.number(count);
    let why = Why::new("Weight of the drops", "drops × mass of one drop", voice.mass(mass))
        .with("drops", &said)
        .with_why("mass of one drop", voice.milligrams(*one), why.clone());
    (voice.both(mass), why)
}

fn volume_weighs(volume: Volume, (density, why): &(Density, Why), voice: Voice) -> (String, Why) {
    let mass = density.mass_of(volume);
    let why = Why::new("Weight of the measure", "volume × density", voice.mass(mass))
        .with("volume", voice.amount(volume, VolumeUnit::Millilitre))
        .with_why("density", voice.density(*density), why.clone());
    (voice.both(mass), why)
}

fn as_drops(mass: Mass, (one, why): &(Mass, Why), voice: Voice) -> Option<(String, Why)> {
    let said = format!("{} drops", voice.number(mass.over(*one)?));
    let why = Why::new("Drops", "weight ÷ mass of one drop", &said)
        .with("weight", voice.mass(mass))
        .with_why("mass of one drop", voice.milligrams(*one), why.clone());
    Some((said, why))
}

fn as_volumes(mass: Mass, (density, why): &(Density, Why), voice: Voice, found: &mut Vec<(String, Why)>) {
    let Some(volume) = density.volume_of(mass) else { return };
    for unit in [VolumeUnit::Millilitre, VolumeUnit::Teaspoon, VolumeUnit::Tablespoon] {
        let said = voice.amount(volume, unit);
        let why = Why::new("Measure", "weight ÷ density", voice.amount(volume, VolumeUnit::Millilitre))
            .with("weight", voice.mass(mass))
            .with_why("density", voice.density(*density), why.clone())
            .rounded(said.clone());
        found.push((said, why));
    }
}
