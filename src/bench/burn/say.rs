//! What is said of trials: names, times, reminders, the advice.

use super::{
    Advice, Course, Limits, PASSES, Session, Trial, Verdict, WickSeries, last_full, life, odd, pool::is_full,
    rate, trend, usual_full,
};
use crate::bench::duration;
use crate::bench::freezing::decimal_of;
use crate::quantity::{Voice, Why};

/// Below this chance a size is not worth calling likely; above it the series is said to end too soon (our own choice).
const LIKELY: f64 = 0.5;
/// Minutes before the end of a burn at which it is told.
const AHEAD: u64 = 15;
const MINUTE: u64 = 60_000;

impl Trial {
    /// `A1: Apple in Straight jar, C 12, no. 2`.
    pub fn say(&self) -> String {
        [&self.name, ": ", &self.made()].concat()
    }

    /// What it is made of: `Apple in Straight jar, C 12, no. 2`.
    pub fn made(&self) -> String {
        let fragrance = if self.fragrance.is_empty() { "no fragrance" } else { &self.fragrance };
        let number = self.replicate.to_string();
        [fragrance, " in ", &self.vessel, ", ", &self.wick, ", no. ", &number].concat()
    }
}

impl Trial {
    /// As one that a guess leans on: `A1, Apple at 8 % in the 70 mm vessel Straight jar, C 12: passed`.
    pub fn as_tried(&self, verdict: Verdict, voice: Voice) -> String {
        let fragrance = if self.fragrance.is_empty() { "no fragrance" } else { &self.fragrance };
        let load = self.load.map(|load| [" at ", &voice.typed(load)].concat()).unwrap_or_default();
        let vessel = [" in the ", &voice.typed(self.diameter), " vessel ", &self.vessel].concat();
        [&self.name, ", ", fragrance, &load, &vessel, ", ", &self.wick, ": ", verdict.name()].concat()
    }
}

/// Seconds as a running clock: `0:05:09`.
pub fn clock(seconds: f64) -> String {
    let all = seconds.max(0.0) as u64;
    let two = |n: u64| [if n < 10 { ":0" } else { ":" }, &n.to_string()].concat();
    [(all / 3600).to_string(), two(all / 60 % 60), two(all % 60)].concat()
}

/// Something to be done at a time, milliseconds since 1970, and whether that has come.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Reminder {
    pub at: u64,
    pub due: bool,
    pub text: String,
}

/// What is coming for a candle: the full pool and the end of the burn while it burns, the rest after it.
pub fn reminders(trial: &Trial, course: &Course, limits: &Limits, now: u64) -> Vec<Reminder> {
    let mut all = Vec::new();
    let mut add = |at: u64, text: &str| {
        all.push(Reminder { at, due: at <= now, text: text.to_owned() });
    };
    match course.sessions.last() {
        Some(session) if session.out.is_none() => {
            if !is_full(trial, session) {
                let expected = session.lit.saturating_add((1000.0 * usual_full(trial)) as u64);
                add(expected, "Full pool expected: measure across the melted wax.");
            }
            let end = session.lit.saturating_add(u64::from(limits.longest) * MINUTE);
            if now >= end {
                add(end, "It has burned as long as it should: put it out.");
            } else {
                add(
                    end.saturating_sub(AHEAD * MINUTE),
                    "Nearly as long as it should burn: look a last time, then put it out.",
                );
            }
        }
        Some(Session { out: Some((at, _)), .. }) if course.closed.is_none() => {
            add(
                at.saturating_add(u64::from(limits.rest) * MINUTE),
                "It has rested: trim the wick, then it may be lit again.",
            );
        }
        _ => {}
    }
    all
}

/// What to do to the wick before lighting.
pub fn trim_first(limits: &Limits, voice: Voice) -> String {
    [
        "Trim the wick to ",
        &voice.typed(limits.trim),
        " before you light it, and take the snippet out of the wax.",
    ]
    .concat()
}

/// What one candle's burns tell, sentence by sentence, each with how it came about where that is asked.
pub fn tells(trial: &Trial, course: &Course, voice: Voice) -> Vec<(String, Option<Why>)> {
    let mut told = Vec::new();
    if let Some(rate) = rate(course, voice) {
        if let Some(life) = life(trial, &rate) {
            told.push((life.say(voice), None));
        }
        told.insert(0, (["Burn rate: ", &rate.say(voice), "."].concat(), Some(rate.why)));
    }
    if let Some(trend) = trend(trial, course) {
        told.push((trend.say(voice), None));
    }
    told.extend(odd(trial, course, voice).map(|odd| (odd, None)));
    told.extend(last_full(trial, course).map(|full| (full.say(), None)));
    told
}

