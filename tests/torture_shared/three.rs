//! Three devices that work, store, fail, start anew and give each other copies in any order, two of them at times under one
//! name: once all have what all have, they are the same book, with everything that was ever said to be saved, with what was
//! changed in two places shown, and without the names of those who were removed.

use super::deal::Deck;
use super::dice::Dice;
use super::{Length, Tally, same};
use potside::book::bundle::{Tying, read};
use potside::book::{Act, Book, Copy, Entry, Id, Journal, StoreError, Subject, backup, read_copy};
use potside::wire;
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};

const START: u64 = 1_764_000_000_000;
const YEAR: u64 = 365 * 24 * 60 * 60_000;

/// A device: its book, what is stored of it by key, and how its clock is off.
struct Device {
    name: &'static str,
    book: Book,
    stored: BTreeMap<String, String>,
    off: u64,
}

struct World {
    devices: Vec<Device>,
    acknowledged: BTreeSet<Id>,
    /// Copies made earlier, of any of them.
    copies: Vec<String>,
    steps: u64,
}

impl Device {
    fn now(&self, steps: u64) -> u64 {
        self.off + steps * 1_000
    }

    fn copy(&self) -> String {
        let stored = self.stored.values().cloned().collect();
        backup(&self.book.lines(Some(stored)), self.name, 1)
    }

    fn open(&mut self) {
        self.book = Book::open(self.stored.values().cloned().collect(), self.name);
    }

    fn looks(&self, text: &str) -> Result<Copy, String> {
        read_copy(text, self.book.journal()).map_err(|why| why.to_string())
    }
}

impl World {
    fn new(dice: &mut Dice) -> Self {
        let names =
            if dice.once_in(3) { ["tablet", "tablet", "phone"] } else { ["tablet", "table", "phone"] };
        let devices = names.map(|name| {
            let off = [START, START, 0, 1 << 52, START - 10 * YEAR, START + 10 * YEAR][dice.roll(6)];
            Device { name, book: Book::open(vec![], name), stored: BTreeMap::new(), off }
        });
        Self { devices: devices.into(), acknowledged: BTreeSet::new(), copies: Vec::new(), steps: 0 }
    }

    /// What waits is stored; or is not, for want of room.
    fn store(&mut self, device: usize, full: bool) {
        let device = &mut self.devices[device];
        while let Some(lines) = device.book.to_store() {
            if full {
                return device.book.stored(Err(StoreError::Full));
            }
            self.acknowledged.extend(lines.iter().map(|(id, _)| Id(id.clone())));
            device.stored.extend(lines);
            device.book.stored(Ok(()));
        }
    }

    fn take(&mut self, device: usize, text: &str, replaces: bool, dice: &mut Dice) -> Result<usize, String> {
        let (device, steps) = (&mut self.devices[device], self.steps);
        let copy = device.looks(text)?;
        if !copy.damaged.is_empty() {
            return Err(format!("left out: {:?}", copy.damaged));
        }
        let (fresh, now) = (copy.fresh.len(), device.now(steps));
        let replace = copy.replace.filter(|_| replaces);
        device
            .book
            .take_copy(copy.fresh, copy.made, replace, now, dice.next() as u32)
            .map_err(|e| e.to_string())?;
        Ok(fresh)
    }

