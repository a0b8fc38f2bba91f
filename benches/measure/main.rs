//! The figures of `tools/measure`, one JSON line each. Benchmarks, not tests: a figure over its budget says so and fails
//! nothing, since what it is depends on the machine.
#![cfg(not(target_arch = "wasm32"))]
#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic, clippy::indexing_slicing)]

#[allow(dead_code, reason = "shared with the browser tests")]
#[path = "../../tests/browser/browser.rs"]
mod browser;
mod decade;
#[path = "../../tests/decade_shared/mod.rs"]
mod decade_shared;
#[allow(dead_code, reason = "shared with the browser tests")]
#[path = "../../tests/browser/flow.rs"]
mod flow;
#[path = "../../tests/formula_shared/mod.rs"]
mod formula_shared;
mod freeze;
#[path = "../../tests/heat_shared/mod.rs"]
mod heat_shared;
#[path = "../../tools/host.rs"]
mod host;
mod keys;
mod native;
#[allow(dead_code, reason = "shared with the browser tests")]
#[path = "../../tests/browser/page.rs"]
mod page;
#[allow(dead_code, reason = "shared with the browser tests")]
#[path = "../../tests/browser/paper.rs"]
mod paper;
mod plan;
#[path = "../../tests/planning_shared/mod.rs"]
mod planning_shared;
mod sqlite;
mod start;
mod store;
#[allow(dead_code, reason = "shared with the tests of burn trials")]
#[path = "../../tests/burn/strd.rs"]
mod strd;
mod trace;
#[allow(dead_code, reason = "shared with the browser tests")]
#[path = "../../tests/browser/years.rs"]
mod years;

use browser::{Browser, Engine};
use host::Host;
use serde_json::json;
use std::path::Path;

/// Prints a figure. A budget is the most it may be.
pub(crate) fn line(name: &str, value: f64, unit: &str, budget: Option<f64>) {
    let value = (value * 100.0).round() / 100.0;
    let ok = budget.is_none_or(|budget| value <= budget);
    println!("{}", json!({ "name": name, "value": value, "unit": unit, "budget": budget, "ok": ok }));
}

/// The value below which `share` of them lie.
pub(crate) fn quantile(values: &mut [f64], share: f64) -> f64 {
    values.sort_by(f64::total_cmp);
    let at = (values.len() as f64 * share).ceil() as usize;
    values[at.clamp(1, values.len()) - 1]
}

pub(crate) fn median(values: &mut [f64]) -> f64 {
    quantile(values, 0.5)
}

/// Serves a folder of built files, named by a variable of the environment, from an origin of its own.
pub(crate) fn serve(folder: &str) -> Host {
    let folder = std::env::var(folder).unwrap_or_else(|_| panic!("{folder}: tools/measure sets it"));
    Host::start(Path::new(&folder), 0, "/").expect("the folder of built files is there")
}

fn main() {
    let named: Vec<String> = std::env::args().skip(1).filter(|a| !a.starts_with('-')).collect();
    let wanted = |group: &str| named.is_empty() || named.iter().any(|n| n == group);
    if wanted("native") {
        native::figures();
    }
    if wanted("freeze") {
        freeze::beside_a_library();
    }
    if wanted("decade") {
        decade::natively();
    }
    if wanted("trace") {
        trace::figures();
    }
    if wanted("plan") {
        plan::figures();
    }
    let runtime = tokio::runtime::Builder::new_current_thread().enable_all().build().unwrap();
    if wanted("decade") {
        runtime.block_on(async {
            let mut b = Browser::start(Engine::Chromium, "decade").await;
            decade::figures(&mut b).await;
            b.end().await;
        });
    }
    if !["start", "keys", "store", "freeze", "plan", "print"].into_iter().any(wanted) {
        return;
    }
    runtime.block_on(async {
        let b = Browser::start(Engine::Chromium, "measure").await;
        if wanted("start") {
            start::figures(&b).await;
        }
        let floor = if wanted("keys") { keys::floor(&b).await } else { 0.0 };
        let beside = if wanted("store") { sqlite::beside() } else { None };
        let host = beside.as_ref().map_or_else(|| serve("POTSIDE_DIST"), sqlite::Beside::serve);
        b.open(&host.address()).await;
        b.size(1024, 768).await;
        b.tap("Look around the demo workshop").await;
        b.sees("Demo workshop").await;
        b.room("pot").await;
        let typed = if wanted("keys") { keys::rooms(&b).await } else { keys::Times::default() };
        keys::to_a_temperature(&b).await;
        if wanted("keys") {
            keys::figures(&b, floor, typed).await;
        }
        if wanted("store") {
            store::figures(&b, beside.as_ref().map(|beside| beside.folder.as_str())).await;
        }
        if wanted("print") {
            printed(&b).await;
        }
        if wanted("freeze") {
            freeze::figures(&b).await;
        }
        if wanted("plan") {
            plan::in_the_browser(&b).await;
        }
        b.end().await;
    });
}

/// How far off the least height of the net contents is on paper: an eighth of an inch, on the first label of the sheet.
async fn printed(b: &Browser) {
    b.room("desk/print/demo-label-front").await;
    b.set("Net weight to declare", "180 g").await;
    // The sheet follows the large label a moment later; a browser's own print command takes it as it is then.
    let followed = "return document.body.innerText.split('(180 g)').length > 3";
    b.waits("the sheet with what was typed", followed, vec![]).await;
    let (pdf, _) = paper::print(b, "measured-label").await;
    let height = paper::part(&pdf, 1200, (17.5, 21.0, 85.0, 60.0)).last_letter(1);
    line("type_height_error_mm", (height - 3.175).abs(), "mm", Some(0.05));
}
