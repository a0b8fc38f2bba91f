//! The hazards of a candle, from the safety data sheets of what is in it: Regulation (EC) No 1272/2008 (CLP), Annex I.
//!
//! An aid: local law, the supplier's documents and a qualified person decide.

mod acute;
mod beside;
mod class;
mod detail;
mod dose;
mod identity;
mod label;
mod mix;
mod named;
mod number;
mod piece;
mod read;
mod remark;
mod rule;
mod say;
mod segment;
mod share;
mod spelled;
mod statement;
mod substance;
mod worded;
mod wrong;

pub use acute::Acute;
pub use class::{Class, Signal};
pub use label::{Statements, statements};
pub use mix::{Further, Ingredient, Mixed, Sum, mix};
pub use number::{cas_check, ec_check};
pub use read::{LineError, read_lines};
pub use remark::remarks;
pub use say::{Finding, findings, further};
pub use share::{Drop, drops};
pub use substance::Substance;
pub use wrong::Wrong;

use crate::wire::wire_struct;

/// The rule behind every result here, and when its text was read; `rule.rs` says which limits are by others' transcriptions.
pub const SOURCE: &str = "Regulation (EC) No 1272/2008, Annex I, text of 1 September 2025, compared on 26 November 2026; \
    those for skin and eyes with the same tables in 29 CFR 1910.1200, Appendix A";

/// What the supplier's safety data sheet says of one ingredient, as it was typed.
#[derive(Clone, PartialEq, Debug)]
pub struct SafetySheet {
    /// The ingredient, as formulas call it.
    pub ingredient: String,
    /// Section 3, one substance a line; see [`read_lines`].
    pub lines: String,
    /// The date or version of the sheet, as the supplier writes it.
    pub dated: String,
}

wire_struct!(SafetySheet { ingredient, lines, dated [default] });

impl SafetySheet {
    /// What is reckoned with: a line that cannot be read is a substance of which nothing is known, so that no result is told
    /// as if it were not there. Only what another version of the app has kept can have one.
    pub fn substances(&self) -> Vec<Substance> {
        let (mut found, errors) = self.read();
        found.extend(errors.iter().map(|error| {
            let name = ["line ", &error.line.to_string(), " of the sheet of ", &self.ingredient].concat();
            Substance { name, unknown: true, ..Substance::default() }
        }));
        found
    }

    /// Its lines, read; the point is the decimal sign, and a comma where it cannot be anything else.
    pub fn read(&self) -> (Vec<Substance>, Vec<LineError>) {
        read_lines(&self.lines, crate::quantity::Locale::Point)
    }
}
