//! A formula while it is typed, looked over as a whole: all that a form shows beside what was typed.

use super::{Caution, Draft, Formula, FormulaError, PartShare, Place, Problem, Recipe, check, sample};
use crate::quantity::{Amount, Exact, Share, ShareUnit, Voice};

/// What a draft comes to.
#[derive(Clone, PartialEq, Debug)]
pub struct Looked {
    /// With zero for what cannot be read.
    pub formula: Formula,
    /// Texts that cannot be read.
    pub problems: Vec<Problem>,
    /// Why it cannot be made. Where a text cannot be read only missing and repeated names are told: the rest may come
    /// from that text.
    pub refusals: Vec<FormulaError>,
    /// What must be read before it is made; known only where nothing else is wrong.
    pub cautions: Vec<Caution>,
    /// The parts in the usual batch, or in a kilogram; none where they leave no room for wax.
    pub parts: Vec<PartShare>,
}

impl Draft {
    pub fn look(&self, recipe: &dyn Recipe, voice: Voice) -> Looked {
        let (formula, problems) = self.read(voice);
        let parts = sample(&formula, recipe, voice).map(|s| s.parts).unwrap_or_default();
        let (mut cautions, mut refusals) = match check(&formula, recipe) {
            Ok(cautions) => (cautions, Vec::new()),
            Err(refusals) => (Vec::new(), refusals),
        };
        if !problems.is_empty() {
            cautions.clear();
            refusals.retain(FormulaError::is_of_names);
        }
        Looked { formula, problems, refusals, cautions, parts }
    }
}

impl Looked {
    /// True where it can be kept.
    pub fn is_good(&self) -> bool {
        self.problems.is_empty() && self.refusals.is_empty()
    }

    /// Every sentence that stands against keeping it.
    pub fn against(&self, voice: Voice) -> Vec<String> {
        let problems = self.problems.iter().map(|p| p.text.clone());
        problems.chain(self.refusals.iter().map(|e| e.say(voice))).collect()
    }

    /// What the blend adds up to, or what is wrong with that.
    ///
    /// # Errors
    /// The sentence, where it is not 100 %.
    pub fn blend(&self, voice: Voice) -> Result<String, String> {
        let adds_to: Share = self.formula.wax.iter().map(|w| w.share.value).sum();
        let wrong = FormulaError::Blend { adds_to };
        if adds_to.in_base() != Exact::ONE {
            return Err(wrong.say(voice));
        }
        let said = voice.typed(Amount { value: adds_to, unit: ShareUnit::Percent });
        Ok(format!("The blend adds up to {said}."))
    }

    /// The part at this place as [`super::Basis::tell`] says it; empty while it has no amount.
    pub fn part(&self, at: usize, voice: Voice) -> String {
        let part = self.formula.parts.get(at).filter(|p| p.basis.is_given());
        part.map(|p| p.basis.tell(self.parts.get(at), voice)).unwrap_or_default()
    }

    /// True where a text of this place cannot be read.
    pub fn is_wrong(&self, place: Place) -> bool {
        self.problems.iter().any(|p| p.place == place)
    }

    /// The cautions about the wax or part of this name; without a name, those about the whole.
    pub fn cautions_about(&self, name: Option<&str>, voice: Voice) -> Vec<String> {
        self.cautions.iter().filter(|c| c.about() == name).map(|c| c.say(voice)).collect()
    }
}
