//! What a book would hold once a copy is taken in, or put in its place.

use super::{Act, Copy, Journal, Map};

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
    let mut names: Map<&str> = Map::default();
    for entry in journal.entries().iter().rev() {
        if let Act::Customer { id, body, .. } = &entry.act
            && !body.removed
            && after.removed().binary_search(id).is_ok()
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

impl Copy {
    /// How many photos of it are not here yet, in a sentence.
    pub fn say_photos(lacking: usize) -> String {
        match lacking {
            0 => String::new(),
            1 => "1 photo is not here yet.".to_owned(),
            n => format!("{n} photos are not here yet."),
        }
    }

    /// How many lines are left out.
    pub const fn left_out(&self) -> usize {
        self.damaged.len() + self.no_photos.len() + self.more_left_out
    }

    /// Who would be removed for good, in words that follow "Caution: "; none where nobody is.
    pub fn say_removes(&self) -> Option<String> {
        const SAID: usize = 20;
        let first = self.removes.get(..SAID).unwrap_or(&self.removes).join(", ");
        let more = match self.removes.len().saturating_sub(SAID) {
            0 => String::new(),
            n => format!(" and {n} more"),
        };
        let said =
            "this copy removes customers from your book for good, since they were removed where it was made";
        let then = "Nothing brings back what you know of them; their orders stay. If you still need a name or an \
                    address, write it down first.";
        (!self.removes.is_empty()).then(|| [said, ": ", &first, &more, ". ", then].concat())
    }

    /// That some of this book would be set aside, in words that follow "Caution: "; none where nothing is.
    pub fn say_puts_aside(&self) -> Option<String> {
        let said = match self.puts_aside {
            0 => return None,
            1 => "1 entry of your book would no longer count".to_owned(),
            n => format!("{n} entries of your book would no longer count"),
        };
        let why = ", since the book was replaced by a copy where this one was made. Nothing of it is deleted: it can be brought \
                   back below once this copy is taken in.";
        Some([&said, why].concat())
    }

    /// What it holds, in a sentence.
    pub fn say(&self) -> String {
        let entries = |n: usize| if n == 1 { "1 entry".to_owned() } else { format!("{n} entries") };
        let are = |n: usize| if n == 1 { "1 is".to_owned() } else { format!("{n} are") };
        let here = match self.known {
            0 => String::new(),
            n => format!(" {} here already.", are(n)),
        };
        let aside = match self.aside {
            0 => String::new(),
            n => format!(" {} set aside with an earlier book, which can be brought back below.", are(n)),
        };
        match self.fresh.len() {
            0 => format!("This copy holds {}. All of them are here already.{aside}", entries(self.known)),
            n => {
                format!("This copy holds {}. {} not here yet.{here}{aside}", entries(n + self.known), are(n))
            }
        }
    }
}
