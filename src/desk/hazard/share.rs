//! With how little of one ingredient a class would no longer hold.

use super::class::Class;
use super::mix::{Ingredient, mix};
use crate::quantity::Exact;

/// A class, and the largest share of the ingredient without it, in percent of the whole to 0.01.
#[derive(Clone, PartialEq, Debug)]
pub struct Drop {
    pub class: Class,
    /// None where it holds without any of this ingredient.
    pub most: Option<Exact>,
}

/// For each class the mixture has: the most of the ingredient at `place` with which it would not. The rest of the
/// candle stays as it is.
pub fn drops(ingredients: &[Ingredient], place: usize, solid: bool) -> Vec<Drop> {
    let mut tried = ingredients.to_vec();
    let Some(now) = ingredients.get(place).map(|i| i.percent) else { return Vec::new() };
    let step = Exact::ratio(1, 100);
    // More of an ingredient never lowers a class, so halving finds the border.
    let mut holds = |class: Class, steps: i128| {
        if let Some(one) = tried.get_mut(place) {
            one.percent = Exact::whole(steps) * step;
        }
        let found = mix(&tried, solid).classes;
        found.iter().any(|c| c.group == class.group && c.rank() <= class.rank())
    };
    let mut drops = Vec::new();
    for class in mix(ingredients, solid).classes {
        let (mut without, mut with) = (0, (now / step).ceil());
        if holds(class, 0) {
            drops.push(Drop { class, most: None });
            continue;
        }
        while with - without > 1 {
            let middle = (with + without) / 2;
            if holds(class, middle) { with = middle } else { without = middle }
        }
        drops.push(Drop { class, most: Some(Exact::whole(without) * step) });
    }
    drops
}
