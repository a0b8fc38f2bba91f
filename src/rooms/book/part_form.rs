//! One part of the formula form: a line that says what it is, opened to change it.

use super::rows::{Form, PartRow, basis_named};
use super::sections::{cautions, count_or_none, range};
use crate::dom::*;
use crate::formula::{BasisKind, Looked, PartKind, Place};
use crate::keep;
use crate::quantity::{Volume, VolumeUnit};
use crate::rooms::parts::{
    Field, choice, field, mass_field, pick, share_field, temperature_field, temperature_range, text_field,
    why_button,
};
use crate::rooms::workshop::Workshop;

pub(super) fn part(
    shop: Workshop,
    form: Form,
    row: PartRow,
    (at, count): (usize, usize),
    looked: Derived<Looked>,
    removed: Value<Option<(usize, PartRow)>>,
) -> View {
    let id = format!("part-{}", row.key);
    let body = format!("{id}-body");
    let titled = move || {
        let name = row.name.get();
        if name.is_empty() {
            format!("Part {}: {}", at + 1, row.kind.get().name().to_ascii_lowercase())
        } else {
            name
        }
    };
    let kind_names = [
        (PartKind::Fragrance, PartKind::Fragrance.name()),
        (PartKind::Dye, PartKind::Dye.name()),
        (PartKind::Additive, PartKind::Additive.name()),
        (PartKind::Other, PartKind::Other.name()),
    ];
    let bases = || BasisKind::ALL.into_iter().map(|b| (b.name().to_owned(), b.name().to_owned())).collect();
    let basis = Derived::new(move || row.basis.with(|b| basis_named(b)));
    let names = shop.state_untracked(crate::book::State::part_names);
    el("li")
        .class("piece")
        .child(
            el("details")
                .prop("open", row.open)
                .on("toggle", move |e| row.open.set(is_open(&e)))
                .child(
                    el("summary")
                        .attr("id", id.clone())
                        .child(el("span").class("title").child(titled))
                        .child(el("span").class("detail").child(move || summary(shop, looked, at)))
                        .child(move || mark(looked, row, at)),
                )
                .child(
                    el("div")
                        .class("body")
                        .attr("id", body)
                        .child(el("div").class("fields").child(text_field(
                            "Name of the part",
                            row.name,
                            names,
                        )))
                        .child(choice("Kind", row.kind, &kind_names))
                        .child(
                            el("div")
                                .class("fields")
                                .child(pick("Measured as", row.basis, bases))
                                .child(move || amount(shop, row, basis.get())),
                        )
                        .child(
                            el("p")
                                .class("both")
                                .attr("aria-live", "polite")
                                .child(move || both(shop, looked, at)),
                        )
                        .child(move || {
                            (basis.get() != BasisKind::PerVessel).then(|| {
                                el("div").class("fields two").child(range("Add from", "Add to", row.add))
                            })
                        })
                        .child(
                            el("div")
                                .class("fields")
                                .child(move || {
                                    (basis.get() != BasisKind::PerVessel).then(|| {
                                        group![
                                            field(
                                                Field {
                                                    keys: "numeric",
                                                    ..Field::new("Minutes to stir")
                                                        .optional()
                                                        .placeholder("2")
                                                },
                                                row.stir,
                                                move || count_or_none(row.stir),
                                            ),
                                            share_field(
                                                Field::new("Highest load")
                                                    .optional()
                                                    .hint("The supplier's, as a share of the wax."),
                                                row.highest,
                                            ),
                                            temperature_field(
                                                Field::new("Flash point")
                                                    .optional()
                                                    .hint("From the safety data sheet."),
                                                row.flash,
                                            )
                                        ]
                                    })
                                })
                                .child(field(Field::text("Note on this part").optional(), row.note, || {
                                    Ok(String::new())
                                })),
                        )
                        .child(move || cautions(shop, looked, Some(&row.name.get())))
                        .child(buttons(form, row, at, count, removed)),
                ),
        )
        .view()
}

