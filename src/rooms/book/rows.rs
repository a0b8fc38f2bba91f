//! What stands in the formula form, as signals, and taking it as the draft that the domain reads.

use crate::dom::*;
use crate::formula::{BasisKind, Draft, PartDraft, PartKind, RangeDraft, WaxDraft};
use crate::rooms::parts::Typed;

#[derive(Clone, Copy)]
pub(super) struct Form {
    pub(super) name: Typed,
    pub(super) wax: Value<Vec<WaxRow>>,
    pub(super) parts: Value<Vec<PartRow>>,
    pub(super) usual_vessels: Typed,
    pub(super) usual_fill: Typed,
    pub(super) melt_to: Typed,
    pub(super) warmed: RangeRow,
    pub(super) unwarmed: RangeRow,
    pub(super) vessels: Value<Vec<VesselRow>>,
    pub(super) cure_days: Typed,
    pub(super) note: Typed,
    /// The next row's key: a row keeps its own while others come, go and move.
    next: Value<u32>,
}

#[derive(Clone, Copy)]
pub(super) struct RangeRow {
    pub(super) low: Typed,
    pub(super) high: Typed,
}

#[derive(Clone, Copy)]
pub(super) struct WaxRow {
    pub(super) key: u32,
    pub(super) name: Typed,
    pub(super) share: Typed,
    pub(super) flash: Typed,
}

#[derive(Clone, Copy)]
pub(super) struct VesselRow {
    pub(super) key: u32,
    pub(super) vessel: Value<String>,
    pub(super) wick: Typed,
}

#[derive(Clone, Copy)]
pub(super) struct PartRow {
    pub(super) key: u32,
    pub(super) open: Value<bool>,
    pub(super) name: Typed,
    pub(super) kind: Value<PartKind>,
    /// [`BasisKind::name`] of the basis.
    pub(super) basis: Value<String>,
    pub(super) amount: Typed,
    pub(super) per: Typed,
    pub(super) add: RangeRow,
    pub(super) stir: Typed,
    pub(super) note: Typed,
    pub(super) highest: Typed,
    pub(super) flash: Typed,
}

/// The basis of this name.
pub(super) fn basis_named(name: &str) -> BasisKind {
    BasisKind::ALL.into_iter().find(|b| b.name() == name).unwrap_or(BasisKind::OfWax)
}

impl RangeRow {
    fn of(range: &RangeDraft) -> Self {
        Self { low: Typed::new(range.low.clone()), high: Typed::new(range.high.clone()) }
    }
    fn draft(self) -> RangeDraft {
        RangeDraft { low: self.low.text.get(), high: self.high.text.get() }
    }
}

impl Form {
    pub(super) fn of(draft: &Draft) -> Self {
        let typed = |text: &String| Typed::new(text.clone());
        let form = Self {
            name: typed(&draft.name),
            wax: Value::new(Vec::new()),
            parts: Value::new(Vec::new()),
            usual_vessels: typed(&draft.usual_vessels),
            usual_fill: typed(&draft.usual_fill),
            melt_to: typed(&draft.melt_to),
            warmed: RangeRow::of(&draft.warmed),
            unwarmed: RangeRow::of(&draft.unwarmed),
            vessels: Value::new(Vec::new()),
            cure_days: typed(&draft.cure_days),
            note: typed(&draft.note),
            next: Value::new(0),
        };
        draft.wax.iter().for_each(|wax| form.add_wax(wax));
        for part in &draft.parts {
            form.add_part(part, false);
        }
        draft.vessels.iter().for_each(|(id, wick)| form.add_vessel(id, wick));
        form
    }

    fn key(self) -> u32 {
        self.next.update(|n| *n += 1);
        self.next.get_untracked()
    }

    pub(super) fn add_wax(self, wax: &WaxDraft) {
        let row = WaxRow {
            key: self.key(),
            name: Typed::new(wax.name.clone()),
            share: Typed::new(wax.share.clone()),
            flash: Typed::new(wax.flash.clone()),
        };
        self.wax.update(|all| all.push(row));
    }

    /// The new row's key.
    pub(super) fn add_part(self, part: &PartDraft, open: bool) -> u32 {
        let key = self.key();
        let row = PartRow {
            key,
            open: Value::new(open),
            name: Typed::new(part.name.clone()),
            kind: Value::new(part.kind),
            basis: Value::new(part.basis.name().to_owned()),
            amount: Typed::new(part.amount.clone()),
            per: Typed::new(part.per.clone()),
            add: RangeRow::of(&part.add),
            stir: Typed::new(part.stir.clone()),
            note: Typed::new(part.note.clone()),
            highest: Typed::new(part.highest.clone()),
            flash: Typed::new(part.flash.clone()),
        };
        self.parts.update(|all| all.push(row));
        key
    }

    pub(super) fn add_vessel(self, id: &str, wick: &str) {
        let row = VesselRow { key: self.key(), vessel: Value::new(id.to_owned()), wick: Typed::new(wick) };
        self.vessels.update(|all| all.push(row));
    }

    /// All that is typed, as it is.
    pub(super) fn draft(self) -> Draft {
        let wax = |w: &WaxRow| WaxDraft {
            name: w.name.text.get(),
            share: w.share.text.get(),
            flash: w.flash.text.get(),
        };
        Draft {
            name: self.name.text.get(),
            wax: self.wax.with(|all| all.iter().map(wax).collect()),
            parts: self.parts.with(|all| all.iter().map(|p| p.draft()).collect()),
            usual_vessels: self.usual_vessels.text.get(),
            usual_fill: self.usual_fill.text.get(),
            melt_to: self.melt_to.text.get(),
            warmed: self.warmed.draft(),
            unwarmed: self.unwarmed.draft(),
            vessels: self
                .vessels
                .with(|all| all.iter().map(|v| (v.vessel.get(), v.wick.text.get())).collect()),
            cure_days: self.cure_days.text.get(),
            note: self.note.text.get(),
        }
    }

    /// From now on every field says what is wrong with it.
    pub(super) fn touch(self) {
        let ranges = [self.warmed, self.unwarmed].into_iter().flat_map(|r| [r.low, r.high]);
        let own = [self.name, self.usual_vessels, self.usual_fill, self.melt_to, self.cure_days];
        let wax = self.wax.get_untracked().into_iter().flat_map(|w| [w.name, w.share, w.flash]);
        let parts = self.parts.get_untracked().into_iter().flat_map(PartRow::fields);
        own.into_iter().chain(ranges).chain(wax).chain(parts).for_each(|t| t.touched.set(true));
    }
}

impl PartRow {
    fn fields(self) -> [Typed; 7] {
        [self.name, self.amount, self.per, self.add.low, self.stir, self.highest, self.flash]
    }

    fn draft(self) -> PartDraft {
        PartDraft {
            name: self.name.text.get(),
            kind: self.kind.get(),
            basis: self.basis.with(|b| basis_named(b)),
            amount: self.amount.text.get(),
            per: self.per.text.get(),
            add: self.add.draft(),
            stir: self.stir.text.get(),
            note: self.note.text.get(),
            highest: self.highest.text.get(),
            flash: self.flash.text.get(),
        }
    }
}
