//! Names that are offered while one is typed, so that the same thing is called the same.

use super::State;
use std::collections::BTreeMap;

impl State {
    /// Waxes of every formula and what the stores know, each once, by name.
    pub fn wax_names(&self) -> Vec<String> {
        let waxes = self.bodies().flat_map(|f| f.wax.iter().map(|w| &w.name));
        let dense = self.ingredients_shown().into_iter().filter_map(|k| k.body());
        once(waxes.chain(dense.filter(|i| i.density.is_some()).map(|i| &i.name)))
    }

    /// Parts of every formula and what the stores know, each once, by name.
    pub fn part_names(&self) -> Vec<String> {
        let parts = self.bodies().flat_map(|f| f.parts.iter().map(|p| &p.name));
        let known = self.ingredients_shown().into_iter().filter_map(|k| k.body());
        once(parts.chain(known.filter(|i| i.density.is_none()).map(|i| &i.name)))
    }

    /// Names of the ingredients that drops, spoons or millilitres can be weighed of.
    pub fn measured_names(&self) -> Vec<String> {
        let known = self.ingredients_shown().into_iter().filter_map(|k| k.body());
        once(
            known.filter(|i| i.density.is_some() || i.drops.is_some() || i.spoons.is_some()).map(|i| &i.name),
        )
    }

    fn bodies(&self) -> impl Iterator<Item = &crate::formula::Formula> {
        self.formulas_shown().into_iter().filter_map(|k| k.body())
    }
}

/// In order, each once whatever its case; empty ones left out.
fn once<'a>(names: impl Iterator<Item = &'a String>) -> Vec<String> {
    let names = names.map(|n| n.trim()).filter(|n| !n.is_empty());
    let all: BTreeMap<String, &str> = names.map(|n| (n.to_lowercase(), n)).collect();
    all.into_values().map(str::to_owned).collect()
}
