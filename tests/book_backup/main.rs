//! Backups: what is written follows the schema, what is broken is told, and a book that was replaced comes back.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::panic, clippy::indexing_slicing)]

mod schema;

use potside::book::{
    Act, Book, CopyError, Damage, Entry, Id, Journal, LONGEST, Seal, backup, crc32c, demo, read_copy,
};
use potside::day::Zone;
use schema::{is_backup, summed};
use serde_json::{Value, json};

const V1: &str = include_str!("../fixtures/v1.journal");
const MADE: u64 = 1_764_806_400_000;

/// Each line once: the fixture has one twice.
fn lines(text: &str) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for line in text.lines() {
        if !all.iter().any(|known| known == line) {
            all.push(line.to_owned());
        }
    }
    all
}

#[test]
fn a_backup_brings_back_every_line_to_the_byte() {
    let stored = lines(V1);
    let text = backup(&stored, "k3f9q2mw", MADE);
    for text in [text.clone(), text.replace('\n', "\r\n"), format!("{text}\n\n")] {
        let copy = read_copy(&text, &Journal::default()).unwrap();
        assert_eq!((copy.seal, copy.made, copy.known), (Seal::Whole, Some(MADE), 0));
        assert_eq!(copy.damaged, []);
        let mut brought: Vec<String> = copy.fresh.into_iter().map(|(_, line)| line).collect();
        brought.sort();
        let mut all = stored.clone();
        all.sort();
        assert_eq!(brought, all);
    }
}

#[test]
fn every_change_of_a_backup_is_told() {
    let text = backup(&lines(V1)[..6], "k3f9q2mw", MADE);
    let empty = Journal::default();
    let whole = read_copy(&text, &empty).unwrap();
    for at in (0..text.len()).filter(|at| text.is_char_boundary(*at)) {
        let flipped = flipped(&text, at);
        // Line ends of another system are no damage, and hide none.
        let lines = flipped.replace('\n', "\r\n");
        for changed in [text[..at].to_owned(), flipped, lines] {
            // A line feed more or less at the very end is nothing.
            if changed.trim_end().replace("\r\n", "\n") == text.trim_end() {
                continue;
            }
            let Ok(copy) = read_copy(&changed, &empty) else { continue };
            assert!(copy.seal != Seal::Whole, "at {at}: {changed}");
            // Whatever it brings is what was in it.
            assert!(copy.fresh.iter().all(|one| whole.fresh.contains(one)), "at {at}");
            assert!(copy.seal == Seal::Without || copy.replace.is_none());
        }
    }
}

fn flipped(text: &str, at: usize) -> String {
    let mut bytes = text.as_bytes().to_vec();
    bytes[at] ^= 1;
    String::from_utf8(bytes).unwrap_or_default()
}

#[test]
fn what_was_set_aside_goes_along_and_is_not_taken_in() {
    let mut stored = lines(V1);
    stored.push("half an entry {\"v\":".to_owned());
    let text = backup(&stored, "k3f9q2mw", MADE);
    assert!(text.contains("half an entry"));
    let copy = read_copy(&text, &Journal::default()).unwrap();
    assert_eq!((copy.fresh.len(), copy.seal), (stored.len() - 1, Seal::Whole));
}

#[test]
fn sizes_and_depths_have_their_bounds() {
    let text = backup(&lines(V1), "k3f9q2mw", MADE);
    let newer = text.replacen("\"format\":1", "\"format\":2", 1);
    assert_eq!(read_copy(&newer, &Journal::default()), Err(CopyError::Newer { format: 2 }));
    let body = |middle: &str| {
        let head =
            "{\"potside\":\"backup\",\"format\":1,\"made\":1,\"device\":\"d\",\"count\":2,\"entries\":[\n";
        let good = lines(V1)[0].clone();
        summed(&format!("{head}{good},\n{middle}\n],\"set_aside\":[\n]"))
    };
    let deep = format!("{{\"v\":1,\"act\":{}1{}", "[".repeat(500), "]".repeat(500));
    let deep = format!("{deep},\"sum\":\"{:08x}\"}}", crc32c(deep.as_bytes()));
    let copy = read_copy(&body(&deep), &Journal::default()).unwrap();
    assert!(matches!(&copy.damaged[..], [(3, Damage::Unknown { reason })] if reason.contains("128 deep")));
    let copy = read_copy(&body(&"x".repeat(LONGEST + 1)), &Journal::default()).unwrap();
    assert_eq!(copy.damaged, [(3, Damage::TooLong { bytes: LONGEST + 1 })]);
    assert!(copy.replace.is_none(), "a damaged copy takes the place of nothing");
}

/// The tablet's book after its copy was made, and then replaced by that copy.
fn replaced() -> (Book, Vec<String>, Journal) {
    let copied = lines(V1);
    let text = backup(&copied, "k3f9q2mw", MADE);
    let mut book = Book::open(copied.clone(), "k3f9q2mw");
    let before = Journal::open(copied.clone(), "k3f9q2mw");
    book.act(Act::Retire { id: Id("k3f9q2mw-a-h".into()), retired: true }, MADE, 1).unwrap();
    let pots: Vec<Id> = book.state().pots.iter().map(|(id, _)| id.clone()).collect();
    book.act(Act::Retire { id: pots[0].clone(), retired: true }, MADE, 2).unwrap();
    let copy = read_copy(&text, book.journal()).unwrap();
    assert_eq!(copy.fresh, []);
    book.act(copy.replace.unwrap(), MADE, 3).unwrap();
    (book, copied, before)
}

