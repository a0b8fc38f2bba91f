//! What a copy of a book brings to a book.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, clippy::panic)]

mod hostile;

use potside::bench::Scale;
use potside::book::{Act, CopyError, Damage, Entry, Id, Journal, Settings, read_copy, say_bytes};
use potside::quantity::{Amount, Exact, Locale, MassUnit, ShareUnit, Voice};
use potside::shelf::Customer;

fn settings(percent: i128) -> Act {
    let tolerance = Amount::new(Exact::whole(percent), ShareUnit::Percent);
    Act::Settings(Settings { tolerance, ..Settings::default() })
}

/// A book of so many entries, and its lines.
fn book(device: &str, entries: i128) -> (Journal, Vec<String>) {
    let mut journal = Journal::open(Vec::new(), device);
    let mut lines = Vec::new();
    for n in 1..=entries {
        let entry = journal.entry(settings(n), 1_764_770_400_000, 7);
        lines.push(entry.to_line());
        journal.take(entry);
    }
    (journal, lines)
}

#[test]
fn a_copy_brings_what_is_not_here_yet() {
    let (_, lines) = book("tablet", 5);
    for here in 0..=5 {
        let journal = Journal::open(lines[..here].to_vec(), "tablet");
        // Windows line ends and an empty last line are no damage.
        for text in [lines.join("\n"), lines.join("\r\n") + "\r\n\r\n"] {
            let copy = read_copy(&text, &journal).unwrap();
            let fresh: Vec<_> = copy.fresh.iter().map(|(_, line)| line.clone()).collect();
            assert_eq!((fresh.as_slice(), copy.known), (&lines[here..], here));
            assert_eq!(copy.damaged, []);
        }
    }
}

#[test]
fn a_line_that_stands_twice_comes_once() {
    let (_, lines) = book("tablet", 2);
    let copy = read_copy(&[lines.join("\n"), lines.join("\n")].join("\n"), &Journal::default()).unwrap();
    assert_eq!((copy.fresh.len(), copy.known), (2, 2));
}

#[test]
fn damaged_lines_are_named_and_the_rest_comes() {
    let (_, mut lines) = book("tablet", 3);
    lines[1] = lines[1].replace("2 %", "9 %");
    lines.push("{\"half\":".to_owned());
    let copy = read_copy(&lines.join("\n"), &Journal::default()).unwrap();
    assert_eq!(copy.fresh.len(), 2);
    assert_eq!(copy.damaged, [(2, Damage::Checksum), (4, Damage::NotAnEntry)]);
}

#[test]
fn another_entry_of_the_same_id_is_left_out() {
    let (mine, lines) = book("tablet", 1);
    let mut theirs = Entry::from_line(&lines[0]).unwrap();
    theirs.act = settings(50);
    let copy = read_copy(&[lines[0].clone(), theirs.to_line()].join("\n"), &mine).unwrap();
    assert_eq!((copy.fresh.len(), copy.known), (0, 1));
    assert_eq!(copy.damaged, [(2, Damage::SameId)]);
    // Neither is here yet: the first in the file comes.
    let copy = read_copy(&[theirs.to_line(), lines[0].clone()].join("\n"), &Journal::default()).unwrap();
    assert_eq!((copy.fresh.len(), copy.known), (1, 0));
    assert_eq!(copy.fresh[0].1, theirs.to_line());
    assert_eq!(copy.damaged, [(2, Damage::SameId)]);
    // One that says that a person was removed gets no further.
    theirs.act = Act::Forgotten { customer: Id("ines".to_owned()) };
    let copy = read_copy(&[theirs.to_line(), book("other", 1).1.concat()].join("\n"), &mine).unwrap();
    assert_eq!((copy.fresh.len(), copy.known), (1, 0));
    assert_eq!(copy.damaged, [(1, Damage::SameId)]);
}

