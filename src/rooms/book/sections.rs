//! The sections of the formula form.

use super::part_form::part;
use super::rows::{Form, RangeRow, VesselRow, WaxRow};
use crate::dom::*;
use crate::formula::{BasisKind, Looked, PartDraft, PartKind, WaxDraft};
use crate::keep;
use crate::rooms::parts::{
    Field, area, caution, field, mass_field, pick, share_field, temperature_field, text_field,
};
use crate::rooms::workshop::Workshop;

pub(super) fn all(shop: Workshop, form: Form, looked: Derived<Looked>) -> View {
    group![
        text_field("Name of the formula", form.name, Vec::new()),
        wax(shop, form, looked),
        parts(shop, form, looked),
        usual(form),
        temperatures(form),
        vessels(shop, form),
        field(
            Field { keys: "numeric", ..Field::new("Cure days").optional().placeholder("14") },
            form.cure_days,
            move || count_or_none(form.cure_days),
        ),
        area("Note", form.note),
        el("div").attr("aria-live", "polite").child(move || cautions(shop, looked, None))
    ]
}

/// Cautions about one wax or part, or about the whole.
pub(super) fn cautions(shop: Workshop, looked: Derived<Looked>, name: Option<&str>) -> View {
    looked.with(|l| l.cautions_about(name, shop.voice())).into_iter().map(caution).views().view()
}

/// A count that may be left out or be zero.
pub(super) fn count_or_none(typed: crate::rooms::parts::Typed) -> Result<String, String> {
    if typed.get() == "0" {
        Ok(String::new())
    } else {
        typed.count().map(|_| String::new()).map_err(|e| e.to_string())
    }
}

fn wax(shop: Workshop, form: Form, looked: Derived<Looked>) -> View {
    let rows = move || {
        let rows = form.wax.get();
        let only = rows.len() == 1;
        rows.into_iter().map(|row| one_wax(shop, form, row, only, looked)).views()
    };
    let sum = move || {
        let typed = form.wax.with(|rows| rows.iter().any(|r| !r.share.is_empty()));
        let said = looked.with(|l| l.blend(shop.voice()));
        typed.then(|| match said {
            Ok(said) => el("span").child(said).view(),
            Err(wrong) => el("strong").child(wrong).view(),
        })
    };
    el("section")
        .attr("aria-labelledby", "wax-title")
        .child(el("h2").attr("id", "wax-title").child("Wax"))
        .child(el("div").attr("id", "waxes").child(rows))
        .child(el("p").class("sum-line").attr("aria-live", "polite").child(sum))
        .child(
            el("button")
                .attr("type", "button")
                .on("click", move |_| {
                    form.add_wax(&WaxDraft::default());
                    let last = form.wax.with_untracked(|all| all.last().map(|w| w.key));
                    keep::focus_in(format!("wax-{}", last.unwrap_or_default()));
                })
                .child("Add a wax"),
        )
        .view()
}

fn one_wax(shop: Workshop, form: Form, row: WaxRow, only: bool, looked: Derived<Looked>) -> View {
    let names = shop.state_untracked(crate::book::State::wax_names);
    let key = row.key;
    el("div")
        .class("row-of")
        .attr("id", format!("wax-{key}"))
        .child(
            el("div")
                .class("fields")
                .child(text_field("Name of the wax", row.name, names))
                .child(share_field(Field::new("Share of the blend"), row.share))
                .child(temperature_field(Field::new("Flash point").optional(), row.flash)),
        )
        .child(move || cautions(shop, looked, Some(&row.name.get())))
        .child((!only).then(|| {
            el("button")
                .attr("type", "button")
                .class("quiet")
                .on("click", move |_| {
                    form.wax.update(|all| all.retain(|w| w.key != key));
                    keep::focus_in("waxes".to_owned());
                })
                .child("Remove this wax")
        }))
        .view()
}

fn parts(shop: Workshop, form: Form, looked: Derived<Looked>) -> View {
    let removed = Value::new(None);
    let rows = move || {
        let rows = form.parts.get();
        let count = rows.len();
        rows.into_iter()
            .enumerate()
            .map(|(at, row)| part(shop, form, row, (at, count), looked, removed))
            .views()
    };
    let add = move |kind: PartKind| {
        let key = form.add_part(&PartDraft::new(kind, untrack(|| shop.voice())), true);
        keep::focus_in(format!("part-{key}-body"));
    };
    let adders = [
        (PartKind::Fragrance, "Add fragrance"),
        (PartKind::Dye, "Add dye"),
        (PartKind::Additive, "Add additive"),
        (PartKind::Other, "Add something else"),
    ];
    el("section")
        .attr("aria-labelledby", "parts-title")
        .child(el("h2").attr("id", "parts-title").child("Parts"))
        .child(el("p").class("muted").child("In the order they go in, the hottest first."))
        .child(el("ol").class("list").child(rows))
        .child(move || {
            removed.get().map(|(at, row): (usize, super::rows::PartRow)| {
                let name = row.name.text.get_untracked();
                let name = if name.trim().is_empty() { "a part with no name yet" } else { name.trim() };
                el("p").class("note").attr("role", "status").child(["Removed ", name, ". "].concat()).child(
                    el("button")
                        .attr("type", "button")
                        .on("click", move |_| {
                            form.parts.update(|all| all.insert(at.min(all.len()), row));
                            removed.set(None);
                        })
                        .child("Put it back"),
                )
            })
        })
        .child(
            el("div").class("actions").child(
                adders
                    .into_iter()
                    .map(|(kind, words)| {
                        el("button").attr("type", "button").on("click", move |_| add(kind)).child(words)
                    })
                    .views(),
            ),
        )
        .view()
}

