//! A candle to sell, new or changed.

use super::HERE;
use crate::book::{Act, Id};
use crate::dom::*;
use crate::rooms::parts::{Field, Typed, field, finish, missing_page, page_head, past, pick, press};
use crate::rooms::workshop::Workshop;
use crate::shelf::ProductDraft;

/// `batch` is one whose candles are to be sold; empty where there is none.
pub(super) fn page(shop: Workshop, changed: Option<Id>, batch: &Id) -> View {
    let before = changed
        .as_ref()
        .map(|id| shop.state_untracked(|s| s.products.get(id).and_then(|k| k.latest()).cloned()));
    let (draft, over) = match before {
        Some(None) => return missing_page(HERE, "Shelf", "There is no candle of this address in this book."),
        Some(Some(version)) => (ProductDraft::of(&version.body), Some(version.entry)),
        None => (shop.state_untracked(|s| ProductDraft::like(s, batch)), None),
    };
    let [name, wick, parts, spare, cure] =
        [draft.name, draft.wick, draft.parts, draft.spare, draft.cure_days].map(Typed::new);
    let (formula, vessel) = (Value::new(draft.formula), Value::new(draft.vessel));
    let formulas = move || {
        let named =
            |k: &crate::book::Kept<crate::formula::Formula>| Some((k.id.0.clone(), k.body()?.name.clone()));
        shop.state(|s| s.formulas_shown().into_iter().filter_map(named).collect())
    };
    let vessels = move || {
        let offers = shop.state(|s| s.vessels_for(&Id(formula.get())));
        offers.into_iter().map(|o| (o.vessel.0, o.name)).collect()
    };
    // The wick that the formula names for this vessel.
    watch(move || {
        let offers = shop.state(|s| s.vessels_for(&Id(formula.get())));
        let known = offers.into_iter().find(|o| o.vessel.0 == vessel.get()).and_then(|o| o.wick);
        if let Some(known) = known.filter(|_| wick.text.with_untracked(String::is_empty)) {
            wick.text.set(known);
        }
    });
    let save_as = changed.clone();
    let save = move || {
        let draft = ProductDraft {
            name: name.get(),
            formula: formula.get(),
            vessel: vessel.get(),
            wick: wick.get(),
            parts: parts.get(),
            spare: spare.get(),
            cure_days: cure.get(),
        };
        match shop.state(|s| draft.read(s, shop.locale())) {
            Ok(body) => {
                let id = save_as.clone().unwrap_or_else(|| shop.new_id());
                if shop.act(Act::Product { id, over: over.clone(), body }) {
                    shop.go(HERE);
                }
                Vec::new()
            }
            Err(wrong) => wrong,
        }
    };
    let count = |typed: Typed| {
        move || match typed.get().as_str() {
            "0" => Ok(String::new()),
            _ => typed.count().map(|_| String::new()).map_err(|e| e.to_string()),
        }
    };
    let quiet = || Ok(String::new());
    let number = |label: &'static str, hint: &'static str| Field {
        keys: "numeric",
        ..Field::new(label).hint(hint).optional()
    };
    let away = changed.map(|id| {
        let past = past(shop, &id);
        let retire = move || {
            if shop.act(Act::Retire { id: id.clone(), retired: true }) {
                shop.go(HERE);
            }
        };
        group![past, press("quiet", "Sell it no more", retire)]
    });
    group![
        page_head(HERE, "Shelf", "A candle to sell".to_owned()),
        el("div")
            .class("fields")
            .child(pick("Formula", formula, formulas))
            .child(pick("Vessel", vessel, vessels))
            .child(field(Field::text("Wick").optional(), wick, quiet))
            .child(field(
                Field::text("Sold as").optional().hint("Left empty: the formula and the vessel."),
                name,
                quiet
            ))
            .child(field(
                number("To have in store", "So many are wished to stand ready beyond what is ordered."),
                spare,
                count(spare)
            ))
            .child(field(
                number("Days until it ships", "From the pour. Left empty: the cure days of the formula."),
                cure,
                count(cure)
            ))
            .child(field(
                Field::text("What finishes it").optional().placeholder("sticker, lid, label, box"),
                parts,
                quiet
            )),
        finish("Keep this candle", Some(HERE), save),
        away
    ]
}