/// What the book would hold: only what there is some of, now, with the copy taken in, with the copy in its place.
#[test]
fn a_copy_is_tried_out_beforehand() {
    let scale = |device: &str, id: &str| {
        let mut journal = Journal::open(Vec::new(), device);
        let mass = |grams| Amount::new(Exact::whole(grams), MassUnit::Gram);
        let (name, trial) = (id.to_owned(), None);
        let body = Scale { name, capacity: mass(5000), division: mass(1), least: mass(20), trial };
        let entry =
            journal.entry(Act::Scale { id: Id(id.to_owned()), over: None, body }, 1_764_770_400_000, 7);
        let line = entry.to_line();
        journal.take(entry);
        (journal, line)
    };
    let (mine, _) = scale("tablet", "large");
    let (_, theirs) = scale("other", "small");
    let copy = read_copy(&theirs, &mine).unwrap();
    let held: Vec<_> = copy.prospects.iter().map(|p| (p.of, p.now, p.merged, p.replaced)).collect();
    assert_eq!(held, [("Scales", 1, 2, Some(1))]);
    // With a damaged line it cannot take the place of the book.
    let copy = read_copy(&[theirs, "{}".to_owned()].join("\n"), &Journal::default()).unwrap();
    let held: Vec<_> = copy.prospects.iter().map(|p| (p.of, p.now, p.merged, p.replaced)).collect();
    assert_eq!(held, [("Scales", 0, 1, None)]);
}

/// More than 2,000 that the copy lacks are not named one by one: then it takes the place of nothing.
#[test]
fn a_copy_that_lacks_too_much_takes_the_place_of_nothing() {
    let (journal, lines) = book("tablet", 2_002);
    let without = |from: usize| match read_copy(&lines[from..].join("\n"), &journal).unwrap().replace {
        Some(Act::Replace(replace)) => Some(replace.without.len()),
        _ => None,
    };
    assert_eq!([1, 2_000, 2_001].map(without), [Some(1), Some(2_000), None]);
}

#[test]
fn photos_that_lack_are_counted() {
    for (lacking, expected) in [(0, ""), (1, "1 photo is not here yet."), (2, "2 photos are not here yet.")] {
        assert_eq!(potside::book::Copy::say_photos(lacking), expected);
    }
}

#[test]
fn why_a_copy_cannot_be_opened_is_said() {
    let say = |error: CopyError| error.to_string();
    assert_eq!(say(CopyError::Empty), "This file is empty. Choose the copy that you downloaded here.");
    assert!(say(CopyError::NotACopy).starts_with("This file is not a copy of a book."));
    assert!(say(CopyError::Newer { format: 9 }).contains('9'));
}

#[test]
fn what_is_no_copy_says_so() {
    let newer = "{\"v\":99,\"id\":\"a-1-1\"";
    let newer = format!("{newer},\"sum\":\"{:08x}\"}}", potside::book::crc32c(newer.as_bytes()));
    for (text, error) in [
        ("", CopyError::Empty),
        ("\n \n", CopyError::Empty),
        ("a shopping list\nwax", CopyError::NotACopy),
        (newer.as_str(), CopyError::Newer { format: 99 }),
    ] {
        assert_eq!(read_copy(text, &Journal::default()), Err(error), "{text}");
    }
}

#[test]
fn a_copy_says_what_it_holds() {
    let (_, lines) = book("tablet", 3);
    for (here, said) in [
        (0, "This copy holds 3 entries. 3 are not here yet."),
        (1, "This copy holds 3 entries. 2 are not here yet. 1 is here already."),
        (2, "This copy holds 3 entries. 1 is not here yet. 2 are here already."),
        (3, "This copy holds 3 entries. All of them are here already."),
    ] {
        let journal = Journal::open(lines[..here].to_vec(), "tablet");
        assert_eq!(read_copy(&lines.join("\n"), &journal).unwrap().say(), said);
    }
}

#[test]
fn all_at_once_is_one_after_another() {
    let (_, lines) = book("tablet", 6);
    let (other, _) = book("phone", 3);
    let undo = other.entry(Act::Undo { entry: Entry::from_line(&lines[5]).unwrap().id }, 1, 1);
    let fresh: Vec<_> =
        lines.iter().rev().map(|l| Entry::from_line(l).unwrap()).chain([undo.clone()]).collect();
    let (mut at_once, mut one_by_one) = (other.clone(), other);
    fresh.iter().cloned().for_each(|e| one_by_one.take(e));
    at_once.take_all(fresh);
    assert_eq!(at_once.entries(), one_by_one.entries());
    assert_eq!(at_once.state(), one_by_one.state());
    assert_eq!(at_once.find(&undo.id), Some(&undo));
}

