//! A reading of the thermometer: dragged, stepped or typed, starting at the last one.

use super::pouring::Pouring;
use crate::dom::*;
use crate::keep;
use crate::pot::{Amiss, StepKey, Wants};
use crate::quantity::{Exact, Locale, Quantity, Temperature, TemperatureUnit, decimal, read};
use crate::rooms::parts::Typed;

/// From, to and step of the slider: what a pot of wax is at.
const fn scale(unit: TemperatureUnit) -> (&'static str, &'static str, &'static str, Exact) {
    match unit {
        TemperatureUnit::Fahrenheit => ("100", "250", "1", Exact::ONE),
        TemperatureUnit::Celsius => ("40", "120", "0.5", Exact::ratio(1, 2)),
    }
}

pub(super) fn thermometer(p: Pouring, words: &'static str, then: Callback<()>) -> View {
    let shop = p.shop;
    let unit = shop.temperature_unit();
    let (from, to, by, step) = scale(unit);
    let shown = move |t: Temperature| decimal(t.to(unit).round_to(step), step, shop.locale());
    let typed = Typed::new(untrack(|| start(p)).map(shown).unwrap_or_default());
    // A reading noted elsewhere, or taken back, is where this one starts.
    let mut before = untrack(|| p.reading.get());
    watch(move || {
        let now = p.reading.get();
        if let Some((_, t)) = now.filter(|_| before != now) {
            typed.text.set(shown(t));
        }
        before = now;
    });
    let value = move || typed.read::<Temperature>(unit);
    let nudge = move |up: bool| {
        if let Ok(now) = value() {
            let number = now.value.to(unit) + if up { step } else { -step };
            typed.text.set(shown(Temperature::of(number, unit)));
        }
    };
    let drag = move |text: String| {
        if let Ok(at) = read::<Temperature>(&text, unit, Locale::Point) {
            typed.text.set(shown(at.value));
        }
    };
    let wrong = move || value().err().filter(|_| !typed.is_empty()).map(|e| e.to_string());
    let save = move || match value() {
        Ok(at) => {
            p.read(at.value);
            then.run(());
        }
        Err(_) => typed.touched.set(true),
    };
    let slider = move || value().ok().map(|at| decimal(at.value.to(unit), step, Locale::Point));
    let id = shop.fresh_dom_id();
    let symbol = crate::quantity::Unit::symbol(unit);
    el("form")
        .class("thermometer")
        .attr("novalidate", true)
        .on("submit", move |e| {
            e.prevent_default();
            save();
        })
        .child(el("label").class("unseen").attr("for", id.clone()).child(format!("Thermometer, {symbol}")))
        .child(
            el("div")
                .class("stepped")
                .child(
                    el("button")
                        .attr("type", "button")
                        .attr("aria-label", "Lower")
                        .on("click", move |_| nudge(false))
                        .child("−"),
                )
                .child(
                    el("div").child(
                        el("input")
                            .attr("id", id)
                            .attr("type", "text")
                            .attr("inputmode", "decimal")
                            .attr("autocomplete", "off")
                            .attr("enterkeyhint", "done")
                            .attr("aria-invalid", move || wrong().is_some().then_some("true"))
                            .prop("value", typed.text)
                            .on("input", move |e| typed.text.set(text_of(&e))),
                    ),
                )
                .child(
                    el("button")
                        .attr("type", "button")
                        .attr("aria-label", "Higher")
                        .on("click", move |_| nudge(true))
                        .child("+"),
                ),
        )
        .child(
            el("input")
                .attr("type", "range")
                .attr("aria-label", format!("Temperature, {symbol}"))
                .attr("min", from)
                .attr("max", to)
                .attr("step", by)
                .prop("value", slider)
                .on("input", move |e| drag(text_of(&e))),
        )
        // A tap that submits the form costs the browser as much again as all of ours; Enter still does.
        .child(el("button").attr("type", "button").class("keep").on("click", move |_| save()).child(words))
        .child(el("p").class("said").attr("aria-live", "polite").child(wrong))
        .view()
}

/// The last reading; before the first, the low end of what the step wants, or what the wax is melted to.
fn start(p: Pouring) -> Option<Temperature> {
    let wanted = p.card.with(|c| c.as_ref().and_then(|c| c.wants.clone())).map(|wants| match wants {
        Wants::AtLeast(low) => low.value,
        Wants::Within(range) => range.low.value,
    });
    let last = p.reading.get().map(|(_, t)| t).or(wanted);
    last.or_else(|| p.run(|run| run.plan.melt_to.value))
}

/// What the pot's temperature means for a step: none where it is not known well enough, an empty sentence where it is
/// as wanted.
fn verdict(p: Pouring, key: StepKey) -> Derived<Option<String>> {
    Derived::new(move || {
        let now = p.shop.now().get();
        let voice = p.shop.voice();
        p.run(|run| Some(run.miss(key, run.pot_at(key.pour()?, now)?, voice).unwrap_or_default())).flatten()
    })
}

/// The last reading with its time, whether it is in the range of this step, and when it will be.
pub(super) fn judged(p: Pouring, key: StepKey) -> View {
    let amiss = move || {
        let now = p.shop.now().get();
        p.run(|run| Some(run.amiss(key, run.pot_at(key.pour()?, now)?))).flatten()
    };
    let word = move || match amiss() {
        Some(None) => ("good", "In the range"),
        Some(Some(Amiss::Outside)) => ("bad", "Outside the range"),
        Some(Some(Amiss::TooHot)) => ("bad", "Too hot"),
        None => ("muted", "Read it again"),
    };
    let last = move || {
        let Some((at, t)) = p.reading.get() else {
            return el("p").class("reading muted").child("Thermometer: no reading yet").view();
        };
        let voice = p.shop.voice();
        el("p")
            .class("reading")
            .child(el("strong").child(voice.amount(t, voice.temperature)))
            .child(" at ")
            .child(keep::time(at))
            .child(", ")
            .child(move || {
                let (class, word) = word();
                el("span").class(class).child(word)
            })
            .view()
    };
    let when = Derived::new(move || p.told.with(|t| Some(t.as_ref()?.gates.first()?.when.clone())));
    group![el("div").attr("aria-live", "polite").child(last), move || when
        .get()
        .map(|when| el("p").class("when").child(when))]
}

/// What it means to do a step outside its range.
pub(super) fn missed(p: Pouring, key: StepKey) -> View {
    let verdict = verdict(p, key);
    let said = move || {
        verdict.get().filter(|miss| !miss.is_empty()).map(|miss| el("p").class("note missed").child(miss))
    };
    el("div").attr("aria-live", "polite").child(said).view()
}
