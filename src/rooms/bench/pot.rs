//! A melting pot of the workshop: new, changed, or put away.

use super::HERE;
use super::scale::put_away;
use crate::bench::{MeltingPot, PotBody, Stuff};
use crate::book::{Act, Id};
use crate::dom::*;
use crate::rooms::parts::{Field, Typed, choice, finish, mass_field, page_head, text_field};
use crate::rooms::workshop::Workshop;

/// What a pot is made of.
const STUFF: [(Stuff, &str); 4] = [
    (Stuff::Steel, "Steel, enamel"),
    (Stuff::Aluminium, "Aluminium"),
    (Stuff::Glass, "Glass"),
    (Stuff::Stoneware, "Stoneware"),
];

/// The fields.
#[derive(Clone, Copy)]
struct Form {
    name: Typed,
    capacity: Typed,
    weight: Typed,
    stuff: Value<Stuff>,
}

fn read(shop: Workshop, form: Form) -> Result<MeltingPot, Vec<String>> {
    let mass = |typed: Typed, what: &str| {
        typed.read(shop.mass_unit()).map_err(|e| vec![[what, ": ", &e.to_string()].concat()])
    };
    let capacity = mass(form.capacity, "What it holds")?;
    let body = if form.weight.is_empty() {
        None
    } else {
        Some(PotBody { weight: mass(form.weight, "The empty pot")?, stuff: form.stuff.get() })
    };
    let pot = MeltingPot { name: form.name.get(), capacity, body };
    match pot.check() {
        Ok(()) => Ok(pot),
        Err(errors) => Err(errors.iter().map(|e| e.say(shop.voice())).collect()),
    }
}

pub(super) fn page(shop: Workshop, id: &Id) -> View {
    let kept = shop.state(|s| s.pots.get(id).cloned());
    let known = kept.as_ref().and_then(|k| k.body());
    let body = known.and_then(|p| p.body.as_ref());
    let form = Form {
        name: Typed::new(known.map_or("", |p| p.name.as_str())),
        capacity: Typed::amount(known.map(|p| p.capacity)),
        weight: Typed::amount(body.map(|b| b.weight)),
        stuff: Value::new(body.map_or(Stuff::Steel, |b| b.stuff)),
    };
    let over = kept.as_ref().and_then(|k| k.latest()).map(|v| v.entry.clone());
    let old = kept.as_ref().map(|k| k.id.clone());
    let save = {
        let old = old.clone();
        move || match read(shop, form) {
            Ok(body) => {
                let id = old.clone().unwrap_or_else(|| shop.new_id());
                if shop.act(Act::Pot { id, over: over.clone(), body }) {
                    shop.go(HERE);
                }
                Vec::new()
            }
            Err(wrong) => wrong,
        }
    };
    group![
        page_head(HERE, "Bench", if old.is_some() { "Pot" } else { "A new pot" }.to_owned()),
        el("p").class("lead").child(
            "A batch too large for the pot is split into equal pours. Leave room to stir \
and for the foam.",
        ),
        text_field("Name", form.name, Vec::new()),
        mass_field(
            Field::new("What it safely holds").placeholder("4 kg").hint("Weight of wax, with room to stir."),
            form.capacity,
        ),
        mass_field(
            Field::new("The empty pot weighs").placeholder("900 g").optional().hint(
                "Its own warmth softens the fall when something cold goes in. Left empty, it is left out."
            ),
            form.weight,
        ),
        choice("Made of", form.stuff, &STUFF),
        finish("Keep this pot", Some(HERE), save),
        old.map(|id| put_away(shop, id, "Put this pot away"))
    ]
}
