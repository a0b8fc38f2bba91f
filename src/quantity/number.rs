//! Numbers as people type them: `2 1/4`, `2¼`, `.5`, `1,5`, `1 234.5`. One scanner for every field.

use super::{AmountError, Exact, Locale};
use crate::text::cut;

/// Longest text that is looked at.
const LONGEST: usize = 64;
/// Most digits of one number, whole and decimal together, without leading zeros.
pub(super) const DIGITS: usize = 15;
/// Largest lower number of a fraction.
pub(super) const FINEST: i128 = 1000;

/// Fractions that have a character of their own.
const VULGAR: [(char, i128, i128); 18] = [
    ('¼', 1, 4),
    ('½', 1, 2),
    ('¾', 3, 4),
    ('⅓', 1, 3),
    ('⅔', 2, 3),
    ('⅛', 1, 8),
    ('⅜', 3, 8),
    ('⅝', 5, 8),
    ('⅞', 7, 8),
    ('⅕', 1, 5),
    ('⅖', 2, 5),
    ('⅗', 3, 5),
    ('⅘', 4, 5),
    ('⅙', 1, 6),
    ('⅚', 5, 6),
    ('⅐', 1, 7),
    ('⅑', 1, 9),
    ('⅒', 1, 10),
];

/// The fraction that has this character, none where it is none.
pub(super) fn vulgar(c: char) -> Option<Exact> {
    VULGAR.iter().find(|(v, ..)| *v == c).map(|&(_, n, d)| Exact::ratio(n, d))
}

/// The character of this fraction, none where it has none.
pub(super) fn vulgar_char(fraction: Exact) -> Option<char> {
    VULGAR.iter().find(|(_, n, d)| (*n, *d) == fraction.parts()).map(|v| v.0)
}

/// How the number is to be taken.
#[derive(Clone, Copy)]
pub(super) struct Style {
    pub(super) locale: Locale,
    /// Decimal places there can be at most, where it is known: with fewer than three, `1,234` is clear.
    pub(super) places: Option<u32>,
}

/// A number at the start of a text.
pub(super) enum Scanned {
    Clear(Exact),
    /// `1,234` or `11/2`, written out in both ways: `1.234` and `1234`, `1 1/2` and `5 1/2`.
    TwoWays(String, String),
}

/// Why there is none.
pub(super) enum Trouble {
    NotANumber,
    ZeroBelow,
    TooFine,
    TooLong,
}

impl Trouble {
    pub(super) fn tell(self, text: &str, noun: &'static str, example: &'static str) -> AmountError {
        let text = text.trim().into();
        match self {
            Self::NotANumber => AmountError::NotANumber { text, noun, example },
            Self::ZeroBelow => AmountError::ZeroBelow { text },
            Self::TooFine => AmountError::TooFine { text },
            Self::TooLong => AmountError::TooLong { noun },
        }
    }
}

/// What pages put between letters and nobody sees: the soft hyphen, joiners, marks of direction, the byte order mark.
const fn unseen(c: char) -> bool {
    matches!(c, '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{2069}' | '\u{feff}')
}

/// One spelling for every space, minus, slash, apostrophe and full-width character; none where the text is too long to
/// be an amount.
pub(super) fn clean(text: &str) -> Option<String> {
    let text = text.trim_matches(|c: char| c.is_whitespace() || unseen(c));
    (text.chars().take(LONGEST + 1).count() <= LONGEST).then(|| {
        text.chars()
            .filter(|c| !unseen(*c))
            .map(|c| match c {
                '\u{ff01}'..='\u{ff5e}' => char::from_u32(c as u32 - 0xfee0).unwrap_or(c),
                '\u{2010}'..='\u{2013}' | '\u{2212}' | '\u{fe63}' => '-',
                '\u{2044}' | '\u{2215}' => '/',
                '\u{2019}' | '\u{02bc}' => '\'',
                '\u{00ba}' | '\u{02da}' => '°',
                c if c.is_whitespace() => ' ',
                c => c,
            })
            .collect()
    })
}

/// The run of digits that `text` starts with, and what follows.
fn digits(text: &str) -> (&str, &str) {
    cut(text, text.find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len()))
}

fn value(digits: &str) -> Result<i128, Trouble> {
    if digits.trim_start_matches('0').len() > DIGITS {
        return Err(Trouble::TooLong);
    }
    digits.parse().map_err(|_| Trouble::NotANumber)
}

/// Scans the unsigned number that `text` starts with; the rest follows it.
pub(super) fn scan(text: &str, style: Style) -> Result<(Scanned, &str), Trouble> {
    let (first, after) = digits(text);
    if first.is_empty() {
        if let Some((part, rest)) = vulgar_first(text) {
            return Ok((Scanned::Clear(part), rest));
        }
        let (places, rest) = digits(text.strip_prefix(['.', ',']).ok_or(Trouble::NotANumber)?);
        return if places.is_empty() {
            Err(Trouble::NotANumber)
        } else {
            Ok((Scanned::Clear(decimal("", places)?), rest))
        };
    }
    if let Some((below, rest)) = over(after) {
        let number = fraction(first, below)?;
        let ways = run_together(first, below).filter(|_| number > Exact::ONE);
        return Ok((ways.unwrap_or(Scanned::Clear(number)), rest));
    }
    let (runs, rest) = runs(first, after);
    match whole(&runs, style)? {
        Scanned::Clear(whole) if whole.is_whole() => {
            let (part, rest) = proper(rest)?;
            Ok((Scanned::Clear(whole + part), rest))
        }
        other => Ok((other, rest)),
    }
}

