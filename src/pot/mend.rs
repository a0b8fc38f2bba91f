//! Putting a pot right after too much of one part went in.

use crate::quantity::{Mass, Share, Why};

/// A line of the pot: what was planned and what is in.
#[derive(Clone, PartialEq, Debug)]
pub struct Mended {
    pub name: String,
    pub planned: Mass,
    /// Zero where it is not in yet.
    pub actual: Mass,
    pub division: Mass,
}

/// What results when it is left as it is.
#[derive(Clone, PartialEq, Debug)]
pub struct Kept {
    pub total: Mass,
    /// Of each line once the rest has gone in as planned: share of the whole.
    pub of_whole: Vec<Share>,
}

/// What brings every share back.
#[derive(Clone, PartialEq, Debug)]
pub struct Restored {
    /// To add of each line, never negative: to those in already a top-up, to the others their new amount.
    pub add: Vec<Mass>,
    pub total: Mass,
    /// What the larger total exceeds the pot by; zero where it fits.
    pub over_pot: Mass,
    pub more_vessels: u32,
    pub why: Why,
}

pub fn keep(lines: &[Mended]) -> Kept {
    let _ = lines;
    Kept { total: Mass::ZERO, of_whole: Vec::new() }
}

/// None where nothing is planned.
pub fn restore(lines: &[Mended], fill: Mass, pot: Option<Mass>) -> Option<Restored> {
    let _ = (lines, fill, pot);
    None
}
