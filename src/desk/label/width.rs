//! How wide a text is.
//!
//! By the advances of the common sans-serif faces, which agree closely. What is drawn is given this width, so that a
//! device with another face cannot make a line longer than it was reckoned.

use crate::text::cut;

/// Heights of a face, in thousandths of its size. The page measures those of the face it draws with.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Face {
    /// Of a small x or o.
    pub small: i64,
    /// Of capitals and figures.
    pub capital: i64,
}

impl Face {
    /// Sizes are kept sane whatever a device says.
    pub fn of(small: i64, capital: i64) -> Self {
        Self { small: small.clamp(300, 800), capital: capital.clamp(500, 1000) }
    }
}

impl Default for Face {
    fn default() -> Self {
        Self { small: 519, capital: 716 }
    }
}

/// Advances of the signs from space to ~, in two hundredths of the size, rounded up: Adobe's font metrics of Helvetica,
/// version 002.000, compared sign by sign.
const ADVANCES: &[u8; 95] = &[
    56, 56, 71, 112, 112, 178, 134, 39, 67, 67, 78, 117, 56, 67, 56, 56, 112, 112, 112, 112, 112, 112, 112,
    112, 112, 112, 56, 56, 117, 117, 117, 112, 203, 134, 134, 145, 145, 134, 123, 156, 145, 56, 100, 134,
    112, 167, 145, 156, 134, 156, 145, 134, 123, 145, 134, 189, 134, 134, 123, 56, 56, 56, 94, 112, 67, 112,
    112, 100, 112, 112, 56, 112, 112, 45, 45, 100, 45, 167, 112, 112, 112, 112, 67, 100, 56, 112, 100, 145,
    100, 100, 100, 67, 52, 67, 117,
];

fn advance(sign: char) -> i64 {
    let n = u32::from(sign);
    let known = n.checked_sub(32).and_then(|at| ADVANCES.get(at as usize));
    known.map_or(if n < 0x1100 { 156 } else { 200 }, |a| i64::from(*a))
}

/// The width of a text at a size, in the unit of the size. Bold is a tenth wider.
pub fn width(text: &str, size: i64, bold: bool) -> i64 {
    let sum: i64 = text.chars().map(advance).sum();
    let sum = if bold { sum * 11 / 10 } else { sum };
    (sum * size + 199) / 200
}

/// The words that fit into `room`, and the rest. A word that is wider than `most` is broken. None where not even one
/// word fits here.
pub(super) fn line(text: &str, size: i64, bold: bool, room: i64, most: i64) -> Option<(&str, &str)> {
    let text = text.trim_start();
    let mut end = 0;
    let mut from = 0;
    loop {
        let rest = cut(text, from).1;
        let word = rest.find(' ').map_or(text.len(), |at| from + at);
        if width(cut(text, word).0, size, bold) > room {
            break;
        }
        end = word;
        if word == text.len() {
            break;
        }
        from = word + 1;
    }
    if end > 0 {
        return Some((cut(text, end).0.trim_end(), cut(text, end).1.trim_start()));
    }
    let first = cut(text, text.find(' ').unwrap_or(text.len())).0;
    if width(first, size, bold) <= most {
        return None;
    }
    let mut fits = 0;
    for (at, sign) in first.char_indices() {
        let upto = at + sign.len_utf8();
        if width(cut(text, upto).0, size, bold) > room {
            break;
        }
        fits = upto;
    }
    (fits > 0).then(|| cut(text, fits))
}
