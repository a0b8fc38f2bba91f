//! Looking things up: by name, by a word, and what weighing has told about an ingredient.

use super::{Batch, Id, Kept, Map, State};
use crate::bench::{Ingredient, mean_drop, spoon_density};
use crate::desk::hazard::SafetySheet;
use crate::desk::label::Design;
use crate::formula::{Formula, Recipe};
use crate::quantity::{Density, Mass, Voice, Why};
use crate::shelf::{Customer, Product};
use crate::sort;
use crate::text::key;
use crate::vessel::{FillRule, Vessel, VesselError, blend_density, fill};

impl State {
    /// Waxes whose density as poured is known, by name.
    pub fn densities(&self) -> Vec<(&str, Density)> {
        let known = self.ingredients_shown().into_iter().filter_map(Kept::body);
        known.filter_map(|i| Some((i.name.as_str(), i.density?))).collect()
    }

    /// Formulas in use, by name.
    pub fn formulas_shown(&self) -> Vec<&Kept<Formula>> {
        shown(&self.formulas, |f| &f.name)
    }

    /// Vessels in use, by name.
    pub fn vessels_shown(&self) -> Vec<&Kept<Vessel>> {
        shown(&self.vessels, |v| &v.name)
    }

    /// Ingredients in use, by name.
    pub fn ingredients_shown(&self) -> Vec<&Kept<Ingredient>> {
        shown(&self.ingredients, |i| &i.name)
    }

    /// Scales in use, by name.
    pub fn scales_shown(&self) -> Vec<&Kept<crate::bench::Scale>> {
        shown(&self.scales, |s| &s.name)
    }

    /// Pots in use, by name.
    pub fn pots_shown(&self) -> Vec<&Kept<crate::bench::MeltingPot>> {
        shown(&self.pots, |p| &p.name)
    }

    /// Products in use, by name.
    pub fn products_shown(&self) -> Vec<&Kept<Product>> {
        shown(&self.products, |p| &p.name)
    }

    /// Customers in use, by name.
    pub fn customers_shown(&self) -> Vec<&Kept<Customer>> {
        shown(&self.customers, |c| &c.name)
    }

    /// Batches, the latest begun first.
    pub fn batches_shown(&self) -> Vec<&Batch> {
        let mut all: Vec<_> = self.batches.values().collect();
        sort::by(&mut all, |a, b| b.began.cmp(&a.began).then_with(|| b.id.cmp(&a.id)));
        all
    }

    /// The ingredients of this name, the one with the latest word first; those put away last.
    pub(super) fn known<'a>(&'a self, name: &str) -> impl Iterator<Item = &'a Kept<Ingredient>> + use<'a> {
        let name = key(name);
        let named = |k: &&Kept<Ingredient>| k.body().is_some_and(|i| key(&i.name) == name);
        let mut all: Vec<_> = self.ingredients.values().filter(named).collect();
        sort::by(&mut all, |a, b| a.retired.cmp(&b.retired).then_with(|| word(b).cmp(&word(a))));
        all.into_iter()
    }

    /// The ingredient of this name, the latest word on it.
    pub fn ingredient(&self, name: &str) -> Option<&Ingredient> {
        self.known(name).find_map(Kept::body)
    }

    /// The safety data of the ingredient of this name, the latest word on it.
    pub fn safety_of(&self, name: &str) -> Option<&Kept<SafetySheet>> {
        let name = key(name);
        let named =
            |k: &&Kept<SafetySheet>| !k.retired && k.body().is_some_and(|s| key(&s.ingredient) == name);
        self.safety.values().filter(named).max_by_key(|k| k.latest().map(|v| (v.clock, &v.entry)))
    }

    /// Safety data in use, by the name of the ingredient.
    pub fn safety_shown(&self) -> Vec<&Kept<SafetySheet>> {
        shown(&self.safety, |s| &s.ingredient)
    }

    /// Labels in use, by name.
    pub fn labels_shown(&self) -> Vec<&Kept<Design>> {
        shown(&self.labels, |d| &d.name)
    }

    /// The density of a formula's liquid wax as poured.
    ///
    /// # Errors
    /// Where the density of a wax is not known: it is named.
    pub fn wax_density(&self, formula: &Formula, voice: Voice) -> Result<(Density, Why), VesselError> {
        blend_density(
            &formula.wax,
            |wax| self.known(wax).filter_map(Kept::body).find_map(|i| i.density),
            voice,
        )
    }

    /// What of this formula fills the vessel.
    ///
    /// # Errors
    /// Where the vessel's measures or the density of a wax are not known.
    pub fn fill(&self, vessel: &Vessel, formula: &Formula, voice: Voice) -> Result<(Mass, Why), VesselError> {
        // A fill by weight needs no density, and to look for one takes a while.
        if matches!(vessel.fill, FillRule::Weight(_)) {
            return fill(vessel, None, voice);
        }
        match self.wax_density(formula, voice) {
            Ok((density, _)) => fill(vessel, Some(density), voice),
            // The wax that lacks it is named.
            Err(unknown) => fill(vessel, None, voice).map_err(|e| match e {
                VesselError::NoDensity { .. } => unknown,
                e => e,
            }),
        }
    }
}

