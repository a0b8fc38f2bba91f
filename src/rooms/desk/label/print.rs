//! A label for a batch, or for a formula and a vessel: seen large, looked over, printed as a sheet.

use super::draw::{large, page as sheet_of};
use super::net::Net;
use super::told::told;
use crate::book::{Batch, Burden, Id, Labelling};
use crate::desk::label::{Design, Face, Laid, Part, lay};
use crate::dom::*;
use crate::keep;
use crate::rooms::parts::{Pick, Typed, caution, later, live, page_head, pick, press, text_field};
use crate::rooms::workshop::Workshop;
use crate::shelf::batch_number;
use std::rc::Rc;

#[derive(Clone, Copy)]
struct Form {
    /// The id of the batch, empty for none.
    batch: Value<String>,
    formula: Value<String>,
    vessel: Value<String>,
    name: Typed,
    number: Typed,
    day: Typed,
    net: Net,
    small: Value<bool>,
    few_names: Value<bool>,
    face: Face,
    /// What the formula brings; none where there is none. Anew when the book changes, not with every letter.
    burden: Derived<Option<Rc<Burden>>>,
    /// The label as it is now, and as the sheet shows it: the many small ones of the sheet come after the large one.
    laid: Value<Option<Rc<Laid>>>,
    printed: Value<Option<Rc<Laid>>>,
}

/// Milliseconds: the large label is on the screen by then.
const PAINTED: u32 = 40;

impl Form {
    /// The sheet is to show this: at once where it shows nothing or is to show nothing, since what cannot be read must
    /// not be printed as if it were not typed.
    fn lay(self, laid: Option<Rc<Laid>>) {
        let at_once = laid.is_none() || self.printed.with_untracked(Option::is_none);
        self.laid.set(laid);
        if at_once {
            self.bring();
        } else {
            later(PAINTED, move || self.bring());
        }
    }

    /// Brings the sheet up to date.
    fn bring(self) {
        let Some(now) = self.laid.try_untracked() else { return };
        if self.printed.with_untracked(|before| before.as_deref() != now.as_deref()) {
            self.printed.set(now);
        }
    }

    fn print(self) {
        self.bring();
        later(0, keep::print);
    }
}

pub(in super::super) fn page(shop: Workshop, id: &Id) -> View {
    let kept = shop.state(|s| s.labels.get(id).cloned());
    let Some(design) = kept.as_ref().and_then(|k| k.body()).cloned() else {
        return group![
            page_head("#desk", "Desk", "Not in this book".to_owned()),
            el("p").class("empty").child("No label of this address is in this book.")
        ];
    };
    let first = shop.state(|s| {
        let batch = s.finished().first().map(|b| b.id.0.clone()).unwrap_or_default();
        let formula = s.formulas_shown().first().map(|k| k.id.0.clone()).unwrap_or_default();
        (batch, formula, s.vessels_shown().first().map(|k| k.id.0.clone()).unwrap_or_default())
    });
    let chosen = [first.0, first.1, first.2].map(Value::new);
    let ids = move || chosen.map(|of| Id(of.get()));
    let [batch, formula, vessel] = chosen;
    let form = Form {
        batch,
        formula,
        vessel,
        name: Typed::new(""),
        number: Typed::new(""),
        day: Typed::new(""),
        net: Net::new(),
        small: Value::new(false),
        few_names: Value::new(false),
        face: keep::face(),
        burden: Derived::new(move || {
            let (ids, voice) = (ids(), shop.voice());
            shop.state(|s| Some(Rc::new(s.burden_of(s.chosen(&ids)?.0, s.batches.get(&ids[0]), voice))))
        }),
        laid: Value::new(None),
        printed: Value::new(None),
    };
    // Another batch has its own number and day; what was typed stays whatever else changes in the book.
    watch(move || {
        let id = Id(form.batch.get());
        let found = shop.state_untracked(|s| {
            let day = |b: &Batch| b.poured_on(keep::ZONE).unwrap_or_else(|| b.begun_on(keep::ZONE));
            s.batches.get(&id).map(|b| (day(b), batch_number(b)))
        });
        let (day, number) = found.unwrap_or_else(|| (keep::today(), String::new()));
        form.day.text.set(keep::day(day));
        form.number.text.set(number);
    });
    // Another candle has its own name.
    watch(move || {
        let ids = ids();
        form.name.text.set(shop.state_untracked(|s| s.label_name(&ids)));
    });
    let change = ["#desk/label/", &id.0].concat();
    let has = |part| design.parts.contains(&part);
    let asked = group![
        fields(shop, form),
        has(Part::Name).then(|| {
            el("div").class("fields").child(text_field("Name on the label", form.name, Vec::new()))
        }),
        has(Part::Batch).then(|| {
            el("div")
                .class("fields")
                .child(text_field("Batch number", form.number, Vec::new()))
                .child(text_field("Date", form.day, Vec::new()))
        }),
        has(Part::Net).then(|| form.net.fields())
    ];
    let title = design.name.clone();
    let (sheet, cells) = (design.sheet.clone(), design.sheet.cells());
    group![
        el("div").class("no-print").child(page_head("#desk", "Desk", title)).child(asked).child(
            el("p").child(el("a").attr("href", change).child("Change the sheet or what stands on it"))
        ),
        live(move || answer(shop, form, &design)),
        live(move || form.printed.with(|p| p.as_ref().map(|laid| sheet_of(&sheet, &cells, laid))).view())
    ]
}

