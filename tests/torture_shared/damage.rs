//! A journal of 200 entries, damaged in every way that a disk or a cable damages: cut off at each byte, each byte
//! flipped, lines doubled, swapped, spliced. What is damaged is set aside; the rest is as if that had never been.

use super::deal::Deck;
use super::dice::Dice;
use super::{Length, Tally, same};
use crate::decade_shared::{Size, lines};
use potside::book::bundle::{Tying, read};
use potside::book::{Entry, Journal, backup, read_copy};

const ENTRIES: usize = 200;
const DEVICE: &str = "tablet";

pub(crate) struct Whole {
    lines: Vec<String>,
    /// How far apart the bytes are that are tried: one in the long run.
    stride: usize,
}

/// The state and entries of a journal without damage.
fn open(lines: &[String]) -> Journal {
    Journal::open(lines.to_vec(), DEVICE)
}

/// Whether a journal is what the good lines alone make, and has set these aside and nothing else.
fn as_if(journal: &Journal, good: &Journal, aside: &[&str]) -> Result<(), String> {
    same("the entries", &journal.entries(), &good.entries())?;
    same("the states", journal.state(), good.state())?;
    if journal.read_only() {
        return Err("it is read-only".to_owned());
    }
    let damaged: Vec<&str> = journal.damaged().iter().map(|(line, _)| line.as_str()).collect();
    match aside.iter().find(|line| !damaged.contains(line)) {
        Some(line) => Err(format!("not set aside: {line:.80}")),
        None if damaged.len() > aside.len() => Err(format!("set aside: {damaged:.80?}")),
        None => Ok(()),
    }
}

impl Whole {
    pub(crate) fn new(stride: usize) -> Self {
        let lines = Deck::new().book(ENTRIES, 1);
        let whole = open(&lines);
        assert!(whole.damaged().is_empty() && whole.entries().len() == ENTRIES);
        // In the order in which they are kept, one after the other.
        Self { lines: whole.entries().iter().map(Entry::to_line).collect(), stride }
    }

    pub(crate) fn bytes(&self) -> usize {
        self.lines.iter().map(String::len).sum()
    }

    /// Cut off after every byte: as many entries as are whole, and no other.
    pub(crate) fn cut(&self, tally: &mut Tally) {
        for (number, line) in self.lines.iter().enumerate() {
            let good = open(&self.lines[..number]);
            for at in (0..line.len()).step_by(self.stride) {
                tally.case(
                    || format!("line {number} cut at {at}"),
                    || {
                        let torn = String::from_utf8_lossy(&line.as_bytes()[..at]).into_owned();
                        let mut lines = self.lines[..number].to_vec();
                        lines.push(torn.clone());
                        as_if(&open(&lines), &good, &[&torn])
                    },
                );
            }
        }
    }

    /// Every byte flipped: in each of its bits, and to what is not a sign. The other lines are opened with it once a byte.
    pub(crate) fn flip(&self, tally: &mut Tally) {
        for (number, line) in self.lines.iter().enumerate() {
            let mut others = self.lines.clone();
            others.remove(number);
            let good = open(&others);
            for at in (0..line.len()).step_by(self.stride) {
                for (try_, mask) in [1, 2, 4, 8, 16, 32, 64, 128, 255, 0x5f].into_iter().enumerate() {
                    tally.case(
                        || format!("line {number}, byte {at} flipped by {mask}"),
                        || {
                            let mut bytes = line.clone().into_bytes();
                            bytes[at] ^= mask;
                            let flipped = String::from_utf8_lossy(&bytes).into_owned();
                            if let Ok(read) = Entry::from_line(&flipped) {
                                return same("what was read and the line", &read.to_line(), line);
                            }
                            if try_ != at / self.stride % 10 {
                                return Ok(());
                            }
                            let mut lines = self.lines.clone();
                            lines[number].clone_from(&flipped);
                            as_if(&open(&lines), &good, &[&flipped])
                        },
                    );
                }
            }
        }
    }

    /// Several damages at once, and the good lines doubled and in any order: by chance.
    pub(crate) fn mix(&self, length: Length, tally: &mut Tally) {
        for case in length.each() {
            let name = || format!("mixed damage {case} of seed {}", length.seed);
            tally.case(name, || self.mixed(&mut Dice::of(length.seed, case)));
        }
    }

