//! What was set here and in a copy, each without knowing of the other, and has no versions to choose from: rules, rates,
//! the minutes of a pour. The later one stands; so that the other is not lost unseen, both are shown.
//!
//! Neither knew of the other where the copy does not have what is here, and what it has is not here.

use super::tell::{Difference, differences};
use super::{Act, Entry, Id, Journal, Subject};
use crate::bench::burn::BurnEvent;
use crate::shelf::FINISHES;
use crate::sort;
use crate::stores::LotEvent;

/// One thing set in two places.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Clash {
    /// `Costs of work`, `Time of work` …
    pub what: &'static str,
    /// What it is about, as it is called; empty for the workshop's own choices.
    pub name: String,
    pub here: Side,
    pub copy: Side,
    /// True where what is here is the later one.
    pub stands: bool,
    /// What they do not agree on: here, and in the copy.
    pub differs: Vec<Difference>,
}

/// When and on which device it was set.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Side {
    /// Milliseconds since 1970, by the clock of the device.
    pub at: u64,
    pub device: String,
}

/// Of two counts the one that is later by the clocks stands, since what was used in between is reckoned by them.
const COUNTED: &str = "What was counted";

/// What an act sets, so that the next one of the same takes its place.
fn sets(act: &Act) -> Option<(&'static str, Option<&Id>)> {
    Some(match act {
        Act::Settings(_) => ("The workshop’s rules", None),
        Act::Rates(_) => ("Costs of work", None),
        Act::Limits(_) => ("Limits of trials", None),
        Act::Retire { id, .. } => ("Put away", Some(id)),
        Act::Ended { batch, .. } => ("How the pour ended", Some(batch)),
        Act::Worked { batch, .. } => ("Time of work", Some(batch)),
        Act::TakenFrom { batch, .. } => ("Lots taken from", Some(batch)),
        Act::AtLot { lot, event: LotEvent::Counted { .. } } => (COUNTED, Some(lot)),
        Act::AtLot { lot, event: LotEvent::Held { .. } | LotEvent::Released { .. } } => {
            ("On hold", Some(lot))
        }
        Act::AtTrial { trial, event: BurnEvent::Closed { .. } } => ("What came of the trial", Some(trial)),
        Act::Pinned { product, .. } => ("The plan of its pours", Some(product)),
        Act::Ticked { batch, step, .. } => {
            let (_, words) = FINISHES.into_iter().find(|(of, _)| of == step)?;
            (words, Some(batch))
        }
        _ => return None,
    })
}

/// What was set in both: `mine` only here, `theirs` only in the copy; `after` is the book with the copy taken in.
pub(super) fn clashes<'a>(
    after: &Journal,
    mine: impl Iterator<Item = &'a Entry>,
    theirs: impl Iterator<Item = &'a Entry>,
) -> Vec<Clash> {
    let both = mine.map(|e| (false, e)).chain(theirs.map(|e| (true, e)));
    let counts = |e: &Entry| after.counts(&e.id) && after.state().ignored.get(&e.id).is_none();
    let (mut all, mut kept) = (Vec::new(), Vec::new());
    for (copy, entry) in both.filter(|(_, entry)| counts(entry)) {
        if let Some(key) = sets(&entry.act) {
            all.push((key, copy, entry));
        }
        if let Subject::Thing(thing) = entry.act.subject()
            && (matches!(entry.act, Act::Retire { .. }) || entry.act.made_over().is_some())
        {
            kept.push((thing, copy, entry));
        }
    }
    sort::by(&mut all, |(a, _, one), (b, _, other)| (a, one.place()).cmp(&(b, other.place())));
    let same = all.chunk_by(|(a, _, _), (b, _, _)| a == b);
    let mut found: Vec<Clash> = same
        .filter_map(|set| {
            let last =
                |copy: bool| set.iter().rev().find(|(_, of, _)| *of == copy).map(|(_, _, entry)| *entry);
            clash(after, last(false)?, last(true)?)
        })
        .collect();
    sort::by(&mut kept, |(a, _, one), (b, _, other)| (a, one.place()).cmp(&(b, other.place())));
    found.extend(kept.chunk_by(|(a, _, _), (b, _, _)| a == b).filter_map(|set| put_away(after, set)));
    found
}

/// What was put away in one place and changed in the other: it is put away with the change, which nobody would see.
fn put_away(after: &Journal, set: &[(&Id, bool, &Entry)]) -> Option<Clash> {
    let retired = |entry: &Entry| match &entry.act {
        Act::Retire { retired, .. } => Some(*retired),
        _ => None,
    };
    let (thing, copy, put) = set.iter().rev().find(|(_, _, e)| retired(e).is_some())?;
    let mut others = set.iter().rev().filter(|(_, of, _)| of != copy).map(|(_, _, entry)| *entry);
    let agrees = others.clone().find_map(retired) == Some(true);
    let changed =
        others.find(|e| e.act.made_over().is_some()).filter(|_| !agrees && retired(put) == Some(true))?;
    let said = |entry: &Entry| Some(if retired(entry).is_some() { "put away" } else { "changed" }.to_owned());
    let (here, there) = if *copy { (changed, *put) } else { (*put, changed) };
    Some(Clash {
        what: "Put away, and changed",
        name: after.state().name(thing).unwrap_or_default().to_owned(),
        here: side(here),
        copy: side(there),
        stands: !copy,
        differs: vec![Difference { of: "it was".to_owned(), values: vec![said(here), said(there)] }],
    })
}

fn side(entry: &Entry) -> Side {
    Side { at: entry.at, device: entry.device.clone() }
}

fn clash(after: &Journal, here: &Entry, copy: &Entry) -> Option<Clash> {
    let (what, thing) = sets(&here.act)?;
    let mut differs = differences(&[after.told(here), after.told(copy)]);
    // Of the lots each part goes by itself: what only one of them says takes the place of nothing.
    if matches!(here.act, Act::TakenFrom { .. }) {
        differs.retain(|d| d.values.iter().all(Option::is_some) && !d.of.ends_with("order"));
    }
    (!differs.is_empty()).then(|| Clash {
        what,
        name: thing.and_then(|id| after.state().name(id)).unwrap_or_default().to_owned(),
        here: side(here),
        copy: side(copy),
        stands: if what == COUNTED {
            (here.at, here.place()) > (copy.at, copy.place())
        } else {
            here.place() > copy.place()
        },
        differs,
    })
}
