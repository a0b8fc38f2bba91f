//! A scale of the workshop: new, changed, or put away.

use super::{HERE, steady};
use crate::bench::{BenchError, Scale, shows};
use crate::book::{Act, Id};
use crate::dom::*;
use crate::quantity::{Amount, Mass, MassUnit};
use crate::rooms::parts::{
    Field, Typed, finish, mass_field, mass_field_in, page_head, page_part, past, press, text_field,
};
use crate::rooms::workshop::Workshop;

#[derive(Clone, Copy)]
struct Form {
    name: Typed,
    capacity: Typed,
    division: Typed,
    least: Typed,
    tried: steady::Form,
}

impl Form {
    /// What its division and its smallest load are in where they are typed without a unit: what its capacity is in.
    fn unit(self, shop: Workshop) -> MassUnit {
        self.capacity.read::<Mass>(shop.mass_unit()).map_or(shop.mass_unit(), |amount| shows(amount.unit))
    }

    fn division(self, shop: Workshop) -> Option<Amount<Mass>> {
        self.division.read(self.unit(shop)).ok()
    }

    fn scale(self, shop: Workshop) -> Result<Scale, Vec<String>> {
        let read = |typed: Typed, unit, what: &str| typed.read(unit).map_err(|e| format!("{what}: {e}"));
        let unit = self.unit(shop);
        match (
            read(self.capacity, shop.mass_unit(), "Capacity"),
            read(self.division, unit, "Division"),
            read(self.least, unit, "Smallest load"),
        ) {
            (Ok(capacity), Ok(division), Ok(least)) => {
                let trial = self.tried.read(shop, division.unit);
                let mut wrong: Vec<String> = trial.as_ref().err().cloned().into_iter().collect();
                let trial = trial.unwrap_or_default();
                let scale = Scale { name: self.name.get(), capacity, division, least, trial };
                let errors = scale.check().err().unwrap_or_default();
                wrong.extend(errors.iter().map(|e| e.say(shop.voice())));
                if wrong.is_empty() { Ok(scale) } else { Err(wrong) }
            }
            (a, b, c) => {
                let unnamed = self.name.is_empty().then(|| BenchError::ScaleNoName.say(shop.voice()));
                Err([unnamed, a.err(), b.err(), c.err()].into_iter().flatten().collect())
            }
        }
    }
}

pub(super) fn page(shop: Workshop, id: &Id) -> View {
    let kept = shop.state(|s| s.scales.get(id).cloned());
    let known = kept.as_ref().and_then(|k| k.body());
    let form = Form {
        name: Typed::new(known.map_or("", |s| s.name.as_str())),
        capacity: Typed::amount(known.map(|s| s.capacity)),
        division: Typed::amount(known.map(|s| s.division)),
        least: Typed::amount(known.map(|s| s.least)),
        tried: steady::Form::of(shop, known.and_then(|s| s.trial.as_ref())),
    };
    let over = kept.as_ref().and_then(|k| k.latest()).map(|v| v.entry.clone());
    let old = kept.as_ref().map(|k| k.id.clone());
    let save = {
        let old = old.clone();
        move || match form.scale(shop) {
            Ok(body) => {
                let id = old.clone().unwrap_or_else(|| shop.new_id());
                if shop.act(Act::Scale { id, over: over.clone(), body }) {
                    shop.go(HERE);
                }
                Vec::new()
            }
            Err(wrong) => wrong,
        }
    };
    group![
        page_head(HERE, "Bench", if old.is_some() { "Scale" } else { "A new scale" }.to_owned()),
        el("p").class("lead").child(
            "Each part of a pour is sent to the scale that weighs it best. What a scale \
carries and its division are on its label or in its leaflet.",
        ),
        text_field("Name", form.name, Vec::new()),
        el("div")
            .class("fields")
            .child(mass_field(
                Field::new("Capacity").placeholder("5 kg").hint("The most it carries."),
                form.capacity,
            ))
            .child(mass_field_in(
                Field::new("Division").placeholder("0.1 g").hint("The smallest step its display shows."),
                form.division,
                move || form.unit(shop),
            ))
            .child(mass_field_in(
                Field::new("Smallest load worth weighing")
                    .placeholder("4 g")
                    .hint("About 40 divisions is good to 1 %."),
                form.least,
                move || form.unit(shop),
            )),
        page_part("scale-trial", "Try it", form.tried.part(shop, move || form.division(shop), form.least)),
        finish("Keep this scale", Some(HERE), save),
        old.map(|id| put_away(shop, id, "Put this scale away"))
    ]
}

/// The button that puts a thing of the bench away; the list takes it out again.
pub(super) fn put_away(shop: Workshop, id: Id, words: &'static str) -> View {
    let thing = id.clone();
    let away = move || {
        shop.act(Act::Retire { id: id.clone(), retired: true });
        shop.go(HERE);
    };
    group![past(shop, &thing), el("p").class("away").child(press("danger", words, away))]
}
