//! From a formula, a vessel and a number to the plan of the pours.

use super::batch::{Batch, Size, batch};
use super::measure::pour;
use super::{Note, Pour};
use crate::bench::{MeltingPot, PotBody, Scale};
use crate::formula::{Formula, FormulaError, PourRanges, Recipe, TemperatureRange, warnings};
use crate::quantity::{Amount, Mass, Share, Temperature, Voice, Why};
use crate::wire::{wire_enum, wire_struct};

/// No batch has more vessels than this.
pub const MOST_VESSELS: u32 = 10_000;

/// What the batch is to reach.
#[derive(Clone, PartialEq, Debug)]
pub enum Target {
    Vessels(u32),
    /// This much in the pot, with what stays behind: as many whole vessels as it fills.
    Total(Amount<Mass>),
    /// As many whole vessels as what is left of one wax or part goes for.
    Left {
        ingredient: String,
        mass: Amount<Mass>,
    },
}

wire_enum!(Target { Vessels(it), Total(it), Left { ingredient, mass } });

/// What stays behind in the pot.
#[derive(Clone, PartialEq, Debug, Default)]
pub enum Residue {
    #[default]
    None,
    /// This much in each pot.
    Each(Amount<Mass>),
    /// This share of what is filled into vessels.
    OfFilled(Amount<Share>),
}

wire_enum!(Residue { None, Each(it), OfFilled(it) });

/// Everything a plan is made from.
pub struct Ask<'a> {
    pub formula: &'a Formula,
    pub vessel: &'a str,
    pub wick: &'a str,
    /// The mass in one vessel, from [`crate::vessel::fill`], and how it came about.
    pub fill: (Mass, Why),
    pub target: Target,
    pub residue: &'a Residue,
    /// Vessels warmed beforehand.
    pub warmed: bool,
    pub scales: &'a [Scale],
    /// None: one pour, whatever its size.
    pub pot: Option<&'a MeltingPot>,
    pub recipe: &'a dyn Recipe,
    /// Which choice of whole drops is taken: 0 is the nearest, then as [`super::shades`] names them.
    pub shade: usize,
    /// How far a dose may be off before the person is told: 2 % by default.
    pub tolerance: Share,
    /// For the sentences and whys.
    pub voice: Voice,
}

/// A plan, kept whole in the record so that a later version of the app shows what was said then.
#[derive(Clone, PartialEq, Debug)]
pub struct Plan {
    pub formula: String,
    pub vessel: String,
    pub wick: String,
    pub vessels: u32,
    /// In one vessel.
    pub fill: Mass,
    /// What all pots are to hold together, exact.
    pub total: Mass,
    /// Left behind in all pots together.
    pub residue: Mass,
    pub melt_to: Amount<Temperature>,
    pub pour: TemperatureRange,
    pub ranges: PourRanges,
    pub warmed: bool,
    pub pot: Option<String>,
    pub pot_capacity: Option<Mass>,
    pub pot_body: Option<PotBody>,
    /// How far what is weighed may be over before the person is asked what to do.
    pub tolerance: Share,
    pub cure_days: u32,
    pub pours: Vec<Pour>,
    /// Cautions and remarks about the whole.
    pub notes: Vec<Note>,
    pub why: Why,
}

wire_struct!(Plan {
    formula,
    vessel,
    wick,
    vessels,
    fill,
    total,
    residue,
    melt_to,
    pour,
    ranges,
    warmed,
    pot,
    pot_capacity,
    pot_body [skip],
    tolerance,
    cure_days,
    pours,
    notes,
    why,
});

/// Why no plan can be made. [`PlanError::say`] is the sentence.
#[derive(Clone, PartialEq, Debug)]
pub enum PlanError {
    Formula(FormulaError),
    NoFill,
    NoVessels,
    TooMany,
    /// One vessel and what stays in the pot need more than the pot holds.
    PotTooSmall {
        pot: String,
        capacity: String,
        needed: String,
    },
    /// The total asked for is less than one vessel needs.
    TotalTooSmall {
        asked: String,
        needed: String,
    },
    /// What is left of one ingredient is not enough for one vessel.
    TooLittleLeft {
        ingredient: String,
        left: String,
    },
}

