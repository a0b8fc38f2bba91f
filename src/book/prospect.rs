//! What a book would hold once a copy is taken in, or put in its place.

use super::{Act, Id, Journal, Map};
use crate::sort;

/// So many of one kind: now, with the copy taken in, and with the book replaced by it.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Prospect {
    pub of: &'static str,
    pub now: usize,
    pub merged: usize,
    pub replaced: Option<usize>,
}

/// Counts what would come of it; `after` is the book with the copy taken in.
pub(super) fn prospects(journal: &Journal, mut after: Journal, replace: Option<&Act>) -> Vec<Prospect> {
    let (now, merged) = (tally(journal), tally(&after));
    let replaced = replace.map(|act| {
        let entry = after.entry(act.clone(), 0, 0);
        after.take(entry);
        tally(&after)
    });
    let mut all = Vec::new();
    for (at, (of, now)) in now.into_iter().enumerate() {
        let of_it = |t: &[(&'static str, usize)]| t.get(at).map_or(0, |(_, n)| *n);
        let replaced = replaced.as_ref().map(|r| of_it(r));
        all.push(Prospect { of, now, merged: of_it(&merged), replaced });
    }
    all.retain(|p| p.now + p.merged + p.replaced.unwrap_or(0) > 0);
    all
}

/// Nothing takes it back.
const REMOVED: &str = "Customers removed for good";

/// The names of those who are in this book, and would not be after that.
pub(super) fn removes(journal: &Journal, after: &Journal) -> Vec<String> {
    let mut removed: Vec<&Id> = after.removed().iter().collect();
    sort::by(&mut removed, |a, b| a.cmp(b));
    let mut names: Map<&str> = Map::default();
    for entry in journal.entries().iter().rev() {
        if let Act::Customer { id, body, .. } = &entry.act
            && !body.removed
            && removed.binary_search(&id).is_ok()
        {
            names.add(id, &body.name);
        }
    }
    names
        .into_values()
        .map(|name| if name.is_empty() { "one without a name" } else { name }.to_owned())
        .collect()
}

/// How many there are of each kind.
fn tally(journal: &Journal) -> [(&'static str, usize); 13] {
    let s = journal.state();
    [
        ("Formulas", s.formulas.len()),
        ("Vessels", s.vessels.len()),
        ("Ingredients", s.ingredients.len()),
        ("Scales", s.scales.len()),
        ("Pots", s.pots.len()),
        ("Pours", s.batches.len()),
        ("Lots", s.lots.len()),
        ("Trials", s.trials.len()),
        ("Customers", s.customers.len()),
        (REMOVED, journal.removed().len()),
        ("Orders", s.orders.len()),
        ("Changed in two places, to choose", journal.forks().len()),
        ("Entries that change nothing", s.ignored.len()),
    ]
}
