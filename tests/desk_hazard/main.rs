//! Hazards of a mixture: the limits of Annex I to Regulation (EC) No 1272/2008 one by one, published worked examples,
//! what the label shows, and what must hold whatever the lines.
#![cfg(not(target_arch = "wasm32"))]
// A helper of a test may fail as a test does.
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

mod detail;
mod edges;
mod further;
mod identity;
mod label;
mod laws;
mod limits;
mod merge;
mod odds;
mod published;
mod worked;

use potside::desk::hazard::{Ingredient, Mixed, Substance, mix, read_lines};
use potside::quantity::{Exact, Locale};

#[track_caller]
pub(crate) fn lines(text: &str) -> Vec<Substance> {
    let (substances, errors) = read_lines(text, Locale::Point);
    assert!(errors.is_empty(), "{text:?}: {errors:?}");
    substances
}

pub(crate) fn ingredient(percent: Exact, sheet: Vec<Substance>) -> Ingredient {
    Ingredient { name: "Fragrance".into(), percent, sheet: Some(sheet), harmless: false }
}

#[track_caller]
pub(crate) fn whole(text: &str) -> Mixed {
    mix(&[ingredient(Exact::whole(100), lines(text))], false)
}

pub(crate) fn names(mixed: &Mixed) -> Vec<String> {
    mixed.classes.iter().map(|class| class.say()).collect()
}

/// What the lines, taken as the whole mixture, are classed as: `Skin Irrit. 2 (H315)`, parted by `; `.
#[track_caller]
pub(crate) fn classed(text: &str, classes: &str) {
    assert_eq!(names(&whole(text)).join("; "), classes, "{text}");
}
