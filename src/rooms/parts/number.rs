//! Amounts on the screen: the unit the person likes first, the other beside it.

use crate::formula::TemperatureRange;
use crate::quantity::{Mass, Temperature, show_both};
use crate::rooms::workshop::Workshop;
use leptos::prelude::*;

/// A mass, large number and unit, with the other unit small beside it. `division` is that of the scale it is read on.
pub fn mass(value: Mass, division: Option<Mass>) -> AnyView {
    let shop = Workshop::here();
    let (first, other) = show_both(value, shop.mass_unit(), division, shop.locale());
    view! {
        <span class="amount">
            <span class="figure">{first.number}</span>
            <span class="unit">{first.unit}</span>
            <span class="other">{other.to_string()}</span>
        </span>
    }
    .into_any()
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
