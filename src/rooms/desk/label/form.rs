//! A label of the workshop: the sheet and what stands on it.

use crate::book::{Act, Id};
use crate::desk::label::{Design, Market, Part, Sheet};
use crate::dom::*;
use crate::quantity::{Amount, Exact, Length, LengthUnit};
use crate::rooms::parts::{
    Field, Typed, choice, field, finish, length_field, page_head, past, press, stepper, text_field,
};
use crate::rooms::workshop::Workshop;

const HERE: &str = "#desk";

/// The lengths of a sheet: their labels, and what they are before one is typed, in millimetres (A4, three by six).
const LENGTHS: [(&str, &str); 8] = [
    ("Width of the page", "210 mm"),
    ("Height of the page", "297 mm"),
    ("Width of a label", "80 mm"),
    ("Height of a label", "60 mm"),
    ("Left margin", "20 mm"),
    ("Top margin", "20 mm"),
    ("Gap between columns", "5 mm"),
    ("Gap between rows", "5 mm"),
];

#[derive(Clone, Copy)]
struct Form {
    name: Typed,
    maker: Typed,
    compared: Typed,
    round: Value<bool>,
    market: Value<Market>,
    columns: Typed,
    rows: Typed,
    lengths: [Typed; 8],
    parts: Value<Vec<Part>>,
}

impl Form {
    fn new(known: Option<&Design>) -> Self {
        let sheet = known.map(|d| &d.sheet);
        let lengths = |s: &Sheet| {
            [s.page_width, s.page_height, s.width, s.height, s.left, s.top, s.across, s.down]
                .map(|l| Typed::amount(Some(l)))
        };
        Self {
            name: Typed::new(known.map_or("", |d| d.name.as_str())),
            maker: Typed::new(known.map_or("", |d| d.maker.as_str())),
            compared: Typed::new(known.map_or("", |d| d.compared.as_str())),
            round: Value::new(sheet.is_some_and(|s| s.round)),
            market: Value::new(known.map_or(Market::Both, |d| d.market)),
            columns: Typed::new(sheet.map_or(2, |s| s.columns).to_string()),
            rows: Typed::new(sheet.map_or(4, |s| s.rows).to_string()),
            lengths: sheet.map_or_else(|| LENGTHS.map(|(_, usual)| Typed::new(usual)), lengths),
            parts: Value::new(known.map_or_else(|| Part::ALL.to_vec(), |d| d.parts.clone())),
        }
    }

    fn design(self, shop: Workshop) -> Result<Design, Vec<String>> {
        let mut wrong = Vec::new();
        let unit = shop.voice().length;
        let mut read: Vec<Amount<Length>> = Vec::new();
        for (typed, (label, _)) in self.lengths.iter().zip(LENGTHS) {
            match typed.read::<Length>(unit) {
                Ok(length) => read.push(length),
                Err(e) => wrong.push([label, ": ", &e.to_string()].concat()),
            }
        }
        let mut count = |typed: Typed, label: &str| {
            typed.count().unwrap_or_else(|e| {
                wrong.push([label, ": ", &e.to_string()].concat());
                0
            })
        };
        let (columns, rows) = (count(self.columns, "Columns"), count(self.rows, "Rows"));
        if !wrong.is_empty() {
            return Err(wrong);
        }
        let none = Amount::new(Exact::ZERO, LengthUnit::Millimetre);
        let at = |n: usize| read.get(n).copied().unwrap_or(none);
        let sheet = Sheet {
            page_width: at(0),
            page_height: at(1),
            width: at(2),
            height: at(3),
            round: self.round.get(),
            columns,
            rows,
            left: at(4),
            top: at(5),
            across: at(6),
            down: at(7),
        };
        let design = Design {
            name: self.name.get(),
            sheet,
            parts: self.parts.get(),
            market: self.market.get(),
            maker: self.maker.get(),
            compared: self.compared.get(),
        };
        match design.check() {
            Ok(()) => Ok(design),
            Err(errors) => Err(errors.iter().map(|e| e.say(shop.voice())).collect()),
        }
    }
}

pub(in super::super) fn page(shop: Workshop, id: &Id) -> View {
    let kept = shop.state(|s| s.labels.get(id).cloned());
    let form = Form::new(kept.as_ref().and_then(|k| k.body()));
    let over = kept.as_ref().and_then(|k| k.latest()).map(|v| v.entry.clone());
    let old = kept.as_ref().map(|k| k.id.clone());
    let save = {
        let old = old.clone();
        move || match form.design(shop) {
            Ok(body) => {
                let id = old.clone().unwrap_or_else(|| shop.new_id());
                let to = ["#desk/print/", &id.0].concat();
                if shop.act(Act::Label { id, over: over.clone(), body }) {
                    shop.go(&to);
                }
                Vec::new()
            }
            Err(wrong) => wrong,
        }
    };
    let away = old.clone().map(|id| {
        let past = past(shop, &id);
        let away = move || {
            shop.act(Act::Retire { id: id.clone(), retired: true });
            shop.go(HERE);
        };
        group![past, el("p").class("away").child(press("danger", "Put this label away", away))]
    });
    let lengths = LENGTHS.iter().zip(form.lengths);
    let lengths =
        lengths.map(|((label, usual), typed)| length_field(Field::new(*label).placeholder(*usual), typed));
    group![
        page_head(HERE, "Desk", if old.is_some() { "Label" } else { "A new label" }.to_owned()),
        text_field("Name of the label", form.name, Vec::new()),
        parts(form.parts),
        choice(
            "By the rules of",
            form.market,
            &[
                (Market::Both, "Both"),
                (Market::UnitedStates, "United States"),
                (Market::EuropeanUnion, "European Union"),
            ],
        ),
        field(
            Field::text("Who makes it: name and address")
                .optional()
                .hint("With hazards a telephone number as well (CLP, Article 17)."),
            form.maker,
            || Ok(String::new())
        ),
        field(
            Field::text("Fire safety compared with")
                .optional()
                .hint("Your own copy of your market's standard: its number, its year, the day you looked."),
            form.compared,
            || Ok(String::new())
        ),
        el("h2").child("The sheet"),
        el("p").class("lead").child("Measure it with a rule, or take the numbers from its wrapper."),
        choice("Shape", form.round, &[(false, "Square-cornered"), (true, "Round")]),
        el("div")
            .class("fields")
            .child(stepper("Columns", "columns", form.columns))
            .child(stepper("Rows", "rows", form.rows))
            .child(lengths.views()),
        finish("Keep this label", Some(HERE), save),
        away
    ]
}

/// What stands on it, each on or off.
fn parts(chosen: Value<Vec<Part>>) -> View {
    let one = |part: Part| {
        let id = Workshop::here().fresh_dom_id();
        let turn = move || {
            chosen.update(|parts| {
                if parts.contains(&part) {
                    parts.retain(|p| *p != part);
                } else {
                    parts.push(part);
                }
            });
        };
        group![
            el("input")
                .attr("type", "checkbox")
                .attr("id", id.clone())
                .prop("checked", move || chosen.with(|parts| parts.contains(&part)))
                .on("change", move |_| turn()),
            el("label").attr("for", id).child(part.name())
        ]
    };
    el("fieldset")
        .class("choice")
        .child(el("legend").child("What stands on it"))
        .child(el("div").class("options").child(Part::ALL.into_iter().map(one).views()))
        .view()
}