fn vulgar_first(text: &str) -> Option<(Exact, &str)> {
    let mut chars = text.chars();
    let part = vulgar(chars.next()?)?;
    Some((part, chars.as_str()))
}

/// The lower number, where `text` goes on as a fraction does: `/4`.
fn over(text: &str) -> Option<(&str, &str)> {
    let (below, rest) = digits(text.trim_start().strip_prefix('/')?.trim_start());
    (!below.is_empty()).then_some((below, rest))
}

fn fraction(above: &str, below: &str) -> Result<Exact, Trouble> {
    match (value(above)?, value(below)?) {
        (_, 0) => Err(Trouble::ZeroBelow),
        (_, below) if below > FINEST => Err(Trouble::TooFine),
        (above, below) => Ok(Exact::ratio(above, below)),
    }
}

/// Lower numbers of the fractions that kitchens and rulers have.
const MARKED: [i128; 5] = [2, 3, 4, 8, 16];

/// `11/2` may be `1 1/2` whose space was lost, as where it is copied from a page that sets the fraction small.
fn run_together(above: &str, below: &str) -> Option<Scanned> {
    let (all, lower) = (value(above).ok()?, value(below).ok().filter(|lower| MARKED.contains(lower))?);
    let mixed = |whole: &str, part: &str| {
        let upper = value(part).ok()?;
        let proper = upper < lower && Exact::ratio(upper, lower).parts().1 == lower && !part.starts_with('0');
        proper.then(|| [whole, " ", part, "/", below].concat())
    };
    let small = (1..above.len()).map(|at| cut(above, at)).find_map(|(whole, part)| mixed(whole, part))?;
    let whole = (all / lower).to_string();
    let large = mixed(&whole, &(all % lower).to_string()).unwrap_or(whole);
    Some(Scanned::TwoWays(small, large))
}

/// The proper fraction that follows a whole number (`2 1/4`, `2-1/4`, `2¼`), zero where none does.
fn proper(text: &str) -> Result<(Exact, &str), Trouble> {
    let inner = text.strip_prefix('-').unwrap_or(text).trim_start();
    if let Some(found) = vulgar_first(inner) {
        return Ok(found);
    }
    let (above, after) = digits(inner);
    match over(after) {
        Some((below, rest)) if !above.is_empty() => {
            let part = fraction(above, below)?;
            if part < Exact::ONE { Ok((part, rest)) } else { Err(Trouble::NotANumber) }
        }
        _ => Ok((Exact::ZERO, text)),
    }
}

/// A run of digits with the sign before it (a space stands before the first).
type Run<'a> = (char, &'a str);

/// Runs of digits with a grouping or decimal sign between. A space groups only three digits, none of a fraction; an
/// apostrophe too, or it is the sign of feet.
fn runs<'a>(first: &'a str, mut rest: &'a str) -> (Vec<Run<'a>>, &'a str) {
    let mut runs = vec![(' ', first)];
    while let Some(sign) = rest.chars().next().filter(|c| ['.', ',', '\'', ' '].contains(c)) {
        let (run, after) = digits(rest.trim_start_matches(sign));
        let one = rest.len() - run.len() - after.len() == sign.len_utf8();
        let grouping = ![' ', '\''].contains(&sign) || (run.len() == 3 && over(after).is_none());
        if !one || run.is_empty() || !grouping {
            break;
        }
        runs.push((sign, run));
        rest = after;
    }
    (runs, rest)
}

/// The number that runs of digits make: which signs group, and which one is the decimal sign.
fn whole(runs: &[Run<'_>], style: Style) -> Result<Scanned, Trouble> {
    let (groups, places) = match runs {
        [(_, first), (sign @ ('.' | ','), run)] => {
            let three = run.len() == 3 && first.len() <= 3 && !first.starts_with('0');
            if !three || *sign == style.locale.sign() {
                return decimal(first, run).map(Scanned::Clear);
            }
            if style.places.is_none_or(|most| most >= 3) {
                let local = if style.locale == Locale::Point { "." } else { "," };
                return Ok(Scanned::TwoWays([first, local, run].concat(), [*first, run].concat()));
            }
            (runs, "")
        }
        [groups @ .., (sign @ ('.' | ','), run)] if groups.iter().skip(1).all(|g| g.0 != *sign) => {
            (groups, *run)
        }
        _ => (runs, ""),
    };
    let mut joined = String::new();
    let sign = groups.get(1).map(|g| g.0);
    for (at, (own, run)) in groups.iter().enumerate() {
        let fits =
            if at == 0 { groups.len() == 1 || run.len() <= 3 } else { run.len() == 3 && Some(*own) == sign };
        if !fits {
            return Err(Trouble::NotANumber);
        }
        joined.push_str(run);
    }
    decimal(&joined, places).map(Scanned::Clear)
}

fn decimal(whole: &str, places: &str) -> Result<Exact, Trouble> {
    let whole = whole.trim_start_matches('0');
    if whole.len() + places.len() > DIGITS {
        return Err(Trouble::TooLong);
    }
    let digits =
        value(&[whole, places, if whole.is_empty() && places.is_empty() { "0" } else { "" }].concat())?;
    Ok(Exact::ratio(digits, 10_i128.pow(places.len() as u32)))
}
