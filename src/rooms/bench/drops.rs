//! The mass of a drop: N drops weighed together, several times if one likes.

use super::{HERE, finest, learn, name_of, told};
use crate::bench::{DropTrial, DropWeighing, drop_mass, shows};
use crate::book::{Fact, Id};
use crate::dom::*;
use crate::quantity::{Amount, Mass, MassUnit};
use crate::rooms::parts::{
    Field, Typed, field, finish, live, mass_field, mass_field_in, page_head, press, text_field,
};
use crate::rooms::workshop::Workshop;

/// One weighing as typed.
#[derive(Clone, Copy)]
struct Row {
    key: u32,
    drops: Typed,
    mass: Typed,
}

#[derive(Clone, Copy)]
struct Form {
    name: Typed,
    division: Typed,
    rows: Value<Vec<Row>>,
    next: Value<u32>,
}

impl Form {
    fn add(self, drops: &str, mass: Option<Amount<Mass>>) {
        let key = self.next.get_untracked();
        self.next.set(key + 1);
        self.rows.update(|r| r.push(Row { key, drops: Typed::new(drops), mass: Typed::amount(mass) }));
    }

    /// What a weighing is in where it is typed without a unit: what the division of the scale is in.
    fn unit(self, shop: Workshop) -> MassUnit {
        self.division.read::<Mass>(shop.mass_unit()).map_or(shop.mass_unit(), |amount| shows(amount.unit))
    }

    /// The trial as it stands, or every sentence that says why it is none.
    fn trial(self, shop: Workshop) -> Result<DropTrial, Vec<String>> {
        let mut wrong = Vec::new();
        let mut weighings = Vec::new();
        for (place, row) in (1..).zip(self.rows.get()) {
            match (row.drops.count(), row.mass.read(self.unit(shop))) {
                (Ok(drops), Ok(mass)) => weighings.push(DropWeighing { drops, mass }),
                (drops, mass) => {
                    let errors = [drops.err(), mass.err()].into_iter().flatten();
                    wrong.extend(errors.map(|e| format!("Weighing {place}: {e}")));
                }
            }
        }
        match self.division.read(shop.mass_unit()) {
            Err(e) => wrong.push(format!("Division: {e}")),
            Ok(division) if wrong.is_empty() => {
                let trial = DropTrial { weighings, division };
                match trial.check() {
                    Ok(()) => return Ok(trial),
                    Err(errors) => wrong.extend(errors.iter().map(|e| e.say(shop.voice()))),
                }
            }
            Ok(_) => {}
        }
        Err(wrong)
    }
}

pub(super) fn page(shop: Workshop, ingredient: &Id) -> View {
    // More drops are added to those weighed before.
    let known = shop.state(|s| s.ingredients.get(ingredient)?.body()?.drops.clone());
    // The finest scale is the one for drops.
    let division = known.as_ref().map(|t| t.division).or_else(|| finest(shop));
    let form = Form {
        name: Typed::new(name_of(shop, ingredient)),
        division: Typed::amount(division),
        rows: Value::new(Vec::new()),
        next: Value::new(0),
    };
    for weighing in known.into_iter().flat_map(|t| t.weighings) {
        form.add(&weighing.drops.to_string(), Some(weighing.mass));
    }
    if form.rows.with_untracked(Vec::is_empty) {
        form.add("20", None);
    }
    let offers = shop.state(|s| s.part_names());
    group![
        page_head(HERE, "Bench", "Weigh drops".to_owned()),
        el("p").class("lead").child(
            "A formula counts a dye in drops, a scale knows only grams. Put a small cup on \
your finest scale and tare it. Count drops into it, twenty or more, then read \
the scale. Hold the dropper as you do at the pot.",
        ),
        text_field("What is dropped", form.name, offers),
        el("ol").class("weighings").child(each(
            move || form.rows.get(),
            |r| u64::from(r.key),
            move |row| weighing(form, row)
        )),
        el("p").child(press("", "Weigh once more", move || form.add("20", None))),
        mass_field(
            Field::new("Division of the scale")
                .placeholder("0.01 g")
                .hint("The smallest step its display shows."),
            form.division,
        ),
        answer(shop, form),
        finish("Keep this drop", Some(HERE), move || {
            learn(shop, &form.name.get(), form.trial(shop).map(Fact::Drops))
        })
    ]
}

fn weighing(form: Form, row: Row) -> View {
    let remove = move || form.rows.update(|r| r.retain(|o| o.key != row.key));
    let more_than_one = move || form.rows.with(|r| r.len() > 1);
    let count = move || row.drops.count().map(|_| String::new()).map_err(|e| e.to_string());
    let counted = Field { keys: "numeric", ..Field::new("Drops") };
    el("li")
        .class("fields")
        .child(field(counted, row.drops, count))
        .child(mass_field_in(Field::new("The scale shows").placeholder("0.43 g"), row.mass, move || {
            form.unit(Workshop::here())
        }))
        .child(live(move || {
            more_than_one().then(|| press("quiet remove", "Remove this weighing", remove)).view()
        }))
        .view()
}

fn answer(shop: Workshop, form: Form) -> View {
    let found = Derived::new(move || drop_mass(&form.trial(shop).ok()?, shop.voice()));
    el("div")
        .class("answer-line")
        .attr("aria-live", "polite")
        .child(live(move || found.get().map(|d| told(d.say(shop.voice()), d.why)).view()))
        .view()
}
