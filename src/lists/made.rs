//! The lists of what is made: formulas and pours, as rows.

use super::give::{Row, head, yes};
use crate::book::{Ending, State};
use crate::day::Zone;
use crate::formula;
use crate::formula::{BasisKind, PartKind};
use crate::quantity::Voice;
use crate::shelf::batch_number;

pub(super) fn formulas(state: &State, voice: Voice, rows: &mut Vec<Row>) {
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
            row.push(yes(kept.retired));
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

pub(super) fn pours(state: &State, zone: Zone, voice: Voice, rows: &mut Vec<Row>) {
    rows.push(head(&[
        "Batch",
        "Begun",
        "Formula",
        "Vessel",
        "Wick",
        "Vessels planned",
        "Vessels filled",
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
            batch_number(batch),
            batch.begun_on(zone).to_string(),
            plan.formula.clone(),
            plan.vessel.clone(),
            plan.wick.clone(),
            plan.vessels.to_string(),
            record.vessels.len().to_string(),
            voice.mass(record.made),
            voice.mass(record.filled),
            voice.mass(record.leftover),
            how.to_owned(),
            note.to_owned(),
        ]);
    }
}

pub(super) fn pour_lines(state: &State, zone: Zone, voice: Voice, rows: &mut Vec<Row>) {
    rows.push(head(&["Batch", "Begun", "Formula", "Pour", "Part", "Planned", "Weighed", "Typed in"]));
    for batch in state.batches_shown() {
        let number = batch_number(batch);
        for line in batch.run.record(voice).lines {
            rows.push(vec![
                number.clone(),
                batch.begun_on(zone).to_string(),
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
