//! The same thing weighed several times: a row for each weighing, one more with a tap, and each can be taken out but the last.

use crate::dom::*;
use crate::quantity::{MassUnit, Voice};
use crate::rooms::parts::{Field, Typed, live, mass_field_in, press};
use crate::rooms::workshop::Workshop;
use crate::vessel::unit_of;

#[derive(Clone, Copy)]
struct Row {
    key: u32,
    mass: Typed,
}

/// With the unit they are in where none is typed with any.
#[derive(Clone, Copy)]
pub(super) struct Weighings(Value<Vec<Row>>, MassUnit);

impl Weighings {
    pub(super) fn new(unit: MassUnit) -> Self {
        Self(Value::new(Vec::new()), unit)
    }

    /// What those are in that are typed without a unit.
    pub(super) fn unit(self) -> MassUnit {
        unit_of(&self.joined(), Voice { mass: self.1, ..Workshop::here().voice() })
    }

    /// All that is typed, as in one text.
    pub(super) fn joined(self) -> String {
        let all: Vec<String> = self.all().into_iter().map(|mass| mass.text.get()).collect();
        all.join(";")
    }

    pub(super) fn add(self, mass: Typed) {
        self.0.update(|all| {
            let key = all.last().map_or(1, |last| last.key + 1);
            all.push(Row { key, mass });
        });
    }

    /// What is typed, in its order.
    pub(super) fn all(self) -> Vec<Typed> {
        self.0.get().into_iter().map(|row| row.mass).collect()
    }

    /// The rows, each a field of this name, and the button for one more.
    pub(super) fn view(self, label: &'static str, placeholder: &'static str) -> View {
        let one = move |row: Row| self.row(row, Field::new(label).placeholder(placeholder));
        group![
            el("ol").class("weighings").child(each(move || self.0.get(), |r| u64::from(r.key), one)),
            el("p").child(press("", "Weigh once more", move || self.add(Typed::new(""))))
        ]
    }

    fn row(self, row: Row, field: Field) -> View {
        let remove = move || self.0.update(|all| all.retain(|other| other.key != row.key));
        let more_than_one = move || self.0.with(|all| all.len() > 1);
        el("li")
            .class("fields")
            .child(mass_field_in(field, row.mass, move || self.unit()))
            .child(live(move || {
                more_than_one().then(|| press("quiet remove", "Remove this weighing", remove)).view()
            }))
            .view()
    }
}