impl PlanError {
    /// The sentence, in this person's units and decimal sign.
    pub fn say(&self, voice: Voice) -> String {
        match self {
            Self::Formula(e) => e.say(voice),
            Self::NoFill => {
                "The fill of this vessel is zero. Say how full it is made, in the Book.".to_owned()
            }
            Self::NoVessels => "That fills no vessel. Ask for at least one.".to_owned(),
            Self::TooMany => {
                format!("That is more than {MOST_VESSELS} vessels. Plan it as several batches.")
            }
            Self::PotTooSmall { pot, capacity, needed } => format!(
                "“{pot}” holds {capacity}, but one vessel needs {needed} in it. Take a larger pot or a smaller vessel."
            ),
            Self::TotalTooSmall { asked, needed } => {
                format!("{asked} fills no vessel: one needs {needed} in the pot. Ask for more.")
            }
            Self::TooLittleLeft { ingredient, left } => format!(
                "{left} of “{ingredient}” is not enough for one vessel. Get more of it, or take a smaller vessel."
            ),
        }
    }
}

impl From<FormulaError> for PlanError {
    fn from(error: FormulaError) -> Self {
        Self::Formula(error)
    }
}

/// The plan for what is asked.
///
/// # Errors
/// Where the formula cannot be solved or the target fills no vessel; see [`PlanError`].
pub fn plan(ask: &Ask) -> Result<Plan, PlanError> {
    planned(ask, Some(ask.voice)).map(|(plan, _)| plan)
}

/// The plan with the choices of whole drops. Told to nobody, the pours and their lines do not say how they came about.
pub(super) fn planned(ask: &Ask, told: Option<Voice>) -> Result<(Plan, Vec<String>), PlanError> {
    let mut batch = batch(ask)?;
    let (mut pours, mut choices) = pours(ask, &batch, told)?;
    // Rounding up can ask for a division more than what is left, in every pot.
    while let Target::Left { ingredient, mass } = &ask.target
        && taken(&pours, ingredient) > mass.value
    {
        batch = batch.with_one_less(ask)?;
        (pours, choices) = self::pours(ask, &batch, told)?;
    }
    let cautions = warnings(ask.formula, ask.recipe);
    let mut notes: Vec<Note> = cautions.iter().map(|c| Note::caution(c.say(ask.voice))).collect();
    notes.extend(batch.notes);
    let ranges = &ask.formula.pour;
    let plan = Plan {
        formula: ask.formula.name.clone(),
        vessel: ask.vessel.to_owned(),
        wick: ask.wick.to_owned(),
        vessels: batch.vessels,
        fill: ask.fill.0,
        total: batch.total,
        residue: batch.residue,
        melt_to: ask.formula.melt_to,
        pour: if ask.warmed { &ranges.warmed } else { &ranges.unwarmed }.clone(),
        ranges: ranges.clone(),
        warmed: ask.warmed,
        pot: ask.pot.map(|p| p.name.clone()),
        pot_capacity: ask.pot.map(|p| p.capacity.value),
        pot_body: ask.pot.and_then(|p| p.body.clone()),
        tolerance: ask.tolerance,
        cure_days: ask.formula.cure_days,
        pours,
        notes,
        why: batch.why,
    };
    Ok((plan, choices))
}

/// Pours of one size are alike, so each size is solved once. The choices of drops are those of the first, the largest.
fn pours(ask: &Ask, batch: &Batch, told: Option<Voice>) -> Result<(Vec<Pour>, Vec<String>), PlanError> {
    let mut pours: Vec<(Size, Pour)> = Vec::new();
    let mut choices = Vec::new();
    for size in &batch.pours {
        let known = pours.iter().find(|(s, _)| s == size).map(|(_, p)| p.clone());
        let made = match known {
            Some(made) => made,
            None => {
                let (made, words) = pour(ask, size, told)?;
                if pours.is_empty() {
                    choices = words;
                }
                made
            }
        };
        pours.push((*size, made));
    }
    Ok((pours.into_iter().map(|(_, pour)| pour).collect(), choices))
}

fn taken(pours: &[Pour], ingredient: &str) -> Mass {
    pours.iter().flat_map(|p| &p.lines).filter(|l| l.name == ingredient).map(|l| l.dose.mass()).sum()
}
