//! What a freezing costs: in the browser at the processor's own speed, beside a library natively, and the picture while it
//! is scrubbed with the processor slowed to a quarter.

use crate::browser::Browser;
use crate::heat_shared::{fine, front_error, neumann_wax};
use crate::{line, median, quantile};
use potside::heat::{Detail, Film, GLASS, Job, Measure, Setup, Shape, VEGETABLE_LIKE, freeze, job};
use serde_json::{Value, json};
use std::path::Path;
use std::process::Command;
use std::time::Instant;

/// The vessel that tests/tables/freezing.py has, with the wax that takes longer.
fn jar() -> Setup {
    Setup {
        shape: Shape { radius: 0.030, fill: 0.050, rim: 0.010, wall: 0.003, base: 0.005 },
        wax: VEGETABLE_LIKE,
        material: GLASS,
        film: Film { side: 10.0, top: 9.0, bottom: 6.0 },
        room: 21.0,
        pour: 75.0,
        vessel: 21.0,
        stirring: 1.0,
    }
}

/// Times one job in the page's own module: ms, each of so many runs after three that warm it up.
const RECKON: &str = r#"
const [jobs, runs, done] = arguments;
import(document.getElementById("potside-js").href).then(async (m) => {
  const arrays = jobs.map((job) => Float64Array.from(job));
  const times = [];
  for (let run = -3; run < runs; run++) {
    const start = performance.now();
    for (const job of arrays) await m.reckon(job);
    if (run >= 0) times.push(performance.now() - start);
  }
  done(times);
}, (e) => done(String(e)));
"#;

/// The time the page is busy with each move, without waiting for the next frame.
const BUSY: &str = r#"
const [moves, done] = arguments;
const slider = document.querySelector(".scrub input");
const times = [];
const move = (n) => {
  if (n === moves) return done(times);
  const start = performance.now();
  slider.value = (n * 7) % slider.max;
  slider.dispatchEvent(new Event("input", { bubbles: true }));
  // What follows the slider has its turn before any later task; then the frame is laid out and painted.
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = () => {
    document.body.offsetHeight;
    times.push(performance.now() - start);
    requestAnimationFrame(() => move(n + 1));
  };
  port2.postMessage(0);
};
move(0);
"#;

async fn reckoned(b: &Browser, jobs: Vec<Vec<f64>>, runs: u32) -> f64 {
    let times = b.client.execute_async(RECKON, vec![json!(jobs), json!(runs)]).await.unwrap();
    let mut times: Vec<f64> =
        times.as_array().expect("the module reckons").iter().filter_map(Value::as_f64).collect();
    median(&mut times)
}

pub(crate) async fn figures(b: &Browser) {
    let setup = jar();
    line("freeze_vessel_ms", reckoned(b, vec![job(&setup, &Job::Freeze)], 25).await, "ms", Some(16.7));
    let (neumann, lambda) = neumann_wax();
    let (_, share) = front_error(&neumann, &fine(Detail::FINE.cell, 10_800.0), lambda);
    line("freeze_error_percent", 100.0 * share, "%", Some(1.0));

    let pours: Vec<f64> = (0..20).map(|i| 52.0 + 2.0 * f64::from(i)).collect();
    let rows = (0..20).map(|i| {
        let row =
            Job::Row { measure: Measure::WallRate, vessel: 21.0 + 3.0 * f64::from(i), pours: pours.clone() };
        job(&setup, &row)
    });
    line("freeze_map_ms", reckoned(b, rows.collect(), 3).await, "ms", Some(1000.0));

    b.room("bench/freeze").await;
    b.sees("Shrinks").await;
    b.cdp("Emulation.setCPUThrottlingRate", json!({ "rate": 4 })).await.unwrap();
    let times = b.client.execute_async(BUSY, vec![json!(200)]).await.unwrap();
    b.cdp("Emulation.setCPUThrottlingRate", json!({ "rate": 1 })).await.unwrap();
    let mut times: Vec<f64> = times.as_array().expect("times").iter().filter_map(Value::as_f64).collect();
    line("scrub_frame_ms_p95_cpu4x", quantile(&mut times, 0.95), "ms", Some(16.7));
}

/// The same problem on a grid of the same cells in SciPy (tests/tables/freezing.py), run beside ours, natively.
/// `POTSIDE_PYTHON` names a Python that has it; without one there is no figure.
pub(crate) fn beside_a_library() {
    let Ok(python) = std::env::var("POTSIDE_PYTHON") else {
        println!(
            "{}",
            json!({ "name": "freeze_vs_library_ratio", "value": null, "unit": "x", "budget": 20, "ok": false })
        );
        return;
    };
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/tables/freezing.py");
    let output = Command::new(python).arg(script).arg("2").output().expect("Python runs");
    let said = String::from_utf8_lossy(&output.stderr);
    let line_of = said.lines().find(|l| l.starts_with("vegetable:")).expect("the script says its time");
    let seconds: f64 = line_of.rsplit(' ').nth(1).and_then(|s| s.parse().ok()).expect("in seconds");
    // The script follows six hours.
    let detail = Detail { seconds: 21_600.0, probe: Some((0.0, 0.025)), ..Detail::FINE };
    let mut times: Vec<f64> = (0..21)
        .map(|_| {
            let start = Instant::now();
            std::hint::black_box(freeze(&jar(), &detail).expect("it freezes"));
            start.elapsed().as_secs_f64()
        })
        .collect();
    let ratio = (seconds / median(&mut times)).round();
    println!(
        "{}",
        json!({ "name": "freeze_vs_library_ratio", "value": ratio, "unit": "x", "budget": 20, "ok": ratio >= 20.0 })
    );
}
