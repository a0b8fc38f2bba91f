//! One part of the formula form: a line that says what it is, opened to change it.

use super::rows::{Form, PartRow, basis_named};
use super::sections::{cautions, count_or_none, range};
use crate::formula::{BasisKind, Looked, PartKind, Place};
use crate::keep;
use crate::quantity::{Volume, VolumeUnit};
use crate::rooms::parts::{
    Field, choice, field, mass_field, pick, share_field, temperature_field, temperature_range, text_field,
    why_button,
};
use crate::rooms::workshop::Workshop;
use leptos::prelude::*;

pub(super) fn part(
    shop: Workshop,
    form: Form,
    row: PartRow,
    (at, count): (usize, usize),
    looked: Memo<Looked>,
    removed: RwSignal<Option<(usize, PartRow)>>,
) -> AnyView {
    let id = format!("part-{}", row.key);
    let body = format!("{id}-body");
    let titled = move || {
        let name = row.name.get();
        if name.is_empty() {
            format!("Part {}: {}", at + 1, row.kind.get().name().to_lowercase())
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
    let basis = Memo::new(move |_| row.basis.with(|b| basis_named(b)));
    let names = shop.state_untracked(crate::book::State::part_names);
    view! {
        <li class="piece">
            <details prop:open=row.open on:toggle=move |e| row.open.set(is_open(&e))>
                <summary id=id.clone()>
                    <span class="title">{titled}</span>
                    <span class="detail">{move || summary(shop, looked, at)}</span>
                    {move || mark(looked, row, at)}
                </summary>
                <div class="body" id=body>
                    <div class="fields">{text_field("Name of the part", row.name, names)}</div>
                    {choice("Kind", row.kind, &kind_names)}
                    <div class="fields">
                        {pick("Measured as", row.basis, bases)}
                        {move || amount(shop, row, basis.get())}
                    </div>
                    <p class="both" aria-live="polite">{move || both(shop, looked, at)}</p>
                    {move || (basis.get() != BasisKind::PerVessel).then(|| view! {
                        <div class="fields two">{range("Add from", "Add to", row.add)}</div>
                    })}
                    <div class="fields">
                        {move || (basis.get() != BasisKind::PerVessel).then(|| view! {
                            {field(
                                Field { keys: "numeric", ..Field::new("Minutes to stir").optional().placeholder("2") },
                                row.stir,
                                move || count_or_none(row.stir),
                            )}
                            {share_field(
                                Field::new("Highest load").optional().hint("The supplier's, as a share of the wax."),
                                row.highest,
                            )}
                            {temperature_field(
                                Field::new("Flash point").optional().hint("From the safety data sheet."),
                                row.flash,
                            )}
                        })}
                        {field(Field::text("Note on this part").optional(), row.note, || Ok(String::new()))}
                    </div>
                    {move || cautions(shop, looked, Some(&row.name.get()))}
                    {buttons(form, row, at, count, removed)}
                </div>
            </details>
        </li>
    }
    .into_any()
}

fn is_open(event: &leptos::web_sys::Event) -> bool {
    event_target::<leptos::web_sys::Element>(event).has_attribute("open")
}

/// The fields of the amount, by what it is measured against.
fn amount(shop: Workshop, row: PartRow, basis: BasisKind) -> AnyView {
    match basis {
        BasisKind::OfWax | BasisKind::OfWhole => share_field(Field::new("Amount"), row.amount),
        BasisKind::Weight => mass_field(Field::new("Amount"), row.amount),
        BasisKind::PerWax => view! {
            {mass_field(Field::new("Amount"), row.amount)}
            {mass_field(Field::new("For how much wax"), row.per)}
        }
        .into_any(),
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

fn counted(label: &'static str, example: &'static str, row: PartRow) -> AnyView {
    field(Field { keys: "numeric", ..Field::new(label).placeholder(example) }, row.amount, move || {
        row.amount.count().map(|_| String::new()).map_err(|e| e.to_string())
    })
}

fn summary(shop: Workshop, looked: Memo<Looked>, at: usize) -> String {
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
fn mark(looked: Memo<Looked>, row: PartRow, at: usize) -> AnyView {
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
        return ().into_any();
    };
    view! { <span class="tag">{word}</span> }.into_any()
}

fn both(shop: Workshop, looked: Memo<Looked>, at: usize) -> AnyView {
    let (said, why) = looked.with(|l| {
        let why = l.parts.get(at).filter(|p| !p.mass.is_zero()).map(|p| p.why.clone());
        (l.part(at, shop.voice()), why)
    });
    match why {
        Some(why) => view! { <span>{said}</span>{why_button(why)} }.into_any(),
        None => ().into_any(),
    }
}

fn buttons(
    form: Form,
    row: PartRow,
    at: usize,
    count: usize,
    removed: RwSignal<Option<(usize, PartRow)>>,
) -> AnyView {
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
    view! {
        <div class="actions">
            <button type="button" disabled=at == 0 on:click=move |_| swap(at.saturating_sub(1))>"Move up"</button>
            <button type="button" disabled=at + 1 == count on:click=move |_| swap(at + 1)>"Move down"</button>
            <button type="button" class="danger" on:click=remove>"Remove part"</button>
        </div>
    }
    .into_any()
}
