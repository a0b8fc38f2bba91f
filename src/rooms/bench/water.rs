//! A vessel by water: filled to the brim and weighed, several times if one likes, and held against its inside by rule.

use super::weighings::Weighings;
use super::{HERE, told};
use crate::bench::{beside, held};
use crate::book::{Act, Id};
use crate::dom::*;
use crate::rooms::parts::{
    Field, Typed, finish, length_field, live, missing_page, page_head, page_part, sentence,
    temperature_field, why_button,
};
use crate::rooms::workshop::Workshop;
use crate::vessel::{Draft, Vessel, VesselError, check};

#[derive(Clone, Copy)]
struct Form {
    weighed: Weighings,
    at: Typed,
    top: Typed,
    bottom: Typed,
    height: Typed,
    /// The rest of the vessel, which stays.
    of: Value<Draft>,
}

impl Form {
    fn of(draft: Draft) -> Self {
        let typed = |text: &String| Typed::new(text.clone());
        let form = Self {
            weighed: Weighings::new(Workshop::here().mass_unit()),
            at: typed(&draft.water_at),
            top: typed(&draft.top),
            bottom: typed(&draft.bottom),
            height: typed(&draft.height),
            of: Value::new(Draft::default()),
        };
        draft.water.split(';').for_each(|mass| form.weighed.add(Typed::new(mass.trim())));
        form.of.set(draft);
        form
    }

    /// The vessel as it stands, and a sentence for each text that cannot be read.
    fn read(self, shop: Workshop) -> (Vessel, Vec<String>) {
        let draft = Draft {
            water: self.weighed.joined(),
            water_at: self.at.text.get(),
            top: self.top.text.get(),
            bottom: self.bottom.text.get(),
            height: self.height.text.get(),
            ..self.of.get()
        };
        draft.read(shop.voice())
    }

    /// The vessel to be kept, or every sentence that says why it is none.
    fn vessel(self, shop: Workshop) -> Result<Vessel, Vec<String>> {
        let (vessel, mut wrong) = self.read(shop);
        if wrong.is_empty() {
            let errors = match &vessel.water {
                Some(_) => check(&vessel).err().unwrap_or_default(),
                None => vec![VesselError::NoWater],
            };
            wrong.extend(errors.iter().map(|e| e.say(shop.voice())));
        }
        if wrong.is_empty() { Ok(vessel) } else { Err(wrong) }
    }
}

pub(super) fn page(shop: Workshop, id: &Id) -> View {
    let known = shop.state_untracked(|s| s.vessels.get(id)?.latest().cloned());
    let Some(version) = known else {
        return missing_page(HERE, "Bench", "There is no vessel of this address in this book.");
    };
    let before = version.body;
    let form = Form::of(Draft::of(&before, shop.voice()));
    let in_book = ["#book/vessel/", &id.0].concat();
    let title = ["Weigh the water in ", &before.name].concat();
    let id = id.clone();
    let keep = move || match form.vessel(shop) {
        Ok(body) => {
            let over = Some(version.entry.clone());
            if body == before || shop.act(Act::Vessel { id: id.clone(), over, body }) {
                shop.go(HERE);
            }
            Vec::new()
        }
        Err(wrong) => wrong,
    };
    group![
        page_head(HERE, "Bench", title),
        el("p").class("lead").child(
            "Tare the dry vessel, fill it to the brim with water at room temperature, and weigh. Empty it, dry it, and \
fill it again: the brim is never quite the same.",
        ),
        form.weighed.view("Water to the brim", "300 g"),
        temperature_field(Field::new("Temperature of the water"), form.at),
        el("div").class("answer-line").attr("aria-live", "polite").child(live(move || answer(shop, form))),
        page_part("water-inside", "Its inside, by rule", inside(shop, form)),
        finish("Keep what it holds", Some(HERE), keep),
        el("p").class("more").child(el("a").attr("href", in_book).child("This vessel in the Book"))
    ]
}

fn answer(shop: Workshop, form: Form) -> View {
    let (vessel, wrong) = form.read(shop);
    if !wrong.is_empty() {
        return View::Nothing;
    }
    match vessel.water.map(|water| held(&water, shop.voice())) {
        Some(Ok((said, why))) => told(said, why),
        Some(Err(why)) => sentence(why.say(shop.voice())),
        None => View::Nothing,
    }
}

/// The inside, typed here or in the Book, and whether it says the same.
fn inside(shop: Workshop, form: Form) -> View {
    let against = move || {
        let (vessel, wrong) = form.read(shop);
        let found = wrong.is_empty().then(|| beside(&vessel, shop.voice()))?;
        found.map(|b| {
            let class = if b.agrees() { "found" } else { "lead" };
            group![el("p").class(class).child(b.say(shop.voice())), why_button(b.why)]
        })
    };
    group![
        el("p").class("why-line").child(
            "Measured inside too, the two are held against each other. The water counts; the inside is for a space \
below the rim, and for how it cools.",
        ),
        el("div")
            .class("fields")
            .child(length_field(Field::new("Inside, across the top").optional(), form.top))
            .child(length_field(
                Field::new("Inside, across the bottom").optional().hint("Left empty: straight sides."),
                form.bottom,
            ))
            .child(length_field(Field::new("Inside, height").optional(), form.height)),
        el("div").class("answer-line").attr("aria-live", "polite").child(live(move || against().view()))
    ]
}
