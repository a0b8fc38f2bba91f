//! The usual cautions of the work, each at the step where it can hurt.

use super::PartKind;

/// A step of the work.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Moment {
    Melting,
    Adding(PartKind),
    Pouring,
    /// Poured and recorded; before it is sold.
    Finishing,
}

const HOT: &str = "Hot wax burns. Cover your arms and feet, and keep the pot where it cannot tip.";
const STAY: &str = "Never leave a melter alone, not even for a minute.";
const THERMOMETER: &str = "Keep a thermometer in the wax at all times.";
const NO_WATER: &str = "Never put water on burning wax: turn the heat off and cover it with a lid.";
const FLASH: &str = "Know the flash point of what goes in and keep the pot below it.";
const GLOVES: &str = "Gloves on and air moving: fragrance oils hurt skin, eyes and lungs.";
const SHEET: &str = "Read the supplier's safety data sheet before the first use.";
const BURN_TEST: &str =
    "Burn-test every combination of wax, fragrance, dye, wick and vessel before it is sold.";

/// The sentences that stand at a step, whatever the formula.
pub fn usual_cautions(moment: Moment) -> &'static [&'static str] {
    match moment {
        Moment::Melting => &[HOT, STAY, THERMOMETER, NO_WATER],
        Moment::Adding(PartKind::Fragrance) => &[FLASH, GLOVES, SHEET],
        Moment::Adding(PartKind::Dye | PartKind::Additive | PartKind::Other) => &[SHEET],
        Moment::Pouring => &[HOT],
        Moment::Finishing => &[BURN_TEST],
    }
}
