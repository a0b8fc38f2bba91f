//! Few bytes for many lines that are alike: texts are kept once, and of JSON only what differs from the first one of its
//! shape.

use crate::text::cut;
use std::collections::HashMap;

/// Texts by their number, each kept once.
#[derive(Default)]
pub(super) struct Texts {
    all: String,
    /// Where each ends.
    ends: Vec<u32>,
    known: HashMap<String, u64>,
}

impl Texts {
    pub(super) fn number(&mut self, text: &str) -> u64 {
        if let Some(number) = self.known.get(text) {
            return *number;
        }
        let number = self.ends.len() as u64;
        self.all.push_str(text);
        self.ends.push(self.all.len() as u32);
        self.known.insert(text.to_owned(), number);
        number
    }

    pub(super) fn get(&self, number: u64) -> Option<&str> {
        let number = usize::try_from(number).ok()?;
        let from = number.checked_sub(1).map_or(Some(&0), |before| self.ends.get(before))?;
        self.all.get(*from as usize..*self.ends.get(number)? as usize)
    }

    pub(super) fn bytes(&self) -> (Vec<u8>, &str) {
        (self.ends.iter().flat_map(|end| end.to_le_bytes()).collect(), &self.all)
    }
}

/// A number in as few bytes as it needs, seven bits each.
pub(super) fn put(out: &mut Vec<u8>, mut number: u64) {
    while number >= 128 {
        out.push(number as u8 | 128);
        number >>= 7;
    }
    out.push(number as u8);
}

/// A number that may be below zero.
pub(super) fn put_step(out: &mut Vec<u8>, from: u64, to: u64) {
    let step = to.wrapping_sub(from) as i64;
    put(out, ((step << 1) ^ (step >> 63)) as u64);
}

/// Reads what was put; zeros after the end, which is noted.
pub(super) struct Reader<'a> {
    bytes: &'a [u8],
    pub(super) short: bool,
}

impl<'a> Reader<'a> {
    pub(super) const fn new(bytes: &'a [u8]) -> Self {
        Self { bytes, short: false }
    }

    pub(super) fn get(&mut self) -> u64 {
        let (mut number, mut shift) = (0, 0);
        loop {
            let Some((byte, rest)) = self.bytes.split_first() else {
                self.short = true;
                return 0;
            };
            self.bytes = rest;
            number |= u64::from(byte & 127).wrapping_shl(shift);
            if *byte < 128 {
                return number;
            }
            shift += 7;
        }
    }

    pub(super) fn step(&mut self, from: u64) -> u64 {
        let step = self.get();
        from.wrapping_add((step >> 1) ^ (step & 1).wrapping_neg())
    }

    /// Goes over so many numbers.
    pub(super) fn skip(&mut self, numbers: usize) {
        for _ in 0..numbers {
            self.get();
        }
    }

    /// A number of things that follow, each of at least one byte.
    pub(super) fn count(&mut self) -> usize {
        let count = self.get();
        if count > self.bytes.len() as u64 {
            self.short = true;
            return 0;
        }
        count as usize
    }
}

/// Stands in a shape for a whole number, and for a text; in JSON neither stands by itself.
const NUMBER: char = '\u{1}';
const TEXT: char = '\u{2}';

/// JSON without its numbers and texts, and these: a text by its number among the texts.
pub(super) fn split(json: &str, texts: &mut Texts) -> (String, Vec<u64>) {
    let (mut shape, mut leaves, mut rest) = (String::new(), Vec::new(), json);
    while !rest.is_empty() {
        let plain = rest.bytes().position(|b| b == b'"' || b.is_ascii_digit()).unwrap_or(rest.len());
        let (signs, after) = cut(rest, plain);
        shape.push_str(signs);
        if after.starts_with('"') {
            let (text, more) = cut(after, end_of_text(after));
            if more.starts_with(':') {
                shape.push_str(text);
            } else {
                shape.push(TEXT);
                leaves.push(texts.number(text));
            }
            rest = more;
            continue;
        }
        let digits = after.bytes().position(|b| !b.is_ascii_digit()).unwrap_or(after.len());
        let (number, more) = cut(after, digits);
        // One with zeros before it would not come out as it was.
        match number.parse::<u64>() {
            Ok(whole) if number == "0" || !number.starts_with('0') => {
                shape.push(NUMBER);
                leaves.push(whole);
            }
            _ => shape.push_str(number),
        }
        rest = more;
    }
    (shape, leaves)
}

