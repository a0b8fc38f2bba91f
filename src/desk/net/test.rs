//! Would a batch pass? NIST Handbook 133 for the United States, Directive 76/211/EEC for the European Union.

use crate::quantity::{Exact, Mass, Voice, Why};

/// A batch against its declaration.
#[derive(Clone, PartialEq, Debug)]
pub struct Test {
    /// None where one of its rules cannot be told.
    pub passes: Option<bool>,
    /// Each rule with what was found, and whether it holds.
    pub rules: Vec<(Option<bool>, String)>,
    pub why: Why,
}

impl Test {
    /// The same of a batch of which only some packages were weighed: it says so, and one of several, which tells nothing of
    /// how they spread, is not enough to pass.
    pub fn of_weighed(mut self, weighed: usize, filled: usize) -> Self {
        if weighed >= filled {
            return self;
        }
        let share = [&weighed.to_string(), " of ", &filled.to_string()].concat();
        if weighed < 2 {
            self.rules.push((None, [&share, " weighed: one tells nothing of the others"].concat()));
        }
        let (passes, result) = verdict(&self.rules);
        self.passes = passes;
        self.why.result = [result, ", by the ", &share, " weighed"].concat();
        self.why = self.why.with("weighed", share);
        self
    }
}

/// Grams up to (not including) which a maximum allowable variation holds, and it in tenths of a gram; below 36 g it is
/// 10 % (NIST Handbook 133, Table 2-5). The handbook's own example, 113 g, was compared (2.2.1, 2026 edition), and what
/// packers publish for 3 oz and 8 oz; the other rows are from memory.
const MAV: [(i128, i128); 11] = [
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

struct Found {
    mean: Exact,
    /// The sample's standard deviation; none of one package.
    spread: Option<Exact>,
}

fn found(fills: &[Mass]) -> Option<Found> {
    let grams = || fills.iter().map(|m| m.in_base());
    let n = Exact::whole(fills.len() as i128);
    let mean = grams().sum::<Exact>().checked_div(n)?;
    let squares: f64 = grams().map(|g| (g - mean).to_f64().powi(2)).sum();
    let spread = (fills.len() > 1).then(|| (squares / (fills.len() - 1) as f64).sqrt()).and_then(Exact::near);
    Some(Found { mean, spread })
}

/// The batch as a lot under Handbook 133: the average, less what chance allows a sample of 2 to 12, 24 or 48, and no
/// package short by more than is allowed. None of no package.
pub fn us_test(fills: &[Mass], declared: Mass, voice: Voice) -> Option<Test> {
    let Found { mean, spread } = found(fills)?;
    let short = declared.in_base() - mean;
    let factor = FACTORS.iter().find(|(n, _)| *n == fills.len()).map(|found| Exact::ratio(found.1, 1000));
    let allowed = factor.zip(spread).map_or(Exact::ZERO, |(factor, spread)| factor * spread);
    let average = short <= allowed;
    let mut rules = vec![(Some(average), average_said(short, voice))];
    let mav = us_mav(declared);
    let unreasonable = mav.map(|mav| beyond(fills, declared, mav));
    match (mav, unreasonable) {
        (Some(mav), Some(count)) => {
            let said = ["short by more than ", &voice.mass(mav), ": ", &of(count, fills)].concat();
            rules.push((Some(count == 0), said));
        }
        _ => rules.push((
            None,
            "the table of allowed shortages here ends at 571 g (1.26 lb): look yours up in Handbook 133, Table 2-5"
                .to_owned(),
        )),
    }
    let (passes, result) = verdict(&rules);
    let mut why = Why::new(
        "The batch under NIST Handbook 133",
        "declared − average ≤ factor × standard deviation",
        result,
    )
    .with("declared", voice.mass(declared))
    .with("average", voice.mass(Mass::base(mean)));
    if let (Some(spread), Some(factor)) = (spread, factor) {
        why = why
            .with("standard deviation", voice.mass(Mass::base(spread)))
            .with("factor", voice.number(factor));
    }
    why = why.from(
        "NIST Handbook 133 (2026), section 2.3, 26 November 2026; Tables 2-1 and 2-5 mostly from memory",
    );
    Some(Test { passes, rules, why })
}

/// The tolerable negative error: grams up to which it is so many tenths of a percent, or of a gram.
const TNE: [(i128, bool, i128); 7] = [
    (50, true, 90),
    (100, false, 45),
    (200, true, 45),
    (300, false, 90),
    (500, true, 30),
    (1000, false, 150),
    (10_000, true, 15),
];

/// The tolerable negative error of a nominal quantity (Directive 76/211/EEC, Annex I, 2.4); percentages are rounded up to
/// 0.1 g. None outside 5 g to 10 kg.
pub fn eu_tne(nominal: Mass) -> Option<Mass> {
    let grams = nominal.in_base();
    if grams < Exact::whole(5) {
        return None;
    }
    let (_, share, tenths) = TNE.iter().find(|(most, ..)| grams <= Exact::whole(*most))?;
    let tenths = if *share { (grams * Exact::ratio(*tenths, 100)).ceil() } else { *tenths };
    Some(Mass::base(Exact::ratio(tenths, 10)))
}

/// The batch under the three packers' rules: the average, at most one in forty short by more than the tolerable negative
/// error, none by more than twice that. None of no package, and where there is no such error.
pub fn eu_test(fills: &[Mass], nominal: Mass, voice: Voice) -> Option<Test> {
    let Found { mean, .. } = found(fills)?;
    let tne = eu_tne(nominal)?;
    let short = nominal.in_base() - mean;
    let (once, twice) = (beyond(fills, nominal, tne), beyond(fills, nominal, tne + tne));
    let double = voice.mass(tne + tne);
    let rules = vec![
        (Some(short <= Exact::ZERO), average_said(short, voice)),
        (
            Some(once * 40 <= fills.len()),
            ["short by more than ", &voice.mass(tne), ": ", &of(once, fills)].concat(),
        ),
        (Some(twice == 0), ["short by more than ", &double, ": ", &of(twice, fills)].concat()),
    ];
    let (passes, result) = verdict(&rules);
    let relation = "average ≥ nominal; at most 1 in 40 below nominal − error; none below nominal − 2 × error";
    let why = Why::new("The batch under the average system", relation, result)
        .with("nominal", voice.mass(nominal))
        .with("average", voice.mass(Mass::base(mean)))
        .with("tolerable negative error", voice.mass(tne))
        .from("Directive 76/211/EEC, Annex I, as gathered on 25 November 2026");
    Some(Test { passes, rules, why })
}

/// One rule that does not hold is enough; one that cannot be told leaves it open.
fn verdict(rules: &[(Option<bool>, String)]) -> (Option<bool>, &'static str) {
    let all = |is: Option<bool>| rules.iter().all(|rule| rule.0 != is);
    match (all(Some(false)), all(None)) {
        (false, _) => (Some(false), "would not pass"),
        (true, false) => (None, "cannot be told here"),
        (true, true) => (Some(true), "would pass"),
    }
}

fn average_said(short: Exact, voice: Voice) -> String {
    if short > Exact::ZERO {
        ["the average is ", &voice.mass(Mass::base(short)), " short"].concat()
    } else {
        ["the average is over by ", &voice.mass(Mass::base(-short))].concat()
    }
}

fn of(count: usize, fills: &[Mass]) -> String {
    [&count.to_string(), " of ", &fills.len().to_string()].concat()
}

/// How many are short by more than this.
fn beyond(fills: &[Mass], declared: Mass, by: Mass) -> usize {
    fills.iter().filter(|fill| **fill + by < declared).count()
}
