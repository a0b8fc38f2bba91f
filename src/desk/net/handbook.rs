//! Would a batch pass in the United States? NIST Handbook 133.

use super::test::{Found, Test, average_said, beyond, found, of, verdict};
use crate::quantity::{Exact, Mass, Voice, Why};

/// Grams up to (not including) which a maximum allowable variation holds, and it in tenths of a gram; below 36 g it is
/// 10 % (NIST Handbook 133, Table 2-5). The handbook's own example, 113 g, was compared (2.2.1, 2026 edition), and what
/// packers publish for 3 oz and 8 oz; the other rows are from memory. Each is its row in pounds, cut to the digits here.
const MAV: [(i128, i128); 29] = [
    (54, 36),
    (81, 54),
    (117, 72),
    (154, 90),
    (208, 108),
    (263, 127),
    (317, 145),
    (381, 163),
    (426, 181),
    (489, 199),
    (571, 217),
    (635, 235),
    (698, 254),
    (771, 272),
    (852, 290),
    (970, 317),
    (1120, 353),
    (1250, 390),
    (1450, 426),
    (1760, 498),
    (2130, 544),
    (2630, 635),
    (3080, 680),
    (3580, 771),
    (4260, 861),
    (5300, 997),
    (6480, 1130),
    (8020, 1270),
    (10_520, 1400),
];

/// How short one package may be in the United States; none above the table.
pub fn us_mav(declared: Mass) -> Option<Mass> {
    let grams = declared.in_base();
    if grams < Exact::whole(36) {
        return Some(declared.times(Exact::ratio(1, 10)));
    }
    let row = MAV.iter().find(|(below, _)| grams < Exact::whole(*below));
    row.map(|(_, tenths)| Mass::base(Exact::ratio(*tenths, 10)))
}

/// What the sample's standard deviation is multiplied by, in thousandths, by its size (Handbook 133, 2.3.7.2, 2026
/// edition). It is Student's t at 97.5 % over the root of the size; that Table 2-1 has it so is from memory.
const FACTORS: [(usize, i128); 13] = [
    (2, 8984),
    (3, 2484),
    (4, 1591),
    (5, 1241),
    (6, 1050),
    (7, 925),
    (8, 836),
    (9, 769),
    (10, 715),
    (11, 672),
    (12, 635),
    (24, 422),
    (48, 291),
];

/// The batch as a lot of so many packages under Handbook 133: the average, less what chance allows a sample of 2 to 12,
/// 24 or 48, and no package short by more than is allowed. None of no package.
///
/// Where every package was weighed the average is known, and nothing is allowed for chance. The handbook's table has a
/// factor for lots of 2 to 11 as well, of which an inspector takes all (from memory): a packer who knows that the batch is
/// short on average declares less.
pub fn us_test(fills: &[Mass], declared: Mass, lot: usize, voice: Voice) -> Option<Test> {
    let Found { mean, spread } = found(fills)?;
    let short = declared.in_base() - mean;
    let is_sample = fills.len() < lot;
    let factor = FACTORS.iter().find(|(n, _)| is_sample && *n == fills.len());
    let chance = factor.map(|found| Exact::ratio(found.1, 1000)).zip(spread);
    let limit = chance.map_or(Exact::ZERO, |(factor, spread)| factor * spread);
    let mut average = average_said(short, voice);
    if chance.is_some() && short > Exact::ZERO {
        let than = if short > limit { ", more than the " } else { ", no more than the " };
        let allowed = [than, &voice.mass(Mass::base(limit)), " that chance allows a sample"];
        average.push_str(&allowed.concat());
    }
    let mut rules = vec![(Some(short <= limit), average)];
    match us_mav(declared) {
        Some(mav) => {
            let count = beyond(fills, declared, mav);
            let said = ["short by more than ", &voice.mass(mav), ": ", &of(count, fills)].concat();
            rules.push((Some(count == 0), said));
        }
        None => rules.push((
            None,
            "the table of allowed shortages here ends at 10.52 kg (23.2 lb): look yours up in Handbook 133, Table 2-5"
                .to_owned(),
        )),
    }
    let (passes, result) = verdict(&rules);
    let relation = match (chance, is_sample) {
        (Some(_), _) => "declared − average ≤ factor × standard deviation",
        (None, true) => "average ≥ declared: there is no factor for a sample of this size",
        (None, false) => "average ≥ declared: all were weighed, so nothing is allowed for chance",
    };
    let mut why = Why::new("The batch under NIST Handbook 133", relation, result)
        .with("declared", voice.mass(declared))
        .with("average", voice.mass(Mass::base(mean)));
    if let Some((factor, spread)) = chance {
        why = why
            .with("standard deviation", voice.mass(Mass::base(spread)))
            .with("factor", voice.number(factor))
            .with("allowed for chance", voice.mass(Mass::base(limit)));
    }
    why = why.from(
        "NIST Handbook 133 (2026), section 2.3, 26 November 2026; Tables 2-1 and 2-5 mostly from memory",
    );
    Some(Test { passes, rules, why })
}
