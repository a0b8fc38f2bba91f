//! What planning the pours takes, natively, in the browser, and beside a general solver.

use crate::browser::Browser;
use crate::planning_shared::{Shape, workshop};
use crate::{line, median};
use potside::shelf::planning::Search;
use potside::wire;
use serde_json::{Value, json};
use std::path::Path;
use std::process::Command;
use std::time::Instant;

/// Milliseconds until a plan is proven the best, or one second, and then the gap in percent of what it is in.
fn plan(shape: &Shape) -> (f64, f64) {
    let problem = workshop(shape);
    let start = Instant::now();
    let mut search = Search::new(problem);
    while !search.step(2_000) && start.elapsed().as_millis() < 1_000 {}
    let ms = 1_000.0 * start.elapsed().as_secs_f64();
    let gap = search.gap().map_or(0.0, |gap| {
        let has = f64::from(search.plan().score.of(gap.measure));
        100.0 * (has - f64::from(gap.least)) / has.max(1.0)
    });
    (ms, gap)
}

/// Thirty workshops of 40 products and 200 orders.
fn shapes(scarce: u32) -> impl Iterator<Item = Shape> {
    (1..=30).map(move |at| Shape { seed: 7919 * at, goods: 40, orders: 200, scarce, first: 0 })
}

fn workshops(scarce: u32) -> Vec<(f64, f64)> {
    shapes(scarce).map(|shape| plan(&shape)).collect()
}

pub(crate) fn figures() {
    // A tenth of all supplies short: the slowest of the thirty.
    let some = workshops(10);
    line("plan_large_ms", some.iter().map(|(ms, _)| *ms).fold(0.0, f64::max), "ms", Some(1000.0));
    line("plan_gap_percent", some.iter().map(|(_, gap)| *gap).fold(0.0, f64::max), "%", Some(0.0));
    // A third of them short is harder: how many are proven in a second, and how far off the worst may be.
    let many = workshops(30);
    let proven = many.iter().filter(|(_, gap)| *gap == 0.0).count();
    line("plan_scarce_proven_percent", 100.0 * proven as f64 / many.len() as f64, "%", None);
    line("plan_scarce_gap_percent", many.iter().map(|(_, gap)| *gap).fold(0.0, f64::max), "%", None);
    beside_a_solver();
}

/// Searches in the page's own module, slice by slice as the worker does: of each the milliseconds until the first plan
/// and until the last, and whether that is proven. The first workshop is gone through once before, to have it compiled.
const SEARCH: &str = r#"
const [jobs, done] = arguments;
import(document.getElementById("potside-js").href).then(async (m) => {
  const found = [];
  for (const job of [jobs[0], ...jobs]) {
    const start = performance.now();
    let said = await m.planPours(job);
    const first = performance.now() - start;
    let plan = said;
    while (!said.startsWith("+") && performance.now() - start < 1000) {
      said = await m.planPours("");
      if (said) plan = said;
    }
    found.push([first, performance.now() - start, JSON.parse(plan.slice(1)).gap === null]);
  }
  done(found.slice(1));
}, (e) => done(String(e)));
"#;

/// The same thirty workshops as natively.
pub(crate) async fn in_the_browser(b: &Browser) {
    for (scarce, name) in [(10, "plan_large_browser"), (30, "plan_scarce_browser")] {
        let jobs: Vec<String> = shapes(scarce).map(|shape| wire::write(&workshop(&shape))).collect();
        let found = b.client.execute_async(SEARCH, vec![json!(jobs)]).await.unwrap();
        let found = found.as_array().expect("the module plans");
        let most = |at: usize| found.iter().filter_map(|one| one[at].as_f64()).fold(0.0, f64::max);
        let proven = found.iter().filter(|one| one[2] == Value::Bool(true)).count();
        line(&[name, "_first_ms"].concat(), most(0), "ms", None);
        let budget = (scarce == 10).then_some(1000.0);
        line(&[name, "_ms"].concat(), most(1), "ms", budget);
        line(&[name, "_proven_percent"].concat(), 100.0 * proven as f64 / found.len() as f64, "%", None);
    }
}

/// The same workshop by SciPy's solver (tests/tables/planning.py), run beside ours. `POTSIDE_PYTHON` names a Python that
/// has it; without one there is no figure.
fn beside_a_solver() {
    let figure = |value: Option<f64>| {
        let ok = value.is_some_and(|ratio| ratio >= 1.0);
        println!(
            "{}",
            json!({ "name": "plan_vs_milp_ratio", "value": value, "unit": "x", "budget": 1, "ok": ok })
        );
    };
    let Ok(python) = std::env::var("POTSIDE_PYTHON") else { return figure(None) };
    let shape = Shape { seed: 3695, goods: 40, orders: 200, scarce: 10, first: 0 };
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/tables/planning.py");
    let asked = ["3695", "40", "200", "10", "0"];
    let output = Command::new(python).arg(script).args(asked).output().expect("Python runs");
    let said = String::from_utf8_lossy(&output.stderr);
    let seconds =
        said.trim().strip_suffix(" s").and_then(|s| s.parse::<f64>().ok()).expect("the script says its time");
    let mut times: Vec<f64> = (0..21).map(|_| plan(&shape).0).collect();
    figure(Some((1_000.0 * seconds / median(&mut times)).round()));
}
