//! The laws of merging, over acts of every kind: commutative, associative, idempotent; and what was changed in two places is
//! shown as such, on every device the same.

use super::deal::{BOOK, Deck};
use super::dice::Dice;
use super::{Length, Tally, same};
use potside::book::{Act, Entry, Id, Journal};
use potside::wire;
use serde_json::Value;

/// What is the same where two journals are.
fn alike(what: &str, a: &Journal, b: &Journal) -> Result<(), String> {
    same(&format!("{what}: the entries"), &a.entries(), &b.entries())?;
    same(&format!("{what}: the states"), a.state(), b.state())?;
    same(&format!("{what}: what was changed in two places"), &a.forks(), &b.forks())?;
    same(&format!("{what}: the earlier books"), &a.earlier(), &b.earlier())?;
    let counts = |j: &Journal| j.entries().iter().map(|e| j.counts(&e.id)).collect::<Vec<_>>();
    same(&format!("{what}: what counts"), &counts(a), &counts(b))
}

fn does(journal: &mut Journal, act: Act, dice: &mut Dice) -> Entry {
    let entry = journal.entry(act, 1_764_000_000_000 + dice.roll(1_000_000) as u64, dice.next() as u32);
    journal.take(entry.clone());
    entry
}

fn goes_on(from: &[Entry], device: &str, deck: &Deck, dice: &mut Dice) -> Journal {
    let mut journal = Journal::open(from.iter().map(Entry::to_line).collect(), device);
    for _ in 0..dice.roll(7) {
        let act = deck.deal(&journal, dice);
        does(&mut journal, act, dice);
    }
    journal
}

fn merged(a: &Journal, b: &Journal) -> Journal {
    let mut all = a.clone();
    all.take_all(b.entries().to_vec());
    all
}

/// An entry comes in that bears the name of another one, at a clock of its own: so a hostile copy might.
fn forge(of: &Journal, into: &mut Journal, deck: &Deck, dice: &mut Dice) {
    if of.entries().is_empty() {
        return;
    }
    let like = dice.pick(of.entries()).clone();
    let clock = if dice.once_in(2) { like.clock } else { 1 + dice.roll(60) as u64 };
    let act = deck.deal(into, dice);
    // Of two entries of one name one is set aside; a removal cannot be, once it has taken out what was said.
    if [&like.act, &act].into_iter().any(|act| matches!(act, Act::Forgotten { .. } | Act::Customer { .. })) {
        return;
    }
    into.take(Entry { clock, act, ..like });
}

fn law(deck: &Deck, whole: &[Entry], dice: &mut Dice) -> Result<(), String> {
    // A piece of the frozen book, so that there is something to change; often none at all.
    let from = dice.roll(whole.len());
    let some = if dice.once_in(2) { dice.roll(12) } else { 0 };
    let base = &whole[from..(from + some).min(whole.len())];
    let deck = &deck.hand(dice);
    // Two devices have met before: there is something to choose among.
    let first = goes_on(base, "base", deck, dice);
    let second = goes_on(first.entries(), "second", deck, dice);
    let base = merged(&goes_on(first.entries(), "base", deck, dice), &second);
    let [a, mut b, mut c] =
        ["tablet", "table", "phone"].map(|device| goes_on(base.entries(), device, deck, dice));
    if dice.once_in(4) {
        forge(&a, &mut b, deck, dice);
        forge(&a, &mut c, deck, dice);
    }
    let ab = merged(&a, &b);
    alike("a with b and b with a", &ab, &merged(&b, &a))?;
    alike("a with a", &merged(&a, &a), &a)?;
    alike("a with b, again with b", &merged(&ab, &b), &ab)?;
    alike("(a with b) with c", &merged(&ab, &c), &merged(&a, &merged(&b, &c)))?;
    let mut slowly = b.clone();
    let mut entries = [a.entries(), a.entries()].concat();
    dice.shuffle(&mut entries);
    entries.into_iter().for_each(|e| slowly.take(e));
    alike("one entry after the other", &slowly, &ab)?;
    let mut lines: Vec<String> = ab.entries().iter().map(Entry::to_line).collect();
    dice.shuffle(&mut lines);
    alike("from what is stored", &Journal::open(lines, "tablet"), &ab)
}

/// Kinds whose versions have a name or a note in words, and the field of it.
const NAMED: [(&str, &str); 10] = [
    ("Formula", "name"),
    ("Vessel", "note"),
    ("Scale", "name"),
    ("Pot", "name"),
    ("Ingredient", "name"),
    ("Lot", "supplier"),
    ("Product", "wick"),
    ("Customer", "contact"),
    ("Order", "note"),
    ("Label", "name"),
];

