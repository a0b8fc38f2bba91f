//! Acute toxicity estimates as a sheet has them: `ATE (oral): 500 mg/kg bw`, `LD50 oral rat > 5000 mg/kg`.

use super::acute::{OF_UNION, TABLE};
use super::named::ROUTES;
use super::segment::{Part, numbers};
use crate::quantity::{Exact, Locale};
use crate::text::{cut, lower};

const KINDS: [&str; 3] = ["ate", "ld50", "lc50"];

/// Words that change nothing. A dose for another animal than the usual ones, of another time than 4 hours or by another
/// way into the body is not taken.
const SAYING_NOTHING: [&str; 18] = [
    "acute",
    "toxicity",
    "value",
    "rat",
    "rats",
    "rabbit",
    "rabbits",
    "bw",
    "body",
    "weight",
    "bodyweight",
    "and",
    "c",
    "4h",
    "inhalation",
    "inhal",
    "inhalative",
    "male/female",
];

/// Units, the routes they are of (as bits), and how many of the route's own unit one is.
const UNITS: [(&str, u8, i128, i128); 7] = [
    ("mg/kg", 0b00011, 1, 1),
    ("g/kg", 0b00011, 1000, 1),
    ("mg/l", 0b11000, 1, 1),
    ("g/m3", 0b11000, 1, 1),
    ("mg/m3", 0b11000, 1, 1000),
    ("ppm", 0b00100, 1, 1),
    ("ppmv", 0b00100, 1, 1),
];

fn tokens(words: &str) -> impl Iterator<Item = &str> {
    words
        .split([' ', '(', ')', '[', ']', ':', '=', ';'])
        .map(|t| t.trim_matches(['-', '.', ',']))
        .filter(|t| !t.is_empty())
}

fn is_kind(token: &str) -> bool {
    token == "estimate" || KINDS.contains(&token.strip_suffix("mix").unwrap_or(token))
}

pub(super) fn is_dose(words: &str) -> bool {
    tokens(words).any(is_kind)
}

/// A piece, with each estimate in it by itself: `Acute Tox. 4, H302 (ATE = 500 mg/kg)`. One that names no route has that
/// of the statement before it.
pub(super) fn apart(piece: &str) -> Vec<String> {
    let small = lower(piece);
    // The small letters of some signs are longer: then it is left as it is.
    if small.len() != piece.len() {
        return vec![piece.to_owned()];
    }
    let mut starts = Vec::new();
    for kind in KINDS {
        for (at, _) in small.match_indices(kind) {
            let edge = |c: Option<char>| c.is_none_or(|c| !c.is_ascii_alphanumeric());
            let (before, from) = (cut(&small, at).0, cut(&small, at + kind.len()).1);
            if edge(before.chars().next_back()) && edge(from.chars().next()) {
                starts.push(at);
            }
        }
    }
    crate::sort::by(&mut starts, |a, b| a.cmp(b));
    // What stands before the first is of it, unless it is a class: `oral ATE 500`.
    let own = |text: &str| !text.contains(['1', '2', '3', '4', '5', '%']);
    if starts.first().is_some_and(|at| own(cut(&small, *at).0)) {
        starts.remove(0);
    }
    let (mut pieces, mut from, mut route) = (Vec::new(), 0, "");
    for end in starts.into_iter().chain([piece.len()]) {
        let text = cut(cut(piece, end).0, from).1;
        let of = cut(cut(&small, end).0, from).1;
        let said = |codes: [&str; 3]| codes.iter().any(|code| of.contains(code));
        if is_dose(of) {
            let bare = !ROUTES.iter().any(|(word, _)| of.contains(word));
            pieces.push(if bare { [text, " ", route].concat() } else { text.to_owned() });
        } else {
            route = match (said(["h300", "h301", "h302"]), said(["h310", "h311", "h312"])) {
                (true, false) => "oral",
                (false, true) => "dermal",
                _ => "",
            };
            pieces.push(text.trim_end_matches([' ', ',', '(', '[']).to_owned());
        }
        from = end;
    }
    pieces
}

/// None where it is not clear, or is not to be taken: without a route, in a unit of another one, `< 500`.
pub(super) fn dose(words: &str, locale: Locale) -> Option<Part> {
    let (mut route, mut unit, mut figures) = (None, None, String::new());
    // `4 h` and `mg/l/4h` are the usual time.
    let words = words
        .replace("/4h", " ")
        .replace("/4 h", " ")
        .replace("m³", "m3")
        .replace("/mist", " mist")
        .replace("oral,", "oral ");
    let mut all = tokens(&words).peekable();
    while let Some(token) = all.next() {
        let figure = token.starts_with(|c: char| c.is_ascii_digit() || "<>".contains(c));
        if token == "4" && all.next_if(|next| ["h", "hours"].contains(next)).is_some()
            || is_kind(token)
            || SAYING_NOTHING.contains(&token)
        {
            continue;
        }
        let token = token.strip_suffix("-bw").or(token.strip_suffix("/bw")).unwrap_or(token);
        let one = token.strip_suffix('s').unwrap_or(token);
        let place = ROUTES.iter().find(|(word, _)| [token, one].contains(word)).map(|found| found.1);
        // `5000mg/kg`
        let own = UNITS
            .iter()
            .rfind(|u| token.strip_suffix(u.0).is_some_and(|b| !b.ends_with(char::is_alphabetic)));
        match (place, own) {
            (Some(place), _) if route.is_none_or(|r| r == place) => route = Some(place),
            (None, Some(found)) if unit.is_none() => {
                unit = Some(found);
                figures.push_str(token.strip_suffix(found.0)?);
                figures.push(' ');
            }
            (None, None) if figure => {
                figures.push_str(token);
                figures.push(' ');
            }
            _ => return None,
        }
    }
    let route = route?;
    let found = numbers(&figures, locale)?;
    let [(sign, number)] = found.as_slice() else { return None };
    let times = match unit {
        Some((_, routes, top, bottom)) if routes & 1 << route != 0 => Exact::ratio(*top, *bottom),
        Some(_) => return None,
        None => Exact::ONE,
    };
    let ate = *number * times;
    let bound = TABLE.get(route)?.bound(OF_UNION)?;
    // Below an unknown one nothing is known.
    if ate.is_zero() || *sign == '<' {
        return None;
    }
    let beyond = *sign == '>' && (ate > bound || ate == bound && !words.contains(">="));
    Some(Part::Dose(route, if beyond { None } else { Some(ate) }))
}
