//! Parts that every room uses: fields, choices, sheets, the why, notes.

mod choice;
mod field;
mod notes;
mod number;
mod sheet;
mod why;

pub use choice::{Choice, choice};
pub use field::{Field, Typed, field};
pub use notes::{caution, notes, sentence};
pub use number::{mass, temperature, temperature_range};
pub use sheet::{confirm_sheet, sheet};
pub use why::{WhySheet, why_button};