#[test]
fn a_replaced_book_is_as_the_copy_and_comes_back() {
    let (mut book, copied, before) = replaced();
    assert_eq!(book.state(), before.state());
    assert_eq!(book.journal().entries().len(), copied.len() + 3, "nothing is deleted");
    let earlier = book.journal().earlier();
    assert_eq!((earlier.len(), earlier[0].entries, earlier[0].made), (1, 2, Some(MADE)));
    let done = book.journal().done(None, 1, Default::default());
    assert_eq!(done[0].what, "The book replaced by a copy");
    let aside = |lines: &[String]| {
        let copy = read_copy(&backup(lines, "k3f9q2mw", MADE), book.journal()).unwrap();
        assert_eq!(copy.known, lines.len());
        copy.aside
    };
    let all: Vec<String> = book.journal().entries().iter().map(Entry::to_line).collect();
    assert_eq!((aside(&copied), aside(&all)), (0, 2));
    book.act(Act::Undo { entry: earlier[0].entry.clone() }, MADE, 4).unwrap();
    let formula = book.state().formulas.get(&Id("k3f9q2mw-a-h".into())).unwrap();
    assert!(formula.retired && book.journal().earlier().is_empty());
    let opened = Journal::open(book.journal().entries().iter().map(Entry::to_line).collect(), "x");
    assert_eq!(opened.state(), book.state());
}

#[test]
fn another_book_takes_its_place_and_what_is_done_since_counts() {
    let text = backup(&lines(V1), "k3f9q2mw", MADE);
    let theirs = demo("desk", MADE, Zone::GREENWICH, || 7).into_iter().map(|(_, line)| line).collect();
    let mut book = Book::open(theirs, "desk");
    let copy = read_copy(&text, book.journal()).unwrap();
    let formulas = copy.prospects.iter().find(|p| p.of == "Formulas").unwrap();
    assert_eq!((formulas.merged, formulas.replaced), (formulas.now + 1, Some(1)));
    let replace = copy.replace.unwrap();
    book.take_in(copy.fresh).unwrap();
    book.act(replace, MADE, 2).unwrap();
    assert_eq!(book.state(), Journal::open(lines(V1), "x").state());
    book.act(Act::Retire { id: Id("k3f9q2mw-a-h".into()), retired: true }, MADE, 5).unwrap();
    assert!(book.state().formulas.get(&Id("k3f9q2mw-a-h".into())).unwrap().retired);
}

/// What another device did meanwhile, unknown here, is not set aside when it comes.
#[test]
fn what_nobody_knew_of_goes_on_counting() {
    let (book, copied, _) = replaced();
    let mut table = Journal::open(copied, "packing");
    let theirs = table.entry(Act::Retire { id: Id("k3f9q2mw-7-f".into()), retired: true }, MADE, 9);
    table.take(theirs.clone());
    let replace = book.journal().entries().last().unwrap();
    assert!(theirs.place() < replace.place(), "it stands before the replacing");
    let mut here = book.journal().clone();
    here.take(theirs);
    assert!(here.state().vessels.get(&Id("k3f9q2mw-7-f".into())).unwrap().retired);
    let mut there = table;
    book.journal().entries().iter().rev().for_each(|e| there.take(e.clone()));
    assert_eq!((here.state(), here.earlier()), (there.state(), there.earlier()));
}

/// An entry of a later version is not understood here, but its checksum says that it is whole.
fn later(body: &str) -> String {
    format!("{body},\"sum\":\"{:08x}\"}}", crc32c(body.as_bytes()))
}

#[test]
fn entries_of_a_later_version_go_along_as_they_are() {
    let whole = later("{\"v\":99,\"id\":\"a-1-1\",\"new\":[1]");
    // Whole by their checksums, yet one would break the rule of an entry a line, and one is no JSON.
    let broken = later("{\"v\":99,\n\"id\":\"a-2-2\"");
    let unread = later("{\"v\":99,\"id\":\"a-3-3\",\"new\":[");
    for line in [&whole, &broken, &unread] {
        assert_eq!(Entry::from_line(line), Err(Damage::Newer { format: 99 }), "{line}");
    }
    let text = backup(&[broken.clone(), whole.clone(), unread.clone()], "t", MADE);
    let read: Value = serde_json::from_str(&text).unwrap();
    assert_eq!(read["entries"], json!([serde_json::from_str::<Value>(&whole).unwrap()]));
    assert_eq!(read["set_aside"], json!([broken, unread]));
    assert_eq!(read["count"], 1);
    is_backup(&text, true);
    for (field, odd) in [("v", json!("99")), ("sum", json!(1))] {
        let mut read = read.clone();
        read["entries"][0][field] = odd;
        is_backup(&read.to_string(), false);
    }
}
