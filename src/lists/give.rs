//! Every list of the book as rows.

use super::{made, seen, sold};
use crate::book::{Kept, State};
use crate::day::Zone;
use crate::quantity::{Voice, show_density, show_exact};
use crate::stores::Ledger;
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
    Seen,
    Wicks,
    LotEvents,
    Safety,
    Labels,
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
    (List::Seen, "What was seen in burn trials", "seen-in-trials"),
    (List::Wicks, "Wick series, a row a size", "wicks"),
    (List::LotEvents, "What happened to lots", "lot-events"),
    (List::Safety, "Safety data, a row a line", "safety-data"),
    (List::Labels, "Labels", "labels"),
];

/// The cells of one row.
pub(super) type Row = Vec<String>;

pub(super) fn head(names: &[&str]) -> Row {
    names.iter().map(|name| (*name).to_owned()).collect()
}

/// The list with its head as the first row: names as they are, amounts with their units as they were typed, days as
/// `2026-11-25` in this zone. Also what was put away.
pub fn give(list: List, state: &State, zone: Zone, voice: Voice) -> Vec<Row> {
    let mut rows = Vec::new();
    match list {
        List::Formulas => made::formulas(state, voice, &mut rows),
        List::Vessels => {
            rows.push(head(VESSEL));
            rows.extend(bodies(state.vessels.values()).map(|(v, away)| vessel(v, away, voice)));
        }
        List::Ingredients => {
            rows.push(head(INGREDIENT));
            for (i, away) in bodies(state.ingredients.values()) {
                let density = i.density.map(|d| show_density(d, voice.locale).to_string());
                rows.push(vec![i.name.clone(), density.unwrap_or_default(), yes(away)]);
            }
        }
        List::Scales => {
            rows.push(head(&["Name", "Capacity", "Division", "Smallest load", "Put away"]));
            for (s, away) in bodies(state.scales.values()) {
                let amounts = [s.capacity, s.division, s.least].map(|a| show_exact(a, voice.locale));
                rows.push([vec![s.name.clone()], amounts.to_vec(), vec![yes(away)]].concat());
            }
        }
        List::Pots => {
            rows.push(head(&["Name", "Capacity", "Put away"]));
            for (p, away) in bodies(state.pots.values()) {
                rows.push(vec![p.name.clone(), show_exact(p.capacity, voice.locale), yes(away)]);
            }
        }
        List::Pours => made::pours(state, zone, voice, &mut rows),
        List::PourLines => made::pour_lines(state, zone, voice, &mut rows),
        List::Lots => lots(state, zone, voice, &mut rows),
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
                "Batch", "Formula", "Vessel", "Wick", "Filled", "Left", "Ready on", "Finished", "On hold",
            ]));
            sold::shelf(state, zone, &mut rows);
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
        List::Seen => seen::seen(state, zone, voice, &mut rows),
        List::Wicks => seen::wicks(state, &mut rows),
        List::LotEvents => seen::lot_events(state, zone, voice, &mut rows),
        List::Safety => seen::safety(state, &mut rows),
        List::Labels => seen::labels(state, voice, &mut rows),
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

pub(super) fn yes(is: bool) -> String {
    if is { "yes".to_owned() } else { String::new() }
}

fn bodies<'a, T: 'a>(kept: impl Iterator<Item = &'a Kept<T>>) -> impl Iterator<Item = (&'a T, bool)> {
    kept.filter_map(|k| Some((k.body()?, k.retired)))
}

fn vessel(v: &vessel::Vessel, away: bool, voice: Voice) -> Row {
    let d = vessel::Draft::of(v, voice);
    vec![d.name, d.top, d.bottom, d.height, d.water, d.water_at, d.fill, d.wall, d.note, yes(away)]
}

/// Bought = in candles + written off + unexplained + left.
fn lots(state: &State, zone: Zone, voice: Voice, rows: &mut Vec<Row>) {
    let what =
        ["Ingredient", "Lot", "Supplier", "Got on", "Best before", "Bought", "Amount", "Price"].as_slice();
    rows.push(head(&[what, &["In candles", "Written off", "Unexplained", "Left", "On hold"]].concat()));
    let ledger = Ledger::of(state, zone);
    for (id, kept) in state.lots.iter() {
        let Some((lot, (_, stands))) = kept.body().zip(ledger.lot(id)) else { continue };
        let say = |amount| lot.bought.pack.measure().say(amount, voice);
        rows.push(vec![
            lot.ingredient.clone(),
            lot.number.clone(),
            lot.supplier.clone(),
            lot.got_on.to_string(),
            lot.best_before.map(|d| d.to_string()).unwrap_or_default(),
            [&lot.bought.packs.to_string(), " × ", &lot.bought.pack.say(voice)].concat(),
            say(lot.amount),
            state.rates.currency.show(lot.price, voice.locale),
            say(stands.in_candles),
            say(stands.written_off),
            say(stands.unexplained),
            say(stands.left),
            yes(stands.held),
        ]);
    }
}
