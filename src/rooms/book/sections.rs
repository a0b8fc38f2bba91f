//! The sections of the formula form.

use super::part_form::part;
use super::rows::{Form, RangeRow, VesselRow, WaxRow};
use crate::formula::{BasisKind, Looked, PartDraft, PartKind, WaxDraft};
use crate::keep;
use crate::rooms::parts::{
    Field, area, caution, field, mass_field, pick, share_field, temperature_field, text_field,
};
use crate::rooms::workshop::Workshop;
use leptos::prelude::*;

pub(super) fn all(shop: Workshop, form: Form, looked: Memo<Looked>) -> AnyView {
    view! {
        {text_field("Name of the formula", form.name, Vec::new())}
        {wax(shop, form, looked)}
        {parts(shop, form, looked)}
        {usual(form)}
        {temperatures(form)}
        {vessels(shop, form)}
        {field(
            Field { keys: "numeric", ..Field::new("Cure days").optional().placeholder("14") },
            form.cure_days,
            move || count_or_none(form.cure_days),
        )}
        {area("Note", form.note)}
        <div aria-live="polite">{move || cautions(shop, looked, None)}</div>
    }
    .into_any()
}

/// Cautions about one wax or part, or about the whole.
pub(super) fn cautions(shop: Workshop, looked: Memo<Looked>, name: Option<&str>) -> AnyView {
    looked.with(|l| l.cautions_about(name, shop.voice())).into_iter().map(caution).collect_view().into_any()
}

/// A count that may be left out or be zero.
pub(super) fn count_or_none(typed: crate::rooms::parts::Typed) -> Result<String, String> {
    if typed.get() == "0" {
        Ok(String::new())
    } else {
        typed.count().map(|_| String::new()).map_err(|e| e.to_string())
    }
}

fn wax(shop: Workshop, form: Form, looked: Memo<Looked>) -> AnyView {
    let rows = move || {
        let rows = form.wax.get();
        let only = rows.len() == 1;
        rows.into_iter().map(|row| one_wax(shop, form, row, only, looked)).collect_view()
    };
    let sum = move || {
        let typed = form.wax.with(|rows| rows.iter().any(|r| !r.share.is_empty()));
        let said = looked.with(|l| l.blend(shop.voice()));
        typed.then(|| match said {
            Ok(said) => view! { <span>{said}</span> }.into_any(),
            Err(wrong) => view! { <strong>{wrong}</strong> }.into_any(),
        })
    };
    view! {
        <section aria-labelledby="wax-title">
            <h2 id="wax-title">"Wax"</h2>
            <div id="waxes">{rows}</div>
            <p class="sum-line" aria-live="polite">{sum}</p>
            <button type="button" on:click=move |_| {
                form.add_wax(&WaxDraft::default());
                let last = form.wax.with_untracked(|all| all.last().map(|w| w.key));
                keep::focus_in(format!("wax-{}", last.unwrap_or_default()));
            }>"Add a wax"</button>
        </section>
    }
    .into_any()
}

fn one_wax(shop: Workshop, form: Form, row: WaxRow, only: bool, looked: Memo<Looked>) -> AnyView {
    let names = shop.state_untracked(crate::book::State::wax_names);
    let key = row.key;
    view! {
        <div class="row-of" id=format!("wax-{key}")>
            <div class="fields">
                {text_field("Name of the wax", row.name, names)}
                {share_field(Field::new("Share of the blend"), row.share)}
                {temperature_field(Field::new("Flash point").optional(), row.flash)}
            </div>
            {move || cautions(shop, looked, Some(&row.name.get()))}
            {(!only).then(|| view! {
                <button type="button" class="quiet" on:click=move |_| {
                    form.wax.update(|all| all.retain(|w| w.key != key));
                    keep::focus_in("waxes".to_owned());
                }>"Remove this wax"</button>
            })}
        </div>
    }
    .into_any()
}

