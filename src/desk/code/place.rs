//! Where the modules go: finders, timing, alignment, format, data in its zigzag, and the mask.

/// A code being laid out. `None`: not yet set.
pub(super) struct Square {
    pub(super) side: usize,
    /// What is the same whatever the mask: true or false.
    fixed: Vec<Option<bool>>,
    /// Data, at the places that are not fixed.
    data: Vec<bool>,
}

/// The eight masks (ISO/IEC 18004, Table 10): row, column.
const MASKS: [fn(usize, usize) -> bool; 8] = [
    |i, j| (i + j).is_multiple_of(2),
    |i, _| i.is_multiple_of(2),
    |_, j| j.is_multiple_of(3),
    |i, j| (i + j).is_multiple_of(3),
    |i, j| (i / 2 + j / 3).is_multiple_of(2),
    |i, j| (i * j % 2 + i * j % 3) == 0,
    |i, j| (i * j % 2 + i * j % 3).is_multiple_of(2),
    |i, j| ((i + j) % 2 + i * j % 3).is_multiple_of(2),
];

impl Square {
    pub(super) fn new(version: usize, words: &[u8]) -> Self {
        let side = 17 + 4 * version;
        let mut square = Self { side, fixed: vec![None; side * side], data: vec![false; side * side] };
        for n in 0..side {
            square.set(6, n, n % 2 == 0);
            square.set(n, 6, n % 2 == 0);
        }
        for (row, column) in [(3, 3), (3, side - 4), (side - 4, 3)] {
            square.rings(row, column, 4);
        }
        if version > 1 {
            square.rings(side - 7, side - 7, 2);
        }
        // Held for the format, and the one module that is always dark.
        square.format(0);
        square.set(side - 8, 8, true);
        square.fill(words);
        square
    }

    fn set(&mut self, row: usize, column: usize, dark: bool) {
        if let Some(place) = self.fixed.get_mut(row * self.side + column) {
            *place = Some(dark);
        }
    }

    /// A finder with its light border (`reach` 4), or an alignment pattern (`reach` 2), around its middle.
    fn rings(&mut self, row: usize, column: usize, reach: usize) {
        for i in 0..=2 * reach {
            for j in 0..=2 * reach {
                let ring = i.abs_diff(reach).max(j.abs_diff(reach));
                let (y, x) = ((row + i).wrapping_sub(reach), (column + j).wrapping_sub(reach));
                if y < self.side && x < self.side {
                    self.set(y, x, if reach == 4 { ring != 2 && ring != 4 } else { ring != 1 });
                }
            }
        }
    }

    /// Level M and the mask, with their own correction, twice (ISO/IEC 18004, 7.9).
    fn format(&mut self, mask: usize) {
        // Level M is 00.
        let mut rest = mask << 10;
        for bit in (10..15).rev() {
            if rest >> bit & 1 == 1 {
                rest ^= 0x537 << (bit - 10);
            }
        }
        let bits = (mask << 10 | rest) ^ 0x5412;
        let side = self.side;
        for n in 0..15 {
            let dark = bits >> n & 1 == 1;
            let (row, column) = match n {
                0..=5 => (n, 8),
                6 | 7 => (n + 1, 8),
                8 => (8, 7),
                _ => (8, 14 - n),
            };
            self.set(row, column, dark);
            if n < 8 { self.set(8, side - 1 - n, dark) } else { self.set(side - 15 + n, 8, dark) }
        }
    }

    /// Two columns at a time, from the right, up and down by turns.
    fn fill(&mut self, words: &[u8]) {
        let mut bits = words.iter().flat_map(|word| (0..8).rev().map(move |bit| word >> bit & 1 == 1));
        let mut up = true;
        let mut right = self.side - 1;
        loop {
            for n in 0..self.side {
                let row = if up { self.side - 1 - n } else { n };
                for column in [right, right - 1] {
                    let at = row * self.side + column;
                    if self.fixed.get(at) == Some(&None)
                        && let Some(place) = self.data.get_mut(at)
                    {
                        *place = bits.next().unwrap_or(false);
                    }
                }
            }
            up = !up;
            match right {
                1 => return,
                // The column of the timing is passed over.
                8 => right = 5,
                _ => right -= 2,
            }
        }
    }

    fn masked(&self, mask: fn(usize, usize) -> bool) -> Vec<bool> {
        let one = |(at, (fixed, data)): (usize, (&Option<bool>, &bool))| {
            fixed.unwrap_or(data ^ mask(at / self.side, at % self.side))
        };
        self.fixed.iter().zip(&self.data).enumerate().map(one).collect()
    }

    /// With the mask that reads best: the one with the least penalty.
    pub(super) fn best(mut self) -> Vec<bool> {
        let mut best: Option<(usize, Vec<bool>)> = None;
        for (number, mask) in MASKS.iter().enumerate() {
            self.format(number);
            let dark = self.masked(*mask);
            let penalty = penalty(&dark, self.side);
            if best.as_ref().is_none_or(|(least, _)| penalty < *least) {
                best = Some((penalty, dark));
            }
        }
        best.map(|found| found.1).unwrap_or_default()
    }
}

/// What makes a code hard to read (ISO/IEC 18004, 7.8.3): runs of one colour, squares of it, what looks like a finder,
/// more of one colour than of the other.
fn penalty(dark: &[bool], side: usize) -> usize {
    let at = |row: usize, column: usize| dark.get(row * side + column).copied().unwrap_or(false);
    let mut sum = 0;
    for line in 0..side {
        for turned in [false, true] {
            let module = |n: usize| if turned { at(n, line) } else { at(line, n) };
            let mut run = 0;
            for n in 0..side {
                run = if n > 0 && module(n) == module(n - 1) { run + 1 } else { 1 };
                sum += match run {
                    5 => 3,
                    6.. => 1,
                    _ => 0,
                };
                // 1:1:3:1:1 with four light ones before or after.
                let pattern = |first: usize| (0..7).all(|k| module(first + k) == (k != 1 && k != 5));
                if n + 7 <= side && pattern(n) {
                    let before = (1..=4).all(|k| n < k || !module(n - k));
                    let after = (7..=10).all(|k| n + k >= side || !module(n + k));
                    sum += if before || after { 40 } else { 0 };
                }
            }
        }
    }
    for row in 1..side {
        for column in 1..side {
            let same = [(row - 1, column), (row, column - 1), (row - 1, column - 1)];
            if same.iter().all(|(r, c)| at(*r, *c) == at(row, column)) {
                sum += 3;
            }
        }
    }
    let count = dark.iter().filter(|d| **d).count();
    sum + (count * 20).abs_diff(dark.len() * 10) / dark.len().max(1) * 10
}
