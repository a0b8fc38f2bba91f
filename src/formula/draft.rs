//! A formula while it is typed: texts, and reading all of them at once.

use super::{Basis, Formula, Part, PartKind, PourRanges, TemperatureRange, UsualBatch, VesselWick, WaxShare};
use crate::book::Id;
use crate::quantity::{
    Amount, AmountError, Exact, Locale, Mass, MassUnit, Quantity, Share, ShareUnit, Temperature,
    TemperatureUnit, Voice, VolumeUnit, read, read_count, show_exact,
};
use crate::wire::{wire_enum, wire_struct};

/// A formula as it stands in a form. Nothing typed is lost, whether it can be read or not.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Draft {
    pub name: String,
    pub wax: Vec<WaxDraft>,
    pub parts: Vec<PartDraft>,
    pub usual_vessels: String,
    pub usual_fill: String,
    pub melt_to: String,
    pub warmed: RangeDraft,
    pub unwarmed: RangeDraft,
    /// The vessel's id, empty while none is chosen, and its wick.
    pub vessels: Vec<(String, String)>,
    pub cure_days: String,
    pub note: String,
}

#[derive(Clone, PartialEq, Debug, Default)]
pub struct WaxDraft {
    pub name: String,
    pub share: String,
    pub flash: String,
}

#[derive(Clone, PartialEq, Debug, Default)]
pub struct RangeDraft {
    pub low: String,
    /// Left empty, it is the same as `low`.
    pub high: String,
}

#[derive(Clone, PartialEq, Debug)]
pub struct PartDraft {
    pub name: String,
    pub kind: PartKind,
    pub basis: BasisKind,
    pub amount: String,
    /// Of [`BasisKind::PerWax`]: how much wax the amount is for.
    pub per: String,
    pub add: RangeDraft,
    pub stir: String,
    pub note: String,
    pub highest: String,
    pub flash: String,
}

/// [`Basis`] without its amount.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum BasisKind {
    OfWax,
    OfWhole,
    PerWax,
    Weight,
    Spoon,
    Drops,
    PerVessel,
}

wire_struct!(Draft {
    name,
    wax,
    parts,
    usual_vessels,
    usual_fill,
    melt_to,
    warmed,
    unwarmed,
    vessels,
    cure_days,
    note,
});
wire_struct!(WaxDraft { name, share, flash });
wire_struct!(RangeDraft { low, high });
wire_struct!(PartDraft { name, kind, basis, amount, per, add, stir, note, highest, flash });
wire_enum!(BasisKind { OfWax, OfWhole, PerWax, Weight, Spoon, Drops, PerVessel });

/// Where in the form something is wrong. Places count from 0.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Place {
    Wax(usize),
    Part(usize),
    Temperatures,
    Usual,
    Cure,
}

/// A text that cannot be read.
#[derive(Clone, PartialEq, Debug)]
pub struct Problem {
    pub place: Place,
    /// A whole sentence that names the field.
    pub text: String,
}

impl PartDraft {
    /// A part of which nothing is known yet.
    pub fn new(kind: PartKind, voice: Voice) -> Self {
        let basis = match kind {
            PartKind::Fragrance | PartKind::Other => BasisKind::OfWax,
            PartKind::Dye => BasisKind::Drops,
            PartKind::Additive => BasisKind::Spoon,
        };
        Self {
            name: String::new(),
            kind,
            basis,
            amount: String::new(),
            per: one_heavy(voice),
            add: RangeDraft::default(),
            stir: String::new(),
            note: String::new(),
            highest: String::new(),
            flash: String::new(),
        }
    }

