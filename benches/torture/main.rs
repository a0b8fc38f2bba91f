//! The long run of `tools/torture`: one JSON line a figure, as `tools/measure` prints them. A figure over its budget ends the
//! run with an error: none of these depends on the machine.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

#[cfg(feature = "browser")]
#[allow(dead_code, reason = "shared with the browser tests")]
#[path = "../../tests/browser/browser.rs"]
mod browser;
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
#[path = "../../tests/torture_shared/mod.rs"]
mod torture_shared;

use serde_json::json;
use std::process::ExitCode;
use std::time::Instant;
use torture_shared::{Length, Tally, damage, faults, laws, number, parsers, quietly, watch};

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

/// How many cases there were, how many of them were wrong.
fn said(cases: &str, wrong: &str, run: impl FnOnce() -> Tally) -> bool {
    let start = Instant::now();
    let tally = run();
    eprintln!("{wrong}: {} s", start.elapsed().as_secs());
    line(cases, tally.cases, "", None) & line(wrong, tally.wrong, "", Some(0))
}

/// Chromium with the built app, killed again and again while entries are written by taps.
#[cfg(feature = "browser")]
fn kills() -> bool {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("dist");
    let host = host::Host::start(&folder, 0, "/").expect("tools/build makes dist/");
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
    let kills = number("POTSIDE_TORTURE_KILLS").unwrap_or(1_000) as u32;
    let seconds = number("POTSIDE_TORTURE_SECONDS").unwrap_or(7_200);
    let outcome = runtime.block_on(kill::outcome(&host.address(), "torture", kills, seconds));
    line("kills", outcome.kills.into(), "", None);
    line("kills_entries", outcome.entries as u64, "", None);
    line("kills_lost", outcome.lost as u64, "", Some(0))
        & line("kills_unreadable", outcome.unreadable.into(), "", Some(0))
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
    if wanted("parsers") {
        good &= said("parser_cases", "parser_panics", || parsers::panics(long("PARSERS", 10_000_000)));
    }
    #[cfg(feature = "browser")]
    if wanted("kills") {
        good &= kills();
    }
    if good { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}
