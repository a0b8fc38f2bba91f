//! A bundle is few bytes: what many entries have alike is in it once.

use super::sample::{began, does, ended, id};
use potside::book::bundle::Tying;
use potside::book::{Act, Journal};
use potside::pot::Event;

/// How many bytes the bundle of so many batches has, each with notes of its own, and poured into so many vessels.
fn bytes(batches: u32, vessels: fn(u32) -> u32) -> usize {
    let mut journal = Journal::open(Vec::new(), "tablet");
    for n in 0..batches {
        let own: String =
            [n / 10, n % 10].into_iter().filter_map(|d| "abcdefghij".chars().nth(d as usize)).collect();
        let batch = ["b", &own].concat();
        does(&mut journal, began(&batch, vessels(n)));
        let event = Event::Said { text: format!("the \"{own}\" one"), at: 1_764_000_000_000 + u64::from(n) };
        does(&mut journal, Act::At { batch: id(&batch), event });
        does(&mut journal, ended(&batch, &["all ", &own].concat()));
    }
    bundle(&journal)
}

/// How many bytes the bundle of a book has.
fn bundle(journal: &Journal) -> usize {
    let mut tying = Tying::begin(journal).unwrap();
    while tying.go_on(journal) {}
    tying.finish(journal, "this build", journal.len()).unwrap().len()
}

/// It was seen to be 207 bytes, and 498 where nearly every amount of the plan is another: with one text, number or id kept
/// another way it is 30 more.
#[test]
fn a_batch_like_others_takes_few_bytes() {
    let each = |vessels| (bytes(40, vessels) - bytes(20, vessels)) / 20;
    let (alike, other) = (each(|_| 2), each(|n| 2 + 41 * n));
    assert!(alike < 220 && other < 515, "{alike} bytes a batch, {other} one of another size");
}

/// A batch that took no time beside one that took five minutes: a zero is kept as any number.
#[test]
fn a_zero_takes_no_more_bytes_than_another_number() {
    let bytes = |minutes: [u32; 2]| {
        let mut journal = Journal::open(Vec::new(), "tablet");
        for (batch, minutes) in ["one", "two"].into_iter().zip(minutes) {
            does(&mut journal, began(batch, 2));
            does(&mut journal, ended(batch, "smooth"));
            does(&mut journal, Act::Worked { batch: id(batch), minutes });
        }
        bundle(&journal)
    };
    let all = [[5, 7], [5, 0], [0, 5], [0, 0]].map(bytes);
    assert!(all.iter().all(|one| one.abs_diff(all[0]) < 8), "{all:?}");
}
