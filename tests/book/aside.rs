//! What a copy tells of what is set aside: lines that an earlier version did not know, and entries of an earlier book.

use super::sample::{does, id, ingredient};
use potside::book::{Act, Book, Copy, Entry, Journal, Replace, Seal, UpTo, backup, crc32c, read_copy};

fn lines(journal: &Journal) -> Vec<String> {
    journal.entries().iter().map(Entry::to_line).collect()
}

/// The copy that a version makes which does not know what the last of these entries says: a whole line, set aside as a text.
fn of_before(lines: &[String]) -> String {
    let (unknown, known) = lines.split_last().expect("there are some");
    let text = backup(&[known, &["torn".to_owned()]].concat(), "tablet", 7);
    let (body, _) = text.rsplit_once(",\"sum\":").expect("it has its sum");
    let body = body.replace("\"torn\"", &format!("\"torn\",\n{}", potside::wire::write(unknown)));
    format!("{body},\"sum\":\"{:08x}\"}}\n", crc32c(body.as_bytes()))
}

#[test]
fn what_an_earlier_version_set_aside_is_taken_in_by_one_that_knows_it() {
    let mut tablet = Journal::open(vec![], "tablet");
    does(&mut tablet, ingredient("w", "Meadow wax", 862));
    let late = does(&mut tablet, ingredient("v", "Chalk wax", 900));
    for cut in [false, true] {
        let mut text = of_before(&lines(&tablet));
        if cut {
            text.truncate(text.len() - 20);
        }
        let copy = read_copy(&text, &Journal::default()).expect("it is a copy");
        assert_eq!(copy.seal, if cut { Seal::Broken } else { Seal::Whole });
        assert_eq!((copy.fresh.len(), copy.damaged.len(), copy.replace.is_some()), (2, 0, !cut));
        let (_, line) = copy.fresh.iter().find(|(e, _)| *e == late).expect("it is there");
        assert_eq!(*line, late.to_line(), "to the byte");
        let mut book = Book::open(vec![], "phone");
        book.take_copy(copy.fresh, copy.made, copy.replace, 9, 9).expect("taken in");
        assert_eq!(book.state().name(&id("v")), Some("Chalk wax"));
    }
    // Where it is here already it is known.
    let Copy { fresh, known, .. } = read_copy(&of_before(&lines(&tablet)), &tablet).expect("it is a copy");
    assert_eq!((fresh.len(), known), (0, 2));
}

/// Whole by its checksum, with the end of a line where JSON may have one: the copy is whole all the same, and has it.
#[test]
fn an_entry_in_several_lines_is_in_a_copy() {
    let mut tablet = Journal::open(vec![], "tablet");
    does(&mut tablet, ingredient("w", "Meadow wax", 862));
    let late = does(&mut tablet, ingredient("v", "Chalk wax", 900));
    let [first, second] = &lines(&tablet)[..] else { panic!("there are two") };
    let body = second[..second.len() - 18].replacen(",\"act\"", ",\n\"act\"", 1);
    let parted = format!("{body},\"sum\":\"{:08x}\"}}", crc32c(body.as_bytes()));
    assert_eq!(Entry::from_line(&parted), Ok(late.clone()));
    let text = backup(&[first.clone(), parted], "tablet", 7);
    let copy = read_copy(&text, &Journal::default()).expect("it is a copy");
    assert_eq!((copy.seal, copy.fresh.len(), copy.damaged.len()), (Seal::Whole, 2, 0));
    assert!(copy.fresh.iter().any(|(e, _)| *e == late));
}

/// Two devices of one name, as where a browser was copied with all it kept: one was replaced by a copy, and what the other
/// has done since counts with the book that was set aside. That is said before it is taken in.
#[test]
fn what_comes_to_be_set_aside_is_said() {
    let mut tablet = Journal::open(vec![], "tablet");
    does(&mut tablet, ingredient("w", "Meadow wax", 862));
    let mut twin = tablet.clone();
    for name in ["Chalk wax", "Rice wax"] {
        does(&mut tablet, ingredient("v", name, 900));
    }
    let up_to = |clock| vec![UpTo { device: "tablet".to_owned(), clock }];
    let replace = Replace { had: up_to(3), kept: up_to(1), without: vec![], made: None };
    does(&mut tablet, Act::Replace(Box::new(replace)));
    let theirs = twin.entry(ingredient("u", "Reed wax", 900), 5, 99);
    twin.take(theirs.clone());
    let copy = read_copy(&backup(&lines(&twin), "tablet", 7), &tablet).expect("it is a copy");
    assert_eq!((copy.fresh.len(), copy.aside), (1, 1));
    assert!(copy.say().contains("1 is set aside with an earlier book, which can be brought back below."));
    let mut merged = tablet.clone();
    merged.take(theirs.clone());
    assert!(!merged.counts(&theirs.id) && merged.earlier()[0].entries == 3);
}

/// What another device replaced its book by sets aside what both had, here too: said before, and taken back as any copy is.
#[test]
fn what_a_copy_sets_aside_of_this_book_is_said() {
    let mut tablet = Journal::open(vec![], "tablet");
    does(&mut tablet, ingredient("w", "Meadow wax", 862));
    let early = backup(&lines(&tablet), "tablet", 7);
    for name in ["Chalk wax", "Rice wax"] {
        does(&mut tablet, ingredient("v", name, 900));
    }
    let mut table = Journal::open(lines(&tablet), "table");
    let old = read_copy(&early, &table).expect("it is a copy");
    assert_eq!((old.puts_aside, old.say_puts_aside()), (0, None));
    does(&mut table, old.replace.expect("it is whole"));
    does(&mut tablet, ingredient("u", "Reed wax", 900));
    let copy = read_copy(&backup(&lines(&table), "table", 8), &tablet).expect("it is a copy");
    assert_eq!(copy.puts_aside, 2, "what the table never had goes on counting");
    let said = copy.say_puts_aside().expect("it is said");
    assert!(said.starts_with("2 entries of your book would no longer count, since"), "{said}");
    let mut book = Book::open(lines(&tablet), "tablet");
    let before = book.state().clone();
    book.take_copy(copy.fresh, copy.made, None, 9, 9).expect("taken in");
    assert_eq!(book.state().name(&id("v")), None);
    let back = book.journal().taken().remove(0).back;
    book.act(back, 10, 10).expect("taken back");
    assert_eq!(*book.state(), before);
}
