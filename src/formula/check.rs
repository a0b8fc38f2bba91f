//! Looking a formula over: all that is wrong with it at once, and all that must be read.

use super::share::Rates;
use super::{
    Basis, Caution, Doing, Formula, FormulaError, Part, PartKind, Recipe, TemperatureRange, Unweighed,
};
use crate::quantity::{Amount, Exact, Mass, Share, Temperature};
use crate::{sort, text};
use std::cmp::Reverse;

/// Looks a formula over as it is written, with nothing staying in the pot.
///
/// # Errors
/// Every reason why it cannot be made, so that a form can show them all.
pub fn check(formula: &Formula, recipe: &dyn Recipe) -> Result<Vec<Caution>, Vec<FormulaError>> {
    let rates = examine(formula, Mass::ZERO, recipe)?;
    Ok(cautions(formula, &rates))
}

/// What [`check`] finds to be read of a formula that has been solved, so that nothing is wrong with it.
pub(crate) fn warnings(formula: &Formula, recipe: &dyn Recipe) -> Vec<Caution> {
    let usual = usual_total(formula, Mass::ZERO).unwrap_or(Mass::ZERO);
    Rates::of(formula, usual, recipe).map(|rates| cautions(formula, &rates)).unwrap_or_default()
}

/// The rates of a formula that nothing is wrong with.
pub(super) fn examine(
    formula: &Formula,
    usual_residue: Mass,
    recipe: &dyn Recipe,
) -> Result<Rates, Vec<FormulaError>> {
    let errors = refusals(formula);
    if !errors.is_empty() {
        return Err(errors);
    }
    let usual = usual_total(formula, usual_residue).unwrap_or(Mass::ZERO);
    Rates::of(formula, usual, recipe).map_err(|e| vec![e])
}

/// What the usual batch comes to with what stays in its pot.
pub(super) fn usual_total(formula: &Formula, residue: Mass) -> Option<Mass> {
    formula.usual.as_ref().map(|u| u.fill.value.times(Exact::whole(u.vessels.into())) + residue)
}

/// The order to take the parts in, as indices: by falling temperature, the formula's own order where that is the
/// same; what is counted into vessels last.
pub fn order(formula: &Formula) -> Vec<usize> {
    let mut parts: Vec<(usize, &Part)> = formula.parts.iter().enumerate().collect();
    let rank = |p: &Part| (p.is_counted(), Reverse((p.add.high.value, p.add.low.value)));
    sort::by(&mut parts, |(_, a), (_, b)| rank(a).cmp(&rank(b)));
    parts.into_iter().map(|(index, _)| index).collect()
}

fn refusals(formula: &Formula) -> Vec<FormulaError> {
    let mut errors = Vec::new();
    if formula.name.trim().is_empty() {
        errors.push(FormulaError::NoName);
    }
    blend(formula, &mut errors);
    let mut names: Vec<String> = Vec::new();
    let all = formula.wax.iter().map(|w| &w.name).chain(formula.parts.iter().map(|p| &p.name));
    for name in all.filter(|name| !name.trim().is_empty()) {
        let known = text::key(name);
        if names.contains(&known) {
            errors.push(FormulaError::Twice { name: name.trim().to_owned() });
        }
        names.push(known);
    }
    for (index, part) in formula.parts.iter().enumerate() {
        if part.name.trim().is_empty() {
            errors.push(FormulaError::PartNoName { place: index + 1 });
        }
        amount(part, formula, &mut errors);
        if !part.is_counted() {
            upright(&part.add, Doing::Adding(part.name.clone()), &mut errors);
        }
    }
    if formula.usual.as_ref().is_some_and(|u| u.vessels == 0 || u.fill.value <= Mass::ZERO) {
        errors.push(FormulaError::EmptyUsual);
    }
    upright(&formula.pour.warmed, Doing::PouringWarmed, &mut errors);
    upright(&formula.pour.unwarmed, Doing::PouringUnwarmed, &mut errors);
    errors
}

fn blend(formula: &Formula, errors: &mut Vec<FormulaError>) {
    if formula.wax.is_empty() {
        return errors.push(FormulaError::NoWax);
    }
    for (index, wax) in formula.wax.iter().enumerate() {
        if wax.name.trim().is_empty() {
            errors.push(FormulaError::WaxNoName { place: index + 1 });
        }
        if wax.share.value <= Share::ZERO {
            errors.push(FormulaError::WaxShare { name: wax.name.clone() });
        }
    }
    let adds_to: Share = formula.wax.iter().map(|w| w.share.value).sum();
    if adds_to.in_base() != Exact::ONE {
        errors.push(FormulaError::Blend { adds_to });
    }
}

fn amount(part: &Part, formula: &Formula, errors: &mut Vec<FormulaError>) {
    let name = || part.name.clone();
    if let Basis::PerWax { wax, .. } = &part.basis
        && wax.value <= Mass::ZERO
    {
        errors.push(FormulaError::PerNoWax { part: name() });
    }
    if !part.basis.is_given() {
        errors.push(FormulaError::NoAmount { part: name() });
    }
    let of_a_batch = matches!(part.basis, Basis::Weight(_) | Basis::Spoon(_) | Basis::Drops(_));
    if of_a_batch && formula.usual.is_none() {
        errors.push(FormulaError::NoUsual { part: name() });
    }
}