fn is_open(event: &web_sys::Event) -> bool {
    target::<web_sys::Element>(event).is_some_and(|details| details.has_attribute("open"))
}

/// The fields of the amount, by what it is measured against.
fn amount(shop: Workshop, row: PartRow, basis: BasisKind) -> View {
    match basis {
        BasisKind::OfWax | BasisKind::OfWhole => share_field(Field::new("Amount"), row.amount),
        BasisKind::Weight => mass_field(Field::new("Amount"), row.amount),
        BasisKind::PerWax => group![
            mass_field(Field::new("Amount"), row.amount),
            mass_field(Field::new("For how much wax"), row.per)
        ],
        BasisKind::Spoon => field(
            Field::new("Amount").placeholder("1 1/2 tbsp").hint("Without a unit: teaspoons."),
            row.amount,
            move || {
                let read = row.amount.read::<Volume>(VolumeUnit::Teaspoon).map_err(|e| e.to_string())?;
                let (typed, ml) =
                    (shop.voice().typed(read), shop.voice().amount(read.value, VolumeUnit::Millilitre));
                Ok([&typed, " (", &ml, ")"].concat())
            },
        ),
        BasisKind::Drops => counted("Drops", "6", row),
        BasisKind::PerVessel => counted("Pieces", "1", row),
    }
}

fn counted(label: &'static str, example: &'static str, row: PartRow) -> View {
    field(Field { keys: "numeric", ..Field::new(label).placeholder(example) }, row.amount, move || {
        row.amount.count().map(|_| String::new()).map_err(|e| e.to_string())
    })
}

fn summary(shop: Workshop, looked: Derived<Looked>, at: usize) -> String {
    looked.with(|l| {
        let mut said = l.part(at, shop.voice());
        let range = l.formula.parts.get(at).filter(|p| !p.is_counted() && !l.is_wrong(Place::Part(at)));
        if let Some(part) = range {
            said.push_str(" · ");
            said.push_str(&temperature_range(&part.add));
        }
        said
    })
}

/// The word that stands for what is wrong inside, so that a closed part tells it too.
fn mark(looked: Derived<Looked>, row: PartRow, at: usize) -> View {
    let wrong = row.name.touched.get() && looked.with(|l| l.is_wrong(Place::Part(at)));
    let caution = || {
        let name = row.name.get();
        looked.with(|l| l.cautions.iter().any(|c| c.about() == Some(&name)))
    };
    let word = if wrong {
        "Not finished"
    } else if caution() {
        "Caution"
    } else {
        return ().view();
    };
    el("span").class("tag").child(word).view()
}

fn both(shop: Workshop, looked: Derived<Looked>, at: usize) -> View {
    let (said, why) = looked.with(|l| {
        let why = l.parts.get(at).filter(|p| !p.mass.is_zero()).map(|p| p.why.clone());
        (l.part(at, shop.voice()), why)
    });
    match why {
        Some(why) => group![el("span").child(said), why_button(why)],
        None => ().view(),
    }
}

fn buttons(
    form: Form,
    row: PartRow,
    at: usize,
    count: usize,
    removed: Value<Option<(usize, PartRow)>>,
) -> View {
    let key = row.key;
    let swap = move |other: usize| {
        form.parts.update(|all| {
            if at.max(other) < all.len() {
                all.swap(at, other);
            }
        });
        keep::focus_in(format!("part-{key}"));
    };
    let remove = move |_| {
        form.parts.update(|all| all.retain(|p| p.key != key));
        removed.set(Some((at, row)));
        keep::focus_in("parts-title".to_owned());
    };
    el("div")
        .class("actions")
        .child(
            el("button")
                .attr("type", "button")
                .attr("disabled", at == 0)
                .on("click", move |_| swap(at.saturating_sub(1)))
                .child("Move up"),
        )
        .child(
            el("button")
                .attr("type", "button")
                .attr("disabled", at + 1 == count)
                .on("click", move |_| swap(at + 1))
                .child("Move down"),
        )
        .child(el("button").attr("type", "button").class("danger").on("click", remove).child("Remove part"))
        .view()
}