/// Where the text ends that this begins with.
fn end_of_text(json: &str) -> usize {
    let mut escaped = false;
    for (at, byte) in json.bytes().enumerate().skip(1) {
        match byte {
            _ if escaped => escaped = false,
            b'\\' => escaped = true,
            b'"' => return at + 1,
            _ => {}
        }
    }
    json.len()
}

/// The JSON again. None where there are too few leaves or no such text.
pub(super) fn join<'a>(
    shape: &str,
    leaves: impl IntoIterator<Item = u64>,
    text: impl Fn(u64) -> Option<&'a str>,
) -> Option<String> {
    let (mut json, mut leaves) = (String::with_capacity(shape.len() * 2), leaves.into_iter());
    let mut rest = shape;
    while let Some(at) = rest.bytes().position(|byte| byte == NUMBER as u8 || byte == TEXT as u8) {
        let (plain, after) = rest.split_at_checked(at)?;
        json.push_str(plain);
        let leaf = leaves.next()?;
        rest = if let Some(more) = after.strip_prefix(TEXT) {
            json.push_str(text(leaf)?);
            more
        } else {
            json.push_str(&leaf.to_string());
            after.strip_prefix(NUMBER)?
        };
    }
    json.push_str(rest);
    Some(json)
}

/// Puts only the leaves that are other than those of the first of this shape.
pub(super) fn put_leaves(out: &mut Vec<u8>, model: &[u64], leaves: &[u64]) {
    let mut rest = leaves.iter().zip(model).peekable();
    while rest.peek().is_some() {
        let mut same = 0;
        while rest.next_if(|(leaf, model)| leaf == model).is_some() {
            same += 1;
        }
        put(out, same);
        let mut other = Vec::new();
        while let Some((leaf, _)) = rest.next_if(|(leaf, model)| leaf != model) {
            other.push(*leaf);
        }
        put(out, other.len() as u64);
        other.into_iter().for_each(|leaf| put(out, leaf));
    }
}

pub(super) fn get_leaves(reader: &mut Reader, model: &[u64]) -> Vec<u64> {
    let mut leaves = Vec::with_capacity(model.len());
    while leaves.len() < model.len() && !reader.short {
        let same = (reader.get() as usize).min(model.len() - leaves.len());
        let from = leaves.len();
        leaves.extend_from_slice(model.get(from..from + same).unwrap_or_default());
        for _ in 0..reader.count() {
            leaves.push(reader.get());
        }
    }
    leaves
}

/// A checksum over many bytes, eight at a time. Whatever changes in one eight changes it: every step can be gone back.
pub(super) fn seal(bytes: &[u8]) -> u64 {
    // Any odd number would do; this one is of splitmix64.
    let more = |sum: u64, word: [u8; 8]| {
        (sum ^ u64::from_le_bytes(word)).wrapping_mul(0x9e37_79b9_7f4a_7c15).rotate_left(29)
    };
    let (mut sum, mut rest) = (bytes.len() as u64, bytes);
    while let Some((eight, after)) = rest.split_first_chunk() {
        sum = more(sum, *eight);
        rest = after;
    }
    let mut last = [0; 8];
    last.iter_mut().zip(rest).for_each(|(to, from)| *to = *from);
    more(more(sum, last), [0; 8])
}

/// A number for an id; that two ids of one book have the same is not to be expected in any number of books there are.
pub(super) fn mark(id: &str) -> u64 {
    seal(id.as_bytes())
}
