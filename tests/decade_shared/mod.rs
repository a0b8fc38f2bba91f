//! A workshop of many years, made up: the demo's and more formulas, each changed year by year, poured into several vessels
//! in several numbers; lots as they would be bought; candles burned on trial.
#![allow(dead_code, reason = "each test file uses its own part of this")]
#![allow(clippy::unwrap_used, clippy::panic, reason = "test code outside a #[test]")]
#![allow(clippy::indexing_slicing, reason = "test code outside a #[test]")]

mod pours;
mod sales;
mod trials;

use potside::book::{Act, Ending, Entry, Id, Journal, demo};
use potside::day::{Day, Zone};
use potside::pot::Event;
use potside::quantity::{Exact, Mass, Quantity};
use pours::Pours;
use sales::Sales;
use std::collections::HashMap;

/// 1 January 2016, milliseconds since 1970.
pub(crate) const BEGAN: u64 = 1_451_606_400_000;
pub(crate) const DAY: u64 = 24 * 60 * 60_000;
pub(crate) const MINUTE: u64 = 60_000;
const YEARS: u64 = 10;

/// How much of each there is.
#[derive(Clone, Copy)]
pub(crate) struct Size {
    pub(crate) batches: u64,
    pub(crate) lots: u64,
    pub(crate) trials: u64,
}

/// Ten years of two people: some 200 000 entries.
pub(crate) const TEN_YEARS: Size = Size { batches: 20_000, lots: 5_000, trials: 2_000 };

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

/// The lines of a book, one after another.
pub(crate) struct Lines {
    lines: Vec<String>,
    clock: u64,
}

impl Lines {
    pub(crate) fn put(&mut self, at: u64, act: Act) -> Entry {
        self.clock += 1;
        let clock = self.clock;
        let id = Id(format!("tablet-{clock:x}-{:x}", clock % 97));
        let entry = Entry { id, clock, at, device: "tablet".into(), act };
        self.lines.push(entry.to_line());
        entry
    }
}

/// Every entry as a stored line, in order. Of a pour only the first steps were done, but for those of the demo.
pub(crate) fn lines(size: Size) -> Vec<String> {
    written(size, None)
}

/// The same where every pour was filled to the last vessel, and its candles were sold: some three times as many entries.
pub(crate) fn lines_sold(size: Size) -> Vec<String> {
    written(size, Some(Sales::default()))
}

fn written(size: Size, mut sales: Option<Sales>) -> Vec<String> {
    let mut count = 0;
    let first = demo("tablet", BEGAN, Zone::GREENWICH, || {
        count += 1;
        count
    });
    let first = Journal::open(first.into_iter().map(|(_, line)| line).collect(), "tablet");
    let lines = first.entries().iter().map(Entry::to_line).collect();
    let mut lines = Lines { lines, clock: first.last_clock() };
    let bought: Vec<_> = first.state().lots.values().filter_map(|k| k.body()).cloned().collect();
    let every = |some: u64| (size.batches / some.max(1)).max(1);
    let mut pours = Pours::new(first);
    let (mut got, mut last) = (0, HashMap::new());
    for n in 0..size.batches {
        let at = BEGAN + n * YEARS * 365 * DAY / size.batches;
        if n % every(size.lots) == 0 && got < size.lots {
            let mut body = bought[got as usize % bought.len()].clone();
            body.number = format!("{}-{n}", body.number);
            body.price.0 += (n % 700) as i64;
            let id = Id(format!("lot-{n}"));
            last.insert(body.ingredient.clone(), id.clone());
            got += 1;
            lines.put(at, Act::Lot { id, over: None, body });
        }
        if n % every(size.trials) == 0 && n / every(size.trials) < size.trials {
            trials::put(&mut lines, n / every(size.trials), at);
        }
        let year = n * YEARS / size.batches;
        pour(&mut lines, &mut pours, &last, &mut sales, (n, at, year));
    }
    lines.lines
}

/// A pour: begun, taken from the lots that came last, the first steps of it, ended; where its candles are sold, all steps.
fn pour(
    lines: &mut Lines,
    pours: &mut Pours,
    last: &HashMap<String, Id>,
    sales: &mut Option<Sales>,
    (n, at, year): (u64, u64, u64),
) {
    let of = pours.of(lines, n, at, year);
    let batch = Id(format!("tablet-b{n:x}"));
    let plan = std::rc::Rc::new(of.plan.clone());
    let (formula, version, vessel) = (of.formula.clone(), of.version.clone(), of.vessel.clone());
    lines
        .put(at, Act::Began { batch: batch.clone(), formula, version, vessel, day: Some(Day::of(at)), plan });
    let steps = if sales.is_some() { usize::MAX } else { 5 + usize::from(n.is_multiple_of(3)) };
    let mut sources = of.sources.clone();
    for source in &mut sources {
        source.lots.extend(last.get(&source.part).cloned());
    }
    sources.retain(|source| !source.lots.is_empty());
    lines.put(at, Act::TakenFrom { batch: batch.clone(), sources });
    for (minute, event) in (1..).zip(of.events.iter().take(steps)) {
        let mut event = event.clone();
        if let Event::Did { weighed, at: done, .. } = &mut event {
            *done = at + minute * MINUTE + n % 50 * 1_000;
            // What is weighed is never quite what was asked for.
            let off = Exact::ratio(i128::from(995 + n * 7 % 11), 1_000);
            *weighed = weighed.map(|mass| Mass::from_base(mass.in_base() * off));
        }
        lines.put(at + minute * MINUTE + n % 50 * 1_000, Act::At { batch: batch.clone(), event });
    }
    let word = |n: u64| WORDS[n as usize % WORDS.len()];
    let note = [word(n), " ", word(n / 12), " ", word(n / 144)].concat();
    let end = at + (steps.min(of.events.len()) as u64 + 10) * MINUTE;
    let end = if sales.is_some() { end } else { at + 10 * MINUTE };
    lines.put(end, Act::Ended { batch: batch.clone(), how: Ending::Poured, note });
    if let Some(sales) = sales {
        sales.of(lines, &batch, (&of.formula, &of.vessel, &of.plan.wick), of.plan.vessels, n, at);
    }
}
