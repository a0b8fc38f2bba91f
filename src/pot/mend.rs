//! Putting a pot right after too much of one part went in.

use super::apportion;
use crate::quantity::{Exact, Mass, Share, Voice, Why};

/// A line of the pot: what was planned and what is in.
#[derive(Clone, PartialEq, Debug)]
pub struct Mended {
    pub name: String,
    pub wax: bool,
    pub planned: Mass,
    /// Zero where it is not in yet.
    pub actual: Mass,
    pub division: Mass,
}

/// What results when it is left as it is, once the rest has gone in as planned.
#[derive(Clone, PartialEq, Debug)]
pub struct Kept {
    pub total: Mass,
    /// Of each line.
    pub of_wax: Vec<Share>,
    pub of_whole: Vec<Share>,
}

/// What brings every share back.
#[derive(Clone, PartialEq, Debug)]
pub struct Restored {
    /// The batch as made now against the one planned: 1.05 is 5 % more of everything.
    pub factor: Exact,
    /// To add of each line, never negative: to those in already a top-up, to the others their new amount.
    pub add: Vec<Mass>,
    pub total: Mass,
    /// What the larger total exceeds the pot by; zero where it fits.
    pub over_pot: Mass,
    pub more_vessels: u32,
    pub why: Why,
}

impl Mended {
    /// What is in, or is still to go in as planned.
    pub(super) fn mass(&self) -> Mass {
        if self.actual.is_zero() { self.planned } else { self.actual }
    }
}

pub fn keep(lines: &[Mended]) -> Kept {
    let (wax, total) = sums(lines);
    let of = |whole: Mass| {
        let share = |line: &Mended| Share::base(line.mass().over(whole).unwrap_or(Exact::ZERO));
        lines.iter().map(share).collect()
    };
    Kept { total, of_wax: of(wax), of_whole: of(total) }
}

/// Of all wax, and of everything.
fn sums(lines: &[Mended]) -> (Mass, Mass) {
    let wax = lines.iter().filter(|l| l.wax).map(Mended::mass).sum();
    (wax, lines.iter().map(Mended::mass).sum())
}

/// How the shares of what is kept came about.
pub(super) fn kept_why(lines: &[Mended], voice: Voice) -> Why {
    let (wax, total) = sums(lines);
    let why = Why::new(
        "What the pot then holds",
        "of wax: weight ÷ all wax; of whole: weight ÷ everything",
        voice.mass(total),
    );
    let why = lines.iter().fold(why, |why, line| {
        let still = if line.actual.is_zero() { ", as planned" } else { "" };
        why.with(&line.name, [&voice.mass(line.mass()), still].concat())
    });
    why.with("all wax", voice.mass(wax)).with("everything", voice.mass(total))
}

/// So much may be missing in the last vessel that a restored pot fills: the usual tolerance.
const SHORT: Exact = Exact::ratio(1, 50);

/// What to add so that every share is as planned again: the line that is most over sets the new batch, f = the
/// largest of actual ÷ planned and never below 1, and each line is brought to f × planned. What is added is rounded
/// together to the divisions, so no line is off by one and nothing is ever to be taken out.
///
/// `fill` is that of one vessel, `pot` what the pot holds. None where nothing is planned.
pub fn restore(lines: &[Mended], fill: Mass, pot: Option<Mass>, voice: Voice) -> Option<Restored> {
    let planned: Mass = lines.iter().map(|l| l.planned).sum();
    if planned <= Mass::ZERO {
        return None;
    }
    let ratios = lines.iter().filter_map(|l| Some((l, l.actual.over(l.planned)?)));
    let most = ratios.reduce(|a, b| if b.1 > a.1 { b } else { a });
    let factor = most.map_or(Exact::ONE, |(_, ratio)| ratio).max(Exact::ONE);
    let parts: Vec<(Mass, Mass)> =
        lines.iter().map(|l| (l.planned.times(factor).less(l.actual), l.division)).collect();
    let add = apportion(&parts, parts.iter().map(|p| p.0).sum()).parts;
    let total = lines.iter().map(|l| l.actual).sum::<Mass>() + add.iter().copied().sum();
    // Rounding alone costs no vessel.
    let more = planned.times(factor - Exact::ONE) + fill.times(SHORT);
    let more = more.over(fill).map_or(0, Exact::floor);
    let why = Why::new(
        "The batch as made now against the one planned",
        "the largest of what is in ÷ what was planned",
        voice.number(factor),
    );
    let why = match most {
        Some((line, _)) => why
            .with(format!("{} in", line.name), voice.mass(line.actual))
            .with(format!("{} planned", line.name), voice.mass(line.planned)),
        None => why,
    };
    Some(Restored {
        factor,
        add,
        total,
        over_pot: pot.map_or(Mass::ZERO, |pot| total.less(pot)),
        more_vessels: u32::try_from(more).unwrap_or(0),
        why: why.rounded("what is added, to the division of each scale; nothing is taken out"),
    })
}
