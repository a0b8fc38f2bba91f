//! The lists of what was seen and typed beside the making: wicks and trials, lots, safety data, labels.

use super::give::{Row, head, yes};
use crate::bench::burn::{BurnEvent, Grade, Look};
use crate::book::{Burns, State};
use crate::day::Zone;
use crate::desk::label::{Market, Part};
use crate::quantity::{Amount, Quantity, Voice, show_exact};
use crate::stores::LotEvent;

/// A row a size, from the smallest.
pub(super) fn wicks(state: &State, rows: &mut Vec<Row>) {
    rows.push(head(&["Series", "Place", "Wick", "Put away"]));
    for kept in state.wicks.values() {
        let Some(series) = kept.body() else { continue };
        for (place, size) in (1_usize..).zip(&series.sizes) {
            rows.push(vec![series.name.clone(), place.to_string(), size.clone(), yes(kept.retired)]);
        }
    }
}

/// A row a line of section 3, as it was typed.
pub(super) fn safety(state: &State, rows: &mut Vec<Row>) {
    rows.push(head(&["Ingredient", "Sheet of", "Line", "Put away"]));
    for kept in state.safety.values() {
        let Some(sheet) = kept.body() else { continue };
        for line in sheet.lines.lines().map(str::trim).filter(|line| !line.is_empty()) {
            rows.push(vec![
                sheet.ingredient.clone(),
                sheet.dated.clone(),
                line.to_owned(),
                yes(kept.retired),
            ]);
        }
    }
}

fn typed<Q: Quantity>(amount: Option<Amount<Q>>, voice: Voice) -> String {
    amount.map(|a| show_exact(a, voice.locale)).unwrap_or_default()
}

fn graded(grade: Option<Grade>) -> String {
    grade.map(Grade::name).unwrap_or_default().to_owned()
}

/// What a row of a trial says beside the candle, when and what; see [`seen`] for the columns.
#[derive(Default)]
struct Seen {
    look: Look,
    untrimmed: bool,
    verdict: &'static str,
    note: String,
}

/// A row for each thing done with a candle on trial.
pub(super) fn seen(state: &State, zone: Zone, voice: Voice, rows: &mut Vec<Row>) {
    rows.push(head(&[
        "Candle",
        "On",
        "At",
        "What",
        "Weight",
        "Pool across",
        "Pool deep",
        "Flame",
        "Vessel outside",
        "Soot",
        "Mushroom",
        "Wax on the wall",
        "Throw",
        "Not trimmed",
        "Verdict",
        "Note",
        "Put away",
    ]));
    for kept in state.trials.values() {
        let Some(trial) = kept.body() else { continue };
        let events = state.burns.get(&kept.id).map(Burns::events).unwrap_or_default();
        for event in events.iter().flat_map(|(_, event)| match event {
            BurnEvent::Missed(steps) => steps.clone(),
            tapped => vec![tapped.clone()],
        }) {
            let plain = |mass| Seen { look: Look { mass, ..Look::default() }, ..Seen::default() };
            let (at, what, seen) = match event {
                BurnEvent::Lit { at, mass, trimmed, throw } => {
                    let look = Look { mass: Some(mass), throw, ..Look::default() };
                    (Some(at), "lit", Seen { look, untrimmed: !trimmed, ..Seen::default() })
                }
                BurnEvent::Looked(look) => {
                    (Some(look.at), "looked at", Seen { look: *look, ..Seen::default() })
                }
                BurnEvent::Out { at, mass, itself } => {
                    (Some(at), if itself { "went out by itself" } else { "put out" }, plain(mass))
                }
                BurnEvent::Weighed { mass, lit: None } => (None, "weighed", plain(Some(mass))),
                BurnEvent::Weighed { mass, lit } => {
                    (lit, "weighed after the burn lit then", plain(Some(mass)))
                }
                BurnEvent::Pictured { at, .. } => (Some(at), "photo", Seen::default()),
                BurnEvent::Closed { verdict, note } => {
                    let verdict = verdict.name();
                    (None, "closed", Seen { verdict, note, ..Seen::default() })
                }
                BurnEvent::Missed(_) => continue,
            };
            let look = seen.look;
            rows.push(vec![
                trial.name.clone(),
                at.map(|at| zone.day(at).to_string()).unwrap_or_default(),
                at.map(|at| zone.clock(at)).unwrap_or_default(),
                what.to_owned(),
                typed(look.mass, voice),
                typed(look.pool, voice),
                typed(look.depth, voice),
                typed(look.flame, voice),
                typed(look.outside, voice),
                graded(look.soot),
                graded(look.mushroom),
                graded(look.hang_up),
                look.throw.map(|n| n.to_string()).unwrap_or_default(),
                yes(seen.untrimmed),
                seen.verdict.to_owned(),
                [look.note, seen.note].concat(),
                yes(kept.retired),
            ]);
        }
    }
}

/// A row for each thing that happened to a lot beside its use.
pub(super) fn lot_events(state: &State, zone: Zone, voice: Voice, rows: &mut Vec<Row>) {
    rows.push(head(&["Ingredient", "Lot", "On", "What", "Amount", "Why"]));
    for kept in state.lots.values() {
        let Some(lot) = kept.body() else { continue };
        let measure = lot.bought.pack.measure();
        for (at, _, event) in state.lot_events.get(&kept.id).map(Vec::as_slice).unwrap_or_default() {
            let (what, amount, why) = match event {
                LotEvent::Counted { left, reason } => ("counted", Some(*left), reason),
                LotEvent::WrittenOff { amount, reason } => ("written off", Some(*amount), reason),
                LotEvent::Held { reason } => ("put on hold", None, reason),
                LotEvent::Released { reason } => ("released", None, reason),
            };
            rows.push(vec![
                lot.ingredient.clone(),
                lot.number.clone(),
                zone.day(*at).to_string(),
                what.to_owned(),
                amount.map(|a| measure.say(a, voice)).unwrap_or_default(),
                why.clone(),
            ]);
        }
    }
}

pub(super) fn labels(state: &State, voice: Voice, rows: &mut Vec<Row>) {
    rows.push(head(&[
        "Name",
        "Width of the page",
        "Height of the page",
        "Width of a label",
        "Height of a label",
        "Left margin",
        "Top margin",
        "Gap between columns",
        "Gap between rows",
        "Columns",
        "Rows",
        "Round",
        "What stands on it",
        "Net contents by the rules of",
        "Who makes it",
        "Put away",
    ]));
    for kept in state.labels.values() {
        let Some(design) = kept.body() else { continue };
        let s = &design.sheet;
        let lengths = [s.page_width, s.page_height, s.width, s.height, s.left, s.top, s.across, s.down];
        let rules = match design.market {
            Market::UnitedStates => "United States",
            Market::EuropeanUnion => "European Union",
            Market::Both => "both",
        };
        let mut row = vec![design.name.clone()];
        row.extend(lengths.map(|l| show_exact(l, voice.locale)));
        row.extend([
            s.columns.to_string(),
            s.rows.to_string(),
            yes(s.round),
            design.parts.iter().map(|p: &Part| p.name()).collect::<Vec<_>>().join("; "),
            rules.to_owned(),
            design.maker.clone(),
            yes(kept.retired),
        ]);
        rows.push(row);
    }
}