impl State {
    /// What a thing is called today; of a batch, what was poured; of a lot, what it is of.
    pub fn name(&self, id: &Id) -> Option<&str> {
        let name = None
            .or_else(|| Some(&self.formulas.get(id)?.body()?.name))
            .or_else(|| Some(&self.vessels.get(id)?.body()?.name))
            .or_else(|| Some(&self.scales.get(id)?.body()?.name))
            .or_else(|| Some(&self.pots.get(id)?.body()?.name))
            .or_else(|| Some(&self.ingredients.get(id)?.body()?.name))
            .or_else(|| Some(&self.safety.get(id)?.body()?.ingredient))
            .or_else(|| Some(&self.lots.get(id)?.body()?.ingredient))
            .or_else(|| Some(&self.trials.get(id)?.body()?.name))
            .or_else(|| Some(&self.wicks.get(id)?.body()?.name))
            .or_else(|| Some(&self.labels.get(id)?.body()?.name))
            .or_else(|| Some(&self.products.get(id)?.body()?.name))
            .or_else(|| Some(&self.customers.get(id)?.body()?.name))
            .or_else(|| Some(&self.batches.get(id)?.run.plan.formula));
        name.map(String::as_str)
    }
}

impl Recipe for State {
    fn drop_mass(&self, ingredient: &str) -> Option<Mass> {
        let trials = self.known(ingredient).filter_map(Kept::body).filter_map(|i| i.drops.as_ref());
        trials.filter_map(mean_drop).next()
    }

    fn bulk_density(&self, ingredient: &str) -> Option<Density> {
        let trials = self.known(ingredient).filter_map(Kept::body).filter_map(|i| i.spoons.as_ref());
        trials.filter_map(spoon_density).next()
    }
}

/// When the last word on it was written.
fn word(ingredient: &Kept<Ingredient>) -> Option<(u64, &Id)> {
    ingredient.latest().map(|v| (v.clock, &v.entry))
}

/// Things that are not put away, by name.
pub(super) fn shown<T>(things: &Map<Kept<T>>, name: fn(&T) -> &String) -> Vec<&Kept<T>> {
    in_order(things, name, false)
}

/// Things by name, those of one name by their ids; without those put away, or with them.
pub(super) fn in_order<T>(things: &Map<Kept<T>>, name: fn(&T) -> &String, all: bool) -> Vec<&Kept<T>> {
    let mut named: Vec<(String, usize)> = Vec::new();
    for (place, kept) in things.values().enumerate() {
        if all || !kept.retired {
            named.push((kept.body().map(|body| key(name(body))).unwrap_or_default(), place));
        }
    }
    sort::by(&mut named, |(a, _), (b, _)| a.cmp(b));
    named.into_iter().filter_map(|(_, place)| things.at(place)).collect()
}
