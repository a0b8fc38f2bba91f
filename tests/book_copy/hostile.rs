//! Copies that are junk, too long, or name what cannot be.

use super::{book, settings};
use potside::book::{Act, CopyError, Damage, Entry, Id, Journal, MOST_NAMED, Replace, UpTo, read_copy};

#[test]
fn nothing_read_panics() {
    let (journal, lines) = book("tablet", 2);
    for cut in (0..lines[0].len()).filter(|at| lines[0].is_char_boundary(*at)) {
        let _ = read_copy(&lines[0][..cut], &journal);
    }
    assert!(journal.find(&Id("none".into())).is_none());
}

/// What stands at the end of all clocks would leave no room for what is done after it.
#[test]
fn a_clock_that_nobody_reaches_is_left_out() {
    let (mut mine, lines) = book("tablet", 1);
    let mut theirs = Entry::from_line(&lines[0]).unwrap();
    (theirs.id, theirs.device, theirs.clock) = (Id("other-1-1".into()), "other".into(), 1 << 53);
    let good = book("third", 1).1.concat();
    let copy = read_copy(&[theirs.to_line(), good].join("\n"), &mine).unwrap();
    assert!(matches!(copy.damaged[..], [(1, Damage::Unknown { .. })]) && copy.fresh.len() == 1);
    mine.take_all(copy.fresh.into_iter().map(|(e, _)| e).collect());
    // What is done after it comes after it, and undoing it does something.
    for random in [7, 3, 9, 1] {
        let done = mine.entry(settings(4), 1, random);
        mine.take(done.clone());
        let undo = mine.entry(Act::Undo { entry: done.id.clone() }, 1, random);
        mine.take(undo);
        assert!(!mine.counts(&done.id));
    }
}

/// The highest clock that is taken in does not keep what follows it from any device.
#[test]
fn what_was_written_after_the_highest_clock_comes_too() {
    let (mut mine, lines) = book("tablet", 1);
    let mut theirs = Entry::from_line(&lines[0]).unwrap();
    for (clock, comes) in [(1 << 52, 1), ((1 << 52) + (1 << 20), 1), ((1 << 52) + (1 << 20) + 1, 0)] {
        (theirs.id, theirs.device, theirs.clock) = (Id("other-1-1".into()), "other".into(), clock);
        let copy = read_copy(&[theirs.to_line(), lines[0].clone()].join("\n"), &mine).unwrap();
        assert_eq!((copy.fresh.len(), copy.damaged.len()), (comes, 1 - comes), "{clock}");
    }
    theirs.clock = 1 << 52;
    mine.take(theirs);
    for random in 1..5 {
        let done = mine.entry(settings(4), 1, random);
        mine.take(done);
    }
    let all: Vec<String> = mine.entries().iter().rev().map(Entry::to_line).collect();
    let copy = read_copy(&all.join("\n"), &Journal::default()).unwrap();
    assert_eq!((copy.fresh.len(), copy.damaged), (6, vec![]));
}

/// A file of nothing but junk is looked through in a time and a room that go with its size.
#[test]
fn of_much_junk_the_first_lines_are_named_and_the_rest_counted() {
    let (_, lines) = book("tablet", 1);
    let sealed = |middle: &str| {
        let head =
            "{\"potside\":\"backup\",\"format\":1,\"made\":1,\"device\":\"d\",\"count\":1,\"entries\":[";
        format!("{head}\n{}\n],\"set_aside\":[\n],\"photos\":[\n{middle}]\n", lines[0])
    };
    for number in [0, 1, MOST_NAMED, MOST_NAMED + 1, 2_000_000] {
        let junk = "x\n".repeat(number);
        let copy = read_copy(&[lines[0].clone(), junk.clone()].join("\n"), &Journal::default()).unwrap();
        assert_eq!((copy.fresh.len(), copy.damaged.len()), (1, number.min(MOST_NAMED)));
        assert_eq!((copy.left_out(), copy.replace.is_some()), (number, number == 0));
        assert!(copy.damaged.iter().map(|(line, _)| *line).eq(2..2 + number.min(MOST_NAMED)));
        // Photos likewise.
        let copy = read_copy(&sealed(&junk), &Journal::default()).unwrap();
        assert_eq!((copy.fresh.len(), copy.no_photos.len()), (1, number.min(MOST_NAMED)));
        assert_eq!((copy.damaged.len(), copy.left_out()), (0, number));
    }
    assert_eq!(read_copy(&"x\n".repeat(2_000_000), &Journal::default()), Err(CopyError::NotACopy));
}

