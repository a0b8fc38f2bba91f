//! Whole drops that keep a shade.

use crate::quantity::{Exact, Why};

/// What is wanted of one colour: drops of the usual batch, scaled, usually not whole.
#[derive(Clone, PartialEq, Debug)]
pub struct Wanted {
    pub name: String,
    pub drops: Exact,
    /// Drops in the usual batch, for the batch sizes that keep the shade exactly.
    pub usual: u32,
}

/// Whole drops for each colour and what they do to the shade.
#[derive(Clone, PartialEq, Debug)]
pub struct DropChoice {
    pub drops: Vec<u32>,
    /// All colours together against what is wanted: 0.05 is 5 % too strong.
    pub strength_off: Exact,
    /// The colour whose share of all drops is furthest off, and by how much of its wanted share.
    pub ratio_off: Exact,
}

#[derive(Clone, PartialEq, Debug)]
pub struct Shade {
    /// Nearest first; at most three.
    pub choices: Vec<DropChoice>,
    /// Smallest number of vessels, every multiple of which keeps the shade exactly.
    pub exact_every: u32,
    /// One part of dye in this many parts of dilution makes every colour whole; none where not diluting is exact or
    /// no dilution up to twentyfold does.
    pub dilute: Option<u32>,
    pub why: Why,
}

/// `usual_vessels` is the batch the drops were written for. None where nothing is wanted.
pub fn choose_drops(wanted: &[Wanted], usual_vessels: u32) -> Option<Shade> {
    let _ = (wanted, usual_vessels);
    None
}
