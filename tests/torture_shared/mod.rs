//! The book under faults: what `tests/torture.rs` does a little of and `tools/torture` much.
//!
//! Each check counts what went wrong, prints the seed and number of every such case, and ends in a [`Tally`].
#![allow(dead_code, reason = "the tests and the long run each use their own part of this")]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, reason = "test code outside a #[test]")]
#![allow(clippy::indexing_slicing)]

pub(crate) mod damage;
pub(crate) mod deal;
pub(crate) mod dice;
pub(crate) mod faults;
pub(crate) mod laws;
pub(crate) mod mutate;
pub(crate) mod parsed;
pub(crate) mod parsers;
pub(crate) mod three;
pub(crate) mod work;

use std::any::Any;
use std::cell::RefCell;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::time::{Duration, Instant};

/// How many cases were tried, and what was wrong in some.
#[derive(Default)]
pub(crate) struct Tally {
    pub(crate) cases: u64,
    pub(crate) wrong: u64,
    /// The first few, each with how to have it again.
    pub(crate) told: Vec<String>,
}

impl Tally {
    pub(crate) fn note(&mut self, what: String) {
        self.wrong += 1;
        if self.told.len() < 5 {
            eprintln!("{what}");
            self.told.push(what);
        }
    }

    /// One case: that it panics is wrong, and so is what it says.
    pub(crate) fn case(&mut self, name: impl Fn() -> String, case: impl FnOnce() -> Result<(), String>) {
        self.cases += 1;
        NOW.store(self.cases, Ordering::Relaxed);
        let outcome = catch_unwind(AssertUnwindSafe(case));
        NOW.store(0, Ordering::Relaxed);
        match outcome {
            Ok(Ok(())) => {}
            Ok(Err(why)) => self.note(format!("{}: {why}", name())),
            Err(panic) => self.note(format!("{}: panicked: {}", name(), words(&panic))),
        }
    }

    pub(crate) fn good(&self) {
        assert!(self.wrong == 0, "{} of {} were wrong: {:#?}", self.wrong, self.cases, self.told);
    }
}

/// The number of the case that runs now; zero where none does.
static NOW: AtomicU64 = AtomicU64::new(0);

/// Ends the run where one case takes more than a minute, or more memory than any tablet has, and names it.
pub(crate) fn watch() {
    std::thread::spawn(|| {
        let (mut before, mut since) = (0, Instant::now());
        loop {
            std::thread::sleep(Duration::from_millis(20));
            let now = NOW.load(Ordering::Relaxed);
            if now != before {
                (before, since) = (now, Instant::now());
            }
            let pages = std::fs::read_to_string("/proc/self/statm").unwrap_or_default();
            let pages = pages.split(' ').nth(1).and_then(|n| n.parse::<u64>().ok()).unwrap_or_default();
            let long = now > 0 && since.elapsed() > Duration::from_secs(60);
            if long || pages * 4096 > 1_500_000_000 {
                eprintln!("case {now} takes too long, or too much memory: {} MB", pages * 4096 / 1_000_000);
                std::process::exit(1);
            }
        }
    });
}

thread_local! {
    static WHERE: RefCell<String> = const { RefCell::new(String::new()) };
}

/// From now on what panics is told in one line, with its place, and nothing else is printed.
pub(crate) fn quietly() {
    std::panic::set_hook(Box::new(|info| {
        WHERE.set(info.location().map(|at| format!(" at {at}")).unwrap_or_default());
    }));
}

fn words(panic: &Box<dyn Any + Send>) -> String {
    let said = panic.downcast_ref::<String>().cloned();
    let said = said.or_else(|| panic.downcast_ref::<&str>().map(|s| (*s).to_owned()));
    [said.unwrap_or_default(), WHERE.take()].concat()
}

/// How long a run is: so many cases, and no more than so much time.
#[derive(Clone, Copy)]
pub(crate) struct Length {
    pub(crate) cases: u64,
    pub(crate) seed: u64,
    pub(crate) end: Option<Instant>,
}

impl Length {
    pub(crate) fn of(cases: u64) -> Self {
        Self { cases, seed: number("POTSIDE_TORTURE_SEED").unwrap_or(7), end: None }
    }

    pub(crate) fn within(self, seconds: u64) -> Self {
        Self { end: Some(Instant::now() + Duration::from_secs(seconds)), ..self }
    }

    /// The numbers of its cases, until the time is over.
    pub(crate) fn each(self) -> impl Iterator<Item = u64> {
        let one = number("POTSIDE_TORTURE_CASE");
        one.map_or(0..self.cases, |case| case..case + 1).take_while(move |_| {
            let over = self.end.is_some_and(|end| Instant::now() >= end);
            CUT_OFF.fetch_or(over, Ordering::Relaxed);
            !over
        })
    }
}

/// Set once a run is over its time before all of its cases were had.
static CUT_OFF: AtomicBool = AtomicBool::new(false);

/// Whether one was, since this was last asked.
pub(crate) fn cut_off() -> bool {
    CUT_OFF.swap(false, Ordering::Relaxed)
}

/// A number from the environment.
pub(crate) fn number(name: &str) -> Option<u64> {
    std::env::var(name).ok()?.parse().ok()
}

/// The difference of two texts that should be the same, in few words.
pub(crate) fn same<T: PartialEq>(what: &str, a: &T, b: &T) -> Result<(), String> {
    if a == b { Ok(()) } else { Err(format!("{what} differ")) }
}
