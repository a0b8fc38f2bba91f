//! The bulk density of a powder: level spoons weighed together.

use super::{HERE, learn, name_of, told};
use crate::bench::{SpoonTrial, bulk_density};
use crate::book::{Fact, Id};
use crate::dom::*;
use crate::quantity::{Amount, Exact, VolumeUnit};
use crate::rooms::parts::{Field, Typed, choice, field, finish, live, mass_field, page_head, text_field};
use crate::rooms::workshop::Workshop;

#[derive(Clone, Copy)]
struct Form {
    name: Typed,
    spoon: Value<VolumeUnit>,
    spoons: Typed,
    mass: Typed,
}

impl Form {
    /// The trial as it stands, or every sentence that says why it is none.
    fn trial(self, shop: Workshop) -> Result<SpoonTrial, Vec<String>> {
        match (self.spoons.count(), self.mass.read(shop.mass_unit())) {
            (Ok(spoons), Ok(mass)) => {
                let trial = SpoonTrial { spoon: Amount::new(Exact::ONE, self.spoon.get()), spoons, mass };
                let errors = trial.check().err().unwrap_or_default();
                if errors.is_empty() {
                    Ok(trial)
                } else {
                    Err(errors.iter().map(ToString::to_string).collect())
                }
            }
            (spoons, mass) => {
                let spoons = spoons.err().map(|e| e.to_string());
                Err(spoons.into_iter().chain(mass.err().map(|e| e.to_string())).collect())
            }
        }
    }
}

pub(super) fn page(shop: Workshop, ingredient: &Id) -> View {
    let form = Form {
        name: Typed::new(name_of(shop, ingredient)),
        spoon: Value::new(VolumeUnit::Tablespoon),
        spoons: Typed::new("4"),
        mass: Typed::new(""),
    };
    let offers = shop.state(|s| s.part_names());
    let found = Derived::new(move || {
        let (trial, voice) = (form.trial(shop).ok()?, shop.voice());
        Some((trial.say(voice)?, bulk_density(&trial, voice)?.1))
    });
    let count = move || form.spoons.count().map(|_| String::new()).map_err(|e| e.to_string());
    group![
        page_head(HERE, "Bench", "Weigh spoons".to_owned()),
        el("p").class("lead").child(
            "A spoon of one powder weighs twice a spoon of another. Tare a cup on the \
scale, fill a measuring spoon, level it with a straight edge, and tip in a \
few: the more spoons, the surer the answer.",
        ),
        text_field("What is spooned", form.name, offers),
        choice(
            "Spoon",
            form.spoon,
            &[
                (VolumeUnit::Teaspoon, "Teaspoon"),
                (VolumeUnit::Tablespoon, "Tablespoon"),
                (VolumeUnit::Cup, "Cup"),
            ],
        ),
        el("div")
            .class("fields")
            .child(field(Field { keys: "numeric", ..Field::new("How many, level") }, form.spoons, count))
            .child(mass_field(Field::new("The scale shows").placeholder("32.4 g"), form.mass)),
        el("div")
            .class("answer-line")
            .attr("aria-live", "polite")
            .child(live(move || found.get().map(|(said, why)| told(said, why)).view())),
        finish("Keep this spoon", Some(HERE), move || {
            learn(shop, &form.name.get(), form.trial(shop).map(Fact::Spoons))
        })
    ]
}
