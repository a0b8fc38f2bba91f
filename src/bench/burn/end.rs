//! The end of a candle: how much of its wax is left, and what is said of it before there is none.

use super::{Course, Finding, Outcome, Session, Trial};
use crate::bench::freezing::decimal_of;
use crate::quantity::{Mass, Voice};

/// A candle with no more than this share of its wax left is at its end: some stays on the wall and round the foot of the
/// wick, whatever the wick (our own choice).
const LEAVES: f64 = 0.1;

/// How a burn ended that nobody ended.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum Itself {
    /// With wax left to burn.
    Early,
    /// Its wax was spent.
    Spent,
    /// It was not weighed since.
    Unknown,
    /// Its weights are not those of a candle with this fill.
    Misfit,
}

/// The share of its wax that is left where candle and vessel weigh this. None where that cannot be by its fill: with no
/// fill, heavier than it was at first or lighter than without its wax, each by more than a candle leaves.
fn left(trial: &Trial, mass: Mass) -> Option<f64> {
    let [start, fill, mass] = [trial.start.value, trial.fill.value, mass].map(|m| m.in_base().to_f64());
    if fill <= 0.0 {
        return None;
    }
    let share = (mass - (start - fill)) / fill;
    (-LEAVES..=1.0 + LEAVES).contains(&share).then_some(share)
}

impl Course {
    /// How each burn ended that ended by itself. One that was not weighed after it is known by what the candle weighed
    /// before the next, or by having been at its end when it was weighed last.
    pub(super) fn by_itself(&self, trial: &Trial) -> impl Iterator<Item = Itself> {
        self.sessions.iter().enumerate().filter(|(_, s)| s.out.is_some_and(|(_, itself)| itself)).map(
            |(place, session)| {
                let next = self.sessions.get(place + 1).map(|s| s.mass);
                match session.after.or(next).map(|mass| left(trial, mass)) {
                    Some(Some(share)) if share <= LEAVES => Itself::Spent,
                    Some(Some(_)) => Itself::Early,
                    Some(None) => Itself::Misfit,
                    None if left(trial, last_mass(session)).is_some_and(|share| share <= LEAVES) => {
                        Itself::Spent
                    }
                    None => Itself::Unknown,
                }
            },
        )
    }

    /// The share of its wax that is left, by the last weight. None before there is one, or where that cannot be.
    fn left(&self, trial: &Trial) -> Option<f64> {
        left(trial, self.sessions.last().map(last_mass)?)
    }

    /// Whether it is at its end, by the last weight.
    pub fn burned_down(&self, trial: &Trial) -> bool {
        self.left(trial).is_some_and(|share| share <= LEAVES)
    }

    /// Burns until it is at its end, each as the mean of those weighed after it; at least one. None where none was.
    fn burns_left(&self, trial: &Trial) -> Option<f64> {
        let fill = trial.fill.value.in_base().to_f64();
        let lost = |s: &Session| Some((s.mass.in_base().to_f64()) - s.after?.in_base().to_f64());
        let (mut burns, mut grams) = (0.0, 0.0);
        for each in self.sessions.iter().filter_map(lost) {
            burns += 1.0;
            grams += each;
        }
        let each = grams / burns;
        let more = (self.left(trial)? - LEAVES) * fill / each;
        (each > 0.0).then(|| more.ceil().max(1.0))
    }
}

/// What candle and vessel weighed last.
fn last_mass(session: &Session) -> Mass {
    let seen = session.looks.iter().rev().find_map(|l| l.mass).map(|m| m.value);
    session.after.or(seen).unwrap_or(session.mass)
}

/// Whether its whole vessel was seen: a wick that is right at the top may not be so near the bottom.
pub(super) fn to_the_end(trial: &Trial, course: &Course, voice: Voice) -> Finding {
    let percent = |share: f64| [&decimal_of(100.0 * share.max(0.0), 0, voice), " %"].concat();
    let (outcome, seen) = match (course.sessions.last(), course.left(trial)) {
        (None, _) => (Outcome::NotSeen, String::new()),
        (_, None) => (Outcome::NotYet, "its weights do not fit its wax".to_owned()),
        (_, Some(share)) => {
            let spent = share <= LEAVES;
            let above = !spent && percent(share) == percent(LEAVES);
            let more = if above { "a little more than " } else { "" };
            let seen = [more, &percent(share), " of its wax left"].concat();
            (if spent { Outcome::Kept } else { Outcome::NotYet }, seen)
        }
    };
    Finding {
        what: "Burned to its end",
        seen,
        limit: ["at most ", &percent(LEAVES), " of its wax left"].concat(),
        outcome,
        source: "our own choice",
    }
}

/// What the findings come to, in words, for whoever closes the trial.
pub fn suggestion(trial: &Trial, course: &Course, findings: &[Finding], voice: Voice) -> String {
    if let Some(verdict) = super::suggested(findings) {
        return ["By your limits: ", verdict.name(), ". You decide."].concat();
    }
    let (open, kept): (Vec<_>, Vec<_>) = findings.iter().partition(|f| f.outcome == Outcome::NotYet);
    let good = kept.iter().all(|f| f.outcome == Outcome::Kept)
        && course.by_itself(trial).all(|i| i == Itself::Spent);
    match course.burns_left(trial).filter(|_| good && !open.is_empty()) {
        Some(more) => {
            let burns = if more > 1.0 { " more burns" } else { " more burn" };
            let more = decimal_of(more, 0, voice);
            [
                "So far so good: about ",
                &more,
                burns,
                " to its end. It counts as passed only once its wax is spent: a wick that is right at the top may not be so \
near the bottom. You may decide sooner.",
            ]
            .concat()
        }
        None => "Your limits do not decide it yet. You may.".to_owned(),
    }
}
