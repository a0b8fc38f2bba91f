//! What a formula puts into the candle that a label has to tell, and the suppliers' limits.

use super::{Kept, State};
use crate::desk::hazard::{Ingredient, SafetySheet};
use crate::formula::{Formula, PartKind, PartShare, check, sample};
use crate::quantity::{Exact, Voice};

impl State {
    /// What a formula puts into the candle, with the safety data typed in for each; waxes without any are taken as
    /// harmless, and said to be. Where it is not known how much of a part there is, of one that is counted or of all where
    /// they leave no room for wax, the percent is zero.
    pub fn hazards_of(&self, formula: &Formula, voice: Voice) -> Vec<Ingredient> {
        let solved = sample(formula, self, voice).ok();
        let percent = |share: Option<&PartShare>| {
            share.map_or(Exact::ZERO, |share| share.of_whole.in_base() * Exact::whole(100))
        };
        let one = |name: &str, share: Option<&PartShare>, harmless| Ingredient {
            percent: percent(share),
            ..self.with_safety(name, harmless)
        };
        let waxes = formula.wax.iter().enumerate();
        let waxes =
            waxes.map(|(at, wax)| one(&wax.name, solved.as_ref().and_then(|s| s.waxes.get(at)), true));
        let parts = formula.parts.iter().enumerate().map(|(at, part)| {
            let share = solved.as_ref().and_then(|s| s.parts.get(at));
            (one(&part.name, share, part.kind != PartKind::Fragrance), part.is_counted())
        });
        // Of what is counted, as wicks, only what may hurt matters.
        let parts = parts.filter(|(part, counted)| !counted || !part.harmless || part.sheet.is_some());
        waxes.chain(parts.map(|(part, _)| part)).collect()
    }

    /// Something that may be in a candle, with the safety data typed in for it; none of it yet.
    pub(super) fn with_safety(&self, name: &str, harmless: bool) -> Ingredient {
        let sheet = self.safety_of(name).and_then(Kept::body).map(SafetySheet::substances);
        Ingredient { name: name.to_owned(), percent: Exact::ZERO, sheet, harmless }
    }

    /// The suppliers' highest shares and the flash points against the formula's own temperatures, where they matter.
    pub fn limits_of(&self, formula: &Formula, voice: Voice) -> Vec<String> {
        let mut said: Vec<String> = match check(formula, self) {
            Ok(cautions) => cautions.iter().map(|caution| caution.say(voice)).collect(),
            Err(errors) => {
                let errors: Vec<String> = errors.iter().map(|e| e.say(voice)).collect();
                vec![[BROKEN, &errors.join(" ")].concat()]
            }
        };
        let open = formula.parts.iter().filter(|p| p.kind == PartKind::Fragrance && p.highest.is_none());
        said.extend(open.map(|part| {
            let end = "” that its supplier states for candles is not typed in. Find it in the supplier's papers, and keep to it.";
            ["The highest load of “", &part.name, end].concat()
        }));
        said
    }
}

const BROKEN: &str = "The suppliers' highest loads and the flash points cannot be held against this formula until it is mended: ";
