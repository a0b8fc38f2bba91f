//! Amounts on the screen: the unit the person likes first, the other beside it.

use crate::dom::*;
use crate::formula::TemperatureRange;
use crate::quantity::{Mass, Temperature, show_both};
use crate::rooms::workshop::Workshop;

/// A mass, large number and unit, with the other unit small beside it. `division` is that of the scale it is read on.
pub fn mass(value: Mass, division: Option<Mass>) -> View {
    let shop = Workshop::here();
    let (first, other) = show_both(value, shop.mass_unit(), division, shop.locale());
    el("span")
        .class("amount")
        .child(el("span").class("figure").child(first.number))
        .child(el("span").class("unit").child(first.unit))
        .child(el("span").class("other").child(other.to_string()))
        .view()
}

/// A temperature in the person's unit: "188 °F".
pub fn temperature(value: Temperature) -> String {
    let shop = Workshop::here();
    shop.voice().amount(value, shop.temperature_unit())
}

/// "175 to 180 °F".
pub fn temperature_range(range: &TemperatureRange) -> String {
    let (low, high) = (temperature(range.low.value), temperature(range.high.value));
    if low == high { high } else { format!("{} to {high}", low.split(' ').next().unwrap_or_default()) }
}
