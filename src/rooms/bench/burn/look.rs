//! A look at a burning candle: what was not looked at stays empty.

use super::light::throws;
use super::{does, read_some};
use crate::bench::burn::{BurnEvent, Grade, Look};
use crate::book::Id;
use crate::dom::*;
use crate::keep;
use crate::rooms::parts::{Field, Typed, area, choice, finish, length_field, mass_field, temperature_field};
use crate::rooms::workshop::Workshop;

#[derive(Clone, Copy)]
struct Form {
    pool: Typed,
    depth: Typed,
    flame: Typed,
    outside: Typed,
    mass: Typed,
    soot: Value<Option<Grade>>,
    mushroom: Value<Option<Grade>>,
    hang_up: Value<Option<Grade>>,
    throw: Value<Option<u32>>,
    note: Typed,
}

impl Form {
    fn look(self, shop: Workshop) -> Result<Look, Vec<String>> {
        let mut wrong = Vec::new();
        let length = shop.voice().length;
        let look = Look {
            at: keep::now(),
            mass: read_some("Weight", self.mass, shop.mass_unit(), &mut wrong),
            pool: read_some("Pool across", self.pool, length, &mut wrong),
            depth: read_some("Pool deep", self.depth, length, &mut wrong),
            flame: read_some("Flame", self.flame, length, &mut wrong),
            outside: read_some("Vessel outside", self.outside, shop.temperature_unit(), &mut wrong),
            soot: self.soot.get(),
            mushroom: self.mushroom.get(),
            hang_up: self.hang_up.get(),
            throw: self.throw.get(),
            note: self.note.get(),
        };
        if wrong.is_empty() && look == (Look { at: look.at, ..Look::default() }) {
            wrong.push("Nothing was looked at. Type or choose what you see.".to_owned());
        }
        if wrong.is_empty() { Ok(look) } else { Err(wrong) }
    }
}

pub(super) fn form(shop: Workshop, id: Id) -> View {
    let typed = || Typed::new("");
    let form = Form {
        pool: typed(),
        depth: typed(),
        flame: typed(),
        outside: typed(),
        mass: typed(),
        soot: Value::new(None),
        mushroom: Value::new(None),
        hang_up: Value::new(None),
        throw: Value::new(None),
        note: typed(),
    };
    let keep = move || match form.look(shop) {
        Ok(look) => {
            does(shop, &id, BurnEvent::Looked(Box::new(look)));
            Vec::new()
        }
        Err(wrong) => wrong,
    };
    let grades = [Grade::None, Grade::Little, Grade::Much].map(|g| (Some(g), g.name()));
    let grades: Vec<_> = [(None, "not looked at")].into_iter().chain(grades).collect();
    let field = |label: &'static str, hint: &'static str| Field::new(label).hint(hint).optional();
    group![
        el("h3").child("What you see"),
        el("div")
            .class("fields")
            .child(length_field(
                field("Pool across", "The melted wax, wall to wall where it is full."),
                form.pool
            ))
            .child(length_field(field("Pool deep", "A cold knitting needle shows it."), form.depth))
            .child(length_field(field("Flame", "From the wax to its tip."), form.flame))
            .child(temperature_field(field("Vessel outside", "Where it is hottest."), form.outside))
            .child(mass_field(field("Weight", "Only where it burns on the scale."), form.mass)),
        choice("Soot", form.soot, &grades),
        choice("Mushroom on the wick", form.mushroom, &grades),
        choice("Wax left on the wall", form.hang_up, &grades),
        choice("Hot throw", form.throw, &throws()),
        area("Note", form.note),
        el("div").class("large").child(finish("Keep this look", None, keep))
    ]
}
