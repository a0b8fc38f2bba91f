//! Names that are offered while one is typed, so that the same thing is called the same.

use super::{Kept, State};
use crate::bench::Ingredient;
use crate::sort;
use crate::text::key;

impl State {
    /// Waxes of every formula and what the stores know, each once, by name.
    pub fn wax_names(&self) -> Vec<String> {
        let mut names = Vec::new();
        for formula in self.formulas_shown().into_iter().filter_map(Kept::body) {
            names.extend(formula.wax.iter().map(|w| w.name.as_str()));
        }
        self.known_names(&mut names, |i| i.density.is_some());
        once(names)
    }

    /// Parts of every formula and what the stores know, each once, by name.
    pub fn part_names(&self) -> Vec<String> {
        let mut names = Vec::new();
        for formula in self.formulas_shown().into_iter().filter_map(Kept::body) {
            names.extend(formula.parts.iter().map(|p| p.name.as_str()));
        }
        self.known_names(&mut names, |i| i.density.is_none());
        once(names)
    }

    /// Names of the ingredients that drops, spoons or millilitres can be weighed of.
    pub fn measured_names(&self) -> Vec<String> {
        let mut names = Vec::new();
        self.known_names(&mut names, |i| i.density.is_some() || i.drops.is_some() || i.spoons.is_some());
        once(names)
    }

    /// Adds the names of the ingredients in use that `wanted` holds of.
    fn known_names<'a>(&'a self, names: &mut Vec<&'a str>, wanted: fn(&Ingredient) -> bool) {
        for ingredient in self.ingredients_shown().into_iter().filter_map(Kept::body) {
            if wanted(ingredient) {
                names.push(&ingredient.name);
            }
        }
    }
}

/// In order, each once whatever its case, as it was written last; empty ones left out.
fn once(names: Vec<&str>) -> Vec<String> {
    let mut all: Vec<(String, &str)> = names.into_iter().map(|name| (key(name), name.trim())).collect();
    all.retain(|(key, _)| !key.is_empty());
    sort::by(&mut all, |(a, _), (b, _)| a.cmp(b));
    all.dedup_by(|later, kept| {
        let again = later.0 == kept.0;
        if again {
            kept.1 = later.1;
        }
        again
    });
    all.into_iter().map(|(_, name)| name.to_owned()).collect()
}
