//! The bulk density of a powder: level spoons weighed together.

use super::{HERE, learn, name_of, told};
use crate::bench::{SpoonTrial, bulk_density};
use crate::book::{Fact, Id};
use crate::dom::*;
use crate::quantity::{Amount, Exact, Mass, VolumeUnit};
use crate::rooms::parts::{
    Field, Typed, choice, field, finish, live, mass_field, page_head, press, text_field,
};
use crate::rooms::workshop::Workshop;

/// One weighing as typed.
#[derive(Clone, Copy)]
struct Row {
    key: u32,
    spoons: Typed,
    mass: Typed,
}

#[derive(Clone, Copy)]
struct Form {
    name: Typed,
    spoon: Value<VolumeUnit>,
    rows: Value<Vec<Row>>,
}

impl Form {
    fn add(self, spoons: &str, mass: Option<Amount<Mass>>) {
        self.rows.update(|all| {
            let key = all.last().map_or(1, |last| last.key + 1);
            all.push(Row { key, spoons: Typed::new(spoons), mass: Typed::amount(mass) });
        });
    }

    /// The trial as it stands, or every sentence that says why it is none.
    fn trial(self, shop: Workshop) -> Result<SpoonTrial, Vec<String>> {
        let spoon = Amount::new(Exact::ONE, self.spoon.get());
        let (mut wrong, mut weighings) = (Vec::new(), Vec::new());
        for row in self.rows.get() {
            match (row.spoons.count(), row.mass.read(shop.mass_unit())) {
                (Ok(spoons), Ok(mass)) => {
                    weighings.push(SpoonTrial { spoon, spoons, mass, again: Vec::new() })
                }
                (spoons, mass) => {
                    wrong.extend([spoons.err(), mass.err()].into_iter().flatten().map(|e| e.to_string()));
                }
            }
        }
        let mut weighings = weighings.into_iter();
        if wrong.is_empty()
            && let Some(first) = weighings.next()
        {
            let trial = SpoonTrial { again: weighings.collect(), ..first };
            let errors = trial.check().err().unwrap_or_default();
            wrong.extend(errors.iter().map(ToString::to_string));
            if wrong.is_empty() {
                return Ok(trial);
            }
        }
        Err(wrong)
    }
}

pub(super) fn page(shop: Workshop, ingredient: &Id) -> View {
    // More spoons are added to those weighed before.
    let known = shop.state(|s| s.ingredients.get(ingredient)?.body()?.spoons.clone());
    let form = Form {
        name: Typed::new(name_of(shop, ingredient)),
        spoon: Value::new(known.as_ref().map_or(VolumeUnit::Tablespoon, |t| t.spoon.unit)),
        rows: Value::new(Vec::new()),
    };
    for weighing in known.iter().flat_map(SpoonTrial::weighings) {
        form.add(&weighing.spoons.to_string(), Some(weighing.mass));
    }
    if known.is_none() {
        form.add("4", None);
    }
    let offers = shop.state(|s| s.part_names());
    let found = Derived::new(move || {
        let (trial, voice) = (form.trial(shop).ok()?, shop.voice());
        Some((trial.say(voice)?, bulk_density(&trial, voice)?.1))
    });
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
        el("ol").class("weighings").child(each(
            move || form.rows.get(),
            |r| u64::from(r.key),
            move |row| weighing(form, row)
        )),
        el("p").child(press("", "Weigh once more", move || form.add("4", None))),
        el("div")
            .class("answer-line")
            .attr("aria-live", "polite")
            .child(live(move || found.get().map(|(said, why)| told(said, why)).view())),
        finish("Keep this spoon", Some(HERE), move || {
            learn(shop, &form.name.get(), form.trial(shop).map(Fact::Spoons))
        })
    ]
}

fn weighing(form: Form, row: Row) -> View {
    let remove = move || form.rows.update(|r| r.retain(|o| o.key != row.key));
    let more_than_one = move || form.rows.with(|r| r.len() > 1);
    let count = move || row.spoons.count().map(|_| String::new()).map_err(|e| e.to_string());
    let counted = Field { keys: "numeric", ..Field::new("How many, level") };
    el("li")
        .class("fields")
        .child(field(counted, row.spoons, count))
        .child(mass_field(Field::new("The scale shows").placeholder("32.4 g"), row.mass))
        .child(live(move || {
            more_than_one().then(|| press("quiet remove", "Remove this weighing", remove)).view()
        }))
        .view()
}
