//! QR codes of short texts, such as batch numbers: ISO/IEC 18004, versions 1 to 4, level M.
//!
//! Made here and not by a crate, as what is needed is little: bytes or capital letters and figures, one or two blocks.

mod field;
mod place;

use field::remainder;
use place::Square;

/// A code, ready to be drawn: rows of modules, true where dark. Around it 4 modules stay empty (ISO/IEC 18004, 7.3.8).
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Code {
    /// Modules along a side.
    pub side: usize,
    dark: Vec<bool>,
}

/// The modules that stay empty on every side.
pub const QUIET: usize = 4;

/// What a version holds at level M.
struct Version {
    /// Data codewords of one block, codewords for correction of one block, blocks.
    data: usize,
    repair: usize,
    blocks: usize,
}

/// ISO/IEC 18004, Tables 7 and 9.
const VERSIONS: [Version; 4] = [
    Version { data: 16, repair: 10, blocks: 1 },
    Version { data: 28, repair: 16, blocks: 1 },
    Version { data: 44, repair: 26, blocks: 1 },
    Version { data: 32, repair: 18, blocks: 2 },
];

/// The letters of alphanumeric mode, by their value (ISO/IEC 18004, Table 5).
const LETTERS: &[u8; 45] = b"0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ $%*+-./:";

#[derive(Default)]
struct Bits(Vec<bool>);

impl Bits {
    fn put(&mut self, value: usize, bits: u32) {
        self.0.extend((0..bits).rev().map(|bit| value >> bit & 1 == 1));
    }

    fn bytes(&self) -> Vec<u8> {
        self.0.chunks(8).map(|byte| byte.iter().fold(0, |sum, bit| sum << 1 | u8::from(*bit))).collect()
    }
}

/// The values of the letters in alphanumeric mode, none where one is not among them.
fn letters(text: &str) -> Option<Vec<usize>> {
    text.bytes().map(|byte| LETTERS.iter().position(|letter| *letter == byte)).collect()
}

/// The data codewords of a text in a version, none where they do not fit: figures by threes, capitals by twos, else bytes.
fn data(text: &str, version: &Version) -> Option<Vec<u8>> {
    let mut bits = Bits::default();
    let count = text.len();
    if !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit()) {
        bits.put(1, 4);
        bits.put(count, 10);
        for group in text.as_bytes().chunks(3) {
            let value = group.iter().fold(0, |sum, digit| sum * 10 + usize::from(digit - b'0'));
            bits.put(value, 1 + 3 * group.len() as u32);
        }
    } else if let Some(values) = letters(text) {
        bits.put(2, 4);
        bits.put(count, 9);
        for pair in values.chunks(2) {
            match pair {
                [a, b] => bits.put(a * 45 + b, 11),
                [a] => bits.put(*a, 6),
                _ => {}
            }
        }
    } else {
        bits.put(4, 4);
        bits.put(count, 8);
        text.bytes().for_each(|byte| bits.put(byte.into(), 8));
    }
    let room = version.data * version.blocks * 8;
    if bits.0.len() > room {
        return None;
    }
    bits.put(0, 4.min(room - bits.0.len()) as u32);
    bits.put(0, ((8 - bits.0.len() % 8) % 8) as u32);
    let mut bytes = bits.bytes();
    let mut pads = [0xec, 0x11].into_iter().cycle();
    bytes.resize_with(room / 8, || pads.next().unwrap_or(0xec));
    Some(bytes)
}

/// Data and correction, the blocks taken by turns (ISO/IEC 18004, 7.6).
fn codewords(data: &[u8], version: &Version) -> Vec<u8> {
    let blocks: Vec<&[u8]> = data.chunks(version.data).collect();
    let repairs: Vec<Vec<u8>> = blocks.iter().map(|block| remainder(block, version.repair)).collect();
    let mut all = Vec::new();
    for at in 0..version.data {
        all.extend(blocks.iter().filter_map(|block| block.get(at)));
    }
    for at in 0..version.repair {
        all.extend(repairs.iter().filter_map(|block| block.get(at)));
    }
    all
}

impl Code {
    /// The smallest code of a text; none where it is longer than 62 bytes (version 4).
    pub fn of(text: &str) -> Option<Self> {
        let (at, data) = VERSIONS.iter().enumerate().find_map(|(at, v)| Some((at, data(text, v)?)))?;
        let words = codewords(&data, VERSIONS.get(at)?);
        let square = Square::new(at + 1, &words);
        Some(Self { side: square.side, dark: square.best() })
    }

    pub fn is_dark(&self, row: usize, column: usize) -> bool {
        row < self.side
            && column < self.side
            && self.dark.get(row * self.side + column).copied().unwrap_or(false)
    }

    /// Its dark modules as the outline of a drawing (the `d` of an SVG path), one unit a module, from the corner of the
    /// first one.
    pub fn path(&self) -> String {
        let mut path = String::new();
        for row in 0..self.side {
            let mut column = 0;
            while column < self.side {
                let run = (column..self.side).take_while(|c| self.is_dark(row, *c)).count();
                if run > 0 {
                    let [x, y, run] = [column, row, run].map(|n| n.to_string());
                    path.push_str(&["M", &x, " ", &y, "h", &run, "v1h-", &run, "z"].concat());
                }
                column += run.max(1);
            }
        }
        path
    }
}

/// The data and correction codewords of a text, for holding them against the standard's own example.
pub fn codewords_of(text: &str) -> Option<Vec<u8>> {
    VERSIONS.iter().find_map(|version| Some(codewords(&data(text, version)?, version)))
}