/// A burn that has ended in a line: `2 h 0 min, 10.0 g, 3 looks`.
pub fn burn_line(session: &Session, voice: Voice) -> String {
    let looks = session.looks.len();
    let lost =
        session.after.map(|after| [", ", &voice.amount(session.mass.less(after), voice.mass)].concat());
    let count = [", ", &looks.to_string(), if looks == 1 { " look" } else { " looks" }].concat();
    let itself = if matches!(session.out, Some((_, true))) { ", went out by itself" } else { "" };
    [&duration(session.seconds(session.lit)), lost.as_deref().unwrap_or(", not weighed"), &count, itself]
        .concat()
}

impl Advice {
    /// The advice in sentences; the first is the wick.
    pub fn say(&self, series: &WickSeries, voice: Voice) -> Vec<String> {
        let name = |place: usize| series.sizes.get(place).map_or("", String::as_str);
        let wick = name(self.size);
        let best = self.chances.get(self.size).map_or(0.0, |c| c.1);
        let mut said = Vec::new();
        if self.passed >= PASSES {
            said.push(self.settled(wick));
        } else {
            let percent = decimal_of(100.0 * best, 0, voice);
            said.push(["Try ", wick, " next: it passes with a chance of about ", &percent, " %."].concat());
            said.push([self.left(wick), self.burns_left(voice)].concat());
        }
        if self.beyond.0 > LIKELY {
            said.push(
                "Even the largest of this series may be too small: a wider series, or two wicks.".to_owned(),
            );
        }
        if self.beyond.1 > LIKELY {
            said.push("Even the smallest of this series may be too large.".to_owned());
        }
        if self.lent > 0 {
            let trials = if self.lent == 1 { " trial of another" } else { " trials of other" };
            let candles = if self.lent == 1 { " candle" } else { " candles" };
            let nearest = self.nearest.as_deref().map(|near| [" Nearest: ", near, "."].concat());
            let less = ": the less alike, the less it counts.";
            let all = ["It leans on ", &self.lent.to_string(), trials, candles, less];
            said.push([&all.concat(), nearest.as_deref().unwrap_or_default()].concat());
        }
        said.push("This is a guess from trials, no promise: test before sale.".to_owned());
        said
    }

    /// Enough of them passed. Whether they were burned to their end is another matter: their maker may have decided sooner.
    fn settled(&self, wick: &str) -> String {
        let end = match self.burned_down {
            all if all >= self.passed => {
                "all burned to their end: the wick for this candle, as far as these trials go.".to_owned()
            }
            0 => "none of them burned to its end: burn one down before you settle on it.".to_owned(),
            some => {
                let word =
                    if some == 1 { " of them burned to its end." } else { " of them burned to their end." };
                [&some.to_string(), word, " It may be the wick for this candle, as far as these trials go."]
                    .concat()
            }
        };
        let candles = [&self.passed.to_string(), " candles, on ", &self.on()].concat();
        [wick, ": passed by you in ", &candles, "; ", &end].concat()
    }

    /// How often those that passed were burned.
    fn on(&self) -> String {
        match self.passed_burns {
            0 => "no burn".to_owned(),
            1 => "one burn".to_owned(),
            burns => [&burns.to_string(), " burns"].concat(),
        }
    }

    /// Candles until one passes.
    fn search_left(&self) -> usize {
        if self.passed > 0 { 0 } else { self.search.round().max(1.0) as usize }
    }

    /// The same in burns, once a candle of this kind was judged.
    fn burns_left(&self, voice: Voice) -> String {
        let Some(each) = self.burns else { return String::new() };
        let candles = self.search_left() + PASSES.saturating_sub(self.passed.max(1));
        let all = decimal_of(each * candles as f64, 0, voice);
        let all = if all == "1" { "one burn".to_owned() } else { ["some ", &all, " burns"].concat() };
        [" That is ", &all, ", at ", &decimal_of(each, 0, voice), " a candle as until now."].concat()
    }

    fn left(&self, wick: &str) -> String {
        let more = PASSES.saturating_sub(self.passed.max(1));
        let search = self.search_left();
        if self.passed > 0 {
            return [
                wick,
                ": passed by you ",
                times(self.passed),
                ", on ",
                &self.on(),
                "; ",
                &candles(more),
                " more of it would settle it.",
            ]
            .concat();
        }
        [
            "About ",
            &candles(search + more),
            " left to burn: ",
            &candles(search),
            " until one passes, ",
            &more.to_string(),
            " more of that one.",
        ]
        .concat()
    }
}

fn times(n: usize) -> &'static str {
    if n == 1 { "once" } else { "twice" }
}

fn candles(n: usize) -> String {
    [n.to_string().as_str(), if n == 1 { " candle" } else { " candles" }].concat()
}
