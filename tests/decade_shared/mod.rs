//! A workshop of many years, made up: the demo's formulas, its two pours again and again, lots as they would be bought.
#![allow(dead_code, reason = "each test file uses its own part of this")]
#![allow(clippy::unwrap_used, clippy::panic, reason = "test code outside a #[test]")]

use potside::book::{Act, Ending, Entry, Id, Journal, demo};

/// 1 January 2016, milliseconds since 1970.
pub(crate) const BEGAN: u64 = 1_451_606_400_000;
const DAY: u64 = 24 * 60 * 60_000;
const MINUTE: u64 = 60_000;

/// How much of each there is.
#[derive(Clone, Copy)]
pub(crate) struct Size {
    pub(crate) batches: u64,
    pub(crate) lots: u64,
}

/// Ten years of two people: 200 000 entries of pours, and lots.
pub(crate) const TEN_YEARS: Size = Size { batches: 20_000, lots: 5_000 };

/// Words, so that each batch can be found by some.
const WORDS: [&str; 12] = [
    "smooth",
    "frosted",
    "late",
    "windy",
    "second",
    "market",
    "holiday",
    "replacement",
    "sample",
    "rushed",
    "perfect",
    "dull",
];

/// Every entry as a stored line, in order.
pub(crate) fn lines(size: Size) -> Vec<String> {
    let mut count = 0;
    let first = demo("tablet", BEGAN, || {
        count += 1;
        count
    });
    let first = Journal::open(first.into_iter().map(|(_, line)| line).collect(), "tablet");
    let mut lines: Vec<String> = first.entries().iter().map(Entry::to_line).collect();
    let mut clock = first.entries().last().unwrap().clock;
    let mut put = |at: u64, act: Act| {
        clock += 1;
        let entry = Entry {
            id: Id(format!("tablet-{clock:x}-{:x}", clock % 97)),
            clock,
            at,
            device: "tablet".into(),
            act,
        };
        lines.push(entry.to_line());
    };
    let templates: Vec<_> = first.state().batches.values().collect();
    let bought: Vec<_> = first.state().lots.values().filter_map(|k| k.body()).collect();
    let lot_every = (size.batches / size.lots.max(1)).max(1);
    for n in 0..size.batches {
        let at = BEGAN + n * 3650 * DAY / size.batches;
        if n % lot_every == 0 {
            let mut body = bought[(n / lot_every) as usize % bought.len()].clone();
            body.number = format!("{}-{n}", body.number);
            put(at, Act::Lot { id: Id(format!("lot-{n}")), over: None, body });
        }
        let of = templates[n as usize % templates.len()];
        let batch = Id(format!("tablet-b{n:x}"));
        let plan = Box::new(of.run.plan.clone());
        put(
            at,
            Act::Began {
                batch: batch.clone(),
                formula: of.formula.clone(),
                version: of.version.clone(),
                vessel: of.vessel.clone(),
                plan,
            },
        );
        for (minute, event) in (1..).zip(of.run.events().iter().take(8)) {
            put(at + minute * MINUTE, Act::At { batch: batch.clone(), event: event.clone() });
        }
        let note =
            [WORDS[n as usize % 12], " ", WORDS[(n / 12) as usize % 12], " ", WORDS[(n / 144) as usize % 12]]
                .concat();
        put(at + 10 * MINUTE, Act::Ended { batch, how: Ending::Poured, note });
    }
    lines
}
