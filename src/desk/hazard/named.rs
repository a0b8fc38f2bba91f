//! Class names and codes as they stand in a line of section 3.

use super::class::{Class, Group, Row, rows};
use super::wrong::Wrong;
use crate::text::{cut, lower};

/// Class names and codes as they stand in one part.
#[derive(Default)]
pub(super) struct Named {
    /// Each with the routes that stand beside it.
    names: Vec<(String, Vec<Group>)>,
    pub(super) codes: Vec<String>,
    /// Routes stand before their class: `oral: Acute Tox. 4`.
    leading: bool,
    /// Those whose class is yet to come.
    groups: Vec<Group>,
    /// The form of what is breathed in, as a place among the routes.
    pub(super) breathed: Option<usize>,
    /// Hazards that are tested on the mixture itself, such as flammability.
    pub(super) noted: Vec<String>,
}

/// The routes by which something comes into a body, as places in the table of acute toxicity.
pub(super) const ROUTES: [(&str, usize); 7] =
    [("oral", 0), ("dermal", 1), ("gas", 2), ("vapour", 3), ("vapor", 3), ("dust", 4), ("mist", 4)];

/// True where both are the same but for spaces, points and case.
fn alike(a: &str, b: &str) -> bool {
    let keep = |c: &char| !matches!(c, ' ' | '.');
    a.chars().filter(keep).eq(b.chars().filter(keep).map(|c| c.to_ascii_lowercase()))
}

/// Hazards of the thing itself, which are tested and not reckoned, and those that only other laws have.
const NOTED: [&str; 15] = [
    "flam. ",
    "flammable ",
    "combustible ",
    "asp. tox. 2",
    "self-",
    "ox. ",
    "met. corr",
    "pyr. ",
    "org. perox",
    "expl. ",
    "press. gas",
    "desen",
    "water-react",
    "aerosol",
    "euh",
];

/// What a sheet writes after a class of organs, in brackets.
const ORGANS: [&str; 9] = [
    "respiratory tract",
    "respiratory system",
    "respiratory tract irritation",
    "central nervous system",
    "nervous system",
    "narcotic effects",
    "liver",
    "kidney",
    "kidneys",
];

/// The class names and codes of a part. Names that are none make it an error only where something else is one.
pub(super) fn classes(words: &str) -> Result<Named, Wrong> {
    let mut named = Named::default();
    let mut bare = String::new();
    let mut rest = words.strip_prefix("scl").unwrap_or(words);
    while let Some(at) = rest.find('h') {
        let (before, from) = cut(rest, at);
        let code: String = from.chars().take_while(char::is_ascii_alphanumeric).collect();
        let digits = code.get(1..4).filter(|d| d.bytes().all(|b| b.is_ascii_digit()));
        let starts = !before.ends_with(|c: char| c.is_ascii_alphanumeric());
        bare.push_str(before);
        match digits {
            Some(digits) if starts && code.len() <= 6 => {
                let full = ["H", digits].concat();
                if digits.starts_with('2') || full == "H305" {
                    named.noted.push(full);
                } else if full == "H320" {
                    // Category 2B of the GHS is within 2 of the Union.
                    named.codes.push("H319".to_owned());
                } else if rows().any(|row| row.code == full) {
                    named.codes.push(full);
                } else {
                    return Err(Wrong::NoSuchCode { code: full });
                }
                bare.push(',');
                rest = cut(from, code.len()).1;
            }
            _ => {
                bare.push('h');
                rest = cut(from, 1).1;
            }
        }
    }
    bare.push_str(rest);
    let mut stray = None;
    for piece in bare.split([',', '/', '(', ')', '+', ':', '<', '>']).map(str::trim) {
        let mut piece = piece.trim_matches([' ', '=', '-']);
        // The route may stand beside its class: `Acute Tox. 4 oral`.
        let mut beside = None;
        if let Some((head, word)) = piece.rsplit_once(' ')
            && let Some((_, place)) = ROUTES.iter().find(|(known, _)| *known == word)
        {
            beside = Some(*place);
            piece = head.trim_end_matches("inhalation").trim_end_matches([' ', '-']);
        }
        let long = piece.strip_prefix("aq. ").map(|rest| ["aquatic ", rest].concat());
        let piece = long.as_deref().unwrap_or(piece);
        if let Some((_, place)) = ROUTES.iter().find(|(word, _)| *word == piece) {
            named.by(*place);
        } else if rows().any(|row| alike(piece, row.name)) {
            let own = std::mem::take(&mut named.groups);
            named.names.push((piece.to_owned(), own));
        } else if let Some(row) = rows().find(|row| row.code.starts_with('E') && alike(piece, row.code)) {
            named.codes.push(row.code.to_owned());
        } else if NOTED.iter().any(|n| piece.starts_with(n)) {
            named.noted.push(piece.to_owned());
        } else if !["", "scl", "c", "inhalation"].contains(&piece) && !ORGANS.contains(&piece) {
            let organ = named.is_of_organs() && !piece.contains(|c: char| c.is_ascii_digit());
            stray = stray.or_else(|| (!organ && !is_figures(piece)).then(|| piece.to_owned()));
        }
        if let Some(place) = beside {
            named.by(place);
        }
    }
    match stray {
        Some(text) if !named.is_empty() => Err(Wrong::Unknown { text }),
        _ => Ok(named),
    }
}

