//! A candle against the workshop's limits.

use super::end::{Itself, to_the_end};
use super::{Course, Full, Grade, Limits, Look, Trial, Verdict, pool};
use crate::bench::duration;
use crate::quantity::{Quantity, Voice};

/// How it stands with one limit.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Outcome {
    Kept,
    /// And a wick of which size would do better, where that follows.
    Broken(Verdict),
    NotSeen,
    /// It was looked at, and what decides it is still to come.
    NotYet,
}

impl Outcome {
    pub const fn name(self) -> &'static str {
        match self {
            Self::Kept => "kept",
            Self::Broken(_) => "not kept",
            Self::NotSeen => "not looked at",
            Self::NotYet => "cannot tell yet",
        }
    }
}

/// One limit, the worst that was seen, and where the usual limit is from.
#[derive(Clone, PartialEq, Debug)]
pub struct Finding {
    pub what: &'static str,
    pub seen: String,
    pub limit: String,
    pub outcome: Outcome,
    pub source: &'static str,
}

const TRADE: &str = "common practice";

/// Every limit in turn.
pub fn judge(trial: &Trial, course: &Course, limits: &Limits, voice: Voice) -> Vec<Finding> {
    vec![
        worst(
            course,
            "Flame height",
            "ASTM F2417-23, the limit from memory",
            |l| Some(l.flame?.value),
            limits.flame.value,
            |v| voice.amount(v, voice.length),
        ),
        worst(
            course,
            "Depth of the melt pool",
            TRADE,
            |l| Some(l.depth?.value),
            limits.depth.value,
            |v| voice.amount(v, voice.length),
        ),
        worst(
            course,
            "Vessel outside",
            TRADE,
            |l| Some(l.outside?.value),
            limits.outside.value,
            |v| voice.amount(v, voice.temperature),
        ),
        grade(course, "Soot", Verdict::Large, |l| l.soot, limits.soot),
        grade(course, "Mushrooming", Verdict::Large, |l| l.mushroom, limits.mushroom),
        grade(course, "Wax left on the wall", Verdict::Small, |l| l.hang_up, limits.hang_up),
        full(trial, course, limits),
        alight(trial, course),
        to_the_end(trial, course, voice),
    ]
}

/// The largest of what was measured against the most it may be.
fn worst<Q: Quantity>(
    course: &Course,
    what: &'static str,
    source: &'static str,
    of: fn(&Look) -> Option<Q>,
    most: Q,
    say: impl Fn(Q) -> String,
) -> Finding {
    let seen = course.looks().filter_map(of).fold(None, |worst: Option<Q>, seen| match worst {
        Some(worst) if worst >= seen => Some(worst),
        _ => Some(seen),
    });
    let outcome = match seen {
        None => Outcome::NotSeen,
        Some(seen) if seen > most => Outcome::Broken(Verdict::Large),
        Some(_) => Outcome::Kept,
    };
    let limit = ["at most ", &say(most)].concat();
    Finding { what, seen: seen.map(say).unwrap_or_default(), limit, outcome, source }
}

fn grade(
    course: &Course,
    what: &'static str,
    wick: Verdict,
    of: fn(&Look) -> Option<Grade>,
    most: Grade,
) -> Finding {
    let seen = course.looks().filter_map(of).max();
    let outcome = match seen {
        None => Outcome::NotSeen,
        Some(seen) if seen > most => Outcome::Broken(wick),
        Some(_) => Outcome::Kept,
    };
    let seen = seen.map_or("", Grade::name).to_owned();
    Finding { what, seen, limit: ["at most ", most.name()].concat(), outcome, source: TRADE }
}

/// The burn in which the pool was full soonest counts: a short burn is no fault of the wick.
fn full(trial: &Trial, course: &Course, limits: &Limits) -> Finding {
    let due = 60.0 * f64::from(limits.full);
    let mut best = (Outcome::NotSeen, String::new());
    for session in &course.sessions {
        let pool = pool(trial, session);
        let late = session.looks.iter().any(|l| l.pool.is_some() && 3600.0 * session.hours(l.at) >= due);
        let said = match pool.full {
            Full::Reached { by, .. } if by <= due => {
                best = (Outcome::Kept, ["after ", &duration(by)].concat());
                break;
            }
            Full::Reached { by, .. } => ["only after ", &duration(by)].concat(),
            _ if late => "not reached".to_owned(),
            _ => continue,
        };
        best = (Outcome::Broken(Verdict::Small), said);
    }
    Finding {
        what: "Full melt pool",
        seen: best.1,
        limit: ["within ", &duration(due)].concat(),
        outcome: best.0,
        source: TRADE,
    }
}

const WEIGH: &str = "went out by itself; weigh it, to tell whether its wax was spent";
const MISFIT: &str =
    "went out by itself; its weights do not fit its wax, so it cannot be told whether that was spent";

/// Whether it went out while it had wax to burn. Going out for want of wax is the end of every candle, and no fault of the
/// wick: a larger one would only be hotter.
fn alight(trial: &Trial, course: &Course) -> Finding {
    let burns = course.sessions.len().to_string();
    let went = |how: Itself| course.by_itself(trial).filter(|own| *own == how).count();
    let open = went(Itself::Unknown) + went(Itself::Misfit);
    let (outcome, seen) = match (went(Itself::Early), open, went(Itself::Spent)) {
        _ if course.sessions.is_empty() => (Outcome::NotSeen, String::new()),
        (early @ 1.., ..) => {
            let said =
                ["went out by itself in ", &early.to_string(), " of ", &burns, " burns, with wax left"];
            (Outcome::Broken(Verdict::Small), said.concat())
        }
        (0, 1.., _) => (Outcome::NotYet, if went(Itself::Unknown) > 0 { WEIGH } else { MISFIT }.to_owned()),
        (0, 0, 1..) => (Outcome::Kept, "until its wax was spent".to_owned()),
        _ if course.sessions.len() == 1 => (Outcome::Kept, "in its one burn".to_owned()),
        _ => (Outcome::Kept, ["in all ", &burns, " burns"].concat()),
    };
    Finding {
        what: "Stays alight",
        seen,
        limit: "not out by itself while it has wax".to_owned(),
        outcome,
        source: TRADE,
    }
}

/// What the findings come to. None while too little was looked at, before it burned to its end where nothing is wrong, or
/// where they point both ways.
pub fn suggested(findings: &[Finding]) -> Option<Verdict> {
    let broken = |verdict| findings.iter().any(|f| f.outcome == Outcome::Broken(verdict));
    match (broken(Verdict::Small), broken(Verdict::Large)) {
        (true, true) => None,
        (true, false) => Some(Verdict::Small),
        (false, true) => Some(Verdict::Large),
        (false, false) => findings.iter().all(|f| f.outcome == Outcome::Kept).then_some(Verdict::Passed),
    }
}
