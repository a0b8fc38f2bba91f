//! A label for a batch, or for a formula and a vessel: seen large, looked over, printed as a sheet.

use super::draw::{large, page as sheet_of};
use crate::book::{Batch, Id, Labelled, Labelling};
use crate::desk::hazard::SOURCE;
use crate::desk::label::{Design, Face, Part, lay};
use crate::desk::net::Test;
use crate::dom::*;
use crate::keep;
use crate::quantity::{Length, Mass};
use crate::rooms::parts::{
    Field, Pick, Typed, choice, length_field, live, mass_field, page_head, page_part, pick, press, sentence,
    stepper, text_field, why_button,
};
use crate::rooms::workshop::Workshop;
use crate::shelf::batch_number;

#[derive(Clone, Copy)]
struct Form {
    /// The id of the batch, empty for none.
    batch: Value<String>,
    formula: Value<String>,
    vessel: Value<String>,
    number: Typed,
    day: Typed,
    declared: Typed,
    /// By count and length, not by weight.
    tapers: Value<bool>,
    count: Typed,
    length: Typed,
    small: Value<bool>,
    face: Face,
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
    let form = Form {
        batch: Value::new(first.0),
        formula: Value::new(first.1),
        vessel: Value::new(first.2),
        number: Typed::new(""),
        day: Typed::new(""),
        declared: Typed::new(""),
        tapers: Value::new(false),
        count: Typed::new("2"),
        length: Typed::new("10 in"),
        small: Value::new(false),
        face: keep::face(),
    };
    // Another batch has its own number and day.
    watch(move || {
        let id = Id(form.batch.get());
        let found =
            shop.state(|s| s.batches.get(&id).map(|b| (b.poured_at().unwrap_or(b.began), batch_number(b))));
        let (at, number) = found.unwrap_or_else(|| (keep::now(), String::new()));
        form.day.text.set(keep::day(at));
        form.number.text.set(number);
    });
    let change = ["#desk/label/", &id.0].concat();
    let has = |part| design.parts.contains(&part);
    let asked = group![
        fields(shop, form),
        has(Part::Batch).then(|| {
            el("div")
                .class("fields")
                .child(text_field("Batch number", form.number, Vec::new()))
                .child(text_field("Date", form.day, Vec::new()))
        }),
        has(Part::Net).then(|| net(form))
    ];
    let title = design.name.clone();
    group![
        el("div").class("no-print").child(page_head("#desk", "Desk", title)).child(asked).child(
            el("p").child(el("a").attr("href", change).child("Change the sheet or what stands on it"))
        ),
        live(move || answer(shop, form, &design))
    ]
}

/// What is declared, and by what.
fn net(form: Form) -> View {
    let weight = move || {
        let declared = Field::new("Net weight to declare")
            .optional()
            .hint("Left empty, it is what the average of the batch allows, rounded down.");
        mass_field(declared, form.declared)
    };
    let tapers = move || {
        el("div")
            .class("fields")
            .child(stepper("Candles in a package", "candles", form.count))
            .child(length_field(Field::new("Length of one").placeholder("10 in"), form.length))
            .view()
    };
    group![
        choice(
            "Declared by",
            form.tapers,
            &[(false, "Weight"), (true, "Count and length: tapers, decorative candles")],
        ),
        live(move || if form.tapers.get() { tapers() } else { weight() })
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
    let declared = form.declared.read::<Mass>(shop.mass_unit()).ok().filter(|_| !form.declared.is_empty());
    let tapers = form
        .tapers
        .get()
        .then(|| Some((form.count.count().ok()?, form.length.read::<Length>(voice.length).ok()?.value)));
    let tapers = tapers.flatten();
    let labelled = shop.state(|s| {
        let batch = s.batches.get(&Id(form.batch.get()));
        let (formula, vessel) = match batch {
            Some(batch) => s.made_of(batch)?,
            None => {
                let formula = s.formulas.get(&Id(form.formula.get()))?.body()?;
                (formula, s.vessels.get(&Id(form.vessel.get()))?.body()?)
            }
        };
        let asked = Labelling {
            design,
            formula,
            vessel,
            batch,
            number: form.number.get(),
            day: form.day.get(),
            declared: declared.map(|d| d.value),
            tapers,
            small: form.small.get(),
        };
        Some(s.label(&asked, form.face, voice))
    });
    let Some(labelled) = labelled else {
        return el("p")
            .class("empty")
            .child("A label needs a formula and a vessel. Write them in the Book first.")
            .view();
    };
    let laid = match lay(&labelled.content, &design.sheet) {
        Ok(laid) => laid,
        Err(overflow) => {
            return el("div")
                .class("no-print")
                .child(
                    el("p")
                        .class("note caution")
                        .attr("role", "alert")
                        .child(el("strong").child("Not printed: "))
                        .child(overflow.to_string()),
                )
                .child(told(&labelled, form))
                .view();
        }
    };
    group![
        el("div")
            .class("no-print")
            .child(large(&laid))
            .child(el("div").class("actions").child(press("main", "Print the sheet", keep::print)))
            .child(el("p").class("detail").child(
                "In the print window choose the paper of the sheet, no margins and a scale of 100 %. Print one on plain \
paper first and hold it against the sheet.",
            ))
            .child(told(&labelled, form)),
        sheet_of(&design.sheet, &design.sheet.cells(), &laid)
    ]
}

/// What has to be known with it.
fn told(labelled: &Labelled, form: Form) -> View {
    let tests = labelled.tests.iter().map(|(title, test)| tested(title, test)).views();
    let source = labelled.declared.as_ref().map(|d| el("p").class("detail").child(d.source));
    let small = labelled.may_be_small.then(|| {
        choice(
            "A package of at most 125 mL may leave out some statements",
            form.small,
            &[(false, "Keep them"), (true, "Leave them out")],
        )
    });
    group![
        small,
        labelled.remarks.iter().cloned().map(sentence).views(),
        (!labelled.tests.is_empty()).then(|| page_part("label-tests", "Would the batch pass?", tests)),
        source,
        el("p").class("detail").child(
            [
                "Hazards: ",
                SOURCE,
                ". Letters: Regulation (EU) 2024/2865, 16 CFR 500.21 (compared with 21 CFR 101.7), Directive 76/211/EEC. \
This is an aid: local law and a qualified person decide.",
            ]
            .concat()
        )
    ]
}

fn tested(title: &str, test: &Test) -> View {
    let rules = test.rules.iter().map(|(holds, said)| {
        let word = if *holds { "Holds: " } else { "Does not hold: " };
        el("li").child(el("strong").child(word)).child(said.clone())
    });
    let word = if test.passes { ": would pass" } else { ": would not pass" };
    group![
        el("h3").child([title, word].concat()),
        el("ul").class("plain").child(rules.views()),
        why_button(test.why.clone())
    ]
}
