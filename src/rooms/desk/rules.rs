//! The workshop's own rules: what stays in the pot, and how far a dose may be off.

use crate::book::{Act, Settings};
use crate::dom::*;
use crate::pot::Residue;
use crate::quantity::{Locale, ShareUnit, read_count};
use crate::rooms::parts::{Field, Typed, choice, field, finish, live, mass_field, share_field, words};
use crate::rooms::workshop::Workshop;

#[derive(Clone, Copy)]
struct Form {
    /// 0: nothing stays, 1: a weight in each pot, 2: a share of what is filled.
    stays: Value<usize>,
    each: Typed,
    share: Typed,
    tolerance: Typed,
    solid: Typed,
    finish: Typed,
    batches: Typed,
}

/// Sizes of batch as typed: none where nothing is.
fn sizes(typed: Typed, locale: Locale) -> Result<Option<Vec<u32>>, String> {
    let text = typed.get();
    let mut sizes = Vec::new();
    for word in text.split([',', ';', ' ']).filter(|w| !w.is_empty()) {
        sizes.push(read_count(word, locale).map_err(|e| ["Sizes of a batch: ", &e.to_string()].concat())?);
    }
    crate::sort::by(&mut sizes, |a: &u32, b: &u32| a.cmp(b));
    sizes.dedup();
    Ok((!sizes.is_empty()).then_some(sizes))
}

/// Days as typed; none where nothing is.
fn days(what: &str, typed: Typed) -> Result<Option<u32>, String> {
    match typed.get().as_str() {
        "" => Ok(None),
        "0" => Ok(Some(0)),
        _ => typed.count().map(Some).map_err(|e| [what, ": ", &e.to_string()].concat()),
    }
}

impl Form {
    fn settings(self, shop: Workshop) -> Result<Settings, String> {
        let residue = match self.stays.get() {
            1 => self.each.read(shop.mass_unit()).map(Residue::Each),
            2 => self.share.read(ShareUnit::Percent).map(Residue::OfFilled),
            _ => Ok(Residue::None),
        };
        let residue = residue.map_err(|e| format!("What stays in the pot: {e}"))?;
        let tolerance = self.tolerance.read(ShareUnit::Percent).map_err(|e| format!("Tolerance: {e}"))?;
        let solid_days = days("Days until the wax is solid", self.solid)?;
        let finish_days = days("Days to finish", self.finish)?;
        let batches = sizes(self.batches, shop.locale())?;
        let settings =
            Settings { batches, residue, tolerance, solid_days, finish_days, ..untrack(|| shop.settings()) };
        settings.check(shop.voice())?;
        Ok(settings)
    }
}

fn words_of(sizes: Option<&[u32]>) -> String {
    sizes.unwrap_or_default().iter().map(u32::to_string).collect::<Vec<_>>().join(", ")
}

fn day_field(label: &'static str, usual: &'static str, hint: &'static str, typed: Typed) -> View {
    let of = Field { keys: "numeric", ..Field::new(label).placeholder(usual).hint(hint).optional() };
    field(of, typed, move || days(label, typed).map(|_| String::new()))
}

pub(super) fn body(shop: Workshop) -> View {
    let settings = shop.settings();
    let (stays, each, share) = match settings.residue {
        Residue::None => (0, None, None),
        Residue::Each(mass) => (1, Some(mass), None),
        Residue::OfFilled(share) => (2, None, Some(share)),
    };
    let form = Form {
        stays: Value::new(stays),
        each: Typed::amount(each),
        share: Typed::amount(share),
        tolerance: Typed::amount(Some(settings.tolerance)),
        solid: Typed::new(settings.solid_days.map(|d| d.to_string()).unwrap_or_default()),
        batches: Typed::new(words_of(settings.batches.as_deref())),
        finish: Typed::new(settings.finish_days.map(|d| d.to_string()).unwrap_or_default()),
    };
    let kept = Value::new(false);
    let save = move || match form.settings(shop) {
        Ok(settings) => {
            kept.set(shop.act(Act::Settings(settings)));
            Vec::new()
        }
        Err(why) => {
            kept.set(false);
            vec![why]
        }
    };
    let sized = move || match form.stays.get() {
        1 => mass_field(Field::new("Stays in each pot").placeholder("15 g"), form.each),
        2 => share_field(Field::new("Share of what is filled").placeholder("2 %"), form.share),
        _ => ().view(),
    };
    group![
        el("p")
            .class("lead")
            .child("These are in the book, so they hold for every pour that is planned from now on."),
        choice("What stays in the pot", form.stays, &[(0, "Nothing"), (1, "A weight a pot"), (2, "A share")],),
        live(sized),
        share_field(
            Field::new("Tolerance of a dose")
                .placeholder("2 %")
                .hint("How far a part may be off through rounding before you are told."),
            form.tolerance,
        ),
        day_field("Days until the wax is solid", "1", "From the pour. Left empty: 1.", form.solid),
        day_field(
            "Days to finish",
            "0",
            "Trimming, wiping, labels, lids, once it has cured. Left empty: done on the same day.",
            form.finish
        ),
        field(
            Field::text("Sizes of a batch")
                .placeholder("4, 8, 16, 24")
                .hint(
                    "The smallest and the usual ones: pours are planned in these. Left empty: 4, 8, 16, 24."
                )
                .optional(),
            form.batches,
            move || sizes(form.batches, shop.locale()).map(|_| String::new()),
        ),
        finish("Keep these", None, save),
        el("p").class("said").attr("role", "status").child(words(move || if kept.get() {
            "Kept.".to_owned()
        } else {
            String::new()
        }))
    ]
}