// Units of 1000, as IEC 80000-13 has kB, MB and GB.
#[test]
fn bytes_are_said_in_units_people_know() {
    for (bytes, said) in [
        (0, "0.0 kB"),
        (1_234, "1.2 kB"),
        (99_940, "99.9 kB"),
        (380_499, "380 kB"),
        (4_210_000, "4.2 MB"),
        (2_400_000_000, "2400.0 MB"),
        (64_000_000_000, "64.0 GB"),
        (u64::MAX, "18\u{202f}446\u{202f}744\u{202f}073.7 GB"),
    ] {
        assert_eq!(say_bytes(bytes, Locale::Point), said);
    }
    assert_eq!(say_bytes(4_210_000, Locale::Comma), "4,2 MB");
}

#[test]
fn a_tolerance_is_neither_nothing_nor_wide() {
    for (thousandths, good) in [(0, false), (1, true), (20, true), (200, true), (201, false), (1000, false)] {
        let tolerance = Amount::new(Exact::ratio(thousandths, 10), ShareUnit::Percent);
        let settings = Settings { tolerance, ..Settings::default() };
        assert_eq!(settings.check(Voice::default()).is_ok(), good, "{thousandths}");
    }
}

/// Who is removed by taking a copy in is said beforehand, by name; it cannot be taken back.
#[test]
fn who_would_be_removed_is_said_beforehand() {
    let customer = |id: &str, name: &str| {
        let body =
            Customer { name: name.to_owned(), contact: "12 Long Lane".to_owned(), ..Customer::default() };
        Act::Customer { id: Id(id.to_owned()), over: None, body }
    };
    let done = |journal: &mut Journal, act: Act| {
        let entry = journal.entry(act, 1_764_770_400_000, 7);
        journal.take(entry);
    };
    let mut mine = Journal::open(Vec::new(), "tablet");
    for (id, name) in [("c1", "Old name"), ("c1", "Quill"), ("c2", "Ines"), ("c3", "")] {
        done(&mut mine, customer(id, name));
    }
    let mut theirs = mine.clone();
    done(&mut theirs, customer("c4", "Unknown here"));
    let copy =
        |journal: &Journal| journal.entries().iter().map(Entry::to_line).collect::<Vec<_>>().join("\n");
    let read = read_copy(&copy(&theirs), &mine).unwrap();
    assert_eq!((read.removes.len(), read.say_removes()), (0, None));
    for id in ["c1", "c3", "c4"] {
        done(&mut theirs, Act::Forgotten { customer: Id(id.to_owned()) });
    }
    let read = read_copy(&copy(&theirs), &mine).unwrap();
    assert_eq!(read.removes, ["Quill", "one without a name"]);
    let row = read.prospects.iter().find(|p| p.of == "Customers removed for good").unwrap();
    assert_eq!((row.now, row.merged, row.replaced), (0, 3, Some(3)));
    let said = read.say_removes().unwrap();
    assert!(said.contains("for good") && said.contains(": Quill, one without a name. "), "{said}");
    // Taken in, it says nothing more.
    mine.take_all(read.fresh.into_iter().map(|(e, _)| e).collect());
    let again = read_copy(&copy(&theirs), &mine).unwrap();
    assert_eq!((again.removes.len(), again.prospects.iter().any(|p| p.now == 3)), (0, true));
    // Many are not all named.
    for n in 0..25 {
        done(&mut mine, customer(&format!("d{n:02}"), &format!("Number {n:02}")));
    }
    let mut theirs = mine.clone();
    for n in 0..25 {
        done(&mut theirs, Act::Forgotten { customer: Id(format!("d{n:02}")) });
    }
    let said = read_copy(&copy(&theirs), &mine).unwrap().say_removes().unwrap();
    assert!(said.contains("Number 19 and 5 more.") && !said.contains("Number 20"), "{said}");
}
