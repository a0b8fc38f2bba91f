//! What a sheet says of a class beside its category: which harm to reproduction (`H360FD`), which organs and by which way into
//! the body (`STOT RE 2, H373 (liver) (oral)`).

use super::class::{Class, Group};
use super::statement::without_words;
use crate::text::{cut, lower};

/// Harm to fertility and to the unborn child, known and suspected, and both where a statement has no letters.
pub(super) const FERTILITY: u8 = 1;
pub(super) const CHILD: u8 = 2;
pub(super) const FERTILITY_SUSPECTED: u8 = 4;
pub(super) const CHILD_SUSPECTED: u8 = 8;
pub(super) const ANY: u8 = 16;
pub(super) const ANY_SUSPECTED: u8 = 32;

/// Ways into the body, and that none is said.
const WAYS: [(u8, &str); 3] = [(1, "if swallowed"), (2, "in contact with skin"), (4, "if inhaled")];
const ANY_WAY: u8 = 8;

/// Of one substance.
#[derive(Clone, PartialEq, Debug, Default)]
pub(super) struct Detail {
    pub(super) repr: u8,
    /// Of a single exposure, and of repeated ones.
    pub(super) organs: [Organs; 2],
}

#[derive(Clone, PartialEq, Debug, Default)]
pub(super) struct Organs {
    /// In the order of the alphabet; none where none is named.
    pub(super) names: Vec<String>,
    pub(super) ways: u8,
}

/// What is taken for an organ wherever it stands beside its class. In brackets any word is.
const ORGANS: [&str; 30] = [
    "adrenal gland",
    "auditory organs",
    "bladder",
    "blood",
    "blood system",
    "bone marrow",
    "bones",
    "brain",
    "cardiovascular system",
    "central nervous system",
    "digestive tract",
    "eye",
    "eyes",
    "gastrointestinal tract",
    "hearing organs",
    "heart",
    "immune system",
    "kidney",
    "kidneys",
    "liver",
    "lung",
    "lungs",
    "nervous system",
    "optic nerve",
    "peripheral nervous system",
    "respiratory system",
    "respiratory tract",
    "spleen",
    "thymus",
    "thyroid",
];

/// In brackets these are no organs.
const NOTHING: [&str; 12] = [
    "se",
    "re",
    "c",
    "scl",
    "single exposure",
    "repeated exposure",
    "organs",
    "vapour",
    "vapours",
    "dust",
    "mist",
    "gas",
];

/// Nor is what has one of these words in it: a note of Annex VI, whose word the class is, that no more is known.
const NO_ORGAN: [&str; 11] = [
    "note",
    "annex",
    "classification",
    "self",
    "harmonised",
    "harmonized",
    "supplier",
    "no",
    "not",
    "unknown",
    "all",
];

impl Detail {
    /// Takes in what a part of a line says, with its own capitals.
    pub(super) fn read(&mut self, text: &str) {
        for (at, _) in text.char_indices().filter(|(_, sign)| "Hh".contains(*sign)) {
            let code: String = cut(text, at).1.chars().take_while(char::is_ascii_alphanumeric).collect();
            let (number, letters) = cut(&code, 4);
            let suspected = match lower(number).as_str() {
                "h360" => false,
                "h361" => true,
                _ => continue,
            };
            // Where all are small, that is how the sheet writes.
            let small = |letter: char| {
                letter.is_ascii_lowercase() && letters.contains(|c: char| c.is_ascii_uppercase())
            };
            for letter in letters.chars() {
                self.repr |= match (letter.to_ascii_lowercase(), suspected || small(letter)) {
                    ('f', false) => FERTILITY,
                    ('d', false) => CHILD,
                    ('f', true) => FERTILITY_SUSPECTED,
                    ('d', true) => CHILD_SUSPECTED,
                    _ => 0,
                };
            }
        }
        self.read_organs(&without_words(&lower(text)));
    }

    fn read_organs(&mut self, text: &str) {
        let mut place = None;
        let mut bracketed = false;
        let mut rest = text;
        loop {
            let (fragment, from) =
                cut(rest, rest.find(['(', ')', '[', ']', ',', ';', ':', '/']).unwrap_or(rest.len()));
            for fragment in fragment.split(" and ") {
                let fragment = fragment.trim_matches([' ', '-', '.', '*', '\u{2013}']);
                match of(fragment, place) {
                    Fragment::Class(found) => place = found,
                    Fragment::Words => {
                        let known = place.and_then(|place: usize| self.organs.get_mut(place));
                        known.into_iter().for_each(|organs| organs.read(fragment, bracketed));
                    }
                }
            }
            let Some(sign) = from.chars().next() else { return };
            bracketed = "([".contains(sign) || bracketed && !")]".contains(sign);
            rest = cut(from, sign.len_utf8()).1;
        }
    }

