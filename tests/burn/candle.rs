//! A candle on trial, and doing things with it.

use potside::bench::burn::{BurnEvent, Course, Grade, Heavy, Look, Trial, course};
use potside::quantity::{Amount, Quantity, Unit};

pub const MINUTE: u64 = 60_000;
/// A morning of 2025.
pub const MORNING: u64 = 1_764_748_800_000;

pub fn read<Q: Quantity>(text: &str) -> Amount<Q> {
    potside::quantity::read(text, Q::Unit::all()[0], Default::default()).unwrap()
}

/// Apple in a jar of 70 mm with 180 g in it.
pub fn trial(name: &str, wick: &str) -> Trial {
    Trial {
        name: name.to_owned(),
        fragrance: "Apple".to_owned(),
        load: Some(read("8 %")),
        heavy: Heavy::Middle,
        wax: "Plain wax".to_owned(),
        vessel: "Straight jar".to_owned(),
        diameter: read("70 mm"),
        series: "Cotton".to_owned(),
        wick: wick.to_owned(),
        replicate: 1,
        start: read("400 g"),
        fill: read("180 g"),
    }
}

pub fn lit(at: u64, grams: f64) -> BurnEvent {
    BurnEvent::Lit { at, mass: read(&format!("{grams} g")), trimmed: true, throw: None }
}

pub fn out(at: u64, grams: f64) -> BurnEvent {
    BurnEvent::Out { at, mass: Some(read(&format!("{grams} g"))), itself: false }
}

/// A look at which nothing is wrong, with the pool so many mm across.
pub fn good(at: u64, pool: f64) -> Look {
    Look {
        at,
        pool: Some(read(&format!("{pool} mm"))),
        depth: Some(read("8 mm")),
        flame: Some(read("30 mm")),
        outside: Some(read("48 °C")),
        soot: Some(Grade::None),
        mushroom: Some(Grade::Little),
        hang_up: Some(Grade::None),
        ..Look::default()
    }
}

/// Burns of two hours each that lose these grams, a day apart.
pub fn burned(lost: &[f64]) -> Course {
    let mut events = Vec::new();
    let (mut mass, mut at) = (400.0, MORNING);
    for grams in lost {
        events.push(lit(at, mass));
        mass = ((mass - grams) * 1000.0_f64).round() / 1000.0;
        events.push(out(at + 120 * MINUTE, mass));
        at += 1440 * MINUTE;
    }
    course(&events)
}
