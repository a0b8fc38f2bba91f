//! Texts of each kind, read and written again.

use super::parsers::{Said, sentence};
use potside::bench::burn::WickSeries;
use potside::bench::read_log;
use potside::day::Day;
use potside::desk::code::Code;
use potside::desk::hazard::{Ingredient, mix, read_lines, statements};
use potside::desk::read_percent;
use potside::quantity::{
    Currency, Density, DensityUnit, Exact, Length as Span, LengthUnit, Locale, Mass, MassUnit, Quantity,
    Share, ShareUnit, Temperature, TemperatureUnit, Voice, Volume, VolumeUnit, read, read_any, read_count,
    read_density, read_number, show_exact,
};
use potside::shelf::is_batch_number;
use potside::stores::Measure;
use potside::wire::{self, Wire};

/// What is read is written and read the same again.
pub(crate) fn again<T: Wire + PartialEq>(text: &str) -> Said {
    match wire::read::<T>(text) {
        Ok(value) if wire::read::<T>(&wire::write(&value)).as_ref() != Ok(&value) => {
            Err(format!("not the same again: {text:.300}"))
        }
        _ => Ok(()),
    }
}

pub(crate) fn sheet(text: &str, locale: Locale) -> Said {
    let (substances, errors) = read_lines(text, locale);
    errors.iter().try_for_each(sentence)?;
    let fragrance = Ingredient {
        name: "Fragrance".into(),
        percent: Exact::whole(8),
        sheet: Some(substances),
        harmless: false,
    };
    let _ = statements(&mix(&[fragrance], true), true);
    Ok(())
}

pub(crate) fn log(text: &str, voice: Voice) -> Said {
    read_log(text, voice).map_or_else(|why| sentence(&why), |_| Ok(()))
}

pub(crate) fn field<Q: Quantity>(text: &str, unit: Q::Unit, locale: Locale) -> Said {
    match read::<Q>(text, unit, locale) {
        Ok(amount) if read::<Q>(&show_exact(amount, locale), unit, locale) != Ok(amount) => {
            Err(format!("not the same again: {text:?}"))
        }
        Ok(_) => Ok(()),
        Err(why) => sentence(&why),
    }
}

/// What may be typed into any field at all.
pub(crate) fn typed(text: &str, voice: Voice) -> Said {
    let locale = voice.locale;
    field::<Mass>(text, MassUnit::Ounce, locale)?;
    field::<Volume>(text, VolumeUnit::Litre, locale)?;
    field::<Span>(text, LengthUnit::Inch, locale)?;
    field::<Temperature>(text, voice.temperature, locale)?;
    field::<Share>(text, ShareUnit::Percent, locale)?;
    field::<Density>(text, DensityUnit::GramPerMillilitre, locale)?;
    field::<Temperature>(text, TemperatureUnit::Celsius, locale)?;
    let errors = [
        read_any(text, locale).err(),
        read_count(text, locale).err(),
        read_density(text, locale).err(),
        read_number(text, locale).err(),
        Currency::default().read(text, locale).err(),
        Currency { symbol: "kr.".into(), digits: 3 }.read(text, locale).err(),
    ];
    errors.iter().flatten().try_for_each(sentence)?;
    read_percent(text, voice).err().iter().try_for_each(sentence)?;
    for measure in [Measure::Grams, Measure::Pieces] {
        measure.read(text, voice).err().iter().try_for_each(sentence)?;
    }
    match Day::read(text) {
        Some(day) if Day::read(&day.to_string()) != Some(day) => {
            return Err(format!("another day: {text:?}"));
        }
        _ => {}
    }
    let _ = (is_batch_number(text), Code::of(text).is_some(), WickSeries::read_sizes(text).len());
    Ok(())
}
