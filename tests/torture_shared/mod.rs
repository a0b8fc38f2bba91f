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

use std::any::Any;
use std::panic::{AssertUnwindSafe, catch_unwind};
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
        match catch_unwind(AssertUnwindSafe(case)) {
            Ok(Ok(())) => {}
            Ok(Err(why)) => self.note(format!("{}: {why}", name())),
            Err(panic) => self.note(format!("{}: panicked: {}", name(), words(&panic))),
        }
    }

    pub(crate) fn good(&self) {
        assert!(self.wrong == 0, "{} of {} were wrong: {:#?}", self.wrong, self.cases, self.told);
    }
}

fn words(panic: &Box<dyn Any + Send>) -> String {
    let said = panic.downcast_ref::<String>().cloned();
    said.or_else(|| panic.downcast_ref::<&str>().map(|s| (*s).to_owned())).unwrap_or_default()
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
        (0..self.cases).take_while(move |_| self.end.is_none_or(|end| Instant::now() < end))
    }
}

/// A number from the environment.
pub(crate) fn number(name: &str) -> Option<u64> {
    std::env::var(name).ok()?.parse().ok()
}

/// The difference of two texts that should be the same, in few words.
pub(crate) fn same<T: PartialEq>(what: &str, a: &T, b: &T) -> Result<(), String> {
    if a == b { Ok(()) } else { Err(format!("{what} differ")) }
}