fn batch_name(batch: &Batch) -> String {
    let plan = &batch.run.plan;
    [&batch_number(batch), ", ", &plan.formula].concat()
}

fn fields(shop: Workshop, form: Form) -> View {
    let batches = move || {
        let mut all: Vec<Pick> =
            shop.state(|s| s.finished().into_iter().map(|b| (b.id.0.clone(), batch_name(b))).collect());
        all.push((String::new(), "No batch: a formula and a vessel".to_owned()));
        all
    };
    let formulas = move || {
        shop.state(|s| {
            let all = s.formulas_shown();
            all.iter().filter_map(|k| Some((k.id.0.clone(), k.body()?.name.clone()))).collect::<Vec<Pick>>()
        })
    };
    let vessels = move || {
        shop.state(|s| {
            let all = s.vessels_shown();
            all.iter().filter_map(|k| Some((k.id.0.clone(), k.body()?.name.clone()))).collect::<Vec<Pick>>()
        })
    };
    let alone = Derived::new(move || form.batch.with(String::is_empty));
    group![
        el("div").class("fields").child(pick("Batch", form.batch, batches)),
        live(move || {
            if alone.get() {
                el("div")
                    .class("fields")
                    .child(pick("Formula", form.formula, formulas))
                    .child(pick("Vessel", form.vessel, vessels))
                    .view()
            } else {
                ().view()
            }
        })
    ]
}

/// What the label comes to.
fn answer(shop: Workshop, form: Form, design: &Design) -> View {
    let voice = shop.voice();
    let (declared, tapers) = if design.parts.contains(&Part::Net) {
        match form.net.read(shop) {
            Ok(net) => net,
            // What is typed and cannot be read must not be printed as if it were not typed.
            Err(wrong) => {
                form.lay(None);
                return wrong.into_iter().map(not_printed).views().view();
            }
        }
    } else {
        (None, None)
    };
    let burden = form.burden.get();
    let labelled = shop.state(|s| {
        let ids = [form.batch, form.formula, form.vessel].map(|of| Id(of.get()));
        let ((formula, vessel), burden) = (s.chosen(&ids)?, burden?);
        let batch = s.batches.get(&ids[0]);
        let asked = Labelling {
            design,
            formula,
            vessel,
            batch,
            name: form.name.get(),
            number: form.number.get(),
            day: form.day.get(),
            declared,
            tapers,
            small: form.small.get(),
            few_names: form.few_names.get(),
        };
        Some(s.label_with(&asked, &burden, form.face, voice))
    });
    let Some(labelled) = labelled else {
        form.lay(None);
        return el("p")
            .class("empty")
            .child("A label needs a formula and a vessel. Write them in the Book first.")
            .view();
    };
    let laid = match lay(&labelled.content, &design.sheet) {
        Ok(laid) => laid,
        Err(overflow) => {
            form.lay(None);
            return el("div")
                .class("no-print")
                .child(not_printed(overflow.to_string()))
                .child(told(&labelled, design, None, voice, form.small, form.few_names))
                .view();
        }
    };
    let view = el("div")
            .class("no-print")
            .child(large(&laid))
            .child(labelled.over.clone().map(caution))
            .child(el("div").class("actions").child(press("main", "Print the sheet", move || form.print())))
            .child(el("p").class("detail").child(
                "In the print window choose the paper of the sheet, no margins and a scale of 100 %. Print one on plain \
paper first and hold it against the sheet.",
            ))
            .child(told(&labelled, design, Some(&laid), voice, form.small, form.few_names))
            .view();
    form.lay(Some(Rc::new(laid)));
    view
}

fn not_printed(why: String) -> View {
    el("p")
        .class("note caution no-print")
        .attr("role", "alert")
        .child(el("strong").child("Not printed: "))
        .child(why)
        .view()
}