    fn of(part: &Part, voice: Voice) -> Self {
        let text = |amount| show_exact(amount, voice.locale);
        let (basis, amount, per) = match &part.basis {
            Basis::OfWax(share) => (BasisKind::OfWax, show_exact(*share, voice.locale), None),
            Basis::OfWhole(share) => (BasisKind::OfWhole, show_exact(*share, voice.locale), None),
            Basis::PerWax { amount, wax } => (BasisKind::PerWax, text(*amount), Some(text(*wax))),
            Basis::Weight(mass) => (BasisKind::Weight, text(*mass), None),
            Basis::Spoon(volume) => (BasisKind::Spoon, show_exact(*volume, voice.locale), None),
            Basis::Drops(drops) => (BasisKind::Drops, drops.to_string(), None),
            Basis::PerVessel(pieces) => (BasisKind::PerVessel, pieces.to_string(), None),
        };
        Self {
            name: part.name.clone(),
            kind: part.kind,
            basis,
            amount,
            per: per.unwrap_or_else(|| one_heavy(voice)),
            add: if part.is_counted() {
                RangeDraft::default()
            } else {
                RangeDraft::of(&part.add, voice.locale)
            },
            stir: some_count(part.stir_minutes),
            note: part.note.clone(),
            highest: part.highest.map(|h| show_exact(h, voice.locale)).unwrap_or_default(),
            flash: part.flash.map(|f| show_exact(f, voice.locale)).unwrap_or_default(),
        }
    }
}

impl RangeDraft {
    fn of(range: &TemperatureRange, locale: Locale) -> Self {
        let (low, high) = (show_exact(range.low, locale), show_exact(range.high, locale));
        Self { high: if low == high { String::new() } else { high }, low }
    }
}

impl Draft {
    /// A formula not begun: one wax that is all of the blend.
    pub fn new(voice: Voice) -> Self {
        let whole = show_exact(Amount::<Share>::new(Exact::whole(100), ShareUnit::Percent), voice.locale);
        Self { wax: vec![WaxDraft { share: whole, ..WaxDraft::default() }], ..Self::default() }
    }

    /// The formula as it would be typed.
    pub fn of(formula: &Formula, voice: Voice) -> Self {
        let locale = voice.locale;
        let flash =
            |flash: Option<Amount<Temperature>>| flash.map(|f| show_exact(f, locale)).unwrap_or_default();
        let wax = |wax: &WaxShare| WaxDraft {
            name: wax.name.clone(),
            share: show_exact(wax.share, locale),
            flash: flash(wax.flash),
        };
        Self {
            name: formula.name.clone(),
            wax: formula.wax.iter().map(wax).collect(),
            parts: formula.parts.iter().map(|part| PartDraft::of(part, voice)).collect(),
            usual_vessels: formula.usual.as_ref().map(|u| u.vessels.to_string()).unwrap_or_default(),
            usual_fill: formula.usual.as_ref().map(|u| show_exact(u.fill, locale)).unwrap_or_default(),
            melt_to: show_exact(formula.melt_to, locale),
            warmed: RangeDraft::of(&formula.pour.warmed, locale),
            unwarmed: RangeDraft::of(&formula.pour.unwarmed, locale),
            vessels: formula.vessels.iter().map(|v| (v.vessel.0.clone(), v.wick.clone())).collect(),
            cure_days: some_count(formula.cure_days),
            note: formula.note.clone(),
        }
    }

    /// The formula, with zero for what cannot be read, and every text that cannot. It can be kept only where there is
    /// no such text and [`super::check`] refuses nothing.
    pub fn read(&self, voice: Voice) -> (Formula, Vec<Problem>) {
        let mut reading = Reading { voice, problems: Vec::new() };
        let formula = reading.formula(self);
        (formula, reading.problems)
    }
}

/// What so much per so much wax is for, where nothing else is typed.
fn one_heavy(voice: Voice) -> String {
    let unit = match voice.mass {
        MassUnit::Gram | MassUnit::Kilogram => MassUnit::Kilogram,
        MassUnit::Ounce | MassUnit::Pound => MassUnit::Pound,
    };
    show_exact(Amount::<Mass>::new(Exact::ONE, unit), voice.locale)
}

fn some_count(count: u32) -> String {
    if count == 0 { String::new() } else { count.to_string() }
}

struct Reading {
    voice: Voice,
    problems: Vec<Problem>,
}

impl Reading {
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
        Part {
            name: part.name.trim().to_owned(),
            kind: part.kind,
            basis,
            add,
            stir_minutes: self.count_or_none(place, &format!("{called}, minutes to stir"), &part.stir),
            note: part.note.trim().to_owned(),
            highest: self.optional(
                place,
                &format!("{called}, highest load"),
                &part.highest,
                ShareUnit::Percent,
            ),
            flash: self.optional(
                place,
                &format!("{called}, flash point"),
                &part.flash,
                self.voice.temperature,
            ),
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
