//! A formula while it is typed: texts.

use super::reading::Reading;
use super::{Basis, Formula, Part, PartKind, TemperatureRange, WaxShare};
use crate::quantity::{
    Amount, Exact, Locale, Mass, MassUnit, Share, ShareUnit, Temperature, Voice, show_exact,
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
        Reading::of(self, voice)
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
