//! The mass of a drop: N drops weighed together, several times if one likes.

use super::{HERE, learn, name_of, told};
use crate::bench::{DropTrial, DropWeighing, drop_mass};
use crate::book::{Fact, Id};
use crate::rooms::parts::{Field, Typed, field, finish, live, mass_field, page_head, press, text_field};
use crate::rooms::workshop::Workshop;
use leptos::prelude::*;

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
    rows: RwSignal<Vec<Row>>,
    next: StoredValue<u32>,
}

impl Form {
    fn add(self, drops: &str) {
        let key = self.next.get_value();
        self.next.set_value(key + 1);
        self.rows.update(|r| r.push(Row { key, drops: Typed::new(drops), mass: Typed::new("") }));
    }

    /// The trial as it stands, or every sentence that says why it is none.
    fn trial(self, shop: Workshop) -> Result<DropTrial, Vec<String>> {
        let mut wrong = Vec::new();
        let mut weighings = Vec::new();
        for (place, row) in (1..).zip(self.rows.get()) {
            match (row.drops.count(), row.mass.read(shop.mass_unit())) {
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
                    Err(errors) => wrong.extend(errors.iter().map(ToString::to_string)),
                }
            }
            Ok(_) => {}
        }
        Err(wrong)
    }
}

pub(super) fn page(shop: Workshop, ingredient: &Id) -> AnyView {
    // The finest scale is the one for drops.
    let division = shop.state(|s| {
        let scales = s.scales_shown().into_iter().filter_map(|k| k.body());
        scales.map(|s| s.division).min_by(|a, b| a.value.cmp(&b.value))
    });
    let form = Form {
        name: Typed::new(name_of(shop, ingredient)),
        division: Typed::amount(division),
        rows: RwSignal::new(Vec::new()),
        next: StoredValue::new(0),
    };
    form.add("20");
    let offers = shop.state(|s| s.part_names());
    view! {
        {page_head(HERE, "Bench", "Weigh drops".to_owned())}
        <p class="lead">
            "A formula counts a dye in drops, a scale knows only grams. Put a small cup on your finest scale and tare it. Count
            drops into it, twenty or more, then read the scale. Hold the dropper as you do at the pot."
        </p>
        {text_field("What is dropped", form.name, offers)}
        <ol class="weighings">
            <For each=move || form.rows.get() key=|r| r.key children=move |row| weighing(form, row) />
        </ol>
        <p>{press("", "Weigh once more", move || form.add("20"))}</p>
        {mass_field(
            Field::new("Division of the scale").placeholder("0.01 g").hint("The smallest step its display shows."),
            form.division,
        )}
        {answer(shop, form)}
        {finish("Keep this drop", Some(HERE), move || learn(shop, &form.name.get(), form.trial(shop).map(Fact::Drops)))}
    }
    .into_any()
}

fn weighing(form: Form, row: Row) -> AnyView {
    let remove = move || form.rows.update(|r| r.retain(|o| o.key != row.key));
    let more_than_one = move || form.rows.with(|r| r.len() > 1);
    let count = move || row.drops.count().map(|_| String::new()).map_err(|e| e.to_string());
    let counted = Field { keys: "numeric", ..Field::new("Drops") };
    view! {
        <li class="fields">
            {field(counted, row.drops, count)}
            {mass_field(Field::new("The scale shows").placeholder("0.43 g"), row.mass)}
            {live(move || more_than_one().then(|| press("quiet remove", "Remove this weighing", remove)).into_any())}
        </li>
    }
    .into_any()
}

fn answer(shop: Workshop, form: Form) -> AnyView {
    let found = Memo::new(move |_| drop_mass(&form.trial(shop).ok()?, shop.voice()));
    view! {
        <div class="answer-line" aria-live="polite">
            {live(move || found.get().map(|d| told(d.say(shop.voice()), d.why)).into_any())}
        </div>
    }
    .into_any()
}
