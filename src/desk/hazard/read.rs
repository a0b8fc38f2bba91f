//! Reading section 3 of a safety data sheet, one substance a line.
//!
//! A line is `name; numbers; concentration; classes …`, parted by semicolons, tabs or bars, in any order after the
//! name: `Linalool; 78-70-6; 201-134-4; 5 - < 10 %; Skin Irrit. 2 H315; Skin Sens. 1B H317`. Also `M=10`,
//! `Skin Sens. 1 H317 ≥ 0.5 %` (a specific limit), `ATE oral 500`, `no data`, `pH 1.8`, `not additive`. Classes may be
//! written in full. A line that begins with `#` is a remark.

use super::beside::{Beside, Meant};
use super::class::{Class, rows};
use super::named::Named;
use super::number::number;
use super::piece::pieces;
use super::segment::{self, Part};
use super::substance::{Substance, stricter};
use super::wrong::Wrong;
use crate::quantity::{Exact, Locale};
use crate::text::{cut, lower};

/// What is wrong with a line; lines count from 1.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct LineError {
    pub line: usize,
    pub wrong: Wrong,
}

impl std::fmt::Display for LineError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "Line {}: {}", self.line, self.wrong)
    }
}

/// Most lines that are read.
const MOST: usize = 500;

/// Reads the lines; what cannot be read is told line by line, the rest is there nonetheless. Where there are too many, what
/// stands in the others is a substance not known in full, so that no result is told as if it were all.
pub fn read_lines(text: &str, locale: Locale) -> (Vec<Substance>, Vec<LineError>) {
    let (mut substances, mut errors) = (Vec::new(), Vec::new());
    for (at, line) in text.lines().enumerate() {
        let line = line.trim();
        if line.is_empty() || line.starts_with('#') {
            continue;
        }
        if at >= MOST {
            errors.push(LineError { line: at + 1, wrong: Wrong::TooMany { most: MOST } });
            substances.push(rest(&substances));
            break;
        }
        match one(line, locale) {
            Ok(substance) => substances.push(substance),
            Err(wrong) => errors.push(LineError { line: at + 1, wrong }),
        }
    }
    (substances, errors)
}

/// What is not read, as much as is left by what was.
fn rest(read: &[Substance]) -> Substance {
    let left = read.iter().fold(Exact::whole(100), |left, substance| left - substance.percent);
    let name = "the lines that were not read".to_owned();
    Substance { name, percent: left.max(Exact::ZERO), unknown: true, ..Substance::default() }
}

/// What parts a line.
const SIGNS: [char; 3] = [';', '\t', '|'];

/// Columns that have only spaces between them, as they come out of a page: the name ends at the first CAS or EC
/// number, and the concentration at the first word after it.
fn columns(line: &str) -> String {
    let mut out = String::new();
    // 0 the name, 1 numbers, 2 the concentration, 3 classes.
    let mut place = 0;
    for token in line.split_whitespace() {
        let small = lower(token);
        let bare = small.trim_end_matches([',', ')']).rsplit([':', '(']).next().unwrap_or_default();
        let label = ["cas", "ec", "no", "nr", "number", "reach"].contains(&small.trim_matches(['.', ':']))
            || small.starts_with("cas-")
            || small.starts_with("ec-")
            || small.ends_with("no.:");
        let words = small.contains(|c: char| c.is_ascii_alphabetic())
            && !["w/w", "(w/w)", "to", "max", "max.", "%w/w"].contains(&small.as_str());
        let next = match place {
            0 if number(bare).is_some() => 1,
            1 if number(bare).is_some() || bare.starts_with("01-21") || label => 1,
            1 | 2 if !words => 2,
            1..=3 => 3,
            _ => 0,
        };
        if next > 0 && (next != place || next == 1) {
            out.push(';');
        }
        place = next;
        match next {
            1 if label => {}
            1 => out.push_str(bare),
            _ => {
                out.push(' ');
                out.push_str(token);
            }
        }
    }
    // `Linalool CAS 78-70-6`: the word is no part of the name.
    match out.split_once(';') {
        Some((name, rest)) if place > 0 => {
            let own = name.trim_end();
            let own = own.strip_suffix(" CAS").or(own.strip_suffix(" CAS:")).unwrap_or(own);
            [own, ";", rest].concat()
        }
        _ => line.to_owned(),
    }
}

