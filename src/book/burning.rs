//! Candles on trial: their course, their like, and what the wick after this one is to be.

use super::lookup::shown;
use super::{Burns, Id, Kept, State};
use crate::bench::burn::{
    Advice, Course, Near, Place, Shot, Trial, TrialError, Tried, Verdict, WickSeries, across, advise,
    of_burn, shots, weight,
};
use crate::formula::{Basis, PartKind};
use crate::quantity::{Amount, Exact, Length, Mass, MassUnit, Share, Voice};
use crate::text::key;

/// The candles with one wick.
#[derive(Clone, PartialEq, Debug)]
pub struct Burned {
    pub wick: String,
    pub candles: Vec<(Trial, Course)>,
}

/// What is known of a candle from its formula and vessel, to begin a trial with.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct Known {
    pub fragrance: String,
    pub load: Option<Amount<Share>>,
    pub wax: String,
    pub vessel: String,
    pub diameter: Option<Amount<Length>>,
    pub wick: String,
    pub fill: Option<Amount<Mass>>,
}

impl State {
    /// What the formula, and the vessel it is poured into first, tell of a candle.
    pub fn known_of(&self, formula: &Id, voice: Voice) -> Option<Known> {
        let body = self.formulas.get(formula)?.body()?;
        let fragrance = body.parts.iter().find(|p| p.kind == PartKind::Fragrance);
        let waxes: Vec<&str> = body.wax.iter().map(|w| w.name.as_str()).collect();
        let offer = self.vessels_for(formula).into_iter().next();
        let vessel = offer.as_ref().and_then(|o| self.vessels.get(&o.vessel)?.body());
        let fill = vessel.and_then(|v| self.fill(v, body, voice).ok());
        Some(Known {
            fragrance: fragrance.map(|p| p.name.clone()).unwrap_or_default(),
            load: fragrance.and_then(|p| if let Basis::OfWax(share) = p.basis { Some(share) } else { None }),
            wax: waxes.join(", "),
            vessel: vessel.map(|v| v.name.clone()).unwrap_or_default(),
            diameter: vessel.and_then(|v| Some(v.inside.as_ref()?.top)),
            wick: offer.and_then(|o| o.wick).unwrap_or_default(),
            fill: fill
                .map(|(mass, _)| Amount::new(mass.in_base().round_to(Exact::ratio(1, 10)), MassUnit::Gram)),
        })
    }

    /// Candles on trial, by their marks.
    pub fn trials_shown(&self) -> Vec<&Kept<Trial>> {
        shown(&self.trials, |t| &t.name)
    }

    /// Series of wicks in use, by name.
    pub fn wicks_shown(&self) -> Vec<&Kept<WickSeries>> {
        shown(&self.wicks, |w| &w.name)
    }

    /// What happened to a candle so far; nothing for one that is not in the book.
    pub fn course_of(&self, trial: &Id) -> Course {
        self.burns.get(trial).map(Burns::course).unwrap_or_default()
    }

    /// The photos of a candle, the latest first, each with the entry that names it.
    pub fn shots_of(&self, trial: &Id) -> Vec<(Id, Shot)> {
        let events = self.burns.get(trial).map(Burns::events).unwrap_or_default();
        let mut shots = shots(events.iter().map(|(entry, event)| (entry.clone(), event)));
        shots.reverse();
        shots
    }

    /// The entry that is to be undone to take the last thing back that was done with this candle.
    pub fn last_done(&self, trial: &Id) -> Option<&Id> {
        self.burns.get(trial)?.events().last().map(|(entry, _)| entry)
    }

    /// The entries of the burn that was lit at this time: undone together they take it back.
    pub fn entries_of_burn(&self, trial: &Id, lit: u64) -> Vec<Id> {
        let events = self.burns.get(trial).map(Burns::events).unwrap_or_default();
        of_burn(events.iter().map(|(entry, event)| (entry.clone(), event)), lit)
    }

    /// The series of this name; where there is none, the one that had it before: candles stay with it when it is renamed.
    pub fn series(&self, name: &str) -> Option<&WickSeries> {
        self.series_kept(name)?.body()
    }

    fn series_kept(&self, name: &str) -> Option<&Kept<WickSeries>> {
        let (name, all) = (key(name), self.wicks_shown());
        let now = all.iter().find(|k| k.body().is_some_and(|w| key(&w.name) == name));
        let once = || all.iter().find(|k| k.versions.iter().any(|v| key(&v.body.name) == name));
        now.or_else(once).copied()
    }

    /// The names that this series has or had, but for those that another has now: made once, not for each candle.
    fn names(&self, series: &Kept<WickSeries>) -> Vec<String> {
        let own = |name: &String| self.series_kept(name).is_some_and(|k| k.id == series.id);
        series.versions.iter().map(|v| key(&v.body.name)).filter(own).collect()
    }