/// Lines of another device's book, one for each of these acts.
fn lines_of(acts: impl Iterator<Item = Act>) -> Vec<String> {
    let line = |(n, act): (usize, Act)| {
        let (id, device) = (Id(format!("other-{n:x}-1")), "other".to_owned());
        Entry { id, clock: n as u64 + 1, at: 1, device, act }.to_line()
    };
    acts.enumerate().map(line).collect()
}

/// Each of them once more in the others would take the square of their number.
#[test]
fn a_copy_that_removes_very_many_is_opened() {
    const MANY: usize = 100_000;
    let lines =
        lines_of((0..MANY).map(|n| Act::Forgotten { customer: Id(format!("c{}", n * 7_919 % MANY)) }));
    let copy = read_copy(&lines.join("\n"), &Journal::default()).unwrap();
    assert_eq!((copy.fresh.len(), copy.left_out(), copy.removes.len()), (MANY, 0, 0));
    let removed = |p: &&potside::book::Prospect| p.of.starts_with("Customers removed");
    assert_eq!(copy.prospects.iter().find(removed).map(|p| p.merged), Some(MANY));
}

/// So is a book of which nothing can be read.
#[test]
fn a_large_book_of_a_newer_version_is_opened_and_each_line_kept_once() {
    const MANY: usize = 200_000;
    let newer = |n: usize| {
        let body = format!("{{\"v\":3,\"note\":\"what later versions write, number {:06}\"", n % MANY);
        format!("{body},\"sum\":\"{:08x}\"}}", potside::book::crc32c(body.as_bytes()))
    };
    let journal = Journal::open((0..MANY + 2).map(newer).collect(), "tablet");
    assert!(journal.read_only());
    assert_eq!(journal.damaged().len(), MANY);
    assert!(journal.damaged().iter().map(|(line, _)| line.clone()).eq((0..MANY).map(newer)));
}

/// What replaces a book looks through all of it: of very many such the first ones count, and the rest is said.
#[test]
fn what_replaces_a_book_too_often_is_left_out() {
    let upto = |n: u64| UpTo { device: format!("d{n}"), clock: 9 };
    let replace = |names: u64| {
        let had = (1..names).map(upto).collect();
        Act::Replace(Box::new(Replace { had, kept: Vec::new(), without: Vec::new(), made: None }))
    };
    let took = || {
        let back =
            Box::new(Replace { had: vec![upto(1)], kept: vec![upto(2)], without: Vec::new(), made: None });
        Act::Took { entries: 1, back }
    };
    // Each names a thousand; then copies that were taken in; then one that is neither, and comes all the same.
    let acts = (0..19).map(|_| replace(1_000)).chain((0..1_002).map(|_| took()));
    let acts = acts.chain([settings(3), replace(1)]);
    let copy = read_copy(&lines_of(acts).join("\n"), &Journal::default()).unwrap();
    assert_eq!((copy.fresh.len(), copy.left_out()), (19 + 1_000 + 1, 3));
    let left_out: Vec<usize> = copy.damaged.iter().map(|(line, _)| *line).collect();
    assert_eq!(left_out, [1_020, 1_021, 1_023]);
    let Damage::Unknown { reason } = &copy.damaged[0].1 else { panic!("{:?}", copy.damaged) };
    assert!(reason.contains("too often"), "{reason}");
    // Devices that are kept and entries that are lacking are looked for like those that were here.
    let two = |n: u64| {
        let kept = (0..n).map(upto).collect();
        let without = (0..n).map(|n| Id(format!("x{n}"))).collect();
        Act::Replace(Box::new(Replace { had: vec![upto(1)], kept, without, made: None }))
    };
    let copy = read_copy(&lines_of((0..11).map(|_| two(999))).join("\n"), &Journal::default()).unwrap();
    assert_eq!((copy.fresh.len(), copy.left_out()), (10, 1));
}

/// A kind that is not known may have a name as long as a line.
#[test]
fn what_is_told_of_a_line_is_short() {
    let body = format!(
        "{{\"v\":2,\"id\":\"a\",\"clock\":1,\"at\":1,\"device\":\"d\",\"act\":{{\"{}\":1}}",
        "Q".repeat(900_000)
    );
    let line = format!("{body},\"sum\":\"{:08x}\"}}", potside::book::crc32c(body.as_bytes()));
    let copy = read_copy(&[book("tablet", 1).1.concat(), line].join("\n"), &Journal::default()).unwrap();
    let Damage::Unknown { reason } = &copy.damaged[0].1 else { panic!("{:?}", copy.damaged) };
    assert!(reason.contains(&"Q".repeat(60)) && reason.len() < 200, "{reason}");
}
