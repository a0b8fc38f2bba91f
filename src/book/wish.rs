//! What is wished for at the pot, in terms of the book; and the plan that comes of it.

use super::{Batch, Id, State};
use crate::bench::Scale;
use crate::pot::{Ask, Note, Outline, Plan, PlanError, Residue, Target, outline, plan, shades};
use crate::quantity::Voice;
use crate::vessel::{FillRule, Vessel, VesselError, overflow};

/// A pour as the person asks for it.
#[derive(Clone, PartialEq, Debug)]
pub struct Wish {
    pub formula: Id,
    pub vessel: Id,
    pub wick: String,
    pub target: Target,
    pub residue: Residue,
    /// Vessels warmed beforehand.
    pub warmed: bool,
    /// None: one pour, whatever its size.
    pub pot: Option<Id>,
    /// Which choice of whole drops is taken: 0 is the nearest, then as [`State::shades`] names them.
    pub shade: usize,
}

/// Why nothing can be planned. [`WishError::say`] is the sentence.
#[derive(Clone, PartialEq, Debug)]
pub enum WishError {
    NoFormula,
    NoVessel,
    NoPot,
    Vessel { name: String, why: VesselError },
    Plan(PlanError),
}

impl WishError {
    /// The sentence, in this person's units and decimal sign.
    pub fn say(&self, voice: Voice) -> String {
        match self {
            Self::NoFormula => "Choose a formula first.".to_owned(),
            Self::NoVessel => "Choose a vessel first.".to_owned(),
            Self::NoPot => "That pot is not in this book any more. Choose another one.".to_owned(),
            Self::Vessel { name, why } => ["“", name, "”: ", &why.say(voice)].concat(),
            Self::Plan(e) => e.say(voice),
        }
    }
}

/// A vessel that can be chosen for a formula.
#[derive(Clone, PartialEq, Debug)]
pub struct VesselOffer {
    pub vessel: Id,
    pub name: String,
    /// None where the formula does not name this vessel.
    pub wick: Option<String>,
}

impl State {
    /// The plan for what is wished, with the scales, pots and weighings of this book.
    ///
    /// # Errors
    /// Where something wished for is not in the book, the vessel cannot be filled, or no plan can be made.
    pub fn plan(&self, wish: &Wish, voice: Voice) -> Result<Plan, WishError> {
        let mut plan = self.asking(wish, voice, plan)?;
        plan.notes.extend(self.overflow(wish, voice));
        Ok(plan)
    }

    /// The plan in outline with the choices of whole drops that [`State::shades`] names, in one go.
    ///
    /// # Errors
    /// As [`State::plan`].
    pub fn outline(&self, wish: &Wish, voice: Voice) -> Result<(Outline, Vec<String>), WishError> {
        let (outline, choices) = self.asking(wish, voice, outline)?;
        Ok((outline.with(self.overflow(wish, voice)), choices))
    }

    /// What is to be read where the fill of the vessel would run over.
    fn overflow(&self, wish: &Wish, voice: Voice) -> Option<Note> {
        // Any other fill is reckoned from what the vessel holds.
        let by_weight = |v: &&Vessel| matches!(v.fill, FillRule::Weight(_));
        let vessel = self.vessels.get(&wish.vessel)?.body().filter(by_weight)?;
        let formula = self.formulas.get(&wish.formula)?.body()?;
        let density = self.wax_density(formula, voice).ok().map(|(density, _)| density);
        overflow(vessel, density, voice).map(|text| Note { caution: true, text })
    }

    /// The choices of whole drops for what is wished, in words; none where there is nothing to choose.
    ///
    /// # Errors
    /// As [`State::plan`].
    pub fn shades(&self, wish: &Wish, voice: Voice) -> Result<Vec<String>, WishError> {
        self.asking(wish, voice, shades)
    }

    fn asking<T>(
        &self,
        wish: &Wish,
        voice: Voice,
        how: fn(&Ask) -> Result<T, PlanError>,
    ) -> Result<T, WishError> {
        let formula = self.formulas.get(&wish.formula).and_then(|k| k.body()).ok_or(WishError::NoFormula)?;
        let vessel = self.vessels.get(&wish.vessel).and_then(|k| k.body()).ok_or(WishError::NoVessel)?;
        let pot = match &wish.pot {
            Some(id) => Some(self.pots.get(id).and_then(|k| k.body()).ok_or(WishError::NoPot)?),
            None => None,
        };
        let unfilled = |why| WishError::Vessel { name: vessel.name.clone(), why };
        let filled = self.fill(vessel, formula, voice).map_err(unfilled)?;
        let scales: Vec<Scale> = self.scales_shown().iter().filter_map(|k| k.body().cloned()).collect();
        let ask = Ask {
            formula,
            vessel: &vessel.name,
            wick: &wish.wick,
            fill: filled,
            target: wish.target.clone(),
            residue: &wish.residue,
            warmed: wish.warmed,
            scales: &scales,
            pot,
            recipe: self,
            shade: wish.shade,
            tolerance: self.settings.tolerance.value,
            voice,
        };
        how(&ask).map_err(WishError::Plan)
    }

    /// The vessels in use: first those the formula names, each with its wick, then the others by name.
    pub fn vessels_for(&self, formula: &Id) -> Vec<VesselOffer> {
        let shown = self.vessels_shown();
        let mut offers = Vec::new();
        let mut offer = |id: &Id, wick: Option<&String>| {
            if let Some(vessel) = shown.iter().find(|k| k.id == *id).and_then(|k| k.body()) {
                offers.push(VesselOffer {
                    vessel: id.clone(),
                    name: vessel.name.clone(),
                    wick: wick.cloned(),
                });
            }
        };
        let named = self.formulas.get(formula).and_then(|k| k.body()).map_or(&[][..], |f| &f.vessels);
        for known in named {
            offer(&known.vessel, Some(&known.wick));
        }
        for other in &shown {
            if named.iter().all(|v| v.vessel != other.id) {
                offer(&other.id, None);
            }
        }
        offers
    }

    /// The waxes and the weighed parts of a formula: what can run short.
    pub fn ingredients_of(&self, formula: &Id) -> Vec<String> {
        let Some(formula) = self.formulas.get(formula).and_then(|k| k.body()) else { return Vec::new() };
        formula.ingredients().into_iter().cloned().collect()
    }

    /// True where the formula is not today what it was when this batch was poured.
    pub fn changed_since(&self, batch: &Batch) -> bool {
        self.formulas.get(&batch.formula).is_some_and(|formula| {
            let then = formula.version(&batch.version).map(|(_, version)| &version.body);
            then != formula.body()
        })
    }

    /// The wish that a batch came from, to be made again with today's version of its formula.
    pub fn again(&self, batch: &Batch) -> Wish {
        let plan = &batch.run.plan;
        let pot = plan.pot.as_ref().and_then(|name| {
            let kept = self.pots_shown().into_iter().find(|k| k.body().is_some_and(|p| p.name == *name))?;
            Some(kept.id.clone())
        });
        Wish {
            formula: batch.formula.clone(),
            vessel: batch.vessel.clone(),
            wick: plan.wick.clone(),
            target: Target::Vessels(plan.vessels),
            residue: self.settings.residue.clone(),
            warmed: plan.warmed,
            pot,
            shade: 0,
        }
    }
}
