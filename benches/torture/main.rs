//! The long run of `tools/torture`: one JSON line a figure, as `tools/measure` prints them. A figure over its budget ends the
//! run with an error: none of these depends on the machine.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

#[cfg(feature = "browser")]
#[allow(dead_code, reason = "shared with the browser tests")]
#[path = "../../tests/browser/browser.rs"]
mod browser;
#[path = "../../tests/decade_shared/mod.rs"]
mod decade_shared;
#[cfg(feature = "browser")]
#[allow(dead_code, reason = "shared with the browser tests")]
#[path = "../../tests/browser/flow.rs"]
mod flow;
#[cfg(feature = "browser")]
#[path = "../../tools/host.rs"]
mod host;
#[cfg(feature = "browser")]
#[path = "../../tests/browser/kill.rs"]
mod kill;
#[cfg(feature = "browser")]
#[allow(dead_code, reason = "shared with the browser tests")]
#[path = "../../tests/browser/page.rs"]
mod page;
#[cfg(feature = "browser")]
#[path = "../../tests/browser/tear.rs"]
mod tear;
#[path = "../../tests/torture_shared/mod.rs"]
mod torture_shared;
#[cfg(feature = "browser")]
#[allow(dead_code, reason = "shared with the browser tests")]
#[path = "../../tests/browser/years.rs"]
mod years;

use serde_json::json;
use std::process::ExitCode;
use std::time::Instant;
use torture_shared::{Length, Tally, cut_off, damage, faults, laws, number, parsers, quietly, three, watch};

/// The count of a group: its own variable, or as many as the long run has.
fn long(name: &str, usual: u64) -> Length {
    let seconds = number("POTSIDE_TORTURE_SECONDS").unwrap_or(1_800);
    Length::of(number(&format!("POTSIDE_TORTURE_{name}")).unwrap_or(usual)).within(seconds)
}

/// Prints a figure. A budget is the most it may be.
fn line(name: &str, value: u64, unit: &str, budget: Option<u64>) -> bool {
    let ok = budget.is_none_or(|budget| value <= budget);
    println!("{}", json!({ "name": name, "value": value, "unit": unit, "budget": budget, "ok": ok }));
    ok
}

/// Prints how many there were. A run that was cut off before its end has not shown what it was to show.
fn count(name: &str, value: u64, whole: bool) -> bool {
    println!("{}", json!({ "name": name, "value": value, "unit": "", "budget": null, "ok": whole }));
    whole
}

/// How many cases there were, how many of them were wrong.
fn said(cases: &str, wrong: &str, run: impl FnOnce() -> Tally) -> bool {
    let start = Instant::now();
    let tally = run();
    eprintln!("{wrong}: {} s", start.elapsed().as_secs());
    count(cases, tally.cases, !cut_off()) & line(wrong, tally.wrong, "", Some(0))
}

/// The built app at an address, for something that takes so many seconds at most.
#[cfg(feature = "browser")]
fn served<T>(run: impl AsyncFnOnce(&str, u64) -> T) -> T {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("dist");
    let host = host::Host::start(&folder, 0, "/").expect("tools/build makes dist/");
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
    runtime.block_on(run(&host.address(), number("POTSIDE_TORTURE_SECONDS").unwrap_or(7_200)))
}

/// Chromium killed again and again while the bundle of a large book is written.
#[cfg(feature = "browser")]
fn tears() -> bool {
    let kills = number("POTSIDE_TORTURE_TEARS").unwrap_or(100) as u32;
    let outcome = served(async |address, seconds| tear::outcome(address, "tears", kills, seconds).await);
    line("tears_whole", outcome.whole.into(), "", None);
    count("tears", outcome.kills.into(), outcome.kills == kills)
        & line("tears_wrong", outcome.wrong.into(), "", Some(0))
}

/// Chromium killed again and again while entries are written by taps.
#[cfg(feature = "browser")]
fn kills() -> bool {
    let kills = number("POTSIDE_TORTURE_KILLS").unwrap_or(1_000) as u32;
    let outcome = served(async |address, seconds| kill::outcome(address, "torture", kills, seconds).await);
    line("kills_entries", outcome.entries as u64, "", None);
    count("kills", outcome.kills.into(), outcome.kills == kills)
        & line("kills_lost", outcome.lost as u64, "", Some(0))
        & line("kills_unreadable", outcome.unreadable.into(), "", Some(0))
        & line("kills_said_early", outcome.early, "", Some(0))
}

fn main() -> ExitCode {
    let named: Vec<String> = std::env::args().skip(1).filter(|a| !a.starts_with('-')).collect();
    let wanted = |group: &str| named.is_empty() || named.iter().any(|n| n == group);
    quietly();
    watch();
    let mut good = true;
    if wanted("faults") {
        good &= said("fault_schedules", "fault_schedules_lost", || faults::lost(long("FAULTS", 10_000)));
    }
    if wanted("damage") {
        good &=
            said("damaged_journals", "damaged_journals_wrong", || damage::wrong(1, long("DAMAGE", 20_000)));
    }
    if wanted("merge") {
        good &= said("merges", "merge_law_failures", || laws::broken(long("MERGE", 100_000)));
    }
    if wanted("three") {
        good &= said("three_devices", "three_devices_apart", || three::apart(long("THREE", 10_000)));
    }
    if wanted("parsers") {
        good &= said("parser_cases", "parser_panics", || parsers::panics(long("PARSERS", 10_000_000)));
    }
    #[cfg(feature = "browser")]
    if wanted("kills") {
        good &= kills();
    }
    #[cfg(feature = "browser")]
    if wanted("tears") {
        good &= tears();
    }
    if good { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}
