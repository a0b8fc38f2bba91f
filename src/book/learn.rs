//! What weighing or the supplier tells of an ingredient, written down beside what is known of it already.

use super::{Act, Id, Kept, Map, State};
use crate::bench::{DropTrial, Ingredient, SpoonTrial};
use crate::quantity::Density;
use crate::stores::Supply;
use crate::text::key;

/// One thing learnt of an ingredient.
#[derive(Clone, PartialEq, Debug)]
pub enum Fact {
    Density(Density),
    Drops(DropTrial),
    Spoons(SpoonTrial),
    Supply(Supply),
}

/// An ingredient by its name, and which formulas in use call for it.
#[derive(Clone, PartialEq, Debug)]
pub struct Use {
    pub name: String,
    /// Ids and names.
    pub formulas: Vec<(Id, String)>,
}

impl<T> Kept<T> {
    /// When what `of` takes from today's version was said first, without a change since: milliseconds since 1970.
    pub fn since<V: PartialEq>(&self, of: impl Fn(&T) -> V) -> Option<u64> {
        let today = of(self.body()?);
        self.versions.iter().rev().take_while(|v| of(&v.body) == today).last().map(|v| v.at)
    }
}

impl State {
    /// The act that writes a fact down for the ingredient of this name and keeps everything else known of it. `fresh`
    /// becomes its id where the book has none of this name.
    pub fn learn(&self, name: &str, fact: Fact, fresh: Id) -> Act {
        let known = || self.known(name).filter_map(Kept::body);
        let mut body = Ingredient {
            name: known().next().map_or_else(|| name.trim().to_owned(), |i| i.name.clone()),
            density: known().find_map(|i| i.density),
            drops: known().find_map(|i| i.drops.clone()),
            spoons: known().find_map(|i| i.spoons.clone()),
            supply: known().find_map(|i| i.supply.clone()),
        };
        match fact {
            Fact::Density(density) => body.density = Some(density),
            Fact::Drops(trial) => body.drops = Some(trial),
            Fact::Spoons(trial) => body.spoons = Some(trial),
            Fact::Supply(supply) => body.supply = Some(supply),
        }
        let kept = self.known(name).next();
        Act::Ingredient {
            id: kept.map_or(fresh, |k| k.id.clone()),
            over: kept.and_then(Kept::latest).map(|v| v.entry.clone()),
            body,
        }
    }

    /// Every wax and weighed part of the formulas in use, and every ingredient that something is known of, by name.
    pub fn uses(&self) -> Vec<Use> {
        let mut uses: Map<Use> = Map::default();
        let mut note = |name: &str, formula: Option<(&Id, &str)>| {
            let name = name.trim();
            if name.is_empty() {
                return;
            }
            let key = Id(key(name));
            uses.add(&key, Use { name: name.to_owned(), formulas: Vec::new() });
            if let Some((id, formula)) = formula
                && let Some(known) = uses.get_mut(&key)
                && known.formulas.iter().all(|(other, _)| other != id)
            {
                known.formulas.push((id.clone(), formula.to_owned()));
            }
        };
        for kept in self.formulas_shown() {
            let Some(formula) = kept.body() else { continue };
            for name in formula.ingredients() {
                note(name, Some((&kept.id, &formula.name)));
            }
        }
        for ingredient in self.ingredients_shown().into_iter().filter_map(Kept::body) {
            note(&ingredient.name, None);
        }
        uses.into_values().collect()
    }
}
