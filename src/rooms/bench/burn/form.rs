//! A new candle on trial: filled in from a formula, or from a candle that it is to be like.

use super::{HERE, guess, noted, read_some};
use crate::bench::burn::{Heavy, Trial};
use crate::book::{Act, Id, Known};
use crate::dom::*;
use crate::quantity::{Amount, Exact, Length, Mass, MassUnit, ShareUnit};
use crate::rooms::parts::{
    Field, Pick, Typed, choice, finish, length_field, live, mass_field, missing_page, page_head, pick,
    share_field, text_field,
};
use crate::rooms::workshop::Workshop;

#[derive(Clone, Copy)]
struct Form {
    formula: Value<String>,
    name: Typed,
    fragrance: Typed,
    load: Typed,
    heavy: Value<Heavy>,
    wax: Typed,
    vessel: Typed,
    diameter: Typed,
    series: Value<String>,
    wick: Typed,
    replicate: Typed,
    start: Typed,
    fill: Typed,
}

impl Form {
    /// As the candle `like` is, but for its mark and weight; with the wick at `place` of its series where one is named.
    fn like(shop: Workshop, like: &Id, place: &str) -> Self {
        let (like, next) = shop.state(|s| {
            let like = s.trials.get(like).and_then(|k| k.body().cloned());
            let wick = like
                .as_ref()
                .and_then(|t| s.series(&t.series)?.sizes.get(place.parse::<usize>().ok()?).cloned());
            let only = s.wicks_shown().first().and_then(|k| k.body()).map(|w| w.name.clone());
            (like, (wick, only))
        });
        let of = |get: fn(&Trial) -> &String| Typed::new(like.as_ref().map_or("", |t| get(t).as_str()));
        let wick = next.0.or_else(|| like.as_ref().map(|t| t.wick.clone())).unwrap_or_default();
        let again = like.as_ref().filter(|t| t.wick == wick).map_or(1, |t| t.replicate + 1);
        Self {
            formula: Value::new(String::new()),
            name: Typed::new(""),
            fragrance: of(|t| &t.fragrance),
            load: Typed::amount(like.as_ref().and_then(|t| t.load)),
            heavy: Value::new(like.as_ref().map_or(Heavy::Middle, |t| t.heavy)),
            wax: of(|t| &t.wax),
            vessel: of(|t| &t.vessel),
            diameter: Typed::amount(like.as_ref().map(|t| t.diameter)),
            series: Value::new(like.as_ref().map_or(next.1.unwrap_or_default(), |t| series_of(shop, t))),
            wick: Typed::new(wick),
            replicate: Typed::new(again.to_string()),
            start: Typed::new(""),
            fill: Typed::amount(like.as_ref().map(|t| t.fill)),
        }
    }

    /// As the candle is.
    fn of(shop: Workshop, trial: &Trial) -> Self {
        let text = |text: &String| Typed::new(text.as_str());
        Self {
            formula: Value::new(String::new()),
            name: text(&trial.name),
            fragrance: text(&trial.fragrance),
            load: Typed::amount(trial.load),
            heavy: Value::new(trial.heavy),
            wax: text(&trial.wax),
            vessel: text(&trial.vessel),
            diameter: Typed::amount(Some(trial.diameter)),
            series: Value::new(series_of(shop, trial)),
            wick: text(&trial.wick),
            replicate: Typed::new(trial.replicate.to_string()),
            start: Typed::amount(Some(trial.start)),
            fill: Typed::amount(Some(trial.fill)),
        }
    }

    /// Fills in what the formula and its first vessel tell.
    fn take(self, known: Known) {
        let voice = Workshop::here().voice();
        for (typed, text) in [
            (self.fragrance, known.fragrance),
            (self.load, known.load.map(|a| voice.typed(a)).unwrap_or_default()),
            (self.wax, known.wax),
            (self.vessel, known.vessel),
            (self.diameter, known.diameter.map(|a| voice.typed(a)).unwrap_or_default()),
            (self.wick, known.wick),
            (self.fill, known.fill.map(|a| voice.typed(a)).unwrap_or_default()),
        ] {
            if !text.is_empty() {
                typed.text.set(text);
            }
        }
    }

    /// As far as a wick can be guessed for it: nothing is weighed yet.
    fn asked(self, shop: Workshop) -> Option<Trial> {
        let diameter = self.diameter.read::<Length>(shop.voice().length).ok()?;
        let nothing = Amount::new(Exact::ZERO, MassUnit::Gram);
        Some(Trial {
            name: String::new(),
            fragrance: self.fragrance.get(),
            load: self.load.read(ShareUnit::Percent).ok(),
            heavy: self.heavy.get(),
            wax: self.wax.get(),
            vessel: self.vessel.get(),
            diameter,
            series: self.series.get(),
            wick: String::new(),
            replicate: 1,
            start: nothing,
            fill: nothing,
        })
    }

