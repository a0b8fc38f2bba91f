//! One part of a line of section 3: what it is by its look, and what it says.

use super::beside::Beside;
use super::named::{Named, classes};
use super::number::number;
use super::statement::without_words;
use super::substance::Dose;
use super::wrong::Wrong;
use super::{dose, spelled};
use crate::quantity::{Exact, Locale, read_number};
use crate::text::{cut, lower};

/// What a part says.
pub(super) enum Part {
    Nothing,
    Number {
        cas: bool,
        text: String,
    },
    /// The upper end, in percent.
    Share(Exact),
    /// Acute (0), chronic (1) or both, and the factor.
    M(Option<usize>, Exact),
    /// The place of the route, and the estimate.
    Dose(usize, Dose),
    Unknown,
    Apart,
    Classes(Named),
    /// Classes, and what stands beside them in percent.
    Beside(Named, Beside),
}

pub(super) fn read(text: &str, locale: Locale) -> Result<Part, Wrong> {
    let plain = plain(text);
    let words = plain.as_str();
    if words.trim_matches(['-', '*', ' ', '.']).is_empty() {
        return Ok(Part::Nothing);
    }
    let is_other = tells(words);
    // A registration number under REACH.
    if words.contains("01-21") && !is_other {
        return Ok(Part::Nothing);
    }
    if let Some(found) = numbered(words)? {
        return Ok(found);
    }
    match words {
        "no data" | "unknown" | "?" | "not known" => return Ok(Part::Unknown),
        // Not told is up to all of it.
        "proprietary" | "trade secret" | "confidential" | "withheld" | "not stated" | "not disclosed"
        | "balance" | "remainder" | "rest" => {
            return Ok(Part::Share(Exact::whole(100)));
        }
        "not classified" | "not hazardous" | "non-hazardous" | "no classification" | "none"
        | "not applicable" | "n/a" | "n.a." | "warning" | "danger" => {
            return Ok(Part::Nothing);
        }
        "not additive" | "acid" | "base" => return Ok(Part::Apart),
        _ => {}
    }
    if dose::is_dose(words) {
        return dose::dose(words, locale).ok_or_else(|| Wrong::Ate { text: text.trim().to_owned() });
    }
    let first: String = words.chars().take_while(char::is_ascii_alphabetic).collect();
    let rest = cut(words, first.len()).1;
    let own = || text.trim().to_owned();
    match first.as_str() {
        "m" => return m_factor(rest, locale).ok_or_else(|| Wrong::MFactor { text: own() }),
        "ph" => {
            let ph = last_number(rest, locale).ok_or_else(|| Wrong::Ph { text: own() })?;
            // Annex I, 3.2.3.3.4: at pH 2 and below, and 11.5 and above, adding up does not apply.
            let extreme = ph <= Exact::whole(2) || ph >= Exact::ratio(23, 2);
            return Ok(if extreme { Part::Apart } else { Part::Nothing });
        }
        "reach" | "index" | "note" | "ghs" | "dgr" | "wng" if !is_other => return Ok(Part::Nothing),
        _ => {}
    }
    let in_short = |words: &str| spelled::short(words).unwrap_or_else(|| words.to_owned());
    let mut known = in_short(words);
    let mut named = classes(&known);
    if named.is_err() {
        let bare = in_short(&without_words(words));
        if let Ok(found) = classes(&bare) {
            (known, named) = (bare, Ok(found));
        }
    }
    let (words, named) = (known.as_str(), named?);
    if named.is_empty() {
        return share(words, &own(), locale).map(Part::Share);
    }
    match Beside::of(&plain, words, &named.without(words), locale) {
        None => Ok(Part::Classes(named)),
        Some(Some(beside)) => Ok(Part::Beside(named, beside)),
        Some(None) => Err(Wrong::Limit { text: own() }),
    }
}

/// The numbers of a part, each with the sign before it; empty where something else stands in it.
pub(super) fn figures(text: &str, locale: Locale) -> Vec<(char, Exact)> {
    numbers(&plain(text), locale).unwrap_or_default()
}

/// True where a class is told, which is not passed over for a number or a note beside it.
fn tells(words: &str) -> bool {
    !classes(words).is_ok_and(|named| named.is_empty()) || spelled::short(words).is_some()
}

/// Small letters, one spelling for every dash and sign.
fn plain(text: &str) -> String {
    let mut out = String::new();
    for sign in lower(text.trim()).chars() {
        match sign {
            '\u{2010}'..='\u{2015}' | '\u{2212}' => out.push('-'),
            '≥' => out.push_str(">="),
            '≤' => out.push_str("<="),
            // Marks of a note at the foot of the sheet.
            '*' => {}
            s if s.is_whitespace() => out.push(' '),
            s => out.push(s),
        }
    }
    out
}

