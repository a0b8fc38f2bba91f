//! The Bench room: the workshop's scales and pots, and what weighing tells about drops, spoons,
//! vessels and wax.

mod burn;
mod density;
mod drops;
mod freeze;
mod known;
mod list;
mod pot;
mod scale;
mod spoons;
mod steady;
mod water;
mod weighings;

pub(super) use burn::remind;

use super::parts::{paged, why_button};
use super::workshop::Workshop;
use crate::book::{Act, Fact, Id};
use crate::dom::*;
use crate::quantity::{Amount, Mass, Why};

/// What the address asks for: `#bench/drops`, `#bench/spoons` and `#bench/density`, each with the id of an ingredient
/// after it or without; `#bench/water/ID` of a vessel; `#bench/scale/ID` and `#bench/pot/ID`, or `new` for a new one; `#bench/freeze`;
/// `#bench/burn` and what [`burn::page`] says.
pub(super) fn room() -> View {
    paged(inside)
}

fn inside(shop: Workshop, rest: &[String]) -> View {
    let at = |n: usize| rest.get(n).map_or("", String::as_str);
    let id = || Id(at(1).to_owned());
    match at(0) {
        "drops" => drops::page(shop, &id()),
        "spoons" => spoons::page(shop, &id()),
        "density" => density::page(shop, &id()),
        "scale" => scale::page(shop, &id()),
        "pot" => pot::page(shop, &id()),
        "water" => water::page(shop, &id()),
        "freeze" => freeze::page(shop),
        "burn" => burn::page(shop, at(1), at(2), at(3)),
        _ => list::page(shop),
    }
}

const HERE: &str = "#bench";

/// The division of the finest scale: drops and spoons are weighed on it.
fn finest(shop: Workshop) -> Option<Amount<Mass>> {
    shop.state(|s| {
        let scales = s.scales_shown().into_iter().filter_map(|k| k.body());
        scales.map(|s| s.division).min_by(|a, b| a.value.cmp(&b.value))
    })
}

/// What a trial tells so far, and why.
fn told(said: String, why: Why) -> View {
    group![el("p").class("found").child(said), why_button(why)]
}

/// The name of the ingredient that the address names, empty where it names none.
fn name_of(shop: Workshop, ingredient: &Id) -> String {
    shop.state(|s| s.ingredients.get(ingredient).and_then(|k| k.body()).map(|i| i.name.clone()))
        .unwrap_or_default()
}

/// Writes a fact down for the ingredient of this name and goes back, or says what is missing.
fn learn(shop: Workshop, name: &str, fact: Result<Fact, Vec<String>>) -> Vec<String> {
    let named = !name.trim().is_empty();
    let unnamed = (!named).then(|| "Name the ingredient, as your formulas call it.".to_owned());
    match fact {
        Ok(fact) if named => {
            let act: Act = shop.state(|s| s.learn(name, fact, shop.new_id()));
            if shop.act(act) {
                shop.go(HERE);
            }
            Vec::new()
        }
        Ok(_) => unnamed.into_iter().collect(),
        Err(wrong) => unnamed.into_iter().chain(wrong).collect(),
    }
}
