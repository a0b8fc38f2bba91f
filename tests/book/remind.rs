//! When a copy of the book is asked for.

use super::demo::workshop;
use potside::book::{Journal, Reminder};

const DAY: u64 = 24 * 60 * 60 * 1000;

#[track_caller]
fn said(reminder: Reminder, copied: Option<u64>, journal: &Journal, now: u64, sentence: Option<&str>) {
    assert_eq!(reminder.said(copied, journal, now).as_deref(), sentence);
}

#[test]
fn after_days_or_pours_and_not_before() {
    let journal = workshop();
    let last = journal.entries().iter().map(|e| e.at).max().unwrap();
    let first = journal.entries().iter().map(|e| e.at).min().unwrap();
    let usual = Reminder::default();
    let never =
        Some("There is no copy of your book yet. 2 pours are in it. Keep one where this device is not.");
    said(usual, None, &journal, first + 14 * DAY, never);
    said(usual, None, &journal, first + 14 * DAY - 1, None);
    // Nothing is new since the copy.
    said(usual, Some(last), &journal, last + 100 * DAY, None);
    // Only what was poured by then.
    let old = "The last copy of your book is 15 days old. Keep one where this device is not.";
    said(usual, Some(first), &journal, first + 15 * DAY, Some(old));
    let pours = Reminder { days: 0, pours: 2 };
    let old = format!(
        "The last copy of your book is {} days old. 2 pours are in it since. Keep one where this device is not.",
        (last - first) / DAY
    );
    said(usual, Some(first), &journal, last, Some(&old));
    said(pours, Some(first), &journal, last, Some(&old));
    said(Reminder { days: 0, pours: 3 }, Some(first), &journal, first + 900 * DAY, None);
    said(Reminder { days: 0, pours: 0 }, None, &journal, first + 900 * DAY, None);
    // Only what was poured since the copy counts: the tins were before it, the jars after; and not what ended with it.
    let ends: Vec<u64> = {
        let mut all: Vec<u64> =
            journal.state().batches.values().map(|b| b.ended.as_ref().unwrap().1).collect();
        all.sort_unstable();
        all
    };
    let one = Reminder { days: 0, pours: 1 };
    let since =
        "The last copy of your book is of today. 1 pour is in it since. Keep one where this device is not.";
    let days = (ends[1] - ends[0]) / DAY;
    let later = since.replace("of today", &format!("{days} days old"));
    said(one, Some(ends[0]), &journal, ends[0] + DAY - 1, None);
    said(one, Some(ends[0]), &journal, ends[1], Some(&later));
    said(one, Some(ends[1] - 1), &journal, ends[1], Some(since));
    said(one, Some(ends[1]), &journal, ends[1], None);
    // A clock that was ten years ahead when the copy was made does not keep it from being asked for.
    let ahead = "By its date the last copy of your book is of a day to come: the clock was wrong then, or it is now. Keep one where this device is not.";
    said(usual, Some(last + 3_650 * DAY), &journal, last, Some(ahead));
    said(pours, Some(last + DAY + 1), &journal, last, Some(ahead));
    said(Reminder { days: 14, pours: 0 }, Some(last + DAY + 1), &journal, last, Some(ahead));
    said(usual, Some(last + DAY), &journal, last, None);
    said(Reminder { days: 0, pours: 0 }, Some(last + 2 * DAY), &journal, last, None);
    said(usual, None, &Journal::default(), DAY * 20_000, None);
}

/// What was given up is no pour.
#[test]
fn what_was_given_up_is_not_counted() {
    use super::sample::{began, does, id};
    use potside::book::{Act, Ending};
    let mut journal = Journal::default();
    does(&mut journal, began("b", 4));
    let at = does(&mut journal, Act::Ended { batch: id("b"), how: Ending::GivenUp, note: String::new() }).at;
    let asked = Reminder { days: 1, pours: 1 };
    said(asked, Some(at - 1), &journal, at, None);
    let old = "The last copy of your book is a day old. Keep one where this device is not.";
    said(asked, Some(at - 1), &journal, at + DAY, Some(old));
}

/// A phone whose clock is ten years ahead: what was poured by it is not asked for again and again.
#[test]
fn pours_of_a_day_to_come_are_not_new_after_every_copy() {
    use super::sample::{began, ended};
    let mut journal = Journal::default();
    let (now, ahead) = (DAY * 20_000, DAY * 23_650);
    for (number, at) in [ahead, ahead, now - 1].into_iter().enumerate() {
        let batch = format!("b{number}");
        for act in [began(&batch, 2), ended(&batch, "")] {
            let entry = journal.entry(act, at, number as u32);
            journal.take(entry);
        }
    }
    let two = Reminder { days: 0, pours: 2 };
    said(two, Some(now - 2), &journal, now, None);
    said(two, Some(now), &journal, now + DAY, None);
    said(Reminder { days: 0, pours: 1 }, Some(now), &journal, now, None);
    let all = "There is no copy of your book yet. 3 pours are in it. Keep one where this device is not.";
    said(two, None, &journal, now, Some(all));
}