/// Asked for where a part is written for a batch; it may be told at any time.
fn usual(form: Form) -> View {
    let needed = Derived::new(move || {
        form.parts.with(|all| {
            all.iter().any(|p| p.basis.with(|b| BasisKind::of_a_batch(super::rows::basis_named(b))))
        })
    });
    let says = move || {
        if needed.get() {
            "Spoons, drops and weights above are for a batch of this size."
        } else {
            "Needed once a part is written in spoons, drops or a weight. You may leave it empty."
        }
    };
    el("section")
        .attr("aria-labelledby", "usual-title")
        .child(el("h2").attr("id", "usual-title").child("Usual batch"))
        .child(el("p").class("muted").child(says))
        .child(
            el("div")
                .class("fields")
                .child(field(
                    Field { keys: "numeric", ..Field::new("Number of vessels").placeholder("4") }.optional(),
                    form.usual_vessels,
                    move || form.usual_vessels.count().map(|_| String::new()).map_err(|e| e.to_string()),
                ))
                .child(mass_field(Field::new("Fill of one vessel").optional(), form.usual_fill)),
        )
        .view()
}

pub(super) fn range(from: &'static str, to: &'static str, row: RangeRow) -> View {
    group![
        temperature_field(Field::new(from), row.low),
        temperature_field(Field::new(to).optional().hint("Left empty: the same."), row.high)
    ]
}

fn temperatures(form: Form) -> View {
    el("section")
        .attr("aria-labelledby", "heat-title")
        .child(el("h2").attr("id", "heat-title").child("Temperatures"))
        .child(el("div").class("fields").child(temperature_field(Field::new("Melt to"), form.melt_to)))
        .child(el("h3").child("Pour into warmed vessels"))
        .child(el("div").class("fields two").child(range("Warmed from", "Warmed to", form.warmed)))
        .child(el("h3").child("Pour into vessels not warmed"))
        .child(el("div").class("fields two").child(range("Unwarmed from", "Unwarmed to", form.unwarmed)))
        .view()
}

fn vessels(shop: Workshop, form: Form) -> View {
    let none = Derived::new(move || shop.state(|s| s.vessels_shown().is_empty()));
    let rows = move || form.vessels.get().into_iter().map(|row| one_vessel(shop, form, row)).views();
    el("section")
        .attr("aria-labelledby", "vessels-title")
        .child(el("h2").attr("id", "vessels-title").child("Poured into"))
        .child(
            el("p").class("muted").child(
                "Each vessel this formula is poured into, with the wick that burned well in the pair.",
            ),
        )
        .child(el("div").attr("id", "vessel-rows").child(rows))
        .child(move || {
            if none.get() {
                el("p")
                    .child(
                        "No vessel in the book yet. Save this formula, then add one; it stays a draft \
if you leave now.",
                    )
                    .view()
            } else {
                el("button")
                    .attr("type", "button")
                    .on("click", move |_| {
                        form.add_vessel("", "");
                        let last = form.vessels.with_untracked(|all| all.last().map(|v| v.key));
                        keep::focus_in(format!("vessel-{}", last.unwrap_or_default()));
                    })
                    .child("Add a vessel")
                    .view()
            }
        })
        .view()
}

fn one_vessel(shop: Workshop, form: Form, row: VesselRow) -> View {
    let key = row.key;
    let offers = move || {
        shop.state(|s| {
            let named =
                |k: &crate::book::Kept<crate::vessel::Vessel>| Some((k.id.0.clone(), k.body()?.name.clone()));
            let mut all: Vec<_> = s.vessels_shown().into_iter().filter_map(named).collect();
            // A vessel put away since still has its name here.
            if let Some(kept) = s.vessels.get(&crate::book::Id(row.vessel.get())).filter(|k| k.retired) {
                all.extend(named(kept));
            }
            all
        })
    };
    el("div")
        .class("row-of")
        .attr("id", format!("vessel-{key}"))
        .child(el("div").class("fields").child(pick("Vessel", row.vessel, offers)).child(field(
            Field::text("Wick").optional(),
            row.wick,
            || Ok(String::new()),
        )))
        .child(
            el("button")
                .attr("type", "button")
                .class("quiet")
                .on("click", move |_| {
                    form.vessels.update(|all| all.retain(|v| v.key != key));
                    keep::focus_in("vessel-rows".to_owned());
                })
                .child("Remove this vessel"),
        )
        .view()
}
