//! The measures of one pour rounded together, and how each came about.

use super::batch::{Needs, Size};
use super::measure::{Draft, How};
use super::ways::{over_note, rounding_note};
use super::{Ask, Dose, Line, Pour, apportion, eighth};
use crate::quantity::{Exact, Mass, Voice, VolumeUnit, Why, show_both};

pub(super) fn settle(ask: &Ask, size: &Size, mut drafts: Vec<Draft>, told: Option<Voice>) -> Pour {
    let weighed = |d: &Draft| matches!(d.dose, Dose::Weigh { .. });
    let (mut fixed, mut parts) = (Mass::ZERO, Vec::new());
    for draft in &drafts {
        if weighed(draft) {
            parts.push((draft.share.mass, draft.dose.division()));
        } else {
            fixed = fixed + draft.dose.mass();
        }
    }
    let rounded = apportion(&parts, size.mass - fixed);
    for (draft, mass) in drafts.iter_mut().filter(|d| weighed(d)).zip(&rounded.parts) {
        draft.dose = draft.dose.of(*mass);
        draft.notes.extend(rounding_note(ask, draft.share.mass, *mass));
    }
    let notes = over_note(ask.voice, rounded.over).into_iter().collect();
    let wanted = rounded.whole + fixed;
    let mut lines: Vec<Line> = drafts.into_iter().map(|d| d.line(told)).collect();
    for line in lines.iter_mut().filter(|line| line.kind.is_none()) {
        line.flash = ask.formula.wax.iter().find(|wax| wax.name == line.name).and_then(|wax| wax.flash);
    }
    let total: Mass = lines.iter().map(|l| l.dose.mass()).sum();
    let why = told.map(|voice| why(ask, size, total, voice)).unwrap_or_default();
    Pour { vessels: size.vessels, total, wanted, lines, notes, why }
}

fn why(ask: &Ask, size: &Size, total: Mass, voice: Voice) -> Why {
    let needs = Needs::of(ask);
    let stays = needs.stays(needs.fill.times(Exact::whole(size.vessels.into())), 1);
    Why::new("This pot", "vessels × fill + what stays in the pot", voice.mass(size.mass))
        .with("vessels", size.vessels.to_string())
        .with_why("fill", voice.mass(needs.fill), ask.fill.1.clone())
        .with("what stays in the pot", voice.mass(stays))
        .rounded(format!("each part to its own measure, together {}", voice.mass(total)))
}

impl Draft<'_> {
    fn line(self, told: Option<Voice>) -> Line {
        let why = told.map(|voice| self.why(voice)).unwrap_or_default();
        Line {
            name: self.share.name,
            kind: self.part.map(|p| p.kind),
            exact: self.share.mass,
            dose: self.dose,
            of_wax: self.share.of_wax,
            of_whole: self.share.of_whole,
            add: self.part.map(|p| p.add.clone()),
            stir_minutes: self.part.map_or(0, |p| p.stir_minutes),
            highest: self.part.and_then(|p| p.highest),
            flash: self.part.and_then(|p| p.flash),
            note: self.part.map(|p| p.note.clone()).unwrap_or_default(),
            notes: self.notes,
            why,
        }
    }

    fn why(&self, voice: Voice) -> Why {
        let name = &self.share.name;
        let exact = voice.mass(self.share.mass);
        let solved = self.share.why.clone();
        let shown = |division: Mass| {
            show_both(self.dose.mass(), voice.mass, Some(division), voice.locale).0.to_string()
        };
        match (&self.dose, &self.how) {
            (Dose::Weigh { scale, division, loads, .. }, How::Scale { error, division: typed }) => {
                let to = shown(*division);
                Why::new(name, "the exact mass, to a division of its scale", &exact)
                    .with_why("exact mass", exact.clone(), solved)
                    .with("scale", scale)
                    .with("division", voice.typed(*typed))
                    .with("loads", loads.to_string())
                    .with("error of weighing, half a division in each load", voice.share(*error))
                    .rounded(format!(
                        "to the {} division of “{scale}”, with the other parts so that the total is kept: {to}",
                        voice.typed(*typed)
                    ))
                    .from("Largest remainder method")
            }
            (Dose::Drops { drops, .. }, How::Drops(shade)) => {
                let exact =
                    self.share.drops.map(|q| format!("{} drops", voice.number(q))).unwrap_or_default();
                Why::new(name, "whole drops nearest the shade", format!("{drops} drops"))
                    .with_why("exact", exact, solved)
                    .with_why("choice", shade.result.clone(), shade.clone())
                    .with("mass of the drops", voice.mass(self.dose.mass()))
            }
            (Dose::Drops { drops, .. }, How::Counted) => {
                let exact =
                    self.share.drops.map(|q| format!("{} drops", voice.number(q))).unwrap_or_default();
                Why::new(name, "the nearest whole drops, at least one", format!("{drops} drops"))
                    .with_why("exact", exact, solved)
                    .with("mass of the drops", voice.mass(self.dose.mass()))
            }
            (Dose::Spoon { eighths, .. }, How::Spoon { off }) => {
                let measure = eighth().times(Exact::whole((*eighths).into()));
                let exact =
                    self.share.volume.map(|v| voice.amount(v, VolumeUnit::Teaspoon)).unwrap_or_default();
                Why::new(
                    name,
                    "the nearest eighth of a teaspoon",
                    voice.amount(measure, VolumeUnit::Teaspoon),
                )
                .with_why("exact", exact, solved)
                .with("mass of the spoon measure", voice.mass(self.dose.mass()))
                .rounded(format!("to ⅛ tsp: off by {}", voice.share(*off)))
            }
            (Dose::Count { pieces }, _) => {
                Why::new(name, "pieces in each vessel × vessels", pieces.to_string()).with_why(
                    "pieces in each vessel",
                    self.share.pieces.unwrap_or(0).to_string(),
                    solved,
                )
            }
            _ => Why::new(name, "the exact mass: no scale weighs it within tolerance", &exact).with_why(
                "exact mass",
                exact.clone(),
                solved,
            ),
        }
    }
}
