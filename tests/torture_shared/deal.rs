//! What a person does in a book, dealt by chance: acts of every kind, taken from the frozen book of format 2, and in every
//! place where people err. Hostile ones too, as a copy from elsewhere may bring.

use super::dice::Dice;
use potside::book::{Act, Book, Entry, Id, Journal, backup, read_copy};
use potside::wire;
use serde_json::Value;

/// Pours with the day of the workshop, which came later than the book.
const DAYS: &str = include_str!("../fixtures/day.journal");
/// A book with every kind of act.
pub(crate) const BOOK: &str = include_str!("../fixtures/v2.journal");

pub(crate) struct Deck {
    /// Acts as JSON, each an object with its kind as the only field.
    acts: Vec<(String, Value)>,
}

impl Deck {
    pub(crate) fn new() -> Self {
        let act = |line: &str| {
            let mut line: Value = serde_json::from_str(line).expect("the fixture is JSON");
            let (kind, held) = line["act"].as_object_mut()?.iter_mut().next()?;
            Some((kind.clone(), held.take()))
        };
        let kept = |(kind, _): &(String, Value)| !["Undo", "Choose", "Replace"].contains(&kind.as_str());
        Self { acts: BOOK.lines().chain(DAYS.lines()).filter_map(act).filter(kept).collect() }
    }

    /// A few of the acts, so that two who deal from them often change the same thing.
    pub(crate) fn hand(&self, dice: &mut Dice) -> Self {
        let mut acts: Vec<_> = (0..6 + dice.roll(8)).map(|_| dice.pick(&self.acts).clone()).collect();
        if dice.once_in(4) {
            // A person who is removed, here while something is written of them there.
            let people = |(kind, _): &&(String, Value)| kind == "Customer" || kind == "Forgotten";
            acts.extend(self.acts.iter().filter(people).cloned());
        }
        Self { acts }
    }

    /// An act for this book, mostly one that makes sense there.
    pub(crate) fn deal(&self, journal: &Journal, dice: &mut Dice) -> Act {
        let entries = journal.entries();
        let any = |dice: &mut Dice| dice.pick(entries).id.clone();
        match dice.roll(20) {
            0 | 1 if !entries.is_empty() => Act::Undo { entry: any(dice) },
            2 => match journal.last_undoable() {
                Some(last) => Act::Undo { entry: last.id.clone() },
                None => self.fresh(journal, dice),
            },
            3 => match journal.forks().first() {
                Some(fork) => fork.choose(&dice.pick(&fork.tips).entry),
                None => self.fresh(journal, dice),
            },
            4 if dice.once_in(3) => copy(journal, dice).unwrap_or_else(|| self.fresh(journal, dice)),
            5 if !entries.is_empty() => match made(dice.pick(entries)) {
                Some(id) => Act::Retire { id, retired: !dice.once_in(3) },
                None => self.fresh(journal, dice),
            },
            _ => self.fresh(journal, dice),
        }
    }

    /// One of the fixture's acts, changed a little, made over the version that is today's.
    fn fresh(&self, journal: &Journal, dice: &mut Dice) -> Act {
        let (kind, held) = dice.pick(&self.acts);
        let mut held = held.clone();
        let plain = held.clone();
        if !dice.once_in(4) {
            change(held.get_mut("body").unwrap_or(&mut Value::Null), dice);
        }
        for mut held in [held, plain] {
            let over = held.get("id").and_then(Value::as_str).and_then(|id| latest(journal, id));
            if let (Some(over), Some(fields)) = (over, held.as_object_mut())
                && !dice.once_in(6)
            {
                fields.insert("over".to_owned(), Value::String(over));
            }
            let act: Value = [(kind.clone(), held)].into_iter().collect();
            if let Ok(act) = wire::read(&act.to_string()) {
                return act;
            }
        }
        Act::Forgotten { customer: Id("v2-gone".to_owned()) }
    }

    /// The frozen book, and what a second device does after it, up to so many entries.
    pub(crate) fn book(&self, entries: usize, seed: u64) -> Vec<String> {
        let mut dice = Dice::of(seed, 0);
        let mut book = Book::open(BOOK.lines().map(str::to_owned).collect(), "desk");
        let mut at = 1_765_000_000_000;
        while book.journal().entries().len() < entries {
            at += 60_000;
            // Nothing here sets the book aside: most of it is to count.
            let act = match self.deal(book.journal(), &mut dice) {
                Act::Replace(_) => continue,
                act => act,
            };
            let _ = book.act(act, at, dice.next() as u32);
        }
        book.journal().entries().iter().map(Entry::to_line).collect()
    }
}

/// What an entry makes a version of.
fn made(entry: &Entry) -> Option<Id> {
    entry.act.made_over()?;
    match entry.act.subject() {
        potside::book::Subject::Thing(id) => Some(id.clone()),
        _ => None,
    }
}

/// The last entry that makes a version of this thing.
fn latest(journal: &Journal, id: &str) -> Option<String> {
    let about = |e: &&Entry| made(e).is_some_and(|made| made.0 == id);
    journal.entries().iter().rev().find(about).map(|e| e.id.0.clone())
}

/// A backup of a part of the book, as what replaces it.
fn copy(journal: &Journal, dice: &mut Dice) -> Option<Act> {
    let some = dice.roll(journal.entries().len()) + 1;
    let lines: Vec<String> = journal.entries().iter().take(some).map(Entry::to_line).collect();
    read_copy(&backup(&lines, "tablet", 1), journal).ok()?.replace
}

/// Changes one text or number somewhere in it.
fn change(value: &mut Value, dice: &mut Dice) {
    match value {
        Value::Object(fields) if !fields.is_empty() => {
            let at = dice.roll(fields.len());
            if let Some((_, value)) = fields.iter_mut().nth(at) {
                change(value, dice);
            }
        }
        Value::Array(all) if !all.is_empty() => {
            let at = dice.roll(all.len());
            change(&mut all[at], dice);
        }
        Value::String(text) => text.push_str(["2", " ", "é", "0"][dice.roll(4)]),
        Value::Number(_) => *value = Value::from(dice.roll(100)),
        Value::Bool(it) => *it = !*it,
        _ => {}
    }
}
