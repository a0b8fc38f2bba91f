//! What this device prefers: units, decimal sign, light or dark, hand, sound.

use crate::dom::*;
use crate::keep::{Hand, Prefs, Theme};
use crate::quantity::{Locale, MassUnit, TemperatureUnit};
use crate::rooms::parts::{Choice, choice};
use crate::rooms::workshop::Workshop;

pub(super) fn body(shop: Workshop) -> View {
    group![
        el("p").class("lead").child("These hold on this device only; the other unit always stands beside."),
        el("div")
            .class("fields")
            .child(one(
                shop,
                "Weights in",
                &[(0, "Grams"), (1, "Ounces")],
                |p| usize::from(p.mass == MassUnit::Ounce),
                |p, n| {
                    p.mass = if n == 1 { MassUnit::Ounce } else { MassUnit::Gram };
                },
            ))
            .child(one(
                shop,
                "Temperatures in",
                &[(0, "°C"), (1, "°F")],
                |p| usize::from(p.temperature == TemperatureUnit::Fahrenheit),
                |p, n| {
                    p.temperature =
                        if n == 1 { TemperatureUnit::Fahrenheit } else { TemperatureUnit::Celsius }
                },
            ))
            .child(one(
                shop,
                "Decimal sign",
                &[(0, "Point: 61.5"), (1, "Comma: 61,5")],
                |p| usize::from(p.locale() == Locale::Comma),
                |p, n| p.set_locale(if n == 1 { Locale::Comma } else { Locale::Point }),
            ))
            .child(one(
                shop,
                "Light or dark",
                &[(0, "As the device"), (1, "Light"), (2, "Dark")],
                |p| match p.theme {
                    Theme::Device => 0,
                    Theme::Light => 1,
                    Theme::Dark => 2,
                },
                |p, n| {
                    p.theme = match n {
                        1 => Theme::Light,
                        2 => Theme::Dark,
                        _ => Theme::Device,
                    };
                },
            ))
            .child(one(
                shop,
                "Rooms at the edge of your",
                &[(0, "Right hand"), (1, "Left hand")],
                |p| usize::from(p.hand == Hand::Left),
                |p, n| p.hand = if n == 1 { Hand::Left } else { Hand::Right },
            ))
            .child(one(
                shop,
                "Sound and vibration at the pot",
                &[(0, "Off"), (1, "On")],
                |p| usize::from(p.sound),
                |p, n| p.sound = n == 1,
            ))
    ]
}

/// One preference, kept as soon as it is chosen. Choices go by number, so that the page carries one kind of them.
fn one(
    shop: Workshop,
    label: &'static str,
    options: &[Choice<usize>],
    get: fn(&Prefs) -> usize,
    set: fn(&mut Prefs, usize),
) -> View {
    let value = Value::new(shop.prefs().with_untracked(get));
    watch(move || {
        let chosen = value.get();
        if shop.prefs().with_untracked(get) != chosen {
            shop.change_prefs(|p| set(p, chosen));
        }
    });
    choice(label, value, options)
}
