//! What a candle is made of: the wax blend, the parts and the basis of each, temperatures; solving for a target.

mod care;
mod caution;
mod check;
mod draft;
mod error;
mod look;
mod reading;
mod say;
mod share;
mod solve;
mod why;

pub use care::{Moment, usual_cautions};
pub use caution::{Caution, Doing};
pub(crate) use check::warnings;
pub use check::{check, order};
pub use draft::{BasisKind, Draft, PartDraft, Place, Problem, RangeDraft, WaxDraft};
pub use error::FormulaError;
pub use look::Looked;
pub use share::{conventions, wax_to_whole, whole_to_wax};
pub(crate) use solve::amounts;
pub use solve::{Makes, PartShare, Recipe, Solved, Unweighed, sample, solve, total_for};

use crate::quantity::{Amount, Mass, Share, Temperature, Volume};
use crate::wire::{wire_enum, wire_struct};

/// A formula as the person writes it. Amounts keep the unit they were typed in.
#[derive(Clone, PartialEq, Debug)]
pub struct Formula {
    pub name: String,
    /// The wax blend; the shares add up to 100 %.
    pub wax: Vec<WaxShare>,
    /// Parts in the order they go in.
    pub parts: Vec<Part>,
    /// The batch the spoon, drop and weight amounts were written for. None where no part needs it.
    pub usual: Option<UsualBatch>,
    pub melt_to: Amount<Temperature>,
    pub pour: PourRanges,
    /// Vessels this formula is poured into, each with its own wick.
    pub vessels: Vec<VesselWick>,
    pub cure_days: u32,
    pub note: String,
}

wire_struct!(Formula {
    name, wax, parts, usual, melt_to, pour, vessels [default], cure_days [default], note [default],
});

impl Formula {
    /// The names of the waxes and the weighed parts.
    pub fn ingredients(&self) -> Vec<&String> {
        let mut names: Vec<&String> = self.wax.iter().map(|wax| &wax.name).collect();
        for part in &self.parts {
            if !part.is_counted() {
                names.push(&part.name);
            }
        }
        names
    }
}

/// One wax of the blend.
#[derive(Clone, PartialEq, Debug)]
pub struct WaxShare {
    pub name: String,
    pub share: Amount<Share>,
    /// The supplier's flash point, where known.
    pub flash: Option<Amount<Temperature>>,
}

wire_struct!(WaxShare { name, share, flash });

/// `vessels` vessels of `fill` each.
#[derive(Clone, PartialEq, Debug)]
pub struct UsualBatch {
    pub vessels: u32,
    pub fill: Amount<Mass>,
}

wire_struct!(UsualBatch { vessels, fill });

#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum PartKind {
    Fragrance,
    Dye,
    Additive,
    Other,
}

wire_enum!(PartKind { Fragrance, Dye, Additive, Other });

/// Something that goes into the wax.
#[derive(Clone, PartialEq, Debug)]
pub struct Part {
    pub name: String,
    pub kind: PartKind,
    pub basis: Basis,
    /// The temperature range to add it in.
    pub add: TemperatureRange,
    pub stir_minutes: u32,
    pub note: String,
    /// The supplier's highest load, as a share of the wax, where known.
    pub highest: Option<Amount<Share>>,
    /// The supplier's flash point, where known.
    pub flash: Option<Amount<Temperature>>,
}

wire_struct!(Part { name, kind, basis, add, stir_minutes [default], note [default], highest, flash });

impl Part {
    /// True for pieces: they go into the vessels, not into the pot.
    pub fn is_counted(&self) -> bool {
        matches!(self.basis, Basis::PerVessel(_))
    }
}

/// What an amount is measured against.
#[derive(Clone, PartialEq, Debug)]
pub enum Basis {
    /// % of the wax.
    OfWax(Amount<Share>),
    /// % of the whole.
    OfWhole(Amount<Share>),
    /// So much per so much wax: g per kg, oz per lb.
    PerWax { amount: Amount<Mass>, wax: Amount<Mass> },
    /// A weight for the usual batch.
    Weight(Amount<Mass>),
    /// A level spoon measure for the usual batch; its mass through the bulk density found by weighing spoons.
    Spoon(Amount<Volume>),
    /// Drops for the usual batch; their mass through the drop mass found by weighing drops.
    Drops(u32),
    /// Pieces in each vessel (a wick, a sticker); not part of what is poured.
    PerVessel(u32),
}

wire_enum!(Basis {
    OfWax(it),
    OfWhole(it),
    PerWax { amount, wax },
    Weight(it),
    Spoon(it),
    Drops(it),
    PerVessel(it),
});

/// From `low` to `high`, both in the unit typed.
#[derive(Clone, PartialEq, Debug)]
pub struct TemperatureRange {
    pub low: Amount<Temperature>,
    pub high: Amount<Temperature>,
}

wire_struct!(TemperatureRange { low, high });

impl TemperatureRange {
    pub fn holds(&self, t: Temperature) -> bool {
        self.low.value <= t && t <= self.high.value
    }
}

/// The pour range for vessels warmed beforehand, and for vessels at room temperature.
#[derive(Clone, PartialEq, Debug)]
pub struct PourRanges {
    pub warmed: TemperatureRange,
    pub unwarmed: TemperatureRange,
}

wire_struct!(PourRanges { warmed, unwarmed });

/// A vessel this formula is poured into and the wick that suits the pair.
#[derive(Clone, PartialEq, Debug)]
pub struct VesselWick {
    pub vessel: crate::book::Id,
    pub wick: String,
}

wire_struct!(VesselWick { vessel, wick });
