//! Every list of the book as rows.

use super::sold;
use crate::book::{Ending, Kept, State};
use crate::day::Day;
use crate::formula;
use crate::formula::{BasisKind, PartKind};
use crate::quantity::{Voice, show_density, show_exact};
use crate::vessel;

/// A list that can be given out.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum List {
    Formulas,
    Vessels,
    Ingredients,
    Scales,
    Pots,
    Pours,
    PourLines,
    Lots,
    Products,
    Orders,
    Shelf,
    Moves,
    Customers,
    Trials,
}

/// All of them, with the name on the screen and that of the file.
pub const LISTS: &[(List, &str, &str)] = &[
    (List::Formulas, "Formulas, a row an ingredient", "formulas"),
    (List::Vessels, "Vessels", "vessels"),
    (List::Ingredients, "Ingredients", "ingredients"),
    (List::Scales, "Scales", "scales"),
    (List::Pots, "Pots", "pots"),
    (List::Pours, "Past pours", "pours"),
    (List::PourLines, "What went into them", "pour-lines"),
    (List::Lots, "Lots in the stores", "lots"),
    (List::Products, "Candles that are sold", "candles"),
    (List::Orders, "Orders, a row a candle", "orders"),
    (List::Shelf, "Batches on the shelf", "shelf"),
    (List::Moves, "What left the shelf", "left-the-shelf"),
    (List::Customers, "Customers", "customers"),
    (List::Trials, "Burn trials", "trials"),
];

type Row = Vec<String>;

fn head(names: &[&str]) -> Row {
    names.iter().map(|name| (*name).to_owned()).collect()
}

/// The list with its head as the first row: names as they are, amounts with their units as they were typed, days as
/// `2026-11-25` at Greenwich. Also what was put away.
pub fn give(list: List, state: &State, voice: Voice) -> Vec<Row> {
    let mut rows = Vec::new();
    match list {
        List::Formulas => formulas(state, voice, &mut rows),
        List::Vessels => {
            rows.push(head(VESSEL));
            rows.extend(bodies(state.vessels.values()).map(|(v, away)| vessel(v, away, voice)));
        }
        List::Ingredients => {
            rows.push(head(INGREDIENT));
            for (i, away) in bodies(state.ingredients.values()) {
                let density = i.density.map(|d| show_density(d, voice.locale).to_string());
                rows.push(vec![i.name.clone(), density.unwrap_or_default(), put_away(away)]);
            }
        }
        List::Scales => {
            rows.push(head(&["Name", "Capacity", "Division", "Smallest load", "Put away"]));
            for (s, away) in bodies(state.scales.values()) {
                let amounts = [s.capacity, s.division, s.least].map(|a| show_exact(a, voice.locale));
                rows.push([vec![s.name.clone()], amounts.to_vec(), vec![put_away(away)]].concat());
            }
        }
        List::Pots => {
            rows.push(head(&["Name", "Capacity", "Put away"]));
            for (p, away) in bodies(state.pots.values()) {
                rows.push(vec![p.name.clone(), show_exact(p.capacity, voice.locale), put_away(away)]);
            }
        }
        List::Pours => pours(state, voice, &mut rows),
        List::PourLines => pour_lines(state, voice, &mut rows),
        List::Lots => lots(state, voice, &mut rows),
        List::Products => {
            rows.push(head(&[
                "Name",
                "Formula",
                "Vessel",
                "Wick",
                "What finishes it",
                "To have in store",
                "Days until it ships",
                "Put away",
            ]));
            sold::products(state, &mut rows);
        }
        List::Orders => {
            rows.push(head(sold::ORDER));
            sold::orders(state, &mut rows);
        }
        List::Shelf => {
            rows.push(head(&[
                "Batch", "Formula", "Vessel", "Wick", "Filled", "Left", "Ready on", "Finished",
            ]));
            sold::shelf(state, &mut rows);
        }
        List::Moves => {
            rows.push(head(&["On", "Batch", "Candle", "Number", "Why", "Note"]));
            sold::moves(state, &mut rows);
        }
        List::Customers => {
            rows.push(head(&["Name", "Buys", "Address"]));
            sold::customers(state, &mut rows);
        }
        List::Trials => {
            rows.push(head(&[
                "Name",
                "Fragrance",
                "Load",
                "Wax",
                "Vessel",
                "Diameter",
                "Series",
                "Wick",
                "Which of several",
                "Start",
                "Fill",
                "Put away",
            ]));
            sold::trials(state, voice, &mut rows);
        }
    }
    rows
}

/// The columns of vessels, as they are given and taken.
pub(super) const VESSEL: &[&str] = &[
    "Name",
    "Inside top",
    "Inside bottom",
    "Inside height",
    "Water to the brim",
    "Water temperature",
    "Fill",
    "Wall",
    "Note",
    "Put away",
];
pub(super) const INGREDIENT: &[&str] = &["Name", "Density", "Put away"];

fn put_away(away: bool) -> String {
    if away { "yes".to_owned() } else { String::new() }
}