    fn step(&mut self, deck: &Deck, dice: &mut Dice) -> Result<(), String> {
        self.steps += 1;
        let (at, from) = (dice.roll(3), dice.roll(3));
        let now = self.devices[at].now(self.steps);
        match dice.roll(20) {
            0..9 => {
                let device = &mut self.devices[at];
                let act = deck.deal(device.book.journal(), dice);
                let _ = device.book.act(act, now, dice.next() as u32);
            }
            9..11 => self.store(at, false),
            11 => self.store(at, true),
            12 => self.devices[at].open(),
            13 => self.copies.push(self.devices[from].copy()),
            14 => {
                if let Some(text) = (!self.copies.is_empty()).then(|| dice.pick(&self.copies).clone())
                    && text.contains("\"clock\"")
                {
                    let replaces = dice.once_in(6);
                    self.take(at, &text, replaces, dice)?;
                }
            }
            15..18 => {
                let text = self.devices[from].copy();
                if text.contains("\"clock\"") {
                    let replaces = dice.once_in(8);
                    self.take(at, &text, replaces, dice)?;
                }
            }
            18 => {
                let book = &mut self.devices[at].book;
                if let Some(taken) = book.journal().taken().first() {
                    let _ = book.act(taken.back.clone(), now, dice.next() as u32);
                }
            }
            _ => {
                let book = &mut self.devices[at].book;
                if let Some(earlier) = book.journal().earlier().first() {
                    let _ = book.act(Act::Undo { entry: earlier.entry.clone() }, now, dice.next() as u32);
                }
            }
        }
        Ok(())
    }

    /// Each gives each a copy until nothing is new to any.
    fn meet(&mut self, dice: &mut Dice) -> Result<(), String> {
        for _ in 0..12 {
            let mut fresh = 0;
            let mut pairs = [(0, 1), (1, 0), (1, 2), (2, 1), (0, 2), (2, 0)];
            dice.shuffle(&mut pairs);
            for (from, to) in pairs {
                let text = self.devices[from].copy();
                if text.contains("\"clock\"") {
                    fresh += self.take(to, &text, false, dice)?;
                }
            }
            if fresh == 0 {
                return Ok(());
            }
        }
        Err("copies given in turn come to no end".to_owned())
    }

    fn settle(&mut self, dice: &mut Dice) -> Result<(), String> {
        self.meet(dice)?;
        for device in 0..3 {
            self.store(device, false);
        }
        let first = self.devices[0].book.journal();
        for device in &self.devices {
            alike(device.name, device.book.journal(), first)?;
            let again = Book::open(device.stored.values().cloned().collect(), device.name);
            alike("opened again", again.journal(), first)?;
            if again.unsaved() > 0 {
                return Err("something of those who were removed was stored still".to_owned());
            }
        }
        if let Some(lost) = self.acknowledged.iter().find(|id| first.find(id).is_none()) {
            return Err(format!("it was said to be saved: {lost}"));
        }
        forgotten(&self.devices[0].copy(), first)?;
        beside(first)?;
        tied(first)
    }
}

/// What is the same where two journals are.
fn alike(what: &str, a: &Journal, b: &Journal) -> Result<(), String> {
    same(&format!("{what}: the entries"), &a.entries(), &b.entries())?;
    same(&format!("{what}: the states"), a.state(), b.state())?;
    same(&format!("{what}: what was changed in two places"), &a.forks(), &b.forks())?;
    same(&format!("{what}: the earlier books"), &a.earlier(), &b.earlier())?;
    same(&format!("{what}: what was set aside"), &a.damaged().len(), &b.damaged().len())?;
    let counts = |j: &Journal| j.entries().iter().map(|e| j.counts(&e.id)).collect::<Vec<_>>();
    same(&format!("{what}: what counts"), &counts(a), &counts(b))
}

/// No line of a copy says a word of those who were removed.
fn forgotten(copy: &str, journal: &Journal) -> Result<(), String> {
    let gone: BTreeSet<&Id> = journal
        .entries()
        .iter()
        .filter_map(|e| if let Act::Forgotten { customer } = &e.act { Some(customer) } else { None })
        .collect();
    for line in copy.lines().filter_map(|line| Entry::from_line(line.trim_end_matches(',')).ok()) {
        if let Act::Customer { id, body, .. } = &line.act
            && gone.contains(id)
            && !body.removed
        {
            return Err(format!("still told of one who was removed: {}", body.name));
        }
    }
    Ok(())
}

