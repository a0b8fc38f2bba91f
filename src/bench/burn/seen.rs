//! What was seen of a burn, look by look, in words.

use super::{Grade, Look, Session, THROWS};
use crate::bench::duration;
use crate::quantity::Voice;

/// One look: when it was, what was seen in words with its scale, and what was noted beside it.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Sighting {
    /// `After 90 min`.
    pub when: String,
    /// `Pool across 69 mm; soot none; hot throw 3 of 5, clear close by.` Empty where there is only a note.
    pub said: String,
    pub note: String,
}

/// Before the light, and then each look in turn. Amounts are said as they were typed.
pub fn sightings(session: &Session, voice: Voice) -> Vec<Sighting> {
    let mut all = Vec::new();
    let throw = session.throw.map(|n| ["Cold throw ", &thrown(n), "."].concat());
    let untrimmed = (!session.trimmed).then(|| "The wick was not trimmed.".to_owned());
    let first: Vec<String> = throw.into_iter().chain(untrimmed).collect();
    if !first.is_empty() {
        let when = "Before the light".to_owned();
        all.push(Sighting { when, said: first.join(" "), note: String::new() });
    }
    all.extend(session.looks.iter().map(|look| Sighting {
        when: ["After ", &duration(3600.0 * session.hours(look.at))].concat(),
        said: line(look, voice),
        note: look.note.clone(),
    }));
    all
}

fn line(look: &Look, voice: Voice) -> String {
    let graded = |what: &str, grade: Option<Grade>| grade.map(|g| [what, g.name()].concat());
    let measured = |what: &str, amount: Option<String>| amount.map(|a| [what, &a].concat());
    let said = [
        measured("pool across ", look.pool.map(|a| voice.typed(a))),
        measured("pool deep ", look.depth.map(|a| voice.typed(a))),
        measured("flame ", look.flame.map(|a| voice.typed(a))),
        measured("vessel outside ", look.outside.map(|a| voice.typed(a))),
        measured("weight ", look.mass.map(|a| voice.typed(a))),
        graded("soot ", look.soot),
        graded("mushroom on the wick ", look.mushroom),
        graded("wax left on the wall ", look.hang_up),
        look.throw.map(|n| ["hot throw ", &thrown(n)].concat()),
    ];
    let said = said.into_iter().flatten().collect::<Vec<_>>().join("; ");
    let mut letters = said.chars();
    let first: String = letters.next().into_iter().flat_map(char::to_uppercase).collect();
    if first.is_empty() { first } else { [&first, letters.as_str(), "."].concat() }
}

/// `3 of 5, clear close by`.
fn thrown(throw: u32) -> String {
    let most = THROWS.len().to_string();
    let words = throw.checked_sub(1).and_then(|place| THROWS.get(place as usize)?.split_once(' '));
    let words = words.map(|(_, words)| [", ", words].concat()).unwrap_or_default();
    [&throw.to_string(), " of ", &most, &words].concat()
}

/// The scales that the looks are in, for whoever reads them later.
pub fn scales() -> String {
    [
        "Throw is how the candle smells two steps away, cold before the light and hot while it burns: ",
        &THROWS.join(", "),
        ". It has no limit: what is strong enough is yours to say. Soot, mushroom and wax left on the wall are none, a little \
or much.",
    ]
    .concat()
}
