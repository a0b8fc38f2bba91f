//! The bulk density of a powder: level spoons weighed together.

use super::weighings::Weighings;
use super::{HERE, finest, learn, name_of, told};
use crate::bench::{SpoonTrial, bulk_density, shows};
use crate::book::{Fact, Id};
use crate::dom::*;
use crate::quantity::{Amount, Exact, VolumeUnit};
use crate::rooms::parts::{Field, Typed, choice, field, finish, live, page_head, text_field};
use crate::rooms::workshop::Workshop;

#[derive(Clone, Copy)]
struct Form {
    name: Typed,
    spoon: Value<VolumeUnit>,
    spoons: Typed,
    weighed: Weighings,
}

impl Form {
    /// The trial as it stands, or every sentence that says why it is none.
    fn trial(self, shop: Workshop) -> Result<SpoonTrial, Vec<String>> {
        let (mut wrong, mut masses) = (Vec::new(), Vec::new());
        let spoons = self.spoons.count().map_err(|e| wrong.push(e.to_string())).unwrap_or_default();
        for row in self.weighed.all() {
            match row.mass.read(self.weighed.unit()) {
                Ok(mass) => masses.push(mass),
                Err(why) => wrong.push(why.to_string()),
            }
        }
        let mut masses = masses.into_iter();
        if wrong.is_empty()
            && let Some(mass) = masses.next()
        {
            let spoon = Amount::new(Exact::ONE, self.spoon.get());
            let trial = SpoonTrial { spoon, spoons, mass, again: masses.collect() };
            let errors = trial.check().err().unwrap_or_default();
            wrong.extend(errors.iter().map(|e| e.say(shop.voice())));
            if wrong.is_empty() {
                return Ok(trial);
            }
        }
        Err(wrong)
    }
}

pub(super) fn page(shop: Workshop, ingredient: &Id) -> View {
    // More weighings are added to those before.
    let known = shop.state(|s| s.ingredients.get(ingredient)?.body()?.spoons.clone());
    let form = Form {
        name: Typed::new(name_of(shop, ingredient)),
        spoon: Value::new(known.as_ref().map_or(VolumeUnit::Tablespoon, |t| t.spoon.unit)),
        spoons: Typed::new(known.as_ref().map_or("4".to_owned(), |t| t.spoons.to_string())),
        weighed: Weighings::new(finest(shop).map_or(shop.mass_unit(), |division| shows(division.unit))),
    };
    for mass in known.iter().flat_map(SpoonTrial::masses) {
        form.weighed.add(Typed::amount(Some(mass)));
    }
    if known.is_none() {
        form.weighed.add(Typed::new(""));
    }
    let offers = shop.state(|s| s.part_names());
    let found = Derived::new(move || {
        let (trial, voice) = (form.trial(shop).ok()?, shop.voice());
        Some((trial.say(voice)?, bulk_density(&trial, voice)?.1))
    });
    let count = move || form.spoons.count().map(|_| String::new()).map_err(|e| e.to_string());
    let counted = Field { keys: "numeric", ..Field::new("How many, level") };
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
        field(counted.hint("As many each time."), form.spoons, count),
        form.weighed.view("The scale shows", "32.4 g"),
        el("div")
            .class("answer-line")
            .attr("aria-live", "polite")
            .child(live(move || found.get().map(|(said, why)| told(said, why)).view())),
        finish("Keep this spoon", Some(HERE), move || {
            learn(shop, &form.name.get(), form.trial(shop).map(Fact::Spoons))
        })
    ]
}
