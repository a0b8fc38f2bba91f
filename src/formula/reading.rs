//! Reads all the texts of a formula at once.

use super::draft::{BasisKind, Draft, PartDraft, Place, Problem, RangeDraft, WaxDraft};
use super::{Basis, Formula, Part, PourRanges, TemperatureRange, UsualBatch, VesselWick, WaxShare};
use crate::book::Id;
use crate::quantity::{
    Amount, AmountError, Exact, Mass, Quantity, ShareUnit, Temperature, TemperatureUnit, Voice, VolumeUnit,
    read, read_count,
};

pub(super) struct Reading {
    voice: Voice,
    problems: Vec<Problem>,
}

impl Reading {
    /// The formula, and every text that cannot be read.
    pub(super) fn of(draft: &Draft, voice: Voice) -> (Formula, Vec<Problem>) {
        let mut reading = Self { voice, problems: Vec::new() };
        let formula = reading.formula(draft);
        (formula, reading.problems)
    }

    /// What was read, or a note of where and why not.
    fn got<T>(&mut self, place: Place, what: &str, read: Result<T, AmountError>) -> Option<T> {
        read.inspect_err(|e| self.problems.push(Problem { place, text: format!("{what}: {e}") })).ok()
    }

    fn amount<Q: Quantity>(&mut self, place: Place, what: &str, text: &str, unit: Q::Unit) -> Amount<Q> {
        let read = read(text, unit, self.voice.locale);
        self.got(place, what, read).unwrap_or(Amount { value: Q::from_base(Exact::ZERO), unit })
    }

    fn optional<Q: Quantity>(
        &mut self,
        place: Place,
        what: &str,
        text: &str,
        unit: Q::Unit,
    ) -> Option<Amount<Q>> {
        if text.trim().is_empty() {
            return None;
        }
        let read = read(text, unit, self.voice.locale);
        self.got(place, what, read)
    }

    fn count(&mut self, place: Place, what: &str, text: &str) -> u32 {
        let read = read_count(text, self.voice.locale);
        self.got(place, what, read).unwrap_or_default()
    }

    /// Nothing typed is none.
    fn count_or_none(&mut self, place: Place, what: &str, text: &str) -> u32 {
        if matches!(text.trim(), "" | "0") { 0 } else { self.count(place, what, text) }
    }

    fn temperature(&mut self, place: Place, what: &str, text: &str) -> Amount<Temperature> {
        self.amount(place, what, text, self.voice.temperature)
    }

    fn range(&mut self, place: Place, what: &str, range: &RangeDraft) -> TemperatureRange {
        let low = self.temperature(place, what, &range.low);
        let unit: TemperatureUnit = low.unit;
        let high = self.optional(place, &format!("{what}, up to"), &range.high, unit).unwrap_or(low);
        TemperatureRange { low, high }
    }

    fn formula(&mut self, draft: &Draft) -> Formula {
        let wax = draft.wax.iter().enumerate().map(|(at, wax)| self.wax(at, wax)).collect();
        let melt_to = self.temperature(Place::Temperatures, "Melt to", &draft.melt_to);
        let counted = TemperatureRange { low: melt_to, high: melt_to };
        let parts = draft.parts.iter().enumerate();
        let parts = parts.map(|(at, part)| self.part(at, part, &counted)).collect();
        Formula {
            name: draft.name.trim().to_owned(),
            wax,
            parts,
            usual: self.usual(draft),
            melt_to,
            pour: PourRanges {
                warmed: self.range(Place::Temperatures, "Pour into warmed vessels", &draft.warmed),
                unwarmed: self.range(Place::Temperatures, "Pour into vessels not warmed", &draft.unwarmed),
            },
            vessels: draft
                .vessels
                .iter()
                .filter_map(|(id, wick)| {
                    let vessel = Id::try_from(id.clone()).ok()?;
                    Some(VesselWick { vessel, wick: wick.trim().to_owned() })
                })
                .collect(),
            cure_days: self.count_or_none(Place::Cure, "Cure days", &draft.cure_days),
            note: draft.note.trim().to_owned(),
        }
    }

    fn wax(&mut self, at: usize, wax: &WaxDraft) -> WaxShare {
        let called = called("Wax", at, &wax.name);
        let place = Place::Wax(at);
        WaxShare {
            name: wax.name.trim().to_owned(),
            share: self.amount(place, &format!("{called}, share"), &wax.share, ShareUnit::Percent),
            flash: self.optional(
                place,
                &format!("{called}, flash point"),
                &wax.flash,
                self.voice.temperature,
            ),
        }
    }

    fn part(&mut self, at: usize, part: &PartDraft, counted: &TemperatureRange) -> Part {
        let called = called("Part", at, &part.name);
        let place = Place::Part(at);
        let what = format!("{called}, amount");
        let (text, mass) = (part.amount.as_str(), self.voice.mass);
        let basis = match part.basis {
            BasisKind::OfWax => Basis::OfWax(self.amount(place, &what, text, ShareUnit::Percent)),
            BasisKind::OfWhole => Basis::OfWhole(self.amount(place, &what, text, ShareUnit::Percent)),
            BasisKind::PerWax => Basis::PerWax {
                amount: self.amount(place, &what, text, mass),
                wax: self.amount::<Mass>(place, &format!("{called}, for how much wax"), &part.per, mass),
            },
            BasisKind::Weight => Basis::Weight(self.amount(place, &what, text, mass)),
            BasisKind::Spoon => Basis::Spoon(self.amount(place, &what, text, VolumeUnit::Teaspoon)),
            BasisKind::Drops => Basis::Drops(self.count(place, &what, text)),
            BasisKind::PerVessel => Basis::PerVessel(self.count(place, &what, text)),
        };
        let add = match part.basis {
            BasisKind::PerVessel => counted.clone(),
            _ => self.range(place, &format!("{called}, add at"), &part.add),
        };
        let seen = self.problems.len();
        let stir_minutes = self.count_or_none(place, &format!("{called}, minutes to stir"), &part.stir);
        let highest =
            self.optional(place, &format!("{called}, highest load"), &part.highest, ShareUnit::Percent);
        let flash =
            self.optional(place, &format!("{called}, flash point"), &part.flash, self.voice.temperature);
        // Of pieces none of them is on the screen: what stood there before and cannot be read holds nothing up.
        if part.basis == BasisKind::PerVessel {
            self.problems.truncate(seen);
        }
        Part {
            name: part.name.trim().to_owned(),
            kind: part.kind,
            basis,
            add,
            stir_minutes,
            note: part.note.trim().to_owned(),
            highest,
            flash,
        }
    }

    /// None where neither is typed.
    fn usual(&mut self, draft: &Draft) -> Option<UsualBatch> {
        if draft.usual_vessels.trim().is_empty() && draft.usual_fill.trim().is_empty() {
            return None;
        }
        let vessels = self.count(Place::Usual, "Usual batch, vessels", &draft.usual_vessels);
        let fill = self.amount(Place::Usual, "Usual batch, fill of one", &draft.usual_fill, self.voice.mass);
        Some(UsualBatch { vessels, fill })
    }
}

/// `“Lavender”`, or `Part 2` while it has no name.
fn called(noun: &str, at: usize, name: &str) -> String {
    match name.trim() {
        "" => format!("{noun} {}", at + 1),
        name => format!("“{name}”"),
    }
}
