//! A look at a burning candle: what was not looked at stays empty.

use super::light::throws;
use super::{does, read_some};
use crate::bench::burn::{BurnEvent, Grade, Look, Trial};
use crate::book::Id;
use crate::dom::*;
use crate::keep;
use crate::rooms::parts::{Field, Typed, area, choice, finish, length_field, mass_field, temperature_field};
use crate::rooms::workshop::Workshop;

#[derive(Clone, Copy)]
pub(super) struct Form {
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
    pub(super) fn new() -> Self {
        let typed = || Typed::new("");
        Self {
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
        }
    }

    /// What was seen at this time; none where nothing was.
    pub(super) fn look(self, shop: Workshop, trial: &Trial, at: u64) -> Result<Option<Look>, Vec<String>> {
        let mut wrong = Vec::new();
        let length = shop.voice().length;
        let look = Look {
            at,
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
        wrong.extend(look.mass.and_then(|mass| trial.shows(mass, shop.voice()).err()));
        wrong.extend(look.pool.and_then(|pool| trial.holds(pool, shop.voice()).err()));
        let seen = look != (Look { at, ..Look::default() });
        if wrong.is_empty() { Ok(seen.then_some(look)) } else { Err(wrong) }
    }

    pub(super) fn fields(self) -> View {
        let grades = [Grade::None, Grade::Little, Grade::Much].map(|g| (Some(g), g.name()));
        let grades: Vec<_> = [(None, "not looked at")].into_iter().chain(grades).collect();
        let field = |label: &'static str, hint: &'static str| Field::new(label).hint(hint).optional();
        group![
            el("div")
                .class("fields")
                .child(length_field(
                    field("Pool across", "The melted wax, wall to wall where it is full."),
                    self.pool
                ))
                .child(length_field(field("Pool deep", "A cold knitting needle shows it."), self.depth))
                .child(length_field(field("Flame", "From the wax to its tip."), self.flame))
                .child(temperature_field(field("Vessel outside", "Where it is hottest."), self.outside))
                .child(mass_field(field("Weight", "Only where it burns on the scale."), self.mass)),
            choice("Soot", self.soot, &grades),
            choice("Mushroom on the wick", self.mushroom, &grades),
            choice("Wax left on the wall", self.hang_up, &grades),
            choice("Hot throw", self.throw, &throws()),
            area("Note", self.note)
        ]
    }
}

pub(super) fn form(shop: Workshop, id: Id, trial: &Trial) -> View {
    let form = Form::new();
    let trial = trial.clone();
    let keep = move || match form.look(shop, &trial, keep::now()) {
        Ok(Some(look)) => {
            does(shop, &id, BurnEvent::Looked(Box::new(look)));
            Vec::new()
        }
        Ok(None) => vec!["Nothing was looked at. Type or choose what you see.".to_owned()],
        Err(wrong) => wrong,
    };
    group![
        el("h3").child("What you see"),
        form.fields(),
        el("div").class("large").child(finish("Keep this look", None, keep))
    ]
}