fn one(line: &str, locale: Locale) -> Result<Substance, Wrong> {
    let (first, others) = cut(line, line.find(SIGNS).unwrap_or(line.len()));
    let parted = [&columns(first), others].concat();
    let mut parts = parted.split(SIGNS).map(str::trim);
    let name = parts.next().unwrap_or_default();
    if name.is_empty() || number(name).is_some() {
        return Err(Wrong::NoName);
    }
    let mut substance = Substance { name: name.to_owned(), ..Substance::default() };
    let mut share: Option<(String, Exact)> = None;
    let mut named: Vec<Named> = Vec::new();
    let mut besides: Vec<(String, Named, Beside)> = Vec::new();
    for text in together(parts).iter().flat_map(|part| pieces(part)) {
        let text = text.as_str();
        substance.detail.read(text);
        match segment::read(text, locale)? {
            Part::Nothing => {}
            Part::Number { cas, text } => {
                let place = if cas { &mut substance.cas } else { &mut substance.ec };
                if !place.is_empty() && *place != text {
                    return Err(Wrong::TwoNumbers { first: place.clone(), second: text });
                }
                *place = text;
            }
            Part::Share(upper) => {
                if let Some((first, _)) = share {
                    return Err(Wrong::TwoShares { first, second: text.to_owned() });
                }
                share = Some((text.to_owned(), upper));
            }
            Part::M(which, m) => {
                for (at, place) in substance.m.iter_mut().enumerate() {
                    // Of two for one hazard the stricter counts.
                    if which.is_none_or(|w| w == at) {
                        *place = (*place).max(Some(m));
                    }
                }
            }
            Part::Dose(route, dose) => {
                let doses = &mut substance.doses;
                if let Some(place) = doses.get_mut(route) {
                    *place = stricter(*place, Some(dose));
                }
            }
            Part::Unknown => substance.unknown = true,
            Part::Apart => substance.apart = true,
            Part::Beside(of, beside) => besides.push((text.to_owned(), of, beside)),
            Part::Classes(of) => named.push(of),
        }
    }
    let (share, percent) = share.ok_or(Wrong::NoShare)?;
    substance.percent = percent;
    let mut limits: Vec<(String, Named, Exact)> = Vec::new();
    for (text, of, beside) in besides {
        match beside.meant(&segment::figures(&share, locale)) {
            Some(Meant::Limit(limit)) => limits.push((text, of, limit)),
            Some(Meant::Share) => named.push(of),
            None if beside.named => return Err(Wrong::Limit { text }),
            None => return Err(Wrong::Beside { text }),
        }
    }
    let all: Vec<&str> = named.iter().flat_map(|n| n.codes.iter().map(String::as_str)).collect();
    for of in &named {
        for class in of.classes(&all)? {
            put(&mut substance.classes, class);
        }
        substance.breathed = substance.breathed.or(of.breathed);
        substance.noted.extend(of.noted.iter().cloned());
    }
    // A code without its class still tells the class.
    for code in all {
        if let Some(class) = rows().find(|row| row.code == code)
            && !substance.classes.iter().any(|c| c.code == code)
        {
            put(&mut substance.classes, class);
        }
    }
    let mut given: Vec<(Class, Exact)> = Vec::new();
    for (text, of, limit) in limits {
        let mut classes = of.classes(&[])?;
        for code in &of.codes {
            if !classes.iter().any(|c| c.code == code) {
                classes.extend(rows().find(|row| row.code == code));
            }
        }
        if classes.is_empty() {
            return Err(Wrong::Limit { text });
        }
        given.extend(classes.into_iter().map(|class| (class, limit)));
    }
    // Who has a limit for a class has the class, also where nothing else says so.
    let told: Vec<Class> = substance.classes.clone();
    for (class, limit) in given {
        if told.iter().all(|c| !c.group_is(class)) {
            put(&mut substance.classes, class);
        }
        substance.limits.push((class.group, class.category, limit));
    }
    substance.detail.settle(&substance.classes);
    Ok(substance)
}

/// A category in a column of its own belongs to the class before it.
fn together<'a>(parts: impl Iterator<Item = &'a str>) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for part in parts {
        let own = !lower(part).starts_with("cat");
        match all.last_mut().filter(|_| !own) {
            Some(last) => *last = [last, " ", part].concat(),
            None => all.push(part.to_owned()),
        }
    }
    all
}

fn put(classes: &mut Vec<Class>, class: Class) {
    if !classes.contains(&class) {
        classes.push(class);
    }
}
