//! Would a batch pass? What all tests share, and Directive 76/211/EEC for the European Union.

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

pub(super) struct Found {
    pub(super) mean: Exact,
    /// The sample's standard deviation; none of one package.
    pub(super) spread: Option<Exact>,
}

pub(super) fn found(fills: &[Mass]) -> Option<Found> {
    let grams = || fills.iter().map(|m| m.in_base());
    let n = Exact::whole(fills.len() as i128);
    let mean = grams().sum::<Exact>().checked_div(n)?;
    let squares: f64 = grams().map(|g| (g - mean).to_f64().powi(2)).sum();
    let spread = (fills.len() > 1).then(|| (squares / (fills.len() - 1) as f64).sqrt()).and_then(Exact::near);
    Some(Found { mean, spread })
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
pub(super) fn verdict(rules: &[(Option<bool>, String)]) -> (Option<bool>, &'static str) {
    let all = |is: Option<bool>| rules.iter().all(|rule| rule.0 != is);
    match (all(Some(false)), all(None)) {
        (false, _) => (Some(false), "would not pass"),
        (true, false) => (None, "cannot be told here"),
        (true, true) => (Some(true), "would pass"),
    }
}

pub(super) fn average_said(short: Exact, voice: Voice) -> String {
    if short > Exact::ZERO {
        ["the average is ", &voice.mass(Mass::base(short)), " short"].concat()
    } else {
        ["the average is over by ", &voice.mass(Mass::base(-short))].concat()
    }
}

pub(super) fn of(count: usize, fills: &[Mass]) -> String {
    [&count.to_string(), " of ", &fills.len().to_string()].concat()
}

/// How many are short by more than this.
pub(super) fn beyond(fills: &[Mass], declared: Mass, by: Mass) -> usize {
    fills.iter().filter(|fill| **fill + by < declared).count()
}
