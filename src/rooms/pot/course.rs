//! How a pour went, for its record: when each step was done and how hot it was, the vessels, the thermometer.

use crate::dom::*;
use crate::keep;
use crate::pot::{Record, RecordReading, RecordStep, RecordVessel, StepKey};
use crate::quantity::Mass;
use crate::rooms::parts::mass;
use crate::rooms::workshop::Workshop;

pub(super) fn steps(shop: Workshop, steps: &[RecordStep]) -> View {
    let voice = shop.voice();
    // Vessels have a list of their own.
    let steps = steps.iter().filter(|s| !matches!(s.key, StepKey::Fill { .. }));
    let row = |step: &RecordStep| {
        let temperature = step.temperature.map(|t| voice.amount(t, voice.temperature));
        let wanted = step.wanted.as_ref().map(|w| format!(" (wanted {w})"));
        el("li")
            .child(el("span").class("time").child(keep::time(step.at)))
            .child(el("span").class("title").child(step.title.clone()))
            .child(el("span").class("detail").child(temperature).child(wanted))
            .child(step.missed.clone().map(|missed| el("p").class("note").child(missed)))
    };
    el("ol").class("list times").child(steps.map(row).views()).view()
}

pub(super) fn vessels(shop: Workshop, record: &Record, fill: Mass) -> View {
    let vessels = &record.vessels;
    let voice = shop.voice();
    let weighed: Vec<&RecordVessel> = vessels.iter().filter(|v| v.known).collect();
    if vessels.is_empty() && record.empty.is_empty() {
        return ().view();
    }
    let each = if vessels.is_empty() {
        el("p").child("None was filled.").view()
    } else if weighed.is_empty() {
        el("p").child(format!("{} filled with {} each, as planned.", vessels.len(), voice.both(fill))).view()
    } else {
        let row = |v: &&RecordVessel| {
            let place = place(v.pour, v.vessel);
            el("li")
                .child(el("span").class("title").child(place))
                .child(el("span").class("detail").child(mass(v.mass, None)))
        };
        group![
            el("ol").class("list times").child(weighed.iter().map(row).views()),
            (weighed.len() < vessels.len()).then(|| {
                el("p")
                    .class("muted")
                    .child(format!("The others were filled with {} as planned.", voice.both(fill)))
            })
        ]
    };
    let left: Vec<String> = record.empty.iter().map(|(pour, vessel)| place(*pour, *vessel)).collect();
    let left = (!left.is_empty()).then(|| el("p").child(["Left empty: ", &left.join("; "), "."].concat()));
    group![el("h2").child("Vessels"), each, left]
}

fn place(pour: u32, vessel: u32) -> String {
    if pour > 1 { format!("pour {pour}, vessel {vessel}") } else { format!("vessel {vessel}") }
}

pub(super) fn readings(shop: Workshop, readings: &[RecordReading]) -> View {
    let voice = shop.voice();
    if readings.is_empty() {
        return ().view();
    }
    let one = |reading: &RecordReading| {
        el("li")
            .child(keep::time(reading.at))
            .child(" ")
            .child(el("strong").child(voice.amount(reading.temperature, voice.temperature)))
            .child(reading.pour.map(|pour| format!(", pour {pour}")))
    };
    group![el("h2").child("Thermometer"), el("ol").class("readings").child(readings.iter().map(one).views())]
}
