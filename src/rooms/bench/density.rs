//! The density of a wax as poured, from the supplier's sheet.

use super::{HERE, learn, name_of};
use crate::book::{Fact, Id};
use crate::dom::*;
use crate::quantity::{Amount, Density, DensityUnit, Quantity};
use crate::rooms::parts::{Field, Typed, field, finish, page_head, text_field};
use crate::rooms::workshop::Workshop;

pub(super) fn page(shop: Workshop, ingredient: &Id) -> View {
    let name = Typed::new(name_of(shop, ingredient));
    let known = shop.state(|s| s.ingredients.get(ingredient)?.body()?.density);
    let density = Typed::amount(known.map(|value| Amount { value, unit: DensityUnit::GramPerMillilitre }));
    let offers = shop.state(|s| s.wax_names());
    let echo = move || density.density().map(|d| shop.voice().density(d)).map_err(|e| e.to_string());
    let fact = move || density.density().map(Fact::Density).map_err(|e| vec![e.to_string()]);
    group![
        page_head(HERE, "Bench", "Density of a wax".to_owned()),
        el("p").class("lead").child(
            "Wax is lighter than water, and melted wax lighter than solid. With its density \
as a liquid, the fill of a vessel that is known by its volume becomes grams. \
The supplier's sheet has it; take the value nearest your pour temperature.",
        ),
        text_field("Wax", name, offers),
        field(
            Field::new("Density, melted")
                .placeholder(Density::EXAMPLE)
                .hint("Without a unit, grams per millilitre are meant."),
            density,
            echo,
        ),
        finish("Keep this density", Some(HERE), move || learn(shop, &name.get(), fact()))
    ]
}