fn parts(shop: Workshop, form: Form, looked: Memo<Looked>) -> AnyView {
    let removed = RwSignal::new(None);
    let rows = move || {
        let rows = form.parts.get();
        let count = rows.len();
        rows.into_iter()
            .enumerate()
            .map(|(at, row)| part(shop, form, row, (at, count), looked, removed))
            .collect_view()
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
    view! {
        <section aria-labelledby="parts-title">
            <h2 id="parts-title">"Parts"</h2>
            <p class="muted">"In the order they go in, the hottest first."</p>
            <ol class="list">{rows}</ol>
            {move || removed.get().map(|(at, row): (usize, super::rows::PartRow)| view! {
                <p class="note" role="status">
                    {format!("Removed {}. ", row.name.text.get_untracked())}
                    <button type="button" on:click=move |_| {
                        form.parts.update(|all| all.insert(at.min(all.len()), row));
                        removed.set(None);
                    }>"Put it back"</button>
                </p>
            })}
            <div class="actions">
                {adders.into_iter().map(|(kind, words)| view! {
                    <button type="button" on:click=move |_| add(kind)>{words}</button>
                }).collect_view()}
            </div>
        </section>
    }
    .into_any()
}

/// Asked for where a part is written for a batch; it may be told at any time.
fn usual(form: Form) -> AnyView {
    let needed = Memo::new(move |_| {
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
    view! {
        <section aria-labelledby="usual-title">
            <h2 id="usual-title">"Usual batch"</h2>
            <p class="muted">{says}</p>
            <div class="fields">
                {field(
                    Field { keys: "numeric", ..Field::new("Number of vessels").placeholder("4") }.optional(),
                    form.usual_vessels,
                    move || form.usual_vessels.count().map(|_| String::new()).map_err(|e| e.to_string()),
                )}
                {mass_field(Field::new("Fill of one vessel").optional(), form.usual_fill)}
            </div>
        </section>
    }
    .into_any()
}

pub(super) fn range(from: &'static str, to: &'static str, row: RangeRow) -> AnyView {
    view! {
        {temperature_field(Field::new(from), row.low)}
        {temperature_field(Field::new(to).optional().hint("Left empty: the same."), row.high)}
    }
    .into_any()
}

fn temperatures(form: Form) -> AnyView {
    view! {
        <section aria-labelledby="heat-title">
            <h2 id="heat-title">"Temperatures"</h2>
            <div class="fields">{temperature_field(Field::new("Melt to"), form.melt_to)}</div>
            <h3>"Pour into warmed vessels"</h3>
            <div class="fields two">{range("Warmed from", "Warmed to", form.warmed)}</div>
            <h3>"Pour into vessels not warmed"</h3>
            <div class="fields two">{range("Unwarmed from", "Unwarmed to", form.unwarmed)}</div>
        </section>
    }
    .into_any()
}

fn vessels(shop: Workshop, form: Form) -> AnyView {
    let none = Memo::new(move |_| shop.state(|s| s.vessels_shown().is_empty()));
    let rows = move || form.vessels.get().into_iter().map(|row| one_vessel(shop, form, row)).collect_view();
    view! {
        <section aria-labelledby="vessels-title">
            <h2 id="vessels-title">"Poured into"</h2>
            <p class="muted">"Each vessel this formula is poured into, with the wick that burned well in the pair."</p>
            <div id="vessel-rows">{rows}</div>
            {move || if none.get() {
                view! { <p>"No vessel in the book yet. Save this formula, then add one; it stays a draft if you leave now."</p> }.into_any()
            } else {
                view! {
                    <button type="button" on:click=move |_| {
                        form.add_vessel("", "");
                        let last = form.vessels.with_untracked(|all| all.last().map(|v| v.key));
                        keep::focus_in(format!("vessel-{}", last.unwrap_or_default()));
                    }>"Add a vessel"</button>
                }.into_any()
            }}
        </section>
    }
    .into_any()
}

fn one_vessel(shop: Workshop, form: Form, row: VesselRow) -> AnyView {
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
    view! {
        <div class="row-of" id=format!("vessel-{key}")>
            <div class="fields">
                {pick("Vessel", row.vessel, offers)}
                {field(Field::text("Wick").optional(), row.wick, || Ok(String::new()))}
            </div>
            <button type="button" class="quiet" on:click=move |_| {
                form.vessels.update(|all| all.retain(|v| v.key != key));
                keep::focus_in("vessel-rows".to_owned());
            }>"Remove this vessel"</button>
        </div>
    }
    .into_any()
}
