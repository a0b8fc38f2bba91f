//! The safety data of one ingredient: its lines, read as they are typed.

use crate::book::{Act, Id};
use crate::desk::hazard::{LineError, SafetySheet, Substance};
use crate::dom::*;
use crate::quantity::Share;
use crate::rooms::parts::{Field, Typed, field, finish, live, page_head, past, press, text_field};
use crate::rooms::workshop::Workshop;

const HERE: &str = "#desk";

const HINT: &str = "One substance a line, parted by semicolons or tabs: name; CAS or EC number; concentration; classes, in \
short or in full, with their H codes. A range counts at its upper end, a share that is kept secret as all of it. Also M=10, \
specific limits (Skin Sens. 1 H317 ≥ 0.5 %), ATE oral 500, no data.";

const EXAMPLE: &str = "Linalool; 78-70-6; 5 - < 10 %; Skin Irrit. 2 H315; Skin Sens. 1B H317";

pub(in super::super) fn page(shop: Workshop, id: &Id) -> View {
    let kept = shop.state(|s| s.safety.get(id).cloned());
    let known = kept.as_ref().and_then(|k| k.body());
    let name = Typed::new(known.map_or("", |s| s.ingredient.as_str()));
    let dated = Typed::new(known.map_or("", |s| s.dated.as_str()));
    let lines = Typed::new(known.map_or("", |s| s.lines.as_str()));
    let sheet = move || SafetySheet { ingredient: name.get(), lines: lines.text.get(), dated: dated.get() };
    let read = Derived::new(move || sheet().read());
    let over = kept.as_ref().and_then(|k| k.latest()).map(|v| v.entry.clone());
    let old = kept.as_ref().map(|k| k.id.clone());
    let save = {
        let old = old.clone();
        move || {
            let mut wrong = Vec::new();
            if name.is_empty() {
                wrong.push("Name the ingredient, as your formulas call it.".to_owned());
            }
            wrong.extend(read.with(|(_, errors)| errors.iter().map(ToString::to_string).collect::<Vec<_>>()));
            if wrong.is_empty() {
                let id = old.clone().unwrap_or_else(|| shop.new_id());
                if shop.act(Act::Safety { id, over: over.clone(), body: sheet() }) {
                    shop.go(HERE);
                }
            }
            wrong
        }
    };
    let away = old.clone().map(|id| {
        let past = past(shop, &id);
        let away = move || {
            shop.act(Act::Retire { id: id.clone(), retired: true });
            shop.go(HERE);
        };
        group![past, el("p").class("away").child(press("danger", "Put this sheet away", away))]
    });
    group![
        page_head(HERE, "Desk", if old.is_some() { "Safety data" } else { "A new safety data sheet" }.to_owned()),
        el("p").class("lead").child(
            "From section 3 of the supplier's safety data sheet. Read the whole sheet before the first use: gloves and \
moving air, whatever its classes.",
        ),
        el("div")
            .class("fields")
            .child(text_field("Ingredient", name, shop.state(|s| s.part_names())))
            .child(field(Field::text("Date or version of the sheet").optional(), dated, || Ok(String::new()))),
        area(shop, lines),
        live(move || read.with(|(found, errors)| told(shop, found, errors))),
        finish("Keep this sheet", Some(HERE), save),
        away
    ]
}

fn area(shop: Workshop, lines: Typed) -> View {
    let id = shop.fresh_dom_id();
    let hint = [&id, "-hint"].concat();
    el("div")
        .class("field sheet-lines")
        .child(el("label").attr("for", id.clone()).child("Lines of section 3"))
        .child(
            el("textarea")
                .attr("id", id)
                .attr("rows", "10")
                .attr("spellcheck", "false")
                .attr("autocapitalize", "off")
                .attr("placeholder", EXAMPLE)
                .attr("aria-describedby", hint.clone())
                .prop("value", lines.text)
                .on("input", move |e| lines.text.set(text_of(&e))),
        )
        .child(el("p").class("said").attr("id", hint).child(HINT))
        .view()
}

/// What was read, and what was not.
fn told(shop: Workshop, found: &[Substance], errors: &[LineError]) -> View {
    let voice = shop.voice();
    let row = |substance: &Substance| {
        let mut classes: Vec<String> = substance.classes.iter().map(|class| class.say()).collect();
        classes.extend(substance.figures(voice));
        classes.extend(substance.noted.iter().cloned());
        if substance.unknown {
            classes.push("not known in full".to_owned());
        }
        let upto = voice.share(Share::base(substance.percent / crate::quantity::Exact::whole(100)));
        el("tr")
            .child(el("th").attr("scope", "row").child(substance.name.clone()))
            .child(el("td").class("number").child(upto))
            .child(el("td").child(if classes.is_empty() {
                "no class".to_owned()
            } else {
                classes.join(", ")
            }))
    };
    let table = (!found.is_empty()).then(|| {
        el("div")
            .class("scroll")
            .attr("tabindex", "0")
            .attr("role", "region")
            .attr("aria-label", "What was read")
            .child(
                el("table")
                    .child(
                        el("thead").child(
                            el("tr")
                                .child(el("th").attr("scope", "col").child("Read as"))
                                .child(el("th").attr("scope", "col").class("number").child("Up to"))
                                .child(el("th").attr("scope", "col").child("Classes")),
                        ),
                    )
                    .child(el("tbody").child(found.iter().map(row).views())),
            )
    });
    let wrong = errors.iter().map(|error| el("li").child(error.to_string())).views();
    group![
        el("div").attr("role", "status").child((!errors.is_empty()).then(|| {
            el("div")
                .class("note caution")
                .child(el("strong").child("Not read:"))
                .child(el("ul").class("plain").child(wrong))
        })),
        table
    ]
}
