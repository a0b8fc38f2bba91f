//! Short ways to write formulas in tests.
#![allow(dead_code, reason = "each test file uses its own part of this")]
#![allow(clippy::unwrap_used, clippy::panic, reason = "test code outside a #[test]")]

use potside::formula::{
    Basis, Formula, Makes, Part, PartKind, PourRanges, Recipe, Solved, TemperatureRange, UsualBatch, WaxShare,
};
use potside::quantity::{
    Amount, Density, Exact, Mass, MassUnit, Share, ShareUnit, Temperature, TemperatureUnit, Voice, Volume,
    VolumeUnit,
};

pub(crate) fn number(text: &str) -> Exact {
    let (num, den) = text.split_once('/').unwrap_or((text, "1"));
    let (whole, fraction) = num.split_once('.').unwrap_or((num, ""));
    let digits: i128 = format!("{whole}{fraction}").parse().unwrap();
    Exact::ratio(digits, 10i128.pow(fraction.len() as u32) * den.parse::<i128>().unwrap())
}

pub(crate) fn g(text: &str) -> Amount<Mass> {
    Amount::new(number(text), MassUnit::Gram)
}

pub(crate) fn oz(text: &str) -> Amount<Mass> {
    Amount::new(number(text), MassUnit::Ounce)
}

pub(crate) fn lb(text: &str) -> Amount<Mass> {
    Amount::new(number(text), MassUnit::Pound)
}

pub(crate) fn percent(text: &str) -> Amount<Share> {
    Amount::new(number(text), ShareUnit::Percent)
}

pub(crate) fn tbsp(text: &str) -> Amount<Volume> {
    Amount::new(number(text), VolumeUnit::Tablespoon)
}

pub(crate) fn f(text: &str) -> Amount<Temperature> {
    Amount::new(number(text), TemperatureUnit::Fahrenheit)
}

pub(crate) fn range(low: &str, high: &str) -> TemperatureRange {
    TemperatureRange { low: f(low), high: f(high) }
}

pub(crate) fn wax(name: &str, share: &str) -> WaxShare {
    WaxShare { name: name.into(), share: percent(share), flash: None }
}

pub(crate) fn part(name: &str, kind: PartKind, basis: Basis, add: TemperatureRange) -> Part {
    Part {
        name: name.into(),
        kind,
        basis,
        add,
        stir_minutes: 2,
        note: String::new(),
        highest: None,
        flash: None,
    }
}

pub(crate) fn fragrance(basis: Basis) -> Part {
    part("Fig & cedar", PartKind::Fragrance, basis, range("175", "180"))
}

pub(crate) fn formula(parts: Vec<Part>) -> Formula {
    Formula {
        name: "Fig evening".into(),
        wax: vec![wax("Soft wax", "80"), wax("Hard wax", "20")],
        parts,
        usual: Some(UsualBatch { vessels: 4, fill: oz("8") }),
        melt_to: f("200"),
        pour: PourRanges { warmed: range("160", "165"), unwarmed: range("165", "175") },
        vessels: Vec::new(),
        cure_days: 14,
        note: String::new(),
    }
}

/// Drops of 21 mg and powders of 0.6 g/mL, whatever the name.
pub(crate) struct Weighed;

impl Recipe for Weighed {
    fn drop_mass(&self, _: &str) -> Option<Mass> {
        Some(Mass::base(Exact::ratio(21, 1000)))
    }
    fn bulk_density(&self, _: &str) -> Option<Density> {
        Some(Density::base(Exact::ratio(6, 10)))
    }
}

pub(crate) fn makes(total: Mass) -> Makes {
    Makes { total, usual_residue: Mass::ZERO }
}

pub(crate) fn solve(formula: &Formula, total: Mass) -> Solved {
    potside::formula::solve(formula, makes(total), &Weighed, Voice::default()).unwrap()
}

pub(crate) fn mass_of(solved: &Solved, name: &str) -> Mass {
    let mut all = solved.waxes.iter().chain(&solved.parts);
    all.find(|p| p.name == name).unwrap_or_else(|| panic!("no {name}")).mass
}
