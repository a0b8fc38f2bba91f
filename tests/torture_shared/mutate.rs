//! Real texts, altered as a slip, a bad disk or ill will alters them; with their structure in mind, so that much of it is
//! still read.

use super::dice::Dice;
use potside::book::crc32c;
use serde_json::Value;

/// What is put in: signs that part things, numbers at the ends, what a spreadsheet or a page would run.
const PIECES: [&str; 60] = [
    "\"",
    "\\",
    "{",
    "}",
    "[",
    "]",
    ",",
    ":",
    ";",
    "|",
    "\t",
    "\n",
    "\r\n",
    " ",
    "\u{a0}",
    "\u{feff}",
    "\0",
    "-",
    "+",
    "−",
    ".",
    "'",
    "/",
    "/0",
    "%",
    "e",
    "E+",
    "0",
    "00",
    "1",
    "9",
    "-1",
    "1/3",
    "½",
    "⅟",
    "1e999",
    "0.1e-999",
    "NaN",
    "9007199254740993",
    "170141183460469231731687303715884105728",
    "4294967296",
    "18446744073709551616",
    "null",
    "true",
    "[[[[",
    "{\"a\":",
    "\\u0000",
    "\\ud800",
    "=1+2",
    "@x",
    "<script>",
    "g",
    "kg",
    "oz",
    "°F",
    "g/mL",
    "é",
    "e\u{301}",
    "\u{1f56f}",
    "١",
];

/// A place in the text between two signs.
fn place(text: &str, dice: &mut Dice) -> usize {
    let mut at = dice.roll(text.len() + 1);
    while !text.is_char_boundary(at) {
        at -= 1;
    }
    at
}

/// Where a number begins and ends, one of those in the text.
fn number(text: &str, dice: &mut Dice) -> Option<(usize, usize)> {
    let from = place(text, dice);
    let from = from + text[from..].find(|c: char| c.is_ascii_digit())?;
    let len = text[from..].find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len() - from);
    Some((from, from + len))
}

/// One alteration; `other` is a text of the same kind.
fn alter(text: &mut String, other: &str, dice: &mut Dice) {
    let (from, to) = (place(text, dice), place(text, dice));
    let (from, to) = (from.min(to), from.max(to));
    let near = (from + dice.roll(12)).min(text.len());
    let near = (from..=near).rev().find(|at| text.is_char_boundary(*at)).unwrap_or(from);
    match dice.roll(12) {
        0..3 => text.insert_str(from, PIECES[dice.roll(PIECES.len())]),
        3 => text.replace_range(from..near, PIECES[dice.roll(PIECES.len())]),
        4 => text.replace_range(from..near, ""),
        5 => {
            let again = text[from..to].to_owned();
            if again.len() < 2_000 {
                text.insert_str(to, &again);
            }
        }
        6 => {
            // The end of another text.
            let at = place(other, dice);
            text.replace_range(from.., &other[at..]);
        }
        7 | 8 => {
            if let Some((from, to)) = number(text, dice) {
                let extreme = ["0", "1", "-1", "99999999999", "4294967295", "0.0000001", "1/7", "100000"];
                text.replace_range(from..to, extreme[dice.roll(8)]);
            }
        }
        9 => {
            // A piece of another text in place of one of this.
            let (a, b) = (place(other, dice), place(other, dice));
            text.replace_range(from..near, &other[a.min(b)..a.max(b)]);
        }
        10 => {
            let sign = char::from_u32(dice.roll(0x11_0000) as u32).unwrap_or('\u{fffd}');
            text.insert(from, sign);
        }
        _ if dice.once_in(8) => {
            // Very deep or very long.
            let piece = PIECES[dice.roll(PIECES.len())].repeat(1 << dice.roll(14));
            text.insert_str(from, &piece);
        }
        _ => text.truncate(from),
    }
}

/// One of the texts, altered once or a few times; seldom not at all.
pub(crate) fn mutant(texts: &[String], dice: &mut Dice) -> String {
    let mut text = dice.pick(texts).clone();
    for _ in 0..dice.roll(4) {
        let other = dice.pick(texts);
        alter(&mut text, other, dice);
    }
    text
}

/// A line of the journal whose checksum is right for what it says now.
pub(crate) fn summed(line: &str) -> String {
    let body = line.rsplit_once(",\"sum\"").map_or(line, |(body, _)| body);
    format!("{body},\"sum\":\"{:08x}\"}}", crc32c(body.as_bytes()))
}

/// Values that are hardly ever typed and can be read nonetheless.
const VALUES: [&str; 30] = [
    "",
    "0",
    "1",
    "-1",
    "1/3",
    "0.0000001",
    "1000000000",
    "0 g",
    "1 g",
    "1/1000 g",
    "999999 kg",
    "1000000 oz",
    "0 %",
    "100 %",
    "1000 %",
    "0.0001 %",
    "0 °F",
    "-400 °F",
    "2000 °C",
    "0 mm",
    "0.001 mm",
    "1000 in",
    "1 tsp",
    "100000 L",
    "0001-01-01",
    "9999-12-31",
    "demo-hedge",
    "demo-lot-0",
    "Meadow soft wax",
    "\u{1f56f}",
];

/// Changes something in a value where it stays of its kind: a text for a text, a number for a number.
pub(crate) fn reshape(value: &mut Value, dice: &mut Dice) {
    match value {
        Value::Object(fields) if !fields.is_empty() => {
            let at = dice.roll(fields.len());
            if let Some((_, value)) = fields.iter_mut().nth(at) {
                reshape(value, dice);
            }
        }
        Value::Array(all) if !all.is_empty() => {
            let at = dice.roll(all.len());
            match dice.roll(6) {
                0 => drop(all.remove(at)),
                1 => {
                    let again = all[at].clone();
                    all.extend(std::iter::repeat_n(again, 1 << dice.roll(8)));
                }
                _ => reshape(&mut all[at], dice),
            }
        }
        Value::String(text) => *text = (*dice.pick(&VALUES)).to_owned(),
        Value::Number(_) => {
            let most = dice.roll(54) as u32;
            *value = Value::from([0, 1, 2, (1_u64 << most) - 1, u64::from(u32::MAX)][dice.roll(5)]);
        }
        Value::Bool(it) => *it = !*it,
        Value::Null => *value = Value::from(*dice.pick(&VALUES)),
        _ => *value = Value::Null,
    }
}