fn bodies<'a, T: 'a>(kept: impl Iterator<Item = &'a Kept<T>>) -> impl Iterator<Item = (&'a T, bool)> {
    kept.filter_map(|k| Some((k.body()?, k.retired)))
}

fn vessel(v: &vessel::Vessel, away: bool, voice: Voice) -> Row {
    let d = vessel::Draft::of(v, voice);
    vec![d.name, d.top, d.bottom, d.height, d.water, d.water_at, d.fill, d.wall, d.note, put_away(away)]
}

fn formulas(state: &State, voice: Voice, rows: &mut Vec<Row>) {
    rows.push(head(&[
        "Formula",
        "Version",
        "Part",
        "Kind",
        "Amount",
        "Of",
        "Add from",
        "Add to",
        "Stir minutes",
        "Highest",
        "Flash point",
        "Note",
        "Put away",
    ]));
    for kept in state.formulas.values() {
        let Some(body) = kept.body() else { continue };
        let draft = formula::Draft::of(body, voice);
        let version = kept.versions.len().to_string();
        let mut row = |part: [String; 10]| {
            let mut row = vec![draft.name.clone(), version.clone()];
            row.extend(part);
            row.push(put_away(kept.retired));
            rows.push(row);
        };
        let none = String::new;
        for wax in &draft.wax {
            let of = "blend".to_owned();
            row([
                wax.name.clone(),
                "wax".to_owned(),
                wax.share.clone(),
                of,
                none(),
                none(),
                none(),
                none(),
                wax.flash.clone(),
                none(),
            ]);
        }
        for p in &draft.parts {
            let kind = match p.kind {
                PartKind::Fragrance => "fragrance",
                PartKind::Dye => "dye",
                PartKind::Additive => "additive",
                PartKind::Other => "other",
            };
            let of = match p.basis {
                BasisKind::OfWax => "wax".to_owned(),
                BasisKind::OfWhole => "whole".to_owned(),
                BasisKind::PerWax => ["each ", &p.per, " of wax"].concat(),
                BasisKind::Weight | BasisKind::Spoon => ["batch of ", &draft.usual_vessels].concat(),
                BasisKind::Drops => ["batch of ", &draft.usual_vessels, ", drops"].concat(),
                BasisKind::PerVessel => "each vessel".to_owned(),
            };
            row([
                p.name.clone(),
                kind.to_owned(),
                p.amount.clone(),
                of,
                p.add.low.clone(),
                p.add.high.clone(),
                p.stir.clone(),
                p.highest.clone(),
                p.flash.clone(),
                p.note.clone(),
            ]);
        }
    }
}

fn pours(state: &State, voice: Voice, rows: &mut Vec<Row>) {
    rows.push(head(&[
        "Begun",
        "Formula",
        "Vessel",
        "Wick",
        "Vessels",
        "Made",
        "Filled",
        "Left in the pot",
        "Ended",
        "Note",
    ]));
    for batch in state.batches_shown() {
        let (plan, record) = (&batch.run.plan, batch.run.record(voice));
        let (how, note) = match &batch.ended {
            None => ("running", ""),
            Some((Ending::Poured, _, note)) => ("poured", note.as_str()),
            Some((Ending::GivenUp, _, note)) => ("given up", note.as_str()),
        };
        rows.push(vec![
            Day::of(batch.began).to_string(),
            plan.formula.clone(),
            plan.vessel.clone(),
            plan.wick.clone(),
            plan.vessels.to_string(),
            voice.mass(record.made),
            voice.mass(record.filled),
            voice.mass(record.leftover),
            how.to_owned(),
            note.to_owned(),
        ]);
    }
}

fn pour_lines(state: &State, voice: Voice, rows: &mut Vec<Row>) {
    rows.push(head(&["Begun", "Formula", "Pour", "Part", "Planned", "Weighed", "Typed in"]));
    for batch in state.batches_shown() {
        for line in batch.run.record(voice).lines {
            rows.push(vec![
                Day::of(batch.began).to_string(),
                batch.run.plan.formula.clone(),
                line.pour.to_string(),
                line.name,
                voice.mass(line.planned),
                voice.mass(line.weighed),
                if line.known { "yes" } else { "no" }.to_owned(),
            ]);
        }
    }
}

fn lots(state: &State, voice: Voice, rows: &mut Vec<Row>) {
    rows.push(head(&["Ingredient", "Lot", "Supplier", "Got on", "Best before", "Bought", "Amount", "Price"]));
    for (lot, _) in bodies(state.lots.values()) {
        rows.push(vec![
            lot.ingredient.clone(),
            lot.number.clone(),
            lot.supplier.clone(),
            lot.got_on.to_string(),
            lot.best_before.map(|d| d.to_string()).unwrap_or_default(),
            [&lot.bought.packs.to_string(), " × ", &lot.bought.pack.say(voice)].concat(),
            lot.bought.pack.measure().say(lot.amount, voice),
            state.rates.currency.show(lot.price, voice.locale),
        ]);
    }
}
