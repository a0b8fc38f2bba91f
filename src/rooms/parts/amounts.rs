//! Fields for each kind of amount: each reads in the person's own unit and says back both systems.

use super::field::label_of;
use super::field::{Field, Typed, field};
use crate::dom::*;
use crate::quantity::{
    Length, LengthUnit, Mass, MassUnit, Quantity, Share, ShareUnit, Temperature, TemperatureUnit,
};
use crate::rooms::workshop::Workshop;

/// A name or anything else that is only text.
pub fn text_field(label: impl Into<String>, typed: Typed, offers: Vec<String>) -> View {
    field(Field::text(label).offers(offers), typed, || Ok(String::new()))
}

/// Text of several lines.
pub fn area(label: &'static str, typed: Typed) -> View {
    let id = Workshop::here().fresh_dom_id();
    el("div")
        .class("field")
        .child(label_of(&id, label.to_owned(), true))
        .child(
            el("textarea")
                .attr("id", id)
                .prop("value", typed.text)
                .on("input", move |e| typed.text.set(text_of(&e))),
        )
        .view()
}

pub fn mass_field(of: Field, typed: Typed) -> View {
    let shop = Workshop::here();
    mass_field_in(of, typed, move || shop.mass_unit())
}

/// A weight that is in this unit where none is typed.
pub fn mass_field_in(of: Field, typed: Typed, unit: impl Fn() -> MassUnit + 'static) -> View {
    let shop = Workshop::here();
    field(filled(of, Mass::EXAMPLE), typed, move || {
        let read = typed.read::<Mass>(unit()).map_err(|e| e.to_string())?;
        Ok(shop.voice().both(read.value))
    })
}

pub fn share_field(of: Field, typed: Typed) -> View {
    let shop = Workshop::here();
    field(filled(of, Share::EXAMPLE), typed, move || {
        let read = typed.read::<Share>(ShareUnit::Percent).map_err(|e| e.to_string())?;
        Ok(shop.voice().typed(read))
    })
}

pub fn temperature_field(of: Field, typed: Typed) -> View {
    let shop = Workshop::here();
    field(filled(of, Temperature::EXAMPLE), typed, move || {
        let unit = shop.temperature_unit();
        let value = typed.read::<Temperature>(unit).map_err(|e| e.to_string())?.value;
        let other = match unit {
            TemperatureUnit::Celsius => TemperatureUnit::Fahrenheit,
            TemperatureUnit::Fahrenheit => TemperatureUnit::Celsius,
        };
        let voice = shop.voice();
        Ok([&voice.amount(value, unit), " (", &voice.amount(value, other), ")"].concat())
    })
}

pub fn length_field(of: Field, typed: Typed) -> View {
    let shop = Workshop::here();
    field(filled(of, Length::EXAMPLE), typed, move || {
        let voice = shop.voice();
        let value = typed.read::<Length>(voice.length).map_err(|e| e.to_string())?.value;
        let other = if voice.length == LengthUnit::Inch { LengthUnit::Millimetre } else { LengthUnit::Inch };
        Ok([&voice.amount(value, voice.length), " (", &voice.amount(value, other), ")"].concat())
    })
}

/// With how one may be typed, where nothing better is said.
fn filled(of: Field, example: &'static str) -> Field {
    if of.placeholder.is_empty() { of.placeholder(example) } else { of }
}