/// A CAS or EC number, with or without its name; index and registration numbers are passed over.
fn numbered(words: &str) -> Result<Option<Part>, Wrong> {
    let is_number = |text: &&str| text.bytes().all(|b| b.is_ascii_digit() || b == b'-') && text.contains('-');
    let mut last = words.rsplit([' ', ':', '.']);
    let Some(text) = last.next().filter(is_number) else { return Ok(None) };
    if tells(words.trim_end_matches(text)) {
        return Ok(None);
    }
    if text.split('-').count() > 3 {
        return Ok(Some(Part::Nothing));
    }
    let Some(number) = number(text) else { return Ok(None) };
    let kind = if number.cas { "CAS" } else { "EC" };
    let text = text.to_owned();
    if number.right > 9 {
        return Err(Wrong::NoSuchNumber { text });
    }
    if number.check != number.right {
        return Err(Wrong::Check { text, kind, right: number.right });
    }
    Ok(Some(Part::Number { cas: number.cas, text }))
}

/// Words between numbers that say nothing; the c is that of C ≥ 5 %.
const SAYING_NOTHING: [&str; 19] = [
    "to", "up", "max", "max.", "about", "approx", "approx.", "percent", "w/w", "wt", "wt.", "c", "ca.", "ca",
    "scl", "scl:", "mg/kg", "mg/l", "ppm",
];

/// The numbers of a text, each with the sign before it; none where something else stands in it.
pub(super) fn numbers(words: &str, locale: Locale) -> Option<Vec<(char, Exact)>> {
    let mut found = Vec::new();
    let mut sign = ' ';
    let mut rest = words;
    loop {
        rest = rest.trim_start_matches([' ', '%', '-', '=', '(', ')', '[', ']', '~', ':', ',', ';']);
        let Some(first) = rest.chars().next() else { return Some(found) };
        if first.is_ascii_digit() || first == '.' {
            let (number, after) = cut(
                rest,
                rest.find(|c: char| !c.is_ascii_digit() && c != '.' && c != ',').unwrap_or(rest.len()),
            );
            let number = number.trim_end_matches([',', '.']);
            found.push((sign, read_number(number, locale).ok()?));
            (sign, rest) = (' ', after);
        } else if first == '<' || first == '>' {
            (sign, rest) = (first, cut(rest, 1).1);
        } else {
            let word = cut(rest, rest.find([' ', '%', '-', '<', '>', '=', ')']).unwrap_or(rest.len())).0;
            if !SAYING_NOTHING.contains(&word) {
                return None;
            }
            rest = cut(rest, word.len()).1;
        }
    }
}

fn last_number(words: &str, locale: Locale) -> Option<Exact> {
    numbers(words, locale)?.last().map(|found| found.1)
}

/// The upper end of a concentration: a range at its upper end, one open above at 100 %.
fn share(words: &str, text: &str, locale: Locale) -> Result<Exact, Wrong> {
    let text = || text.to_owned();
    let Some(found) = numbers(words, locale).filter(|_| words.contains(|c: char| c.is_ascii_digit())) else {
        let looks =
            words.contains('%') || words.starts_with(|c: char| c.is_ascii_digit() || "<>=~".contains(c));
        return Err(if looks { Wrong::Share { text: text() } } else { Wrong::Unknown { text: text() } });
    };
    let hundred = Exact::whole(100);
    let upper = match found.as_slice() {
        [('>', one)] if *one <= hundred => hundred,
        [(_, one)] => *one,
        [(_, low), (_, high)] if low > high => return Err(Wrong::Backwards { text: text() }),
        [(_, _), (_, high)] => *high,
        _ => return Err(Wrong::Share { text: text() }),
    };
    if upper > hundred { Err(Wrong::TooMuch { text: text() }) } else { Ok(upper) }
}

/// `=10`, `(acute) = 10`, `-factor chronic: 1`.
fn m_factor(rest: &str, locale: Locale) -> Option<Part> {
    let which = if rest.contains("acute") {
        Some(0)
    } else if rest.contains("chronic") {
        Some(1)
    } else {
        None
    };
    let mut bare = rest.to_owned();
    for word in ["-factor", "factor", "acute", "chronic"] {
        bare = bare.replace(word, " ");
    }
    let m = last_number(&bare, locale).filter(|m| *m >= Exact::ONE)?;
    Some(Part::M(which, m))
}