/// The same act saying another thing in that field, over that version.
fn saying(act: &Value, (kind, field): (&str, &str), words: &str, over: Option<&Entry>) -> Act {
    let mut act = act.clone();
    act[kind]["body"][field] = Value::String(words.to_owned());
    if let (Some(over), Some(fields)) = (over, act[kind].as_object_mut()) {
        fields.insert("over".to_owned(), Value::String(over.id.0.clone()));
    }
    wire::read(&act.to_string()).expect("it is an act as before")
}

/// One field changed on two devices, or in two tabs, each once or more: both are shown, beside each other, until one is
/// chosen; and nothing that either wrote is gone.
fn fork(
    deck: &Deck,
    firsts: &[(Value, (&'static str, &'static str))],
    dice: &mut Dice,
) -> Result<(), String> {
    let (first, named) = dice.pick(firsts);
    let thing = Id(first[named.0]["id"].as_str().unwrap_or_default().to_owned());
    let mut base = Journal::open(vec![], "base");
    let root = does(&mut base, saying(first, *named, "as it was", None), dice);
    let mut last = Vec::new();
    let sides = ["tablet", "table"].map(|device| {
        let mut journal = Journal::open(base.entries().iter().map(Entry::to_line).collect(), device);
        let mut over = root.clone();
        for step in 0..=dice.roll(3) {
            // Other work in between, which leaves this thing alone.
            for _ in 0..dice.roll(3) {
                let act = deck.deal(&journal, dice);
                if matches!(
                    &act,
                    Act::Undo { .. } | Act::Replace(_) | Act::Choose { .. } | Act::Retire { .. }
                ) || act.subject() == potside::book::Subject::Thing(&thing)
                {
                    continue;
                }
                does(&mut journal, act, dice);
            }
            over = does(&mut journal, saying(first, *named, &format!("{device} {step}"), Some(&over)), dice);
        }
        last.push((over.id, over.act));
        journal
    });
    let both = merged(&sides[0], &sides[1]);
    let Some(fork) = both.fork(&thing) else { return Err(format!("no fork of {thing}")) };
    let mut tips: Vec<&Id> = fork.tips.iter().map(|tip| &tip.entry).collect();
    tips.sort();
    let mut wanted: Vec<&Id> = last.iter().map(|(id, _)| id).collect();
    wanted.sort();
    same("the versions beside each other and the last ones written", &tips, &wanted)?;
    for (tip, told) in fork.tips.iter().zip(0..) {
        let said = last.iter().find(|(id, _)| *id == tip.entry).map(|(_, act)| wire::write(act));
        let value = fork.differs.iter().find_map(|d| d.values.get(told).cloned().flatten());
        let value = value.ok_or("what differs is not told")?;
        if !said.is_some_and(|said| said.contains(&format!("\"{value}\""))) {
            return Err(format!("{value} is told of the wrong version"));
        }
    }
    if !both.forks().iter().any(|f| f.thing == thing) {
        return Err("it is not among all that are to be chosen".to_owned());
    }
    // Of another customer, who was removed, nothing is told.
    let other = |e: &Entry| matches!(&e.act, Act::Customer { id, .. } if *id != thing);
    let is_there = |e: &Entry| both.find(&e.id).is_some_and(|found| found == e || other(e));
    let written = sides.iter().flat_map(|side| side.entries()).find(|e| !is_there(e));
    if let Some(gone) = written {
        return Err(format!("gone: {}", gone.id));
    }
    // Chosen, it is settled, and is what today's version says.
    let (chosen, mut settled) = (dice.pick(&fork.tips).entry.clone(), both);
    does(&mut settled, fork.choose(&chosen), dice);
    match settled.fork(&thing) {
        None => Ok(()),
        Some(_) => Err("chosen, and still to be chosen".to_owned()),
    }
}

/// Pairs and triples of books that do not keep to the laws, and changes in two places that were dropped: one case of those
/// to nine of these.
pub(crate) fn broken(length: Length) -> Tally {
    let (deck, mut tally) = (Deck::new(), Tally::default());
    let whole: Vec<Entry> = BOOK.lines().filter_map(|line| Entry::from_line(line).ok()).collect();
    let first = |named: &(&'static str, &'static str)| {
        let acts =
            whole.iter().map(|e| serde_json::from_str::<Value>(&wire::write(&e.act)).unwrap_or_default());
        (acts.into_iter().find(|act| act[named.0]["body"].is_object()).expect("it is in the fixture"), *named)
    };
    let firsts: Vec<_> = NAMED.iter().map(first).collect();
    for case in length.each() {
        let name = || format!("merge {case} of seed {}", length.seed);
        tally.case(name, || {
            let mut dice = Dice::of(length.seed, case);
            if case % 10 == 0 { fork(&deck, &firsts, &mut dice) } else { law(&deck, &whole, &mut dice) }
        });
    }
    tally
}
