//! The day of a pour is that of the workshop, kept with it: the number of a batch is the same wherever it is read, and what
//! was printed before days were kept stays as it is.

use super::merge::merged;
use super::sample::{began_on, does, ended, id, said, undo};
use super::zones::{AUCKLAND, LOS_ANGELES};
use potside::book::bundle::{Tying, read};
use potside::book::{Act, Batch, Entry, Journal, backup, read_copy};
use potside::day::{Day, Zone};
use potside::shelf::{batch_number, is_batch_number};
use proptest::prelude::*;

/// What was written down at these times:
/// an evening in Los Angeles, 24 November 2026, 18:30, which is the 25th at Greenwich; the same moment before days were kept;
/// and a morning in Auckland, 25 November, 8:30, which is the 24th there. It is not made anew when a test fails.
const LINES: &str = include_str!("../fixtures/day.journal");
const EVENING: u64 = 1_795_573_800_000;
const MORNING: u64 = 1_795_548_600_000;

const NUMBERS: [(&str, &str); 3] =
    [("before", "261125-KFZQ-L"), ("evening", "261124-Q3HX-6"), ("morning", "261125-AVPM-V")];
/// Of the books that were frozen before days were kept.
const OLD_NUMBERS: [&str; 2] = ["251117-FNS8-L", "251124-MW6S-W"];
const FIRST_NUMBERS: [&str; 1] = ["251123-KWX8-Q"];

fn open(lines: &str) -> Journal {
    let journal = Journal::open(lines.lines().map(str::to_owned).collect(), "tablet");
    assert_eq!(journal.damaged(), []);
    journal
}

fn numbers(journal: &Journal) -> Vec<(String, String)> {
    journal.state().batches.values().map(|b| (b.id.0.clone(), batch_number(b))).collect()
}

#[track_caller]
fn batch<'a>(journal: &'a Journal, name: &str) -> &'a Batch {
    journal.state().batches.get(&id(name)).unwrap()
}

/// The signs after the day were worked out apart from the app: CRC-32C and ISO 7064 MOD 37,36 in Python.
#[test]
fn numbers_that_were_printed_stay() {
    let journal = open(LINES);
    let found = numbers(&journal);
    let known = NUMBERS.map(|(batch, number)| (batch.to_owned(), number.to_owned()));
    assert_eq!(found, known);
    for line in LINES.lines() {
        assert_eq!(Entry::from_line(line).unwrap().to_line(), line, "it is written as it was read");
    }
    let old = open(include_str!("../fixtures/v2.journal"));
    let found: Vec<String> = old.state().batches.values().map(batch_number).collect();
    assert_eq!(found, OLD_NUMBERS);
    let first = open(include_str!("../fixtures/v1.journal"));
    let found: Vec<String> = first.state().batches.values().map(batch_number).collect();
    assert_eq!(found, FIRST_NUMBERS);
}

/// A batch whose day is known began on it for every reader; another on the day that the reader's calendar says.
#[test]
fn the_day_it_began_is_told_as_the_number_says() {
    let journal = open(LINES);
    let on = |name: &str, zone: Zone| batch(&journal, name).begun_on(zone).to_string();
    for zone in [Zone::GREENWICH, LOS_ANGELES, AUCKLAND] {
        assert_eq!(
            (on("evening", zone).as_str(), on("morning", zone).as_str()),
            ("2026-11-24", "2026-11-25")
        );
    }
    assert_eq!(
        (on("before", LOS_ANGELES).as_str(), on("before", AUCKLAND).as_str()),
        ("2026-11-24", "2026-11-25")
    );
    assert_eq!(
        (LOS_ANGELES.day(EVENING).to_string().as_str(), LOS_ANGELES.clock(EVENING).as_str()),
        ("2026-11-24", "18:30")
    );
    assert_eq!(
        (AUCKLAND.day(MORNING).to_string().as_str(), AUCKLAND.clock(MORNING).as_str()),
        ("2026-11-25", "08:30")
    );
}

/// `261124` of 24 November 2026.
fn prefix(day: Day) -> String {
    let (year, month, day) = day.date();
    format!("{:02}{month:02}{day:02}-", year % 100)
}

/// A pour at a time, with or without its day, in a book of its own.
fn poured(device: &str, name: &str, (at, day): (u64, Option<u32>)) -> Journal {
    let mut journal = Journal::open(Vec::new(), device);
    let entry = journal.entry(began_on(name, 2, day.map(Day)), at, 7);
    journal.take(entry);
    does(&mut journal, said(name, "smooth"));
    journal
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, ..ProptestConfig::default() })]

    /// Merged either way, from what is stored, undone and done again, put back out of a copy, out of a bundle: the number stays.
    #[test]
    fn a_number_stays_whatever_becomes_of_the_book(
        one in (0..4_000_000_000_000_u64, prop::option::of(0..100_000_u32)),
        two in (0..4_000_000_000_000_u64, prop::option::of(0..100_000_u32)),
    ) {
        let (a, b) = (poured("tablet", "a", one), poured("phone", "b", two));
        let wanted = [("a", one), ("b", two)].map(|(name, (at, day))| (name, prefix(day.map_or(Day::of(at), Day))));
        let good = |journal: &Journal| {
            let found = numbers(journal);
            found.len() == 2
                && found.iter().zip(&wanted).all(|((batch, number), (name, prefix))| {
                    batch == name && number.starts_with(prefix) && is_batch_number(number)
                })
        };
        let mut both = merged(&a, &b);
        prop_assert!(good(&both), "{:?} {wanted:?}", numbers(&both));
        prop_assert_eq!(numbers(&both), numbers(&merged(&b, &a)));
        let printed = numbers(&both);
        let lines = |journal: &Journal| journal.entries().iter().map(Entry::to_line).collect::<Vec<_>>();
        prop_assert_eq!(numbers(&Journal::open(lines(&both), "desk")), printed.clone());

        let copy = backup(&lines(&both), "tablet", 1);
        let began = both.entries().iter().find(|e| matches!(e.act, Act::Began { .. })).unwrap().id.clone();
        let undone = does(&mut both, undo(&began));
        prop_assert_eq!(numbers(&both).len(), 1);
        let read_in = read_copy(&copy, &both).unwrap();
        let mut back = both.clone();
        does(&mut back, read_in.replace.unwrap());
        prop_assert_eq!(numbers(&back), printed.clone());
        does(&mut both, undo(&undone.id));
        prop_assert_eq!(numbers(&both), printed.clone());

        does(&mut both, ended("a", "well"));
        does(&mut both, ended("b", "well"));
        let mut tying = Tying::begin(&both).unwrap();
        while tying.go_on(&both) {}
        let bundle = read(tying.finish(&both, "this build", both.len()).unwrap(), "this build").unwrap();
        let tied = Journal::open_tied(bundle.bundle, bundle.entries, "desk");
        prop_assert_eq!(numbers(&tied), printed);
    }
}