/// Versions that count and that no other one was made over, also not by way of one taken back, stand beside each other: each
/// of them is shown, where they say different things.
fn beside(journal: &Journal) -> Result<(), String> {
    let mut versions: BTreeMap<&Id, Vec<&Entry>> = BTreeMap::new();
    let mut chosen = BTreeSet::new();
    for entry in journal.entries() {
        if let (Some(_), Subject::Thing(thing)) = (entry.act.made_over(), entry.act.subject()) {
            versions.entry(thing).or_default().push(entry);
            if matches!(entry.act, Act::Choose { .. }) {
                chosen.insert(thing);
            }
        }
    }
    for (thing, all) in versions {
        // What was made over none, or over what was never here, is over the one before it.
        let stray = |e: &&Entry| {
            e.act.made_over().is_none_or(|over| {
                over.is_empty()
                    || over.iter().any(|id| !all.iter().any(|v| v.id == *id && v.place() < e.place()))
            })
        };
        if chosen.contains(thing) || all.iter().skip(1).any(stray) {
            continue;
        }
        let counting: Vec<&&Entry> = all.iter().filter(|e| journal.counts(&e.id)).collect();
        let over = |later: &Entry, earlier: &Id| {
            let mut next: Vec<&Id> = later.act.made_over().unwrap_or_default().iter().collect();
            while let Some(id) = next.pop() {
                if id == earlier {
                    return true;
                }
                next.extend(journal.find(id).and_then(|e| e.act.made_over()).unwrap_or_default());
            }
            false
        };
        let tips: Vec<&&&Entry> =
            counting.iter().filter(|e| !counting.iter().any(|later| over(later, &e.id))).collect();
        let says: BTreeSet<String> = tips.iter().map(|e| said(e)).collect();
        if says.len() < 2 {
            continue;
        }
        let shown = journal.fork(thing).map(|fork| fork.tips).unwrap_or_default();
        if let Some(lost) = tips.iter().find(|tip| !shown.iter().any(|shown| shown.entry == tip.id)) {
            return Err(format!("made beside another and not shown: {} of {thing}", lost.id));
        }
    }
    Ok(())
}

/// What a version says, whatever it was made over.
fn said(entry: &Entry) -> String {
    let mut act: Value = serde_json::from_str(&wire::write(&entry.act)).unwrap_or_default();
    for (_, held) in act.as_object_mut().into_iter().flatten() {
        if let Some(fields) = held.as_object_mut() {
            fields.remove("over");
        }
    }
    act.to_string()
}

/// Opened from a bundle it is the same book, in which the same is found.
fn tied(journal: &Journal) -> Result<(), String> {
    let Some(tying) = Tying::begin(journal) else { return Ok(()) };
    let bytes = tying.finish(journal, "b", journal.len()).ok_or("it cannot be tied up")?;
    let read = read(bytes, "b").ok_or("the bundle is not whole")?;
    let book = Journal::open_tied(read.bundle, read.entries, journal.device());
    same("tied up: the states", book.state(), journal.state())?;
    let (one, other) = (book.state(), journal.state());
    same("tied up: the finders", &one.finder(), &other.finder())?;
    for word in ["a", "wax", "jar 2", "2026", "é"] {
        let (a, b) = (one.find(&one.finder(), word), other.find(&other.finder(), word));
        same("tied up: what is found", &a, &b)?;
    }
    Ok(())
}

/// Worlds in which something was lost, changed or not said.
pub(crate) fn apart(length: Length) -> Tally {
    let (deck, mut tally) = (Deck::new(), Tally::default());
    for case in length.each() {
        let name = || format!("three devices {case} of seed {}", length.seed);
        tally.case(name, || {
            let mut dice = Dice::of(length.seed, case);
            let deck = deck.hand(&mut dice);
            let mut world = World::new(&mut dice);
            for step in 0..10 + dice.roll(70) {
                world.step(&deck, &mut dice).map_err(|why| format!("step {step}: {why}"))?;
            }
            world.settle(&mut dice)
        });
    }
    tally
}