/// Numbers and what may stand about them in a limit.
fn is_figures(text: &str) -> bool {
    text.chars().all(|c| c.is_ascii_digit() || " .,%-=c".contains(c))
}

impl Named {
    fn by(&mut self, place: usize) {
        let group = [Group::Oral, Group::Dermal].get(place).copied().unwrap_or(Group::Inhaled);
        self.leading |= self.names.is_empty();
        match self.names.last_mut().filter(|_| !self.leading) {
            Some((_, own)) => own.push(group),
            None => self.groups.push(group),
        }
        if place > 1 {
            self.breathed = Some(place);
        }
    }

    /// A class of organs, after which any may be named.
    fn is_of_organs(&self) -> bool {
        self.names.iter().any(|(name, _)| name.starts_with("stot"))
            || self.codes.iter().any(|c| c.starts_with("H37"))
    }

    pub(super) fn is_empty(&self) -> bool {
        self.names.is_empty() && self.codes.is_empty() && self.noted.is_empty()
    }

    /// The part without its names and codes.
    pub(super) fn without(&self, words: &str) -> String {
        // What follows the first sign of comparison is the limit; before it may stand a lower one: `5 % <= c < 10 %`.
        let after = self.codes.last().and_then(|code| words.find(&lower(code)).map(|at| at + code.len()));
        let after = after.or_else(|| {
            self.names.last().and_then(|(name, _)| words.find(name.as_str()).map(|at| at + name.len()))
        });
        let rest = cut(words, after.unwrap_or(0)).1;
        rest.trim_start_matches(|c: char| c.is_ascii_alphabetic()).to_owned()
    }

    /// The classes meant; a name of several is told apart by the codes beside it, or else those of the whole line.
    pub(super) fn classes(&self, all: &[&str]) -> Result<Vec<Class>, Wrong> {
        let mut found: Vec<Class> = Vec::new();
        for (name, own) in &self.names {
            let rows: Vec<Class> = rows().filter(|row| alike(name, row.name)).collect();
            let these = |is: &dyn Fn(&Row) -> bool| {
                rows.iter().copied().filter(|row| is(row)).collect::<Vec<Class>>()
            };
            let mut meant =
                these(&|row| own.contains(&row.group) || self.codes.iter().any(|code| code == row.code));
            if meant.is_empty() {
                meant = these(&|row| all.contains(&row.code));
            }
            match rows.as_slice() {
                [only] => found.push(only),
                _ if meant.is_empty() => {
                    let codes: Vec<&str> = rows.iter().map(|row| row.code).collect();
                    return Err(Wrong::WhichOne { class: name.clone(), codes: codes.join(", ") });
                }
                _ => found.extend(meant),
            }
        }
        Ok(found)
    }
}
