//! Parts of a line that say several things, taken apart: two numbers, a class and its M-factor, a class and its estimate.

use super::dose;
use crate::text::{cut, lower};

/// A part by itself, or each M-factor in it apart from what it is of: `Aquatic Acute 1 H400 (M=10)`.
pub(super) fn pieces(text: &str) -> Vec<String> {
    // Two numbers in one column: `78-70-6 / 201-134-4`.
    if text.contains('/') && text.bytes().all(|b| b.is_ascii_digit() || b"-/ ".contains(&b)) {
        return text.split('/').map(str::to_owned).collect();
    }
    let (mut pieces, mut rest) = (Vec::new(), text);
    while let Some(at) = factor(rest) {
        let (before, from) = cut(rest, at);
        let (sign, number) = cut(from, from.find(|c: char| c.is_ascii_digit()).unwrap_or(from.len()));
        let end = number.find(|c: char| !c.is_ascii_digit() && c != '.').unwrap_or(number.len());
        let (number, after) = cut(number, end);
        let [of, own] = [lower(before), lower(sign)];
        let says = |word: &str, code: &str| of.contains(word) || of.contains(code);
        let which = match (says("aquatic acute", "h400"), says("aquatic chronic", "h410")) {
            _ if own.contains("acute") || own.contains("chronic") => "",
            (true, false) => " acute",
            (false, true) => " chronic",
            _ => "",
        };
        pieces.push(before.trim_end_matches([' ', ',', '(', '[']).to_owned());
        pieces.push([sign, number, which].concat());
        rest = after.trim_start_matches([' ', ',', ')', ']']);
    }
    if pieces.is_empty() || !rest.is_empty() {
        pieces.push(rest.to_owned());
    }
    pieces.iter().flat_map(|piece| dose::apart(piece)).collect()
}

/// Where an M stands by itself after something else.
fn factor(text: &str) -> Option<usize> {
    let mut before = None;
    let mut signs = text.char_indices().peekable();
    while let Some((at, sign)) = signs.next() {
        let next = signs.peek().map(|n| n.1);
        let begins = before.is_some_and(|b| " ,([".contains(b));
        if begins && matches!(sign, 'm' | 'M') && next.is_some_and(|n| " =:(-".contains(n)) {
            return Some(at);
        }
        before = Some(sign);
    }
    None
}
