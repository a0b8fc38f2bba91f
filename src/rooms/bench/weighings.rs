//! The same thing weighed several times: a row for each weighing, one more with a tap, and each can be taken out but the last.

use crate::dom::*;
use crate::quantity::{MassUnit, Voice};
use crate::rooms::parts::{Field, Typed, field, live, mass_field_in, press};
use crate::rooms::workshop::Workshop;
use crate::vessel::unit_of;

#[derive(Clone, Copy)]
pub(super) struct Row {
    key: u32,
    /// How many of it were weighed, where that is asked each time.
    pub(super) count: Typed,
    pub(super) mass: Typed,
}

#[derive(Clone, Copy)]
pub(super) struct Weighings {
    rows: Value<Vec<Row>>,
    /// What they are in where none is typed with a unit.
    unit: Derived<MassUnit>,
    /// What is counted, and how many of it at first; none where that is not asked.
    counted: Option<(&'static str, &'static str)>,
}

impl Weighings {
    pub(super) fn new(unit: MassUnit) -> Self {
        Self { rows: Value::new(Vec::new()), unit: Derived::new(move || unit), counted: None }
    }

    /// Of so many things together each time, which are asked for beside the mass.
    pub(super) fn counted(what: &'static str, first: &'static str, unit: Derived<MassUnit>) -> Self {
        Self { rows: Value::new(Vec::new()), unit, counted: Some((what, first)) }
    }

    /// What those are in that are typed without a unit.
    pub(super) fn unit(self) -> MassUnit {
        unit_of(&self.joined(), Voice { mass: self.unit.get(), ..Workshop::here().voice() })
    }

    /// All that is typed, as in one text.
    pub(super) fn joined(self) -> String {
        let all: Vec<String> = self.all().into_iter().map(|row| row.mass.text.get()).collect();
        all.join(";")
    }

    pub(super) fn add(self, mass: Typed) {
        self.add_of(self.counted.map_or("", |(_, first)| first), mass);
    }

    /// One of so many.
    pub(super) fn add_of(self, count: &str, mass: Typed) {
        self.rows.update(|all| {
            let key = all.last().map_or(1, |last| last.key + 1);
            all.push(Row { key, count: Typed::new(count), mass });
        });
    }

    /// What is typed, in its order.
    pub(super) fn all(self) -> Vec<Row> {
        self.rows.get()
    }

    /// The rows, each a field of this name, and the button for one more.
    pub(super) fn view(self, label: &'static str, placeholder: &'static str) -> View {
        let one = move |row: Row| self.row(row, Field::new(label).placeholder(placeholder));
        group![
            el("ol").class("weighings").child(each(move || self.rows.get(), |r| u64::from(r.key), one)),
            el("p").child(press("", "Weigh once more", move || self.add(Typed::new(""))))
        ]
    }

    fn row(self, row: Row, mass: Field) -> View {
        let remove = move || self.rows.update(|all| all.retain(|other| other.key != row.key));
        let more_than_one = move || self.rows.with(|all| all.len() > 1);
        let number = move || row.count.count().map(|_| String::new()).map_err(|e| e.to_string());
        let counted = self
            .counted
            .map(|(what, _)| field(Field { keys: "numeric", ..Field::new(what) }, row.count, number));
        el("li")
            .class("fields")
            .child(counted)
            .child(mass_field_in(mass, row.mass, move || self.unit()))
            .child(live(move || {
                more_than_one().then(|| press("quiet remove", "Remove this weighing", remove)).view()
            }))
            .view()
    }
}
