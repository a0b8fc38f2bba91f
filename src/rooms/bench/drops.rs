//! The mass of a drop: N drops weighed together, several times if one likes.

use super::weighings::Weighings;
use super::{HERE, finest, learn, name_of, told};
use crate::bench::{DropTrial, DropWeighing, drop_mass, shows};
use crate::book::{Fact, Id};
use crate::dom::*;
use crate::quantity::Mass;
use crate::rooms::parts::{Field, Typed, finish, live, mass_field, page_head, text_field};
use crate::rooms::workshop::Workshop;

#[derive(Clone, Copy)]
struct Form {
    name: Typed,
    division: Typed,
    weighed: Weighings,
}

impl Form {
    /// The trial as it stands, or every sentence that says why it is none.
    fn trial(self, shop: Workshop) -> Result<DropTrial, Vec<String>> {
        let mut wrong = Vec::new();
        let mut weighings = Vec::new();
        for (place, row) in (1..).zip(self.weighed.all()) {
            match (row.count.count(), row.mass.read(self.weighed.unit())) {
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
    let division = Typed::amount(division);
    // What the scale shows is in what its division is in, where it is typed without a unit.
    let unit = move || division.read::<Mass>(shop.mass_unit()).map_or(shop.mass_unit(), |d| shows(d.unit));
    let weighed = Weighings::counted("Drops", "20", Derived::new(unit));
    let form = Form { name: Typed::new(name_of(shop, ingredient)), division, weighed };
    for weighing in known.iter().flat_map(|t| &t.weighings) {
        weighed.add_of(&weighing.drops.to_string(), Typed::amount(Some(weighing.mass)));
    }
    if known.is_none_or(|t| t.weighings.is_empty()) {
        weighed.add(Typed::new(""));
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
        form.weighed.view("The scale shows", "0.43 g"),
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

fn answer(shop: Workshop, form: Form) -> View {
    let found = Derived::new(move || drop_mass(&form.trial(shop).ok()?, shop.voice()));
    el("div")
        .class("answer-line")
        .attr("aria-live", "polite")
        .child(live(move || found.get().map(|d| told(d.say(shop.voice()), d.why)).view()))
        .view()
}