    fn mixed(&self, dice: &mut Dice) -> Result<(), String> {
        let mut good = self.lines.clone();
        let mut aside = Vec::new();
        for _ in 0..dice.roll(6) {
            let at = dice.roll(good.len());
            let hurt = self.hurt(&good[at], dice);
            // What is hurt may be what it was, or another good line.
            if !self.lines.contains(&hurt) {
                aside.push(hurt);
                // The line itself may be lost, or be there as well.
                if !dice.once_in(3) {
                    good.remove(at);
                }
            }
        }
        let mut lines = [good.clone(), aside.clone()].concat();
        for _ in 0..dice.roll(8) {
            lines.push(dice.pick(&lines).clone());
        }
        if dice.once_in(2) {
            dice.shuffle(&mut lines);
        }
        aside.sort();
        aside.dedup();
        let aside: Vec<&str> = aside.iter().map(String::as_str).collect();
        as_if(&open(&lines), &open(&good), &aside)?;
        // The same by way of a tab that hears of them one by one.
        let some = dice.roll(lines.len());
        let mut heard = open(&lines[..some]);
        lines[some..].iter().for_each(|line| heard.hear(line.clone()));
        as_if(&heard, &open(&good), &aside)
    }

    fn hurt(&self, line: &str, dice: &mut Dice) -> String {
        let mut bytes = line.as_bytes().to_vec();
        let (from, len) = (dice.roll(bytes.len()), dice.roll(64) + 1);
        let to = (from + len).min(bytes.len());
        match dice.roll(6) {
            0 => bytes[from..to].fill(0),
            1 => drop(bytes.drain(from..to)),
            2 => {
                let again = bytes[from..to].to_vec();
                bytes.splice(to..to, again);
            }
            3 => {
                // The rest of another line comes after the beginning of this one.
                let other = dice.pick(&self.lines).as_bytes();
                bytes.truncate(from);
                bytes.extend(&other[dice.roll(other.len())..]);
            }
            4 => bytes[from..to].reverse(),
            _ => {
                let to = dice.roll(bytes.len());
                bytes.swap(from, to);
            }
        }
        String::from_utf8_lossy(&bytes).into_owned()
    }

    /// A backup cut off or flipped is told from a whole one, replaces nothing, and brings no entry that was not in it.
    pub(crate) fn copy(&self, length: Length, tally: &mut Tally) {
        let empty = Journal::open(vec![], DEVICE);
        let text = backup(&self.lines, DEVICE, 1_764_000_000_000);
        for case in length.each() {
            tally.case(
                || format!("backup {case} of seed {}", length.seed),
                || {
                    let mut dice = Dice::of(length.seed, case);
                    let mut bytes = text.clone().into_bytes();
                    let at = dice.roll(bytes.len());
                    match dice.roll(3) {
                        0 => bytes.truncate(at),
                        1 => bytes[at] ^= 1 << dice.roll(8),
                        _ => bytes = self.hurt(&text, &mut dice).into_bytes(),
                    }
                    let hurt = String::from_utf8_lossy(&bytes);
                    let Ok(copy) = read_copy(&hurt, &empty) else { return Ok(()) };
                    if hurt.trim_end() != text.trim_end() && copy.replace.is_some() {
                        return Err("a damaged backup would replace the book".to_owned());
                    }
                    let strange = copy
                        .fresh
                        .iter()
                        .find(|(e, line)| !self.lines.contains(line) || e.to_line() != *line);
                    match strange {
                        Some((_, line)) => Err(format!("an entry that was not in it: {line:.80}")),
                        None => Ok(()),
                    }
                },
            );
        }
    }
}

impl Whole {
    /// The bundle of a book of fifteen batches, cut off after every byte and each byte flipped: none is read.
    pub(crate) fn bundle(&self, tally: &mut Tally) {
        let (journal, build) = (open(&lines(Size { batches: 15, lots: 5, trials: 0 })), "this build");
        let bytes = Tying::begin(&journal).and_then(|t| t.finish(&journal, build, 0)).expect("tied up");
        let others = read(bytes.clone(), build).expect("it is whole").entries.len();
        assert!(others + 140 < journal.len(), "batches are tied up");
        let none = |hurt: Vec<u8>| match read(hurt, build) {
            Some(_) => Err("it is read".to_owned()),
            None => Ok(()),
        };
        for at in (0..bytes.len()).step_by(self.stride) {
            tally.case(|| format!("bundle cut at {at}"), || none(bytes[..at].to_vec()));
            for mask in 1..=255 {
                let name = || format!("bundle, byte {at} flipped by {mask}");
                tally.case(name, || {
                    let mut hurt = bytes.clone();
                    hurt[at] ^= mask;
                    none(hurt)
                });
            }
        }
    }
}

/// Journals in which something damaged counts, or something good does not. `mixed` counts those damaged by chance.
pub(crate) fn wrong(stride: usize, mixed: Length) -> Tally {
    let (whole, mut tally) = (Whole::new(stride), Tally::default());
    whole.cut(&mut tally);
    whole.flip(&mut tally);
    whole.mix(mixed, &mut tally);
    whole.copy(mixed, &mut tally);
    whole.bundle(&mut tally);
    tally
}