    /// Looks a candle over among the others; `id` is its own where it is there already.
    ///
    /// # Errors
    /// Every reason why it would tell nothing, or be taken for another.
    pub fn check_trial(&self, id: Option<&Id>, trial: &Trial) -> Result<(), Vec<TrialError>> {
        let mut wrong = trial.check(self.series(&trial.series)).err().unwrap_or_default();
        let open = |k: &&Kept<Trial>| self.burns.get(&k.id).and_then(Burns::verdict).is_none();
        let others = self.trials_shown().into_iter().filter(|k| Some(&k.id) != id);
        let mark = key(&trial.name);
        let taken = |k: &Kept<Trial>| k.body().is_some_and(|other| key(&other.name) == mark);
        if !mark.is_empty() && others.filter(|k| taken(k)).any(|k| open(&k)) {
            wrong.push(TrialError::MarkTwice { name: trial.name.clone() });
        }
        if wrong.is_empty() { Ok(()) } else { Err(wrong) }
    }

    /// Looks a series over among the others; `id` is its own where it is there already.
    ///
    /// # Errors
    /// Every reason why no size can be chosen from it.
    pub fn check_series(&self, id: Option<&Id>, series: &WickSeries) -> Result<(), Vec<TrialError>> {
        let mut wrong = series.check().err().unwrap_or_default();
        let name = key(&series.name);
        let taken = |k: &&Kept<WickSeries>| k.body().is_some_and(|w| key(&w.name) == name);
        if self.wicks_shown().into_iter().filter(taken).any(|k| Some(&k.id) != id) {
            wrong.push(TrialError::SeriesTwice { name: series.name.clone() });
        }
        if wrong.is_empty() { Ok(()) } else { Err(wrong) }
    }

    /// Candles that differ from this one in nothing but the wick, itself among them, by wick in the order of the series.
    pub fn like(&self, trial: &Trial) -> Vec<Burned> {
        let mut like: Vec<Burned> = Vec::new();
        let series = self.series_kept(&trial.series);
        let names = series.map_or_else(|| vec![key(&trial.series)], |own| self.names(own));
        for kept in self.trials_shown() {
            let Some(other) = kept.body().filter(|other| same(trial, other)) else { continue };
            let candle = (other.clone(), self.course_of(&kept.id));
            // A wick of another series may have the same name.
            let own = names.contains(&key(&other.series)) || other.series.trim().is_empty();
            let wick = if own { other.wick.clone() } else { [&other.series, " ", &other.wick].concat() };
            match like.iter_mut().find(|b| key(&b.wick) == key(&wick)) {
                Some(known) => known.candles.push(candle),
                None => like.push(Burned { wick, candles: vec![candle] }),
            }
        }
        let place = |wick: &str| series?.body()?.place(wick);
        crate::sort::by(&mut like, |a, b| place(&a.wick).cmp(&place(&b.wick)));
        like
    }

    /// Which wick of its series to try next for a candle like this one. None where its series is not in the book.
    pub fn next_wick(&self, trial: &Trial, voice: Voice) -> Option<(&WickSeries, Advice)> {
        let own = self.series_kept(&trial.series)?;
        let (series, names) = (own.body()?, self.names(own));
        let (mut tried, mut burned, mut passed) = (Vec::new(), Vec::new(), Vec::new());
        let mut nearest: Option<(f64, &Trial, Verdict)> = None;
        for kept in self.trials.values().filter(|k| !k.retired) {
            let Some(other) = kept.body().filter(|o| names.contains(&key(&o.series))) else { continue };
            let burns = self.burns.get(&kept.id);
            let Some((burns, verdict)) = burns.and_then(|b| Some((b, b.verdict()?))) else { continue };
            let Some(size) = series.place(&other.wick) else { continue };
            let same = same(trial, other);
            let near = Near::of(trial, other, same);
            tried.push(Tried { size, place: place(other), same, worth: near.worth, verdict });
            if !same {
                if verdict != Verdict::Other && nearest.is_none_or(|(away, ..)| near.away < away) {
                    nearest = Some((near.away, other, verdict));
                }
                continue;
            }
            // Only those of its kind are gone through burn by burn.
            let course = burns.course();
            let number = course.sessions.len();
            if number > 0 {
                burned.push(number as f64);
            }
            if verdict == Verdict::Passed {
                passed.push((size, number, course.burned_down(other)));
            }
        }
        let advice = advise(series.sizes.len(), place(trial), &tried)?;
        let each = burned.iter().sum::<f64>() / burned.len() as f64;
        let of_size = || passed.iter().filter(|(size, ..)| *size == advice.size);
        let (passed_burns, burned_down) =
            (of_size().map(|(_, burns, _)| burns).sum(), of_size().filter(|(.., down)| *down).count());
        let nearest = nearest.map(|(_, other, verdict)| other.as_tried(verdict, voice));
        let burns = (!burned.is_empty()).then_some(each);
        Some((series, Advice { burns, passed_burns, burned_down, nearest, ..advice }))
    }
}

fn place(trial: &Trial) -> Place {
    Place { across: across(trial), weight: weight(trial) }
}

fn same(a: &Trial, b: &Trial) -> bool {
    let load = |trial: &Trial| trial.load.map(|load| load.value.in_base());
    load(a) == load(b)
        && [(&a.fragrance, &b.fragrance), (&a.wax, &b.wax), (&a.vessel, &b.vessel)]
            .into_iter()
            .all(|(a, b)| key(a) == key(b))
}
