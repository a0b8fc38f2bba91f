//! A plan in sentences: why each pour is there, what cannot be met and why, and how good the plan is.

use super::{Agenda, Want};
use crate::day::Day;
use crate::quantity::Voice;
use crate::shelf::candles;
use crate::shelf::planning::{Loss, MOST, Measure, Met, Miss, Plan, Pour, Score};

/// A day as it is written to this person.
pub type Days<'a> = &'a dyn Fn(Day) -> String;

pub(super) fn sum(parts: Vec<String>) -> String {
    match parts.split_last() {
        Some((last, [])) => last.clone(),
        Some((last, rest)) => [&rest.join(", "), " and ", last].concat(),
        None => String::new(),
    }
}

impl Want {
    /// Whose it is, `nobody` where none is named, and for when.
    fn say(&self, nobody: &str, day: Days) -> String {
        let name = self.name.as_deref().unwrap_or(nobody);
        match self.wanted {
            Some(wanted) => [name, " (wanted ", &day(wanted), ")"].concat(),
            None => name.to_owned(),
        }
    }
}

impl Agenda {
    /// The day so many days from today.
    pub fn day(&self, days: u32) -> Day {
        Day(self.today.0.saturating_add(days))
    }

    /// `8 × Fig jar`.
    pub fn what(&self, pour: &Pour) -> String {
        let name = self.items.get(pour.good).map_or("", |i| i.name.as_str());
        [&pour.number.to_string(), " × ", name].concat()
    }

    /// When it ships.
    pub fn ready(&self, pour: &Pour) -> Day {
        self.day(self.problem.goods.get(pour.good).map_or(0, |g| g.takes))
    }

    /// Why a pour is there: `4 for Ada (wanted 3 Dec), 2 to have in store and 2 more, since it comes in whole batches.
    /// Without it 4 candles would be late.`
    pub fn why(&self, pour: &Pour, day: Days) -> String {
        let mut parts = Vec::new();
        for (line, number) in &pour.serves {
            let Some(want) = self.wants.get(*line) else { continue };
            parts.push([&number.to_string(), " for ", &want.say("an order", day)].concat());
        }
        if pour.spare > 0 {
            parts.push([&pour.spare.to_string(), " to have in store"].concat());
        }
        if pour.surplus > 0 {
            parts.push([&pour.surplus.to_string(), " more, since batches are whole"].concat());
        }
        let mut said = [&sum(parts), "."].concat();
        if pour.pinned {
            said.push_str(" You hold on to it.");
        }
        let Loss { late, unmet, short } = pour.without;
        let mut worse = Vec::new();
        for (n, how) in
            [(unmet, " not met"), (late.saturating_sub(unmet), " late"), (short, " short in store")]
        {
            if n > 0 {
                worse.push([&candles(n), how].concat());
            }
        }
        if !worse.is_empty() {
            said.extend([" Without it: ", &sum(worse), "."]);
        }
        said
    }

    /// What is not there on the day it is wanted, line by line: the order's place among the wants, and the sentence.
    pub fn missed(&self, plan: &Plan, day: Days, voice: Voice) -> Vec<(usize, String)> {
        let mut all = Vec::new();
        for (at, met) in plan.lines.iter().enumerate() {
            if let (Some(miss), Some(said)) = (&met.miss, self.lacking(at, met, day)) {
                all.push((at, [&said, " ", &self.because(at, miss, day, voice)].concat()));
            }
        }
        all
    }

    fn lacking(&self, at: usize, met: &Met, day: Days) -> Option<String> {
        let (line, want) = (self.problem.lines.get(at)?, self.wants.get(at)?);
        let name = self.items.get(line.good).map_or("", |i| i.name.as_str());
        let mut said = [&want.say("An order", day), ": "].concat();
        let mut parts = Vec::new();
        if met.late > 0 {
            let ready = met.ready.map(|days| [", on ", &day(self.day(days))].concat());
            parts.push([&met.late.to_string(), " late", &ready.unwrap_or_default()].concat());
        }
        if met.unmet > 0 {
            parts.push([&met.unmet.to_string(), " not there at all"].concat());
        }
        said.extend([&line.number.to_string(), " × ", name, ", ", &sum(parts), "."]);
        Some(said)
    }

    fn because(&self, at: usize, miss: &Miss, day: Days, voice: Voice) -> String {
        let line = self.problem.lines.get(at);
        let item = line.and_then(|l| self.items.get(l.good));
        match miss {
            Miss::Date { ready } => {
                ["What is poured today can ship on ", &day(self.day(*ready)), " at the earliest."].concat()
            }
            Miss::Supply { number, lacks } => [
                "A pour of ",
                &number.to_string(),
                " would do, but the stores lack ",
                &self.lacks(lacks, voice),
                " beside what is poured here.",
            ]
            .concat(),
            Miss::Size if item.is_some_and(|i| i.dropped) => "You left it out for today.".to_owned(),
            Miss::Size => match item.map(|i| i.without.as_slice()) {
                Some([]) | None => "It is poured in no size of batch.".to_owned(),
                Some(why) => why.join(" "),
            },
            Miss::Most => most(),
            Miss::Goals => {
                "It could be poured, but then something that stands higher in your order would be worse."
                    .to_owned()
            }
        }
    }

    /// `120 g (4.23 oz) of “Apple” and 2 pieces of “Lid”`.
    pub fn lacks(&self, lacks: &[(usize, u64)], voice: Voice) -> String {
        let mut parts = Vec::new();
        for (at, units) in lacks {
            let Some(stuff) = self.stuffs.get(*at) else { continue };
            let amount = stuff.measure.say(stuff.amount(*units), voice);
            parts.push([&amount, " of “", &stuff.name, "”"].concat());
        }
        sum(parts)
    }

    /// How good a plan is, in a line.
    pub fn score(&self, score: &Score) -> String {
        let mut parts = vec![match score.pours {
            0 => "Nothing to pour".to_owned(),
            1 => "1 pour".to_owned(),
            n => [&n.to_string(), " pours"].concat(),
        }];
        if score.pours > 1 || score.changes > 0 {
            parts.push(of(Measure::Changes, score.changes));
        }
        for measure in [Measure::Late, Measure::Short, Measure::Surplus] {
            parts.push(of(measure, score.of(measure)));
        }
        [&parts.join(", "), "."].concat()
    }

    /// Whether a better plan can be.
    pub fn proven(&self, plan: &Plan) -> String {
        match plan.gap {
            None => "No plan is better: that is proven.".to_owned(),
            Some(gap) => [
                "A better plan may be found: this one has ",
                &of(gap.measure, plan.score.of(gap.measure)),
                ", and none goes below ",
                &gap.least.to_string(),
                ".",
            ]
            .concat(),
        }
    }
}

/// Of one kind there are limits to what is planned.
fn most() -> String {
    ["At most ", &MOST.to_string(), " candles of one kind are planned at once: pour some, then plan again."]
        .concat()
}

/// A measure with its number.
fn of(measure: Measure, n: u32) -> String {
    let what = match measure {
        Measure::Late => " late or not met",
        Measure::Unmet => " not met",
        Measure::Short => " short in store",
        Measure::Surplus => " in store beyond the wish",
        Measure::Pours => {
            return if n == 1 { "1 pour".to_owned() } else { [&n.to_string(), " pours"].concat() };
        }
        Measure::Changes => {
            let what = if n == 1 { " change" } else { " changes" };
            return [&n.to_string(), what, " of colour or fragrance"].concat();
        }
    };
    match n {
        0 => ["none", what].concat(),
        n => [&candles(n), what].concat(),
    }
}
