//! Whether a lot is kept as it is used: what is weighed at the pot by weight, what is counted by pieces. Of another the pours
//! would take nothing, and what is left of its ingredient would be grams and pieces together.

use super::{Lot, Measure};
use crate::book::{Id, Kept, State};
use crate::text::same;

impl State {
    /// Why a lot cannot be kept as it was bought; `own` where it is one in the book that is put right.
    pub fn mismeasured(&self, lot: &Lot, own: Option<&Id>) -> Option<String> {
        let measure = lot.bought.pack.measure();
        let other = |l: &Lot| same(&l.ingredient, &lot.ingredient) && l.bought.pack.measure() != measure;
        let (one, way) = match measure {
            Measure::Grams => ("by pieces", "Choose “Pieces”"),
            Measure::Pieces => ("by weight", "Choose “Weight” or “Volume”"),
        };
        // How it is used comes first: lots that are kept otherwise are put right one after the other.
        let why = match (measure, self.used_as(&lot.ingredient)) {
            (Measure::Grams, (true, false)) | (Measure::Pieces, (false, true)) => return None,
            (Measure::Pieces, (true, false)) => "it is weighed at the pot".to_owned(),
            (Measure::Grams, (false, true)) => "it is counted, one or more to a candle".to_owned(),
            _ if self.lots.iter().any(|(id, kept)| Some(id) != own && kept.body().is_some_and(other)) => {
                ["the other lots of it are kept ", one, ", and the two do not add up"].concat()
            }
            _ => return None,
        };
        Some([way, " for “", lot.ingredient.trim(), "”: ", &why, "."].concat())
    }

    /// Whether formulas and candles that are sold have it weighed, and whether they have it counted.
    fn used_as(&self, name: &str) -> (bool, bool) {
        let (mut weighed, mut counted) = (false, false);
        for formula in self.formulas_shown().into_iter().filter_map(Kept::body) {
            weighed |= formula.wax.iter().any(|wax| same(&wax.name, name));
            for part in formula.parts.iter().filter(|part| same(&part.name, name)) {
                weighed |= !part.is_counted();
                counted |= part.is_counted();
            }
            counted |= formula.vessels.iter().any(|v| same(&v.wick, name));
        }
        counted |= self.vessels_shown().into_iter().filter_map(Kept::body).any(|v| same(&v.name, name));
        for product in self.products_shown().into_iter().filter_map(Kept::body) {
            counted |= same(&product.wick, name) || product.parts.iter().any(|part| same(part, name));
        }
        (weighed, counted)
    }
}