    /// What it has classes for and does not say more of; of what it has no class for nothing is kept.
    pub(super) fn settle(&mut self, classes: &[Class]) {
        let has = |group: Group, suspected: Option<bool>| {
            classes
                .iter()
                .any(|c| c.is_in(group) && suspected.is_none_or(|suspected| suspected == (c.code == "H361")))
        };
        let (known, suspected) = (has(Group::Repr, Some(false)), has(Group::Repr, Some(true)));
        let [strong, weak] = [FERTILITY | CHILD, FERTILITY_SUSPECTED | CHILD_SUSPECTED];
        if !known && !suspected {
            self.repr = 0;
        }
        if known && self.repr & strong == 0 {
            self.repr |= ANY;
        }
        if suspected && self.repr & weak == 0 {
            self.repr |= ANY_SUSPECTED;
        }
        for (organs, group) in self.organs.iter_mut().zip([Group::Single, Group::Repeated]) {
            if !has(group, None) {
                *organs = Organs::default();
            } else if organs.ways == 0 {
                organs.ways = ANY_WAY;
            }
        }
    }

    pub(super) fn take(&mut self, other: &Self) {
        self.repr |= other.repr;
        self.organs.iter_mut().zip(&other.organs).for_each(|(mine, theirs)| mine.take(theirs));
    }
}

enum Fragment {
    /// What follows is of the organs of this place, or of none.
    Class(Option<usize>),
    Words,
}

fn of(fragment: &str, place: Option<usize>) -> Fragment {
    let has = |words: &[&str]| words.iter().any(|word| fragment.contains(word));
    if has(&["h370", "h371"]) {
        return Fragment::Class(Some(0));
    }
    if has(&["h372", "h373"]) {
        return Fragment::Class(Some(1));
    }
    if has(&["stot", "target organ", "single exposure", "repeated exposure"]) {
        return Fragment::Class(match (has(&["stot se", "single"]), has(&["stot re", "repeated"])) {
            (true, false) if !fragment.contains('3') => Some(0),
            (false, true) => Some(1),
            _ => None,
        });
    }
    match fragment.contains(|c: char| c.is_ascii_digit()) {
        // Category 3 has its own statements.
        true => Fragment::Class(place.filter(|_| fragment.starts_with("cat") && !fragment.contains('3'))),
        false => Fragment::Words,
    }
}

impl Organs {
    fn read(&mut self, fragment: &str, bracketed: bool) {
        let way = match fragment {
            "oral" | "if swallowed" | "swallowed" | "ingestion" => 1,
            "dermal" | "in contact with skin" | "skin contact" => 2,
            _ if fragment.starts_with("inhal") || fragment == "if inhaled" => 4,
            _ => 0,
        };
        self.ways |= way;
        let words = fragment.chars().all(|c| c.is_alphabetic() || " -".contains(c));
        let is_other =
            NOTHING.contains(&fragment) || fragment.split([' ', '-']).any(|word| NO_ORGAN.contains(&word));
        let named = ORGANS.contains(&fragment) || bracketed && words && !is_other;
        if way == 0 && named && !fragment.is_empty() {
            self.names.push(fragment.to_owned());
            self.sort();
        }
    }

    pub(super) fn take(&mut self, other: &Self) {
        self.ways |= other.ways;
        self.names.extend(other.names.iter().cloned());
        self.sort();
    }

    fn sort(&mut self) {
        crate::sort::by(&mut self.names, |a, b| a.cmp(b));
        self.names.dedup();
    }

    /// `if swallowed or if inhaled`; none where any way may do the harm.
    pub(super) fn way(&self) -> Option<String> {
        let ways: Vec<&str> = WAYS.iter().filter(|(bit, _)| self.ways & bit != 0).map(|way| way.1).collect();
        (self.ways & ANY_WAY == 0 && !ways.is_empty() && ways.len() < WAYS.len()).then(|| ways.join(" or "))
    }
}
