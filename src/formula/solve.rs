//! Solving a formula for a target: linear in every basis, so exact.

use super::check::{cautions, examine, usual_total};
use super::share::{Rate, Rates};
use super::why::Telling;
use super::{Basis, Caution, Formula, FormulaError, Part, WaxShare};
use crate::quantity::{Density, Exact, Mass, Share, Voice, Volume, Why};

/// What weighing has told about the ingredients of a formula: looked up by name.
pub trait Recipe {
    /// The mass of one drop.
    fn drop_mass(&self, ingredient: &str) -> Option<Mass>;
    /// The bulk density of a powder or flakes, from level spoons.
    fn bulk_density(&self, ingredient: &str) -> Option<Density>;
}

/// Nothing weighed yet.
impl Recipe for () {
    fn drop_mass(&self, _: &str) -> Option<Mass> {
        None
    }
    fn bulk_density(&self, _: &str) -> Option<Density> {
        None
    }
}

/// A part whose measure is given but whose mass is not known: it counts as nothing in the total.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Unweighed {
    /// No bulk density: level spoons of it were never weighed.
    Spoon,
    /// No drop mass: drops of it were never weighed.
    Drops,
}

/// One wax or part of the solved batch, exact.
#[derive(Clone, PartialEq, Debug)]
pub struct PartShare {
    pub name: String,
    /// Zero for pieces, and where [`PartShare::unweighed`] says it is not known.
    pub mass: Mass,
    pub of_wax: Share,
    pub of_whole: Share,
    /// Of a part written as a spoon measure: the measure for this batch.
    pub volume: Option<Volume>,
    /// Of a part written in drops: how many for this batch, usually not whole.
    pub drops: Option<Exact>,
    /// Of a part that is counted: pieces in each vessel.
    pub pieces: Option<u32>,
    pub unweighed: Option<Unweighed>,
    pub why: Why,
}

/// A formula solved for a total: the waxes, and the parts in the formula's order.
#[derive(Clone, PartialEq, Debug)]
pub struct Solved {
    /// Waxes and parts add up to exactly this.
    pub total: Mass,
    pub wax: Mass,
    pub waxes: Vec<PartShare>,
    pub parts: Vec<PartShare>,
    /// This batch against the usual one: what spoons, drops and weights were multiplied by. None without a usual batch.
    pub scale: Option<Exact>,
    /// What must be read before making it.
    pub cautions: Vec<Caution>,
    /// How the mass of all wax came about.
    pub why: Why,
}

/// How much is made.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Makes {
    /// Of the mixture, with what stays in the pot.
    pub total: Mass,
    /// What would stay in the pot were the usual batch made: spoons, drops and weights are scaled by total ÷ (usual
    /// vessels × usual fill + this), so a batch of the usual size takes them exactly as written.
    pub usual_residue: Mass,
}

/// The exact mass of every wax and part: wax = total × (1 − Σ by the whole) ÷ (1 + Σ by the wax), the rest from that.
///
/// # Errors
/// Where the formula cannot be made: the first of what [`super::check`] finds, see [`FormulaError`].
pub fn solve(
    formula: &Formula,
    makes: Makes,
    recipe: &dyn Recipe,
    voice: Voice,
) -> Result<Solved, FormulaError> {
    solve_as(formula, makes, recipe, Some(voice))
}

/// The same, told to nobody: without how each number came about, which takes most of the time, and without what must be
/// read before making it.
///
/// # Errors
/// As [`solve`].
pub(crate) fn amounts(formula: &Formula, makes: Makes, recipe: &dyn Recipe) -> Result<Solved, FormulaError> {
    solve_as(formula, makes, recipe, None)
}

fn solve_as(
    formula: &Formula,
    makes: Makes,
    recipe: &dyn Recipe,
    told: Option<Voice>,
) -> Result<Solved, FormulaError> {
    let rates = examine(formula, makes.usual_residue, recipe).map_err(first)?;
    if makes.total <= Mass::ZERO {
        return Err(FormulaError::NothingToMake);
    }
    Ok(solved(formula, makes, &rates, recipe, told))
}

/// The usual batch of a formula still being written, or a kilogram where it has none: for showing the shares of its
/// parts while names and temperatures are missing.
///
/// # Errors
/// Only where the parts leave no room for wax.
pub fn sample(formula: &Formula, recipe: &dyn Recipe, voice: Voice) -> Result<Solved, FormulaError> {
    let usual = usual_total(formula, Mass::ZERO).filter(|total| *total > Mass::ZERO);
    let total = usual.unwrap_or(Mass::base(Exact::whole(1000)));
    let rates = Rates::of(formula, usual.unwrap_or(Mass::ZERO), recipe)?;
    Ok(solved(formula, Makes { total, usual_residue: Mass::ZERO }, &rates, recipe, Some(voice)))
}

