//! A percentage beside a class: a specific limit where it is written as one, or the concentration once more.

use super::segment::numbers;
use crate::quantity::{Exact, Locale};
use crate::text::cut;

/// What stands beside a class in numbers.
pub(super) struct Beside {
    /// Each with the sign before it.
    numbers: Vec<(char, Exact)>,
    /// A limit beyond doubt: `C ≥ 5 %`, `SCL 0.5 %`.
    pub(super) named: bool,
}

/// What it tells.
pub(super) enum Meant {
    /// The specific limit, in percent.
    Limit(Exact),
    /// The concentration, said again.
    Share,
}

impl Beside {
    /// `plain`: the part as it stands; `words`: with its classes in short; `bare`: what follows the classes. None where
    /// no number stands beside them but that of a note; within it none where the numbers cannot be read.
    pub(super) fn of(plain: &str, words: &str, bare: &str, locale: Locale) -> Option<Option<Self>> {
        let found = numbers(bare, locale);
        let fine = |n: &Exact| *n != Exact::whole(n.floor());
        let told = match found.as_deref() {
            Some([(_, one)]) => fine(one),
            Some([_, _, ..]) => true,
            _ => false,
        };
        let signs = ['%', '<', '>'];
        if !told && !words.contains(signs) {
            return None;
        }
        // A limit between two classes is of one of them, and what follows both of the other.
        if cut(words, words.len().saturating_sub(bare.len())).0.contains(signs) {
            return Some(None);
        }
        // `5 % > C` is no limit from which on a class holds.
        let below = |of: &[(char, Exact)]| matches!(of, [(' ', _)]) && bare.contains('>');
        let numbers = found.filter(|of| !of.is_empty() && !below(of));
        Some(numbers.map(|numbers| Self { numbers, named: is_limit(plain) }))
    }

    /// None where it is not clear: neither written as a limit nor the concentration, or both.
    pub(super) fn meant(&self, share: &[(char, Exact)]) -> Option<Meant> {
        let least = self.numbers.iter().filter(|(sign, _)| *sign != '<').map(|found| found.1).min();
        let limit = least.filter(|least| !least.is_zero()).map(Meant::Limit);
        if self.named {
            return limit;
        }
        let same = self.numbers.iter().map(|found| found.1).eq(share.iter().map(|found| found.1));
        match self.numbers.as_slice() {
            // From some share on: that of the substance would be written so, too.
            [('>', _)] => limit.filter(|_| self.numbers != share),
            _ => same.then_some(Meant::Share),
        }
    }
}

/// Where a text calls it a limit: by the letters SCL, or by a C beside a sign of comparison. Muscles have these letters too.
fn is_limit(plain: &str) -> bool {
    let sign = |of: Option<char>| of.is_some_and(|of| "<>=".contains(of));
    let mut alone = plain.match_indices("scl").map(|(at, _)| around(plain, at, 3));
    let concentration = |(before, after): (&str, &str)| {
        let beside = sign(before.trim_end().chars().next_back()) || sign(after.trim_start().chars().next());
        beside && !after.starts_with(|c: char| c.is_ascii_digit())
    };
    alone.any(|of| of.is_some())
        || plain.match_indices('c').filter_map(|(at, _)| around(plain, at, 1)).any(concentration)
}

/// What stands before and behind letters that are a word of their own.
fn around(text: &str, at: usize, long: usize) -> Option<(&str, &str)> {
    let (before, after) = (text.get(..at)?, text.get(at + long..)?);
    let is_word = !before.ends_with(char::is_alphanumeric) && !after.starts_with(char::is_alphabetic);
    is_word.then_some((before, after))
}