fn upright(range: &TemperatureRange, doing: Doing, errors: &mut Vec<FormulaError>) {
    if range.low.value > range.high.value {
        errors.push(FormulaError::UpsideDown { doing, range: Box::new(range.clone()) });
    }
}

/// Everything done to the pot in the order of the sheet, with the range it is done in.
fn doings(formula: &Formula) -> Vec<(Doing, TemperatureRange, Option<&Part>)> {
    let melt = TemperatureRange { low: formula.melt_to, high: formula.melt_to };
    let mut doings = vec![(Doing::Melting, melt, None)];
    let parts = order(formula).into_iter().filter_map(|i| formula.parts.get(i));
    for part in parts.filter(|p| !p.is_counted()) {
        doings.push((Doing::Adding(part.name.clone()), part.add.clone(), Some(part)));
    }
    doings.push((Doing::PouringWarmed, formula.pour.warmed.clone(), None));
    doings.push((Doing::PouringUnwarmed, formula.pour.unwarmed.clone(), None));
    doings
}

pub(super) fn cautions(formula: &Formula, rates: &Rates) -> Vec<Caution> {
    let mut found = Vec::new();
    loads(formula, rates, &mut found);
    let doings = doings(formula);
    let hottest = |from: usize| {
        let rest = doings.iter().skip(from).map(|(doing, range, _)| (doing, range.high));
        rest.reduce(|a, b| if b.1.value > a.1.value { b } else { a })
    };
    let mut flash = |of: &str, from: usize, flash: Option<Amount<Temperature>>| {
        if let (Some(flash), Some((doing, at))) = (flash, hottest(from))
            && at.value >= flash.value
        {
            found.push(Caution::Flash { of: of.to_owned(), doing: doing.clone(), at, flash });
        }
    };
    for wax in &formula.wax {
        flash(&wax.name, 0, wax.flash);
    }
    for (index, (_, _, part)) in doings.iter().enumerate() {
        if let Some(part) = part {
            flash(&part.name, index, part.flash);
        }
    }
    for part in formula.parts.iter().filter(|p| p.kind == PartKind::Fragrance && p.flash.is_none()) {
        found.push(Caution::FlashUnknown { part: part.name.clone() });
    }
    if let Some((doing, at)) = hottest(0)
        && at.value.wants_caution()
    {
        found.push(Caution::Hot { doing: doing.clone(), at });
    }
    gates(formula, &doings, &mut found);
    for (part, rate) in formula.parts.iter().zip(&rates.parts) {
        match (rate.unweighed, &part.basis) {
            (Some(Unweighed::Spoon), Basis::Spoon(measure)) => {
                found.push(Caution::SpoonUnweighed { part: part.name.clone(), measure: *measure });
            }
            (Some(_), _) => found.push(Caution::DropsUnweighed { part: part.name.clone() }),
            (None, _) => {}
        }
    }
    found
}

fn loads(formula: &Formula, rates: &Rates, found: &mut Vec<Caution>) {
    let wax = rates.wax();
    let of_wax = |rate: &super::share::Rate| Share::base(rate.by_wax + rate.by_whole / wax);
    let mut together = Share::ZERO;
    let mut lowest: Option<(&Part, Amount<Share>)> = None;
    let mut over = false;
    for (part, rate) in formula.parts.iter().zip(&rates.parts) {
        let load = of_wax(rate);
        if part.kind == PartKind::Fragrance {
            together = together + load;
        }
        let Some(highest) = part.highest else { continue };
        if load > highest.value {
            // An additive above its own load says nothing of the fragrances.
            over |= part.kind == PartKind::Fragrance;
            let of_whole = Share::base(load.in_base() * wax);
            found.push(Caution::Load { part: part.name.clone(), of_wax: load, of_whole, highest });
        }
        if part.kind == PartKind::Fragrance && lowest.is_none_or(|(_, l)| highest.value < l.value) {
            lowest = Some((part, highest));
        }
    }
    if let Some((part, highest)) = lowest
        && !over
        && together > highest.value
    {
        found.push(Caution::LoadTogether { of_wax: together, part: part.name.clone(), highest });
    }
}

/// Temperatures that do not follow one another.
fn gates(formula: &Formula, doings: &[(Doing, TemperatureRange, Option<&Part>)], found: &mut Vec<Caution>) {
    for (doing, range, _) in doings {
        if range.low.value > formula.melt_to.value {
            let (doing, low) = (doing.clone(), range.low);
            found.push(Caution::AboveMelt { doing, low, melt_to: formula.melt_to });
        }
    }
    let written: Vec<&Part> = formula.parts.iter().filter(|p| !p.is_counted()).collect();
    let falling =
        |a: &Part, b: &Part| (a.add.high.value, a.add.low.value) >= (b.add.high.value, b.add.low.value);
    for (earlier, later) in written.iter().zip(written.iter().skip(1)) {
        if !falling(earlier, later) {
            found.push(Caution::Order { first: later.name.clone(), then: earlier.name.clone() });
        }
    }
    let Some(last) = doings.iter().rev().find_map(|(_, _, part)| *part) else { return };
    for (doing, range, part) in doings {
        let pouring = part.is_none() && *doing != Doing::Melting;
        if pouring && range.low.value > last.add.high.value {
            found.push(Caution::PourAboveAdd {
                doing: doing.clone(),
                low: range.low,
                part: last.name.clone(),
                high: last.add.high,
            });
        }
    }
}