fn solved(
    formula: &Formula,
    makes: Makes,
    rates: &Rates,
    recipe: &dyn Recipe,
    told: Option<Voice>,
) -> Solved {
    let batch = Solving::of(formula, makes, rates, recipe, told);
    Solved {
        total: makes.total,
        wax: batch.wax,
        waxes: formula.wax.iter().map(|wax| batch.one_wax(wax)).collect(),
        parts: formula.parts.iter().zip(&rates.parts).map(|(part, rate)| batch.part(part, rate)).collect(),
        scale: batch.scale,
        cautions: told.map(|_| cautions(formula, rates)).unwrap_or_default(),
        why: batch.told.as_ref().map(Telling::all_wax).unwrap_or_default(),
    }
}

/// A batch whose waxes and parts can be asked for one by one.
struct Solving<'a> {
    makes: Makes,
    wax: Mass,
    scale: Option<Exact>,
    /// None: every why is left empty.
    told: Option<Telling<'a>>,
}

impl<'a> Solving<'a> {
    fn of(
        formula: &'a Formula,
        makes: Makes,
        rates: &Rates,
        recipe: &'a dyn Recipe,
        told: Option<Voice>,
    ) -> Self {
        Self {
            makes,
            wax: makes.total.times(rates.wax()),
            scale: usual_total(formula, makes.usual_residue).and_then(|u| makes.total.over(u)),
            told: told.map(|voice| Telling::of(formula, makes, rates, recipe, voice)),
        }
    }

    fn plain(&self, name: &str, mass: Mass, why: Why) -> PartShare {
        let of = |whole: Mass| Share::base(mass.over(whole).unwrap_or(Exact::ZERO));
        PartShare {
            name: name.to_owned(),
            mass,
            of_wax: of(self.wax),
            of_whole: of(self.makes.total),
            volume: None,
            drops: None,
            pieces: None,
            unweighed: None,
            why,
        }
    }

    fn one_wax(&self, wax: &WaxShare) -> PartShare {
        let mass = self.wax.times(wax.share.value.in_base());
        let why = self.told.as_ref().map(|told| told.one_wax(wax, mass));
        self.plain(&wax.name, mass, why.unwrap_or_default())
    }

    fn part(&self, part: &Part, rate: &Rate) -> PartShare {
        let mass = self.wax.times(rate.by_wax) + self.makes.total.times(rate.by_whole);
        let why = self.told.as_ref().map(|told| told.part(part, mass));
        let plain = self.plain(&part.name, mass, why.unwrap_or_default());
        let mut share = PartShare { unweighed: rate.unweighed, ..plain };
        match &part.basis {
            Basis::Spoon(volume) => share.volume = self.scale.map(|k| volume.value.times(k)),
            Basis::Drops(drops) => share.drops = self.scale.map(|k| Exact::whole((*drops).into()) * k),
            Basis::PerVessel(pieces) => share.pieces = Some(*pieces),
            Basis::OfWax(_) | Basis::OfWhole(_) | Basis::PerWax { .. } | Basis::Weight(_) => {}
        }
        share
    }
}

fn first(errors: Vec<FormulaError>) -> FormulaError {
    errors.into_iter().next().unwrap_or(FormulaError::NothingToMake)
}

/// The total that uses up `left` of the wax or part called `name`.
///
/// # Errors
/// As [`solve`], and where the formula has nothing of that name or does not know its mass.
pub fn total_for(
    formula: &Formula,
    name: &str,
    left: Mass,
    usual_residue: Mass,
    recipe: &dyn Recipe,
    voice: Voice,
) -> Result<(Mass, Why), FormulaError> {
    // Linear in the total, so the shares are those of any batch.
    let kilogram = Mass::base(Exact::whole(1000));
    let rates = examine(formula, usual_residue, recipe).map_err(first)?;
    let batch = Solving::of(formula, Makes { total: kilogram, usual_residue }, &rates, recipe, Some(voice));
    // Of this one only: to say how all the others come about would take most of the time.
    let wax = formula.wax.iter().find(|wax| wax.name == name).map(|wax| batch.one_wax(wax));
    let part = || {
        let (part, rate) = formula.parts.iter().zip(&rates.parts).find(|(part, _)| part.name == name)?;
        Some(batch.part(part, rate))
    };
    let one = wax.or_else(part).ok_or_else(|| FormulaError::NotInIt { name: name.to_owned() })?;
    let share = one.of_whole.in_base();
    let total = left.in_base().checked_div(share).map(Mass::base);
    let total = total.ok_or_else(|| FormulaError::NotWeighed { name: name.to_owned() })?;
    if total <= Mass::ZERO {
        return Err(FormulaError::NothingToMake);
    }
    let why = Why::new(
        format!("As far as what is left of “{name}” goes"),
        "what is left ÷ its share of the whole",
        voice.mass(total),
    )
    .with(format!("{name} left"), voice.mass(left))
    .with_why("its share of the whole", voice.share(one.of_whole), one.why);
    Ok((total, why))
}