    /// `id`: the candle that is put right.
    fn trial(self, shop: Workshop, id: Option<&Id>) -> Result<Trial, Vec<String>> {
        let mut wrong = Vec::new();
        let length = shop.voice().length;
        let diameter = noted("Inside across", self.diameter.read::<Length>(length), &mut wrong);
        let start = noted("The whole candle", self.start.read::<Mass>(shop.mass_unit()), &mut wrong);
        let fill = noted("Wax in it", self.fill.read::<Mass>(shop.mass_unit()), &mut wrong);
        let load = read_some("Share of the wax", self.load, ShareUnit::Percent, &mut wrong);
        let replicate = noted("Which of its kind", self.replicate.count(), &mut wrong);
        let (Some(diameter), Some(start), Some(fill), Some(replicate)) = (diameter, start, fill, replicate)
        else {
            return Err(wrong);
        };
        let trial = Trial {
            name: self.name.get(),
            fragrance: self.fragrance.get(),
            load,
            heavy: self.heavy.get(),
            wax: self.wax.get(),
            vessel: self.vessel.get(),
            diameter,
            series: self.series.get(),
            wick: self.wick.get(),
            replicate,
            start,
            fill,
        };
        let errors = shop.state(|s| s.check_trial(id, &trial)).err().unwrap_or_default();
        wrong.extend(errors.iter().map(|e| e.say(shop.voice())));
        if wrong.is_empty() { Ok(trial) } else { Err(wrong) }
    }
}

/// The name that its series has now.
fn series_of(shop: Workshop, trial: &Trial) -> String {
    let now = shop.state_untracked(|s| s.series(&trial.series).map(|series| series.name.clone()));
    now.unwrap_or_else(|| trial.series.clone())
}

/// A new one.
pub(super) fn page(shop: Workshop, like: &Id, place: &str) -> View {
    filled(shop, Form::like(shop, like, place), None)
}

/// One that is there, to be put right: what was weighed and seen stays.
pub(super) fn change(shop: Workshop, id: &Id) -> View {
    let known = shop.state_untracked(|s| s.trials.get(id)?.latest().cloned());
    match known {
        Some(version) => filled(shop, Form::of(shop, &version.body), Some((id.clone(), version.entry))),
        None => missing_page(HERE, "Burn trials", "There is no candle of this address in this book."),
    }
}

/// `known`: which candle is put right, and over which version of it.
fn filled(shop: Workshop, form: Form, known: Option<(Id, Id)>) -> View {
    let new = known.is_none();
    watch(move || {
        let formula = Id(form.formula.get());
        if let Some(known) = untrack(|| shop.state(|s| s.known_of(&formula, shop.voice()))) {
            form.take(known);
        }
    });
    let formulas = move || {
        let all = shop.state(|s| {
            let one = |k: &crate::book::Kept<crate::formula::Formula>| {
                Some((k.id.0.clone(), k.body()?.name.clone()))
            };
            s.formulas_shown().into_iter().filter_map(one).collect::<Vec<Pick>>()
        });
        [(String::new(), "none".to_owned())].into_iter().chain(all).collect()
    };
    let series = move || {
        let all = shop.state(|s| {
            let names = s.wicks_shown().into_iter().filter_map(|k| k.body()).map(|w| w.name.clone());
            names.map(|name| (name.clone(), name)).collect::<Vec<Pick>>()
        });
        [(String::new(), "none".to_owned())].into_iter().chain(all).collect()
    };
    let sizes = move || {
        let sizes = form.series.with(|name| shop.state(|s| s.series(name).map(|w| w.sizes.clone())));
        untrack(|| match sizes {
            Some(sizes) => pick("Wick", form.wick.text, move || {
                sizes.iter().map(|size| (size.clone(), size.clone())).collect()
            }),
            None => text_field("Wick", form.wick, Vec::new()),
        })
    };
    let save = move || match form.trial(shop, known.as_ref().map(|(id, _)| id)) {
        Ok(trial) => {
            let (id, over) = match known.clone() {
                Some((id, over)) => (id, Some(over)),
                None => (shop.new_id(), None),
            };
            if shop.act(Act::Trial { id: id.clone(), over, body: Box::new(trial) }) {
                shop.go(&super::address(&id));
            }
            Vec::new()
        }
        Err(wrong) => wrong,
    };
    let guess = move || guess::of(shop, form.asked(shop), form.wick);
    let heavy = [Heavy::Light, Heavy::Middle, Heavy::Heavy].map(|h| (h, h.name()));
    let counted = Field { keys: "numeric", ..Field::new("Which of its kind").hint("1 for the first.") };
    let count = move || form.replicate.count().map(|_| String::new()).map_err(|e| e.to_string());
    group![
        page_head(HERE, "Burn trials", "A candle on trial".to_owned()),
        el("p").class("lead").child(
            "Burn it as it will be sold, after its cure. Mark it, so that it is not mixed up with another.",
        ),
        text_field("Mark on the candle", form.name, Vec::new()),
        pick("Filled in from the formula", form.formula, formulas),
        el("div")
            .class("fields")
            .child(text_field("Fragrance", form.fragrance, shop.state(|s| s.part_names())))
            .child(share_field(Field::new("Share of the wax").placeholder("8 %").optional(), form.load))
            .child(text_field("Wax", form.wax, shop.state(|s| s.wax_names())))
            .child(text_field("Vessel", form.vessel, Vec::new()))
            .child(length_field(Field::new("Inside across").hint("Where the wax stands."), form.diameter))
            .child(mass_field(Field::new("Wax in it").hint("With the fragrance."), form.fill))
            .child(mass_field(
                Field::new("The whole candle").hint("With its vessel, on the scale."),
                form.start
            ))
            .child(pick("Wick series", form.series, series))
            .child(live(sizes))
            .child(crate::rooms::parts::field(counted, form.replicate, count)),
        choice("The fragrance is", form.heavy, &heavy),
        new.then(|| el("div").attr("aria-live", "polite").child(live(guess))),
        finish(if new { "Put it on trial" } else { "Keep this candle" }, Some(HERE), save)
    ]
}
